import { useState } from 'react'
import { AskTaster } from '#components/tasting/ask-taster.tsx'
import styles from '#components/tasting/tasting.module.css'
import type { TastingAct } from '#components/tasting/use-tastings.ts'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { tellFinding } from '#lib/needs/finding-told.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { TastingTold } from '#lib/tasting/http.ts'
import type { TasterTold } from '#lib/tasting/tasting.ts'
import type { ComponentTasted } from '#lib/tasting/who-can-taste.ts'

interface WhoPanelProps {
  readonly station: StationDocument
  readonly told: TastingTold
  readonly who: readonly ComponentTasted[]
  readonly acting: TastingAct
}

function Answer({ told }: { readonly told: TasterTold | undefined }) {
  const words = useTastingWords()
  if (!told) return words.notAsked
  if (told.asked === 'not-sure') return words.notSure
  return told.asked === 'none' ? words.none : words.needs(told.needs)
}

/** Who can't taste what and why, and who tastes it instead. */
function CannotTaste({
  station,
  one,
  onLeaveOut,
}: {
  readonly station: StationDocument
  readonly one: ComponentTasted
  readonly onLeaveOut: () => void
}) {
  const words = useTastingWords()
  const { name } = componentOf(station, one.component)
  const cannot = one.tasters.flatMap(({ taster, verdict, instead }) => {
    if (verdict.is === 'not-sure') return [{ taster, instead, because: words.unsure(name) }]
    const [worst] = verdict.is === 'cannot' ? verdict.findings : []
    return worst
      ? [{ taster, instead, because: words.sayFinding(tellFinding(station, worst)) }]
      : []
  })
  const isKnown = one.tasters.every(({ verdict }) => verdict.is !== 'not-asked')
  const isNobodys = isKnown && one.can.length === 0
  if (cannot.length === 0 && !isNobodys) return null
  return (
    <li data-nobody={isNobodys || undefined}>
      {cannot.map(({ taster, because, instead }) => {
        const [who, why] = words.why(taster, because)
        return (
          <p key={taster}>
            <b>{who}</b> {why} {instead !== null && words.instead(instead)}
          </p>
        )
      })}
      {isNobodys && (
        <p>
          <b>{words.nobody(name)}</b> <Button onClick={onLeaveOut}>{words.leaveOut(name)}</Button>
        </p>
      )}
    </li>
  )
}

/** Every taster is asked; what follows stands beside, before anything is made. */
export function WhoPanel({ station, told, who, acting }: WhoPanelProps) {
  const words = useTastingWords()
  const [asking, setAsking] = useState<number | null>(null)
  const { tasting } = told
  const ofIt = { tasting: tasting.id }
  const silent = tasting.tasters.map(({ number }) => number).filter((one) => !told.told[one])
  const alone = who.filter(({ can }) => can.length === 0).map(({ component }) => component)
  const answer = async (taster: number, said: TasterTold) => {
    if (await acting.act({ type: 'askTaster', ...ofIt, taster, ...said })) setAsking(null)
  }
  if (asking !== null)
    return (
      <AskTaster
        key={asking}
        {...{ station, taster: asking, before: told.told[asking], busy: acting.busy }}
        onTold={(said) => void answer(asking, said)}
        onBack={() => setAsking(null)}
      />
    )
  const lacks =
    silent.length > 0
      ? words.toAsk(silent)
      : alone.length > 0
        ? words.toSettle(alone.map((one) => componentOf(station, one).name))
        : null
  return (
    <div className={styles.who}>
      <div className={`${styles.tasters} ${silent.length === 0 ? styles.asked : ''}`}>
        {tasting.tasters.map(({ number }) => (
          <Button
            key={number}
            kind={told.told[number] ? 'plain' : 'main'}
            sub={<Answer told={told.told[number]} />}
            onClick={() => setAsking(number)}
          >
            {words.taster(number)}
          </Button>
        ))}
        <Button
          kind="quiet"
          disabled={acting.busy}
          onClick={() => void acting.act({ type: 'addTaster', ...ofIt })}
        >
          {words.addTaster}
        </Button>
      </div>
      <ul className={styles.cannot}>
        {who.map((one) => (
          <CannotTaste
            key={one.component}
            {...{ station, one }}
            onLeaveOut={() =>
              void acting.act({ type: 'leaveOutOfTasting', ...ofIt, component: one.component })
            }
          />
        ))}
      </ul>
      {tasting.stage === 'planned' && (
        <div className={styles.acts}>
          <Button
            kind="main"
            size="large"
            lacks={lacks}
            disabled={acting.busy}
            sub={words.makeSub}
            onClick={() => void acting.act({ type: 'makeTasting', ...ofIt })}
          >
            {words.make}
          </Button>
        </div>
      )}
    </div>
  )
}
