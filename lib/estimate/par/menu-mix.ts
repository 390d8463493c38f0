/** What a build is: its item, how often each part is in it, which base, and how far all that strays. */
import type { ItemWeights } from '#lib/estimate/par/item-weights.ts'
import { isNeeded, type PastDay, type Sold, soldIn } from '#lib/estimate/par/past-day.ts'
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
  /** Of those who find a part gone so many take the item without it, 0 to 1. */
  readonly without: number
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

/** How a base weighs against the others of an item, if nothing were known. */
export const usualBase = ({ base }: Pick<Item, 'base'>, choice: string): number =>
  choice === base?.usual ? USUAL_BASE : 1

/** How often each base of an item is taken, at log weights beside how the item has them. */
const baseShares = (
  item: Pick<Item, 'base'>,
  odds: (choice: string) => number,
): readonly number[] => {
  const weights = (item.base?.choices ?? []).map(
    (choice) => usualBase(item, choice) * Math.exp(odds(choice)),
  )
  const all = sumOf(weights)
  return weights.map((one) => one / all)
}

const LIMIT = 6
const HALVINGS = 20

const oddsThat = (total: number, says: (odds: number) => number): number => {
  let [low, high] = [-LIMIT, LIMIT]
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2
    if (says(middle) < total) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** One day, or the part of it in which a component was to be had. */
interface Took {
  /** Builds that took it. */
  readonly took: number
  /** Of how many builds, by item. */
  readonly of: readonly number[]
}

/** `shares`: of the builds of each item, how many take it at some odds. */
const strayingOf = (
  days: readonly Took[],
  shares: readonly ((odds: number) => number)[],
): Straying => {
  const all = shares.map((_, item) => sumOf(days.map((day) => day.of[item] ?? 0)))
  const odds = oddsThat(
    sumOf(days.map(({ took }) => took)),
    (one) => sumOf(shares.map((share, item) => (all[item] ?? 0) * share(one))) + PULL * one,
  )
  const own = shares.map((share) => share(odds))
  let sum = FIRST_DAYS * FIRST_SD ** 2
  let count = FIRST_DAYS
  for (const { took, of } of days) {
    const mean = sumOf(own.map((share, item) => share * (of[item] ?? 0)))
    const variance = sumOf(own.map((share, item) => share * (1 - share) * (of[item] ?? 0)))
    if (variance < LEAST_TOLD) continue
    sum += ((took - mean) ** 2 - variance) / variance ** 2
    count += 1
  }
  return { odds, sd: Math.sqrt(Math.max(LEAST_VARIANCE, sum / count)) }
}

const sold = (part: Sold, { id }: Pick<Item, 'id'>): number => Math.max(0, part.items[id] ?? 0)

type Menu = Pick<StationDocument, 'items' | 'components'>

/** What was sold of a day while some components were all to be had. */
const whileHad = (day: PastDay, components: readonly string[]): Sold => {
  const ends = components.flatMap((component) => day.until[component] ?? [])
  return ends.reduce<Sold>((a, b) => (soldIn(a) <= soldIn(b) ? a : b), day)
}

const partOf = ({ items }: Menu, past: readonly PastDay[], component: string): Straying => {
  const optional = items.flatMap((item) => {
    const first = firstOdds(item, component)
    return first === null ? [] : [{ item, first }]
  })
  const always = items.filter((item) => isNeeded(item, component))
  if (optional.length === 0) return { odds: 0, sd: 0 }
  return strayingOf(
    past.map((day) => {
      const part = whileHad(day, [component])
      return {
        took: (part.takings[component] ?? 0) - sumOf(always.map((item) => sold(part, item))),
        of: optional.map(({ item }) => sold(part, item)),
      }
    }),
    optional.map(
      ({ first }) =>
        (odds) =>
          shareAt(first + odds),
    ),
  )
}

const baseOf = ({ items }: Menu, past: readonly PastDay[], component: string): Straying => {
  const own = items.filter(
    ({ base }) => base?.choices.includes(component) && base.choices.length > 1,
  )
  if (own.length === 0) return { odds: 0, sd: 0 }
  // Once one of them is gone its guests take another.
  const choices = [...new Set(own.flatMap(({ base }) => base?.choices ?? []))]
  const { odds, sd } = strayingOf(
    past.map((day) => {
      const part = whileHad(day, choices)
      return { took: part.takings[component] ?? 0, of: own.map((item) => sold(part, item)) }
    }),
    own.map((item) => (odds) => {
      const shares = baseShares(item, (one) => (one === component ? odds : 0))
      return shares[item.base?.choices.indexOf(component) ?? 0] ?? 0
    }),
  )
  // Two bases are told against each other, so each carries half of what sets them apart.
  return { odds: odds / 2, sd: sd / Math.SQRT2 }
}

/** How parts and bases are taken, as past days teach. */
export const tastes = (
  station: Menu,
  past: readonly PastDay[],
): Omit<MenuMix, keyof ItemWeights | 'without'> => {
  const { items, components } = station
  const isBase = ({ id }: { readonly id: string }) =>
    items.some(({ base }) => base?.choices.includes(id))
  return {
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
