import { useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { CardToCook, type YieldTyped } from '#components/tasting/card-to-cook.tsx'
import { TastedPan } from '#components/tasting/tasted-pan.tsx'
import styles from '#components/tasting/tasting.module.css'
import type { TastingAct } from '#components/tasting/use-tastings.ts'
import { WhoPanel } from '#components/tasting/who-panel.tsx'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { findComponent, pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { TastingTold } from '#lib/tasting/http.ts'
import { isToCome } from '#lib/tasting/tasting.ts'
import { whoCanTaste } from '#lib/tasting/who-can-taste.ts'

interface TastingBoardProps {
  readonly station: StationDocument
  readonly told: TastingTold
  readonly acting: TastingAct
}

const NOT_WEIGHED: YieldTyped = { typed: '', saved: true }

/** The cards to cook by, and the end: what was weighed, and who weighed it. */
function Cooking({
  station,
  told: { tasting },
  who,
  acting,
}: TastingBoardProps & { readonly who: ReturnType<typeof whoCanTaste> }) {
  const words = useTastingWords()
  const [yields, setYields] = useState<Readonly<Record<string, YieldTyped>>>({})
  const [initials, setInitials] = useState('')
  const end = () =>
    acting.act({
      type: 'endTasting',
      tasting: tasting.id,
      ...(initials.trim() === '' ? {} : { initials: initials.trim() }),
      yields: tasting.components.flatMap((component) => {
        const one = yields[component]
        return one && one.typed.trim() !== '' ? [{ component, ...one }] : []
      }),
    })
  return (
    <>
      <div className={styles.cards}>
        {who.map(({ component, can }) => (
          <CardToCook
            key={component}
            {...{ station, component, can, portions: tasting.portions }}
            yields={yields[component] ?? NOT_WEIGHED}
            onYields={(one) => {
              acting.hush()
              setYields({ ...yields, [component]: one })
            }}
          />
        ))}
      </div>
      <p>{words.smallBatch}</p>
      <div className={styles.acts}>
        <Field
          label={words.initials}
          maxLength={6}
          value={initials}
          onChange={({ target }) => setInitials(target.value)}
        />
        <Button
          kind="main"
          size="large"
          disabled={acting.busy}
          sub={words.endSub}
          onClick={() => void end()}
        >
          {words.end}
        </Button>
      </div>
    </>
  )
}

function Drop({ acting, tasting }: { readonly acting: TastingAct; readonly tasting: string }) {
  const words = useTastingWords()
  const [isSure, setSure] = useState(false)
  return isSure ? (
    <Button kind="no" onClick={() => void acting.act({ type: 'dropTasting', tasting })}>
      {words.dropSure}
    </Button>
  ) : (
    <Button kind="quiet" onClick={() => setSure(true)}>
      {words.drop}
    </Button>
  )
}

function Results({ station, told: { tasting } }: Pick<TastingBoardProps, 'station' | 'told'>) {
  const words = useTastingWords()
  const nameOf = (one: string) => findComponent(station, one)?.name ?? one
  const saved = tasting.tasted.filter((one) => one.saved).map(({ component }) => nameOf(component))
  return (
    <>
      <Note kind="done" role="status">
        {words.over(saved)}
      </Note>
      {tasting.tasted.map(({ component, typed, ratio }) => (
        <p key={component}>{words.result(nameOf(component), typed, words.percent(ratio))}</p>
      ))}
    </>
  )
}

/** A tasting over the line: who can taste what, the cards to cook by, and what was made. */
export function TastingBoard({ station, told, acting }: TastingBoardProps) {
  const words = useTastingWords()
  const { tasting } = told
  // What was taken off the line since isn't drawn, nor judged.
  const there = tasting.components.filter((one) => findComponent(station, one))
  const who = whoCanTaste(station, { ...tasting, components: there }, told.told)
  const isOpen = isToCome(tasting)
  const about = pansOf(station).filter(({ component }) => there.includes(component))
  return (
    <>
      <Notch about={about.map(({ id }) => id)} className={styles.stage ?? ''}>
        <div className={styles.line}>
          <Line
            station={station}
            label={words.lineOf}
            wrap="by-well"
            renderPan={(pan, component) => (
              <TastedPan
                {...{ component }}
                pan={pan.id}
                isTasted={there.includes(component.id)}
                who={(isOpen && who.find((one) => one.component === component.id)) || null}
              />
            )}
          />
        </div>
        <section className={styles.panel} data-notch-panel="">
          {isOpen && <WhoPanel {...{ station, told, who, acting }} />}
          {tasting.stage === 'making' && <Cooking {...{ station, told, who, acting }} />}
          {!isOpen && <Results {...{ station, told }} />}
          <p role="status" className={styles.said}>
            {acting.said ?? ''}
          </p>
        </section>
      </Notch>
      <footer className={styles.foot}>
        <p>{words.caution}</p>
        {isOpen && <Drop key={tasting.id} {...{ acting, tasting: tasting.id }} />}
      </footer>
    </>
  )
}
