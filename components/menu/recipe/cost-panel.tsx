import { InvoiceForm } from '#components/menu/recipe/invoice-form.tsx'
import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import { itemCosts } from '#lib/editor/cards/item-costs.ts'
import type { Card } from '#lib/recipes/card.ts'
import { foodShare, newestInvoice } from '#lib/recipes/purchased.ts'
import { times } from '#lib/recipes/rational.ts'
import type { RecipeSheet } from '#lib/recipes/recipe-sheet.ts'

/** What the making costs, line by line, a portion of it, and what it does to the items it is in. */
export function CostPanel({
  now,
  card,
  sheet,
}: {
  readonly now: RecipeNow
  readonly card: Card
  readonly sheet: RecipeSheet
}) {
  const words = useRecipeWords()
  const { box, currency, served } = now
  const items = served === null ? [] : itemCosts(now.draft, box, served.component)
  const nameOf = (of: string) => box.cards.get(of)?.name ?? box.bought.get(of)?.name ?? of
  return (
    <section className={styles.cost}>
      <h2>{words.cost}</h2>
      <p>
        <b>{words.batchCost(sheet.cents, sheet.cost.unknown.length === 0, currency)}</b>
        {sheet.portionCents && ` · ${words.portionCost(sheet.portionCents, currency)}`}
      </p>
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
      {items.length > 0 && (
        <table>
          <caption>{words.inItem}</caption>
          <thead>
            <tr>
              {[words.item, words.price, words.food, words.without, words.extra].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {items.map((one) => {
              const isAll = one.unknown.length === 0
              const said = (cents: typeof one.cents, price: number) =>
                words.share(cents, foodShare(cents, price), isAll, currency)
              return (
                <tr key={one.item}>
                  <th scope="row">
                    {one.name}
                    {!isAll && <small>{words.notKnown(one.unknown)}</small>}
                  </th>
                  <td data-label={words.price}>{words.wholeCents(one.priceCents, currency)}</td>
                  <td data-label={words.food}>{said(one.cents, one.priceCents)}</td>
                  <td data-label={words.without}>{said(one.without, one.priceCents)}</td>
                  <td data-label={words.extra}>{said(one.extra, one.extraPriceCents)}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
      <InvoiceForm now={now} card={card} />
    </section>
  )
}
