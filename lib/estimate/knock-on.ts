/**
 * What running out of one component does to the others: where an item's heart is gone its guests
 * leave or take another item, and where a base is gone they take another base.
 */

import type { Horizon } from '#lib/estimate/arrivals.ts'
import type { Spread } from '#lib/estimate/count-chances.ts'
import type { ComponentDemand } from '#lib/estimate/demand.ts'
import { type ServiceCounts, total } from '#lib/estimate/service-counts.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Of guests whose heart is gone so many take another item. Common practice, no source. */
const TAKE_ANOTHER = 0.5
const LEAST_CHANGE = 0.03
/** How often a part is taken by builds of an item, by how the item usually has it. */
const USUALLY = 0.8
const SELDOM = 0.15
/** Builds that each item is taken to have had where none was counted yet. */
const FIRST_BUILDS = 2

/**
 * By component that is wanted, and by component (or set of bases) that is gone: how many times as many
 * takings. Changes of less than 3 percent are left out.
 */
export type KnockOn = Readonly<Record<string, Readonly<Record<string, number>>>>

/** Shares of the items among the builds of past services and this one; they sum to 1. */
export const itemShares = (
  station: StationDocument,
  counts: readonly Pick<ServiceCounts, 'items'>[],
): Readonly<Record<string, number>> => {
  const sums = station.items.map(
    ({ id }) =>
      FIRST_BUILDS + counts.reduce((sum, { items }) => sum + Math.max(0, total(items[id])), 0),
  )
  const all = total(sums)
  return Object.fromEntries(station.items.map(({ id }, index) => [id, (sums[index] ?? 0) / all]))
}

/** Sets of two bases or more among which an item's guests choose: gone together, the item is gone. */
export const baseGroups = (station: StationDocument): readonly (readonly string[])[] => {
  const byKey = new Map<string, readonly string[]>()
  for (const { base } of station.items)
    if (base && base.choices.length > 1) byKey.set(groupKey(base.choices), base.choices)
  return [...byKey.values()]
}

/** Under which key a set of bases is gone together. */
export const groupKey = (bases: readonly string[]): string => [...bases].sort().join('+')

/** What changes when a component, or a set of bases together, is gone. */
export const knockOnOf = (
  station: StationDocument,
  shares: Readonly<Record<string, number>>,
): KnockOn => {
  const shareOf = (item: string): number => shares[item] ?? 0
  const rate = (item: StationDocument['items'][number], component: string): number => {
    if (item.base?.choices.includes(component)) return 1 / item.base.choices.length
    const part = item.parts.find((one) => one.component === component)
    if (!part) return 0
    return part.required || item.heart === component ? 1 : part.usual === 'no' ? SELDOM : USUALLY
  }
  /** Takings of each component without what is gone, against those with it. */
  const factorsWithout = (gone: readonly string[]): Readonly<Record<string, number>> => {
    const isGone = (id: string): boolean => gone.includes(id)
    const lost = station.items.filter(
      (item) =>
        isGone(item.heart) ||
        item.parts.some((part) => part.required && isGone(part.component)) ||
        item.base?.choices.every(isGone),
    )
    const others = station.items.filter((item) => !lost.includes(item))
    const lostShare = lost.reduce((sum, item) => sum + shareOf(item.id), 0)
    const more = others.length > 0 ? 1 + (TAKE_ANOTHER * lostShare) / (1 - lostShare) : 0
    const factors: Record<string, number> = {}
    for (const { id } of station.components) {
      if (isGone(id)) continue
      const usual = station.items.reduce((sum, item) => sum + shareOf(item.id) * rate(item, id), 0)
      if (usual <= 0) continue
      let then = 0
      for (const item of others) {
        const left = item.base?.choices.filter((choice) => !isGone(choice)) ?? []
        then += more * shareOf(item.id) * (left.includes(id) ? 1 / left.length : rate(item, id))
      }
      if (Math.abs(then / usual - 1) > LEAST_CHANGE) factors[id] = then / usual
    }
    return factors
  }
  const hearts = station.items.flatMap((item) => [
    item.heart,
    ...item.parts.filter((part) => part.required).map((part) => part.component),
  ])
  const bases = station.items.flatMap((item) => item.base?.choices ?? [])
  const gone: readonly (readonly [string, readonly string[]])[] = [
    ...[...new Set([...hearts, ...bases])].map((id) => [id, [id]] as const),
    ...baseGroups(station).map((group) => [groupKey(group), group] as const),
  ]
  const byWanted: Record<string, Record<string, number>> = {}
  for (const [key, ids] of gone)
    for (const [wanted, factor] of Object.entries(factorsWithout(ids)))
      byWanted[wanted] = { ...byWanted[wanted], [key]: factor }
  return byWanted
}

/** Chance that a component has run out by the end of each horizon. */
export type GoneBy = Readonly<Record<string, readonly number[]>>

/** The demand for a component when others may run out before it. */
export const withKnockOn = (
  demand: ComponentDemand,
  component: string,
  knockOn: KnockOn,
  goneBy: GoneBy,
  horizons: readonly Horizon[],
): ComponentDemand => {
  const parts = Object.entries(knockOn[component] ?? {}).flatMap(([other, factor]) => {
    const gone = goneBy[other]
    return gone !== undefined && (gone.at(-1) ?? 0) > 0.02 ? [{ factor, gone }] : []
  })
  if (parts.length === 0) return demand
  const scaled: Spread[] = [{ mean: 0, variance: 0 }]
  let before = 0
  let now = 0
  for (let index = 1; index < horizons.length; index += 1) {
    const { mean, variance } = demand.until(horizons[index]?.until ?? 0)
    let factor = 1
    for (const { factor: other, gone } of parts)
      factor *= 1 + (other - 1) * (((gone[index - 1] ?? 0) + (gone[index] ?? 0)) / 2)
    now += Math.max(0, mean - before) * factor
    before = mean
    const ratio = mean > 0 ? now / mean : 1
    scaled.push({
      mean: now,
      // The busier it is, the sooner the others are gone: what is to come strays less, not more.
      variance: now + Math.max(0, variance - mean) * ratio ** 3,
    })
  }
  return {
    perTaking: demand.perTaking,
    until: (minute) => {
      for (let index = 1; index < horizons.length; index += 1) {
        const [from, to] = [horizons[index - 1], horizons[index]]
        const [low, high] = [scaled[index - 1], scaled[index]]
        if (!from || !to || !low || !high || minute > to.until) continue
        const span = to.until - from.until
        const share = span > 0 ? Math.max(0, minute - from.until) / span : 1
        return {
          mean: low.mean + share * (high.mean - low.mean),
          variance: low.variance + share * (high.variance - low.variance),
        }
      }
      return scaled.at(-1) ?? { mean: 0, variance: 0 }
    },
  }
}
