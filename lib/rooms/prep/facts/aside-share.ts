/** How much of a component goes on the side, into cups, by the menu: services keep no count of sides. */
import { firstOdds, shareAt } from '#lib/estimate/par/menu-mix.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Of what an item doesn't have on the side, so much is asked for in a cup: common practice, no source. */
const ASKED_ASIDE = 0.25

/**
 * From 0 to 1, of all that is taken of it: items on sale that have it on the side put all of it into cups,
 * each as often as the menu has it take it.
 * @param onSale ids of items; null: all of them
 */
export const asideShare = (
  { items }: Pick<StationDocument, 'items'>,
  onSale: readonly string[] | null,
  component: string,
): number => {
  const takes = items.flatMap((item) => {
    const part = item.parts.find((one) => one.component === component)
    if (part === undefined || !(onSale === null || onSale.includes(item.id))) return []
    const odds = firstOdds(item, component)
    return [{ often: odds === null ? 1 : shareAt(odds), isAside: part.usual === 'side' }]
  })
  const all = takes.reduce((sum, { often }) => sum + often, 0)
  const aside = takes.reduce(
    (sum, { often, isAside }) => sum + often * (isAside ? 1 : ASKED_ASIDE),
    0,
  )
  return all === 0 ? ASKED_ASIDE : aside / all
}
