import styles from '#components/menu/items/items.module.css'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { cardBoxOf } from '#lib/editor/cards/card-box.ts'
import { type ItemCost, itemCost, type PartCost } from '#lib/editor/cards/item-costs.ts'
import { type Draft, textIn } from '#lib/editor/draft.ts'

const isUnknown = ({ parts }: ItemCost): boolean => parts.every(({ cents }) => cents === null)

const currencyOf = (draft: Draft): string => textIn(draft.rows.house, 'currency') || 'USD'

interface ItemFoodProps {
  readonly item: string
  /** Pans in line order, with where a well begins. */
  readonly columns: readonly { readonly component: string; readonly begins: boolean }[]
}

/** What the food of an item costs as it comes, in one line; none while nothing of it is known. */
export function FoodOfItem({ item }: { readonly item: string }) {
  const words = useMenuWords()
  const { draft } = useMenu()
  const cost = itemCost(draft, cardBoxOf(draft), item)
  if (cost === null || isUnknown(cost)) return null
  const currency = currencyOf(draft)
  const isAll = cost.unknown.length === 0
  const { cost: said, item: names } = words
  return (
    <p className={styles.foodOf}>
      <b>
        {names.foodOf} {said.share(cost.asItComes, isAll, currency)}
      </b>{' '}
      {said.left(cost.asItComes, isAll, currency)}
      {!isAll && ` · ${said.notKnown(cost.unknown)}`}
    </p>
  )
}

/** The same in the pans' own columns: a portion, and what is left over without it and with one more. */
export function ItemFood({ item, columns }: ItemFoodProps) {
  const words = useMenuWords()
  const { draft } = useMenu()
  const cost = itemCost(draft, cardBoxOf(draft), item)
  if (cost === null || isUnknown(cost)) return null
  const currency = currencyOf(draft)
  const { cost: said, item: names } = words
  const short = (cents: NonNullable<PartCost['cents']>) => said.cents(cents, currency)
  // Where the cost of something that is in it isn't known, what is left isn't either.
  const left = (part: PartCost, sold: NonNullable<PartCost['no']>, hasOwn: boolean) =>
    cost.unknown.some((name) => name !== part.name) || (hasOwn && part.cents === null)
      ? '?'
      : short(sold.leftCents)
  const rows: readonly {
    readonly head: string
    readonly of: (part: PartCost) => string | null
  }[] = [
    { head: names.foodRows.portion, of: ({ cents }) => (cents === null ? '?' : short(cents)) },
    { head: names.foodRows.no, of: (part) => part.no && left(part, part.no, false) },
    { head: names.foodRows.extra, of: (part) => part.extra && left(part, part.extra, true) },
  ]
  return (
    <section className={styles.food} aria-label={names.foodOf}>
      {rows.map(({ head, of }) => (
        <div key={head} className={styles.row}>
          <span>{head}</span>
          {columns.map(({ component, begins }, at) => {
            const part = cost.parts.find((one) => one.component === component)
            return (
              <span
                // biome-ignore lint/suspicious/noArrayIndexKey: pans stand where they stand
                key={at}
                data-begins={begins || undefined}
              >
                {part ? (of(part) ?? said.cannot) : ''}
              </span>
            )
          })}
        </div>
      ))}
    </section>
  )
}
