import page from '#components/access/page.module.css'
import { useAccess } from '#components/access/use-access.ts'
import styles from '#components/menu/recipe/recipe.module.css'
import type { RecipeNow } from '#components/menu/recipe/use-recipe.ts'
import { useRecipeWords } from '#components/menu/recipe-words.tsx'
import type { Card } from '#lib/recipes/card.ts'
import { cardText, correctedYield } from '#lib/recipes/measured-yield.ts'
import { toNumber } from '#lib/recipes/rational.ts'
import type { RecipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import type { YieldsNow } from '#lib/tasting/http.ts'

const LOOK_EVERY_MS = 10_000
const SHOWN = 5

/** What own batches of this card really made, and how sure that is. */
export function MeasuredYield({
  now,
  card,
  sheet,
}: {
  readonly now: RecipeNow
  readonly card: Card
  readonly sheet: RecipeSheet
}) {
  const { measured } = useRecipeWords()
  const { draft, box, served } = now
  const { seen } = useAccess<YieldsNow>(`/tasting/yields?station=${draft.station}`, LOOK_EVERY_MS)
  if (served === null || seen === null) return null
  const hash = hashOf(cardText(card, box))
  const all = seen.yields.filter(({ component }) => component === served.component)
  const own = all.filter((one) => one.card === hash).sort((a, b) => (a.on < b.on ? -1 : 1))
  const corrected = correctedYield(own.map(({ ratio }) => ratio))
  const portions = sheet.checked.code === 'checked' ? sheet.checked.check.gives : null
  return (
    <section className={styles.enough} aria-label={measured.title}>
      <h2>{measured.title}</h2>
      {corrected === null ? (
        <p>{measured.none}</p>
      ) : (
        <>
          <p>
            <b>
              {portions === null
                ? measured.ofPercent(corrected)
                : measured.ofPortions(portions, corrected)}
            </b>
          </p>
          <p>{measured.makeInstead(toNumber(sheet.factor) / corrected.ratio)}</p>
          {corrected.range !== null && <p>{measured.rangeIs}</p>}
          <ul>
            {own
              .slice(-SHOWN)
              .reverse()
              .map(({ on, typed, ratio, factor }, index) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows have nothing of their own
                <li key={`${on} ${index}`}>{measured.row(on, typed, ratio, factor)}</li>
              ))}
          </ul>
        </>
      )}
      {all.length > own.length && <p>{measured.earlier(all.length - own.length)}</p>}
      <p className={page.links}>
        <a href={`/tasting?station=${draft.station}&taste=${served.component}`}>{measured.taste}</a>
      </p>
    </section>
  )
}
