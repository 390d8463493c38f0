/**
 * How many builds a past day wanted in all. After an item ran out, what was sold beside it says how
 * many more would have wanted it, by its weight; taps of "wanted it, gone" are known to be among them.
 * It isn't taken that those who found it gone took something else instead.
 */
import { countChances } from '#lib/estimate/count-chances.ts'
import type { ItemWeights } from '#lib/estimate/par/item-weights.ts'
import {
  isNeeded,
  type PastDay,
  ranOut,
  soldIn,
  stretchesOf,
  tappedOfItem,
  tappedOfPart,
} from '#lib/estimate/par/past-day.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface WantedBuilds {
  readonly builds: number
  /** Variance of those that nobody saw. */
  readonly unsure: number
  /** Nothing was left to be sold beside: nobody knows how many more. */
  readonly atLeast: boolean
}

/** Variance of a count by its mean: guests come in groups. */
export const TOGETHER = 1.4

/**
 * Builds that nobody sold, where so many are likely and so many were tapped. One who finds something
 * gone taps it with a chance of which nothing is known, so that so many taps of n are 1 in n + 1.
 */
const unsold = (mean: number, variance: number, tapped: number) => {
  const least = Math.ceil(tapped)
  const most = Math.ceil(Math.max(least, mean) + 6 * Math.sqrt(variance) + 6)
  const chances = countChances({ mean, variance }, most)
  let [whole, sum, square] = [0, 0, 0]
  for (let count = least; count <= most; count += 1) {
    const weight = (chances[count] ?? 0) / (count + 1)
    whole += weight
    sum += weight * count
    square += weight * count * count
  }
  if (whole <= 0) return { mean: tapped, variance: tapped }
  return { mean: sum / whole, variance: Math.max(0, square / whole - (sum / whole) ** 2) }
}

export const wantedBuilds = (
  station: Pick<StationDocument, 'items'>,
  day: PastDay,
  { weights, steady }: ItemWeights,
): WantedBuilds => {
  const onSale = station.items.filter(({ id }) => (day.items[id] ?? 0) > 0)
  const gone = onSale.filter((item) => ranOut(item, day.soldOut))
  const lost = day.soldOut
    .filter((id) => !station.items.some((item) => isNeeded(item, id)))
    .reduce((sum, id) => sum + tappedOfPart(day, id), 0)
  const sold = soldIn(day) + lost
  const tapped = gone.reduce((sum, item) => sum + tappedOfItem(station, item, day), 0)
  if (gone.length === onSale.length)
    return { builds: sold + tapped, unsure: 0, atLeast: onSale.length > 0 }
  if (gone.length === 0) return { builds: sold, unsure: 0, atLeast: false }
  const weightOf = (ids: readonly string[]) => ids.reduce((sum, id) => sum + (weights[id] ?? 0), 0)
  const whole = weightOf(onSale.map(({ id }) => id))
  let mean = 0
  for (const { had, sold: part } of stretchesOf(station, day)) {
    const left = weightOf(had)
    mean += (soldIn({ items: part }) * (whole - left)) / left
  }
  const share = weightOf(gone.map(({ id }) => id)) / whole
  const variance = (TOGETHER * mean) / (1 - share) + mean ** 2 / (share * steady)
  const more = unsold(mean, variance, tapped)
  return { builds: sold + more.mean, unsure: more.variance, atLeast: false }
}
