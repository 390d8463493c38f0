import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { itemsWith } from '#lib/editor/cards/item-costs.ts'
import { newestInvoice, type Sold } from '#lib/recipes/purchased.ts'
import { times } from '#lib/recipes/rational.ts'
import type { RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'

/** What of each item it is, and what "no" and one more do to it. */
function ItemRows({
  items,
  currency,
}: {
  readonly items: ReturnType<typeof itemsWith>
  readonly currency: string
}) {
  const words = useRecipeWords()
  return (
    <table>
      <caption>{words.inItem}</caption>
      <thead>
        <tr>
          {[words.item, words.food, words.without, words.extra].map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {items.map(({ cost, part }) => {
          const isAll = cost.unknown.length === 0
          const of = (sold: Sold | null) =>
            sold === null ? (
              words.cannot
            ) : (
              <>
                {words.share(sold, isAll, currency)}
                <small>{words.left(sold, isAll, currency)}</small>
              </>
            )
          return (
            <tr key={cost.item}>
              <th scope="row">
                {cost.name}
                {!isAll && <small>{words.notKnown(cost.unknown)}</small>}
              </th>
              <td data-label={words.food}>{of(cost.asItComes)}</td>
              <td data-label={words.without}>{of(part.no)}</td>
              <td data-label={words.extra}>{of(part.extra)}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

/** What the making costs, line by line, a portion of it, and what it does to the items it is in. */
export function CostPanel({
  now,
  sheet,
}: {
  readonly now: RecipeNow
  readonly sheet: RecipeSheet
}) {
  const words = useRecipeWords()
  const { box, currency, served } = now
  const items = served === null ? [] : itemsWith(now.draft, box, served.component)
  const nameOf = (of: string) => box.cards.get(of)?.name ?? box.bought.get(of)?.name ?? of
  return (
    <section className={styles.cost}>
      <h2>{words.cost}</h2>
      <p>
        <b>{words.batchCost(sheet.cents, sheet.cost.unknown.length === 0, currency)}</b>
        {sheet.portionCents && ` · ${words.portionCost(sheet.portionCents, currency)}`}
      </p>
      {sheet.measuredCents && <p>{words.measuredCost(sheet.measuredCents, currency)}</p>}
      <ul>
        {sheet.cost.lines.map(({ line, cost }) => {
          const invoice = newestInvoice(box.bought.get(line.of)?.invoices ?? [])
          return (
            <li key={`${line.of} ${line.typed}`} data-unknown={cost.ok ? undefined : ''}>
              <span>{nameOf(line.of)}</span>
              <b>
                {cost.ok
                  ? words.cents(times(cost.cents, sheet.factor), currency)
                  : words.costCode(cost.code)}
              </b>
              {invoice && (
                <small>
                  {words.newest(
                    invoice.date,
                    invoice.packs,
                    invoice.packTyped,
                    words.wholeCents(invoice.cents, currency),
                  )}
                </small>
              )}
            </li>
          )
        })}
      </ul>
      {items.length > 0 && <ItemRows items={items} currency={currency} />}
    </section>
  )
}
