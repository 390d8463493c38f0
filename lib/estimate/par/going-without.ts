/**
 * Who finds a part gone that the item can do without either takes it without or is lost. How often a
 * station's guests do without is unknown, and alike for all parts. After a part was gone it was sold
 * to those who don't want it and to those who did without, who are told apart in the records: so many
 * of so many says how likely each share is (Bayes, on a grid, all shares alike before).
 */
import { firstOdds, type MenuMix, shareAt } from '#lib/estimate/par/menu-mix.ts'
import { type DoWithout, type PastDay, soldIn } from '#lib/estimate/par/past-day.ts'
import type { Item, StationDocument } from '#lib/station/station-document.ts'

const SHARES = Array.from({ length: 21 }, (_, index) => index / 20)
/** Chances nearer to 0 or 1 are taken as this near: a record may be wrong by a tap. */
const NEAR = 0.01

/** Builds of a day after a part was gone, of items that needn't have it. */
interface After {
  /** Of one item each: how many, and the share of its guests who want the part, 0 to 1. */
  readonly sold: readonly { readonly builds: number; readonly wants: number }[]
  /** Of all of them so many wanted it. */
  readonly without: number
}

/** Of those to whom it is sold without a part so many wanted it: `wants` of all do, of whom `share` do without. */
const amongSold = (wants: number, share: number): number =>
  (wants * share) / (1 - wants + wants * share)

/** Of those who find a part gone so many do without, 0 to 1: the mean over what is likely; 0.5 where nothing tells. */
export const doingWithout = (after: readonly After[]): number => {
  const logs = SHARES.map((share) => {
    let log = 0
    for (const { sold, without } of after) {
      const all = sold.reduce((sum, { builds }) => sum + builds, 0)
      if (all <= 0) continue
      const wanted = sold.reduce(
        (sum, { builds, wants }) => sum + builds * amongSold(wants, share),
        0,
      )
      const chance = Math.min(1 - NEAR, Math.max(NEAR, wanted / all))
      log += without * Math.log(chance) + (all - without) * Math.log(1 - chance)
    }
    return log
  })
  const best = Math.max(...logs)
  const weights = logs.map((log) => Math.exp(log - best))
  const whole = weights.reduce((sum, one) => sum + one, 0)
  return weights.reduce((sum, weight, index) => sum + weight * (SHARES[index] ?? 0), 0) / whole
}

/** Of the guests of an item so many want a part, at log odds beside what is usual; all want one that it needs. */
export const wantsPart = (
  { parts }: Pick<MenuMix, 'parts'>,
  item: Item,
  component: string,
  more = 0,
): number => {
  const first = firstOdds(item, component)
  return first === null ? 1 : shareAt(first + (parts[component]?.odds ?? 0) + more)
}

/** What was sold on past days after a part was gone, of items that can do without it. */
export const afterGone = (
  { items }: Pick<StationDocument, 'items'>,
  past: readonly PastDay[],
  parts: MenuMix['parts'],
): readonly After[] =>
  past.flatMap((day) =>
    day.soldOut.flatMap((component) => {
      const until = day.until[component]
      const own = items.filter((item) => firstOdds(item, component) !== null)
      if (!until || own.length === 0) return []
      const sold = own.map((item) => ({
        builds: Math.max(0, (day.items[item.id] ?? 0) - (until.items[item.id] ?? 0)),
        wants: wantsPart({ parts }, item, component),
      }))
      const all = soldIn({ items: Object.fromEntries(sold.map(({ builds }, i) => [i, builds])) })
      const wanted = (day.takings[component] ?? 0) - (until.takings[component] ?? 0)
      const without = Math.min(all, Math.max(0, wanted - (day.taps[component] ?? 0)))
      return [{ sold, without }]
    }),
  )

/** Of the guests of an item so many are served once a part is gone. */
export const doWithoutAt =
  (
    parts: MenuMix['parts'],
    share: number,
    more: Readonly<Record<string, number>> = {},
  ): DoWithout =>
  (item, component) =>
    1 - wantsPart({ parts }, item, component, more[component]) * (1 - share)
