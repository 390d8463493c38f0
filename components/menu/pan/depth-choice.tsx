import { About } from '#components/menu/fields/help.tsx'
import { TypedField } from '#components/menu/fields/typed-field.tsx'
import styles from '#components/menu/pan/depth.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { holds, portionMl, usualOf } from '#lib/editor/cards/pan-holds.ts'
import { typedLoad } from '#lib/editor/cards/typed-load.ts'
import type { Json, Row } from '#lib/editor/draft.ts'
import { textIn } from '#lib/editor/draft.ts'
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { PAN_DEPTHS_IN, PAN_SIZES, type PanDepthIn, panCapacity } from '#lib/measure/pans.ts'

const DRAWN_PX: Readonly<Record<PanDepthIn, number>> = { 2.5: 44, 4: 70, 6: 105 }

/** A pan from its side, as deep as it is. */
function PanFromSide({ depthIn, count }: { readonly depthIn: PanDepthIn; readonly count: string }) {
  const deep = DRAWN_PX[depthIn]
  return (
    <svg className={styles.drawn} viewBox="0 0 96 118" aria-hidden="true">
      <path
        className={styles.body}
        d={`M12 10 H84 L76 ${8 + deep} Q76 ${12 + deep} 72 ${12 + deep} H24 Q20 ${12 + deep} 20 ${8 + deep} Z`}
      />
      <rect x="4" y="4" width="88" height="7" rx="3" />
      <text x="48" y={12 + deep / 2 + 8}>
        {count}
      </text>
    </svg>
  )
}

/** What the pan holds by its depth, drawn; a tap is the answer. */
export function DepthChoice({
  pan,
  row,
  portion,
}: {
  readonly pan: string
  readonly row: Row | undefined
  readonly portion: Json | undefined
}) {
  const words = useMenuWords()
  const { take } = useMenu()
  const size = PAN_SIZES.find((one) => one === textIn(row, 'size')) ?? 'third'
  const depth = PAN_DEPTHS_IN.find((one) => one === row?.depthIn) ?? 4
  const stated = typeof row?.capacityFlOz === 'number' ? row.capacityFlOz : null
  const holdsAt = (one: PanDepthIn) => holds(size, one, portion, one === depth ? stated : null)
  const now = holdsAt(depth)
  const each = portionMl(portion)
  const load = typedLoad(portion, row?.usualPortions)
  const flOz = stated ?? panCapacity(size, depth)?.usableFlOz ?? null
  const choose = (one: PanDepthIn) => {
    const [before, after] = [usualOf(now), usualOf(holdsAt(one))]
    const isProposed = before !== null && row?.usualPortions === before
    take({
      do: 'put',
      entity: 'pan',
      id: pan,
      fields: { depthIn: one, ...(isProposed && after !== null ? { usualPortions: after } : {}) },
    })
  }
  return (
    <section className={styles.holds} aria-label={words.pan.holds(size)}>
      <About of="depth">
        <fieldset className={styles.depths}>
          <legend>{words.pan.holds(size)}</legend>
          {PAN_DEPTHS_IN.map((one) => {
            const isSold = panCapacity(size, one) !== null
            const count = holdsAt(one)
            return (
              <button
                key={one}
                type="button"
                disabled={!isSold}
                aria-pressed={depth === one}
                aria-label={`${words.pan.depth(one)}${count === null ? '' : `: ${count}`}`}
                onClick={() => choose(one)}
              >
                <PanFromSide depthIn={one} count={count === null ? '' : String(count)} />
                <b>{words.pan.depth(one)}</b>
                {!isSold && <span>{words.pan.notSold}</span>}
              </button>
            )
          })}
        </fieldset>
      </About>
      {now !== null && flOz !== null && each !== null && (
        <p>
          {words.pan.serves(
            words.sayFluidOunces(mlFrom(flOz, 'flOz')),
            words.sayFluidOunces(each),
            now,
          )}
        </p>
      )}
      <TypedField
        entity="pan"
        id={pan}
        field="usualPortions"
        as="whole"
        label={words.pan.usual}
        help="usual"
      />
      {load !== null && (
        <output className={styles.total} aria-label={words.pan.goesIn}>
          {words.sayPortionTotal(load)}
        </output>
      )}
    </section>
  )
}
