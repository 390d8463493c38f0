import { useState } from 'react'
import { CardToWeigh, type YieldTyped } from '#components/tasting/card-to-weigh.tsx'
import styles from '#components/tasting/tasting.module.css'
import type { TastingAct } from '#components/tasting/use-tastings.ts'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Field } from '#components/ui/field.tsx'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { cardFor } from '#lib/tasting/card-of.ts'
import type { Tasting } from '#lib/tasting/tasting.ts'
import type { ComponentTasted } from '#lib/tasting/who-can-taste.ts'

interface WeighingProps {
  readonly station: StationDocument
  readonly tasting: Tasting
  readonly who: readonly ComponentTasted[]
  readonly acting: TastingAct
  readonly initials: string
  readonly onInitials: (initials: string) => void
}

const NOT_WEIGHED: YieldTyped = { typed: '', saved: true }

/** The end: what was weighed, and who weighed it. */
export function Weighing({ station, tasting, who, acting, initials, onInitials }: WeighingProps) {
  const words = useTastingWords()
  const [yields, setYields] = useState<Readonly<Record<string, YieldTyped>>>({})
  const weighed = who.filter(({ component }) => cardFor(station, component))
  const others = who
    .filter((one) => !weighed.includes(one))
    .map(({ component }) => componentOf(station, component).name)
  const isSaving = tasting.components.some((component) => {
    const one = yields[component]
    return one?.saved === true && one.typed.trim() !== ''
  })
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
        {weighed.map(({ component }) => (
          <CardToWeigh
            key={component}
            {...{ station, component, portions: tasting.portions }}
            yields={yields[component] ?? NOT_WEIGHED}
            onYields={(one) => {
              acting.hush()
              setYields({ ...yields, [component]: one })
            }}
          />
        ))}
      </div>
      {others.length > 0 && <p>{words.noCardToWeigh(others)}</p>}
      <div className={styles.acts}>
        <Field
          label={words.initials}
          maxLength={6}
          value={initials}
          onChange={({ target }) => onInitials(target.value)}
        />
        <Button
          kind="main"
          lacks={isSaving && initials.trim() === '' ? words.initialsToSave : null}
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
