import { fieldsWith, toTyped, valueAt } from '#components/menu/fields/typed.ts'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/house/limits.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { isRecord, type Json, recordsIn } from '#lib/editor/draft.ts'
import { modelFigures, onBothScales } from '#lib/editor/limits/own-limit.ts'
import { type LimitName, MODEL_CODE } from '#lib/safety/limits.ts'

const SAFETY = { entity: 'safety', id: 'safety' } as const

interface OfLimit {
  readonly name: LimitName
}

/** A temperature on the house's scale; kept on both. */
function DegreesField({
  name,
  field,
  onAnswer,
}: OfLimit & {
  /** Where both figures are. */
  readonly field: string
  readonly onAnswer: (tenths: Json | undefined) => void
}) {
  const { limits: words } = useMenuWords()
  const { draft } = useMenu()
  const row = draft.rows.safety
  const scale = row?.scale === 'C' ? 'C' : 'F'
  const kept = valueAt(row, `${field}.${scale}`)
  const { bound, pairs } = modelFigures(name)
  return (
    <TypedField
      {...SAFETY}
      field={`${field}.${scale}`}
      as="number"
      label={words.temperature}
      help="limits"
      unit={
        <span>
          °{scale} {words.degrees[bound]}
        </span>
      }
      shown={toTyped(typeof kept === 'number' ? kept / 10 : kept, 'number')}
      onAnswer={(typed) =>
        onAnswer(
          typeof typed === 'number'
            ? { ...onBothScales(typed, scale, bound, pairs) }
            : typed === undefined
              ? {}
              : { F: typed, C: typed },
        )
      }
    />
  )
}

/** Any one of some temperatures, each held for its seconds. */
function HeatFields({ name }: OfLimit) {
  const { limits: words } = useMenuWords()
  const { draft, take } = useMenu()
  const row = draft.rows.safety
  const field = `limits.${name}`
  const own = valueAt(row, field)
  const ways = isRecord(own) ? recordsIn(own, 'combinations') : []
  const put = (combinations: readonly Json[]) =>
    take({ do: 'put', ...SAFETY, ...fieldsWith(row, `${field}.combinations`, combinations) })
  const change = (at: number, to: { readonly [key: string]: Json }) =>
    put(ways.map((way, which) => (which === at ? { ...way, ...to } : way)))
  return (
    <div className={styles.ways}>
      {ways.map((way, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a way has no name but its place
        <div key={at} className={styles.way}>
          <DegreesField
            name={name}
            field={`${field}.combinations.${at}.tenths`}
            onAnswer={(tenths) => change(at, { tenths: tenths ?? {} })}
          />
          <TypedField
            {...SAFETY}
            field={`${field}.combinations.${at}.seconds`}
            as="whole"
            label={words.seconds}
            help="limits"
            shown={toTyped(way.seconds, 'whole')}
            onAnswer={(seconds) => change(at, { seconds: seconds ?? '' })}
          />
          {ways.length > 1 && (
            <Button
              kind="quiet"
              aria-label={words.takeWay}
              onClick={() => put(ways.filter((_, which) => which !== at))}
            >
              ×
            </Button>
          )}
        </div>
      ))}
      <Button kind="quiet" onClick={() => put([...ways, { tenths: {}, seconds: 0 }])}>
        {words.addWay}
      </Button>
      <TypedField
        {...SAFETY}
        field={`${field}.standSeconds`}
        as="whole"
        label={words.stand}
        help="limits"
      />
    </div>
  )
}

/** What a limit asks, in fields of its own kind. */
export function LimitFigures({ name }: OfLimit) {
  const { limits: words } = useMenuWords()
  const { draft, take } = useMenu()
  const field = `limits.${name}`
  const model = MODEL_CODE[name]
  if ('combinations' in model) return <HeatFields name={name} />
  if ('bound' in model)
    return (
      <DegreesField
        name={name}
        field={`${field}.tenths`}
        onAnswer={(tenths) =>
          take({
            do: 'put',
            ...SAFETY,
            ...fieldsWith(draft.rows.safety, `${field}.tenths`, tenths),
          })
        }
      />
    )
  return 'days' in model ? (
    <TypedField {...SAFETY} field={`${field}.days`} as="whole" label={words.days} help="limits" />
  ) : (
    <TypedField
      {...SAFETY}
      field={`${field}.withinMs`}
      as="minutes"
      label={words.within}
      help="limits"
    />
  )
}
