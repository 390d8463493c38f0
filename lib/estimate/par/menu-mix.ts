/** What a build is: its item, how often each part is in it, which base, and how far all that strays. */
import { type ItemWeights, itemWeights } from '#lib/estimate/par/item-weights.ts'
import type { PastDay } from '#lib/estimate/par/past-day.ts'
import type { Item, StationDocument } from '#lib/station/station-document.ts'

/** Log odds beside those by how items usually have it, and how far a single day strays from them. */
export interface Straying {
  readonly odds: number
  readonly sd: number
}

export interface MenuMix extends ItemWeights {
  readonly parts: Readonly<Record<string, Straying>>
  /** Of a base: as a log weight against the others. */
  readonly bases: Readonly<Record<string, Straying>>
  /** Mean portions of one taking, 1 or more. */
  readonly each: Readonly<Record<string, number>>
}

/** How often a build takes a part, by how its item usually has it. Common practice, no source. */
const FIRST_IN = 0.8
const FIRST_NOT = 0.15
/** A usual base against another. Common practice, no source. */
const USUAL_BASE = 2
/** What is taken from the start: of odds their precision, of a day's straying as so many days. */
const PULL = 4
const FIRST_DAYS = 4
const FIRST_SD = 0.3
const LEAST_VARIANCE = 0.005
const FIRST_TAKINGS = 8
/** Builds of which a day's takings were told apart under this say nothing of how far it strays. */
const LEAST_TOLD = 1
/** A day that ran out is taken to have wanted what the others say, found again so often. */
const ROUNDS = 3

const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0)

const logit = (share: number): number => Math.log(share / (1 - share))

/** A share, 0 to 1, of its log odds. */
export const shareAt = (odds: number): number => 1 / (1 + Math.exp(-odds))

/** Log odds that a build has a part, if nothing were known; null where each has it, or none. */
export const firstOdds = (item: Item, component: string): number | null => {
  const part = item.parts.find((one) => one.component === component)
  if (!part || part.required || item.heart === component) return null
  return logit(part.usual === 'no' ? FIRST_NOT : FIRST_IN)
}

/** How often each base of an item is taken, at log weights beside how the item has them. */
export const baseShares = (
  { base }: Pick<Item, 'base'>,
  odds: (choice: string) => number,
): readonly number[] => {
  if (!base) return []
  const weights = base.choices.map(
    (choice) => (choice === base.usual ? USUAL_BASE : 1) * Math.exp(odds(choice)),
  )
  const all = sumOf(weights)
  return weights.map((one) => one / all)
}

/** One day: takings of a component beside those that are in each build, and what odds would say. */
interface Took {
  readonly took: number
  readonly atLeast: boolean
  readonly at: (odds: number) => { readonly mean: number; readonly variance: number }
}

const LIMIT = 6

const oddsThat = (total: number, says: (odds: number) => number): number => {
  let [low, high] = [-LIMIT, LIMIT]
  for (let step = 0; step < 20; step += 1) {
    const middle = (low + high) / 2
    if (says(middle) < total) low = middle
    else high = middle
  }
  return (low + high) / 2
}

const strayingOf = (days: readonly Took[]): Straying => {
  let odds = 0
  let likely: readonly number[] = days.map(({ took }) => took)
  for (let round = 0; round < ROUNDS; round += 1) {
    odds = oddsThat(sumOf(likely), (one) => sumOf(days.map(({ at }) => at(one).mean)) + PULL * one)
    const now = odds
    likely = days.map(({ took, atLeast, at }) => (atLeast ? Math.max(took, at(now).mean) : took))
  }
  let sum = FIRST_DAYS * FIRST_SD ** 2
  let count = FIRST_DAYS
  for (const { took, atLeast, at } of days) {
    const { mean, variance } = at(odds)
    if (atLeast || variance < LEAST_TOLD) continue
    sum += ((took - mean) ** 2 - variance) / variance ** 2
    count += 1
  }
  return { odds, sd: Math.sqrt(Math.max(LEAST_VARIANCE, sum / count)) }
}

/** Of independent builds that each have it by a chance. */
const counted = (
  builds: readonly { readonly count: number; readonly share: number }[],
): { mean: number; variance: number } => ({
  mean: sumOf(builds.map(({ count, share }) => count * share)),
  variance: sumOf(builds.map(({ count, share }) => count * share * (1 - share))),
})

const sold = (day: PastDay, { id }: Pick<Item, 'id'>): number => Math.max(0, day.items[id] ?? 0)

type Menu = Pick<StationDocument, 'items' | 'components'>

const partOf = ({ items }: Menu, past: readonly PastDay[], component: string): Straying => {
  const optional = items.flatMap((item) => {
    const first = firstOdds(item, component)
    return first === null ? [] : [{ item, first }]
  })
  const always = items.filter(
    (item) =>
      item.heart === component ||
      item.parts.some((part) => part.component === component && part.required),
  )
  if (optional.length === 0) return { odds: 0, sd: 0 }
  return strayingOf(
    past.map((day) => ({
      took: (day.takings[component] ?? 0) - sumOf(always.map((item) => sold(day, item))),
      atLeast: day.soldOut.includes(component),
      at: (odds) =>
        counted(
          optional.map(({ item, first }) => ({
            count: sold(day, item),
            share: shareAt(first + odds),
          })),
        ),
    })),
  )
}

const baseOf = ({ items }: Menu, past: readonly PastDay[], component: string): Straying => {
  const own = items.filter(
    ({ base }) => base?.choices.includes(component) && base.choices.length > 1,
  )
  const others = new Set(own.flatMap(({ base }) => base?.choices ?? []))
  others.delete(component)
  if (own.length === 0) return { odds: 0, sd: 0 }
  const { odds, sd } = strayingOf(
    past
      // Where another base ran out its guests took this one.
      .filter(({ soldOut }) => !soldOut.some((id) => others.has(id)))
      .map((day) => ({
        took: day.takings[component] ?? 0,
        atLeast: day.soldOut.includes(component),
        at: (odds) =>
          counted(
            own.map((item) => {
              const shares = baseShares(item, (one) => (one === component ? odds : 0))
              const share = shares[item.base?.choices.indexOf(component) ?? 0] ?? 0
              return { count: sold(day, item), share }
            }),
          ),
      })),
  )
  // Two bases are told against each other, so each carries half of what sets them apart.
  return { odds: odds / 2, sd: sd / Math.SQRT2 }
}

/** What past days teach of the builds; `builds`: how many each is taken to have wanted in all. */
export const menuMix = (
  station: Menu,
  past: readonly PastDay[],
  builds: readonly number[],
): MenuMix => {
  const { items, components } = station
  const isBase = ({ id }: { readonly id: string }) =>
    items.some(({ base }) => base?.choices.includes(id))
  return {
    ...itemWeights(station, past, builds),
    parts: Object.fromEntries(components.map(({ id }) => [id, partOf(station, past, id)])),
    bases: Object.fromEntries(
      components.filter(isBase).map(({ id }) => [id, baseOf(station, past, id)]),
    ),
    each: Object.fromEntries(
      components.map(({ id }) => {
        const takings = sumOf(past.map((day) => Math.max(0, day.takings[id] ?? 0)))
        const portions = sumOf(past.map((day) => Math.max(0, day.portions[id] ?? 0)))
        return [id, Math.max(1, (portions + FIRST_TAKINGS) / (takings + FIRST_TAKINGS))]
      }),
    ),
  }
}
