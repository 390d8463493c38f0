import styles from '#components/tasting/tasting.module.css'
import { useTastingWords } from '#components/tasting/words.tsx'
import { Field } from '#components/ui/field.tsx'
import { scaled } from '#lib/recipes/amount.ts'
import { madeBy } from '#lib/recipes/factor.ts'
import { times } from '#lib/recipes/rational.ts'
import { typedYield } from '#lib/recipes/typed-yield.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { cardFor } from '#lib/tasting/card-of.ts'
import { tastingFactor } from '#lib/tasting/decide.ts'

/** One portion more or less is a tenth of it then. */
const COUNTS_FROM = 10

export interface YieldTyped {
  readonly typed: string
  readonly saved: boolean
}

interface CardToWeighProps {
  readonly station: StationDocument
  readonly component: string
  readonly portions: number
  readonly yields: YieldTyped
  readonly onYields: (yields: YieldTyped) => void
}

function Stated({
  station,
  component,
  portions,
}: Pick<CardToWeighProps, 'station' | 'component' | 'portions'>) {
  const words = useTastingWords()
  const found = cardFor(station, component)
  const read = found ? typedYield(found.card.yields) : null
  if (!read?.ok) return <p>{words.nothingStated}</p>
  const factor = tastingFactor(station, component, portions)
  const made = madeBy(read.yields)
  if (made.ok) return <p>{words.stated(words.sayAmount(scaled(made.amount, factor)))}</p>
  if (read.yields.kind !== 'portions') return <p>{words.nothingStated}</p>
  const count = times(read.yields.count, factor)
  const piece = { kind: 'count', size: count, of: 'piece' } as const
  return <p>{words.stated(words.sayAmount(piece))}</p>
}

/** What it really made, against its card. */
export function CardToWeigh(props: CardToWeighProps) {
  const { station, component, portions, yields, onYields } = props
  const words = useTastingWords()
  const { name } = componentOf(station, component)
  return (
    <article className={styles.card} aria-label={name}>
      <header>
        <h3>{name}</h3>
        <Stated {...{ station, component, portions }} />
      </header>
      <div className={styles.made}>
        <div>
          <Field
            label={words.weighed}
            placeholder={words.weighedHint}
            maxLength={40}
            value={yields.typed}
            onChange={({ target }) => onYields({ ...yields, typed: target.value })}
          />
          <label>
            <input
              type="checkbox"
              checked={yields.saved}
              onChange={({ target }) => onYields({ ...yields, saved: target.checked })}
            />
            <span>
              {words.save}
              <small>{words.saveWhy}</small>
            </span>
          </label>
        </div>
        {portions < COUNTS_FROM && <p>{words.smallBatch}</p>}
      </div>
    </article>
  )
}
