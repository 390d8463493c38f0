/** What to do about a component that won't last and can't be made again: for which orders to keep it. */

import { countChances, type Spread } from '#lib/estimate/count-chances.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface KeepPlan {
  /** Items that can't be sold without it. */
  readonly forItems: readonly string[]
  /** Items that are sold without it when it is gone. */
  readonly withoutIt: readonly string[]
  /**
   * Portions to keep for the former: what they want with a chance of 90 percent, at most what is left.
   * 0 where no other order takes any: then nothing needs keeping, it is sold until it is gone.
   */
  readonly keep: number
  /** Portions that can still go to other orders, extra portions among them. */
  readonly free: number
}

const SURE = 0.9

/** Smallest count that is enough with a chance, up to `most`. */
const enoughFor = (count: Spread, chance: number, most: number): number => {
  const chances = countChances(count, most)
  let sum = 0
  for (let k = 0; k <= most; k += 1) {
    sum += chances[k] ?? 0
    if (sum >= chance) return k
  }
  return most
}

/** `builds` are the builds to come by item, until close; `left` whole portions, tickets apart. */
export const keepPlan = (
  station: StationDocument,
  component: string,
  left: number,
  builds: Readonly<Record<string, Spread>>,
): KeepPlan => {
  const there = Math.max(0, Math.floor(left))
  const forItems: string[] = []
  const withoutIt: string[] = []
  for (const { id, heart, parts, base } of station.items) {
    const part = parts.find((one) => one.component === component)
    const isOnlyBase = base?.choices.length === 1 && base.choices[0] === component
    if (heart === component || part?.required || isOnlyBase) forItems.push(id)
    else if (part || base?.choices.includes(component)) withoutIt.push(id)
  }
  if (forItems.length === 0 || withoutIt.length === 0)
    return { forItems, withoutIt, keep: 0, free: there }
  let mean = 0
  let variance = 0
  for (const id of forItems) {
    mean += builds[id]?.mean ?? 0
    variance += builds[id]?.variance ?? 0
  }
  const keep = enoughFor({ mean, variance: Math.max(mean, variance) }, SURE, there)
  return { forItems, withoutIt, keep, free: there - keep }
}
