/**
 * How many builds each past day wanted in all. After something ran out, what was sold beside it says
 * how many more would have wanted it: by how items and parts are usually liked, and by how they were
 * liked that day until then, since what is liked more than usual is what runs out. It isn't taken that
 * those who found an item gone took another instead.
 */
import type { Spread } from '#lib/estimate/count-chances.ts'
import { doWithoutAt, wantsPart } from '#lib/estimate/par/going-without.ts'
import { firstOdds, type MenuMix } from '#lib/estimate/par/menu-mix.ts'
import {
  isNeeded,
  type PastDay,
  ranOut,
  type Stretch,
  soldIn,
  stretchesOf,
  tappedOfItem,
} from '#lib/estimate/par/past-day.ts'
import { plausiblyLost } from '#lib/estimate/par/plausible-days.ts'
import { lostGuests } from '#lib/estimate/par/tapped.ts'
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
/** What was lost and how items were liked that day are fitted to each other to so many builds, or so often. */
const CLOSE = 0.01
const ROUNDS = 60
/** Log odds by which a day's taste of a part may be told to stray. */
const MOST_STRAY = 1.5

type Menu = Pick<StationDocument, 'items'>

const sumOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0)

/** How a day's taste of a part strayed, as log odds, as far as was seen until it was gone. */
const strayed = ({ items }: Menu, day: PastDay, { parts }: MenuMix, component: string) => {
  const { sd } = parts[component] ?? { sd: 0 }
  const until = day.until[component]
  if (!until || sd <= 0) return { more: 0, variance: sd ** 2 }
  let [took, mean, told] = [until.takings[component] ?? 0, 0, 0]
  for (const item of items) {
    const sold = until.items[item.id] ?? 0
    if (isNeeded(item, component)) took -= sold
    if (firstOdds(item, component) === null) continue
    const share = wantsPart({ parts }, item, component)
    mean += sold * share
    told += sold * share * (1 - share)
  }
  const sure = told + 1 / sd ** 2
  const more = Math.min(MOST_STRAY, Math.max(-MOST_STRAY, (took - mean) / sure))
  return { more, variance: 1 / sure }
}

const NOTHING: Spread = { mean: 0, variance: 0 }

/** A stretch by place of the item: what was served of each, what sold. */
interface Row {
  readonly serves: readonly number[]
  readonly all: number
}

/** By place of the item: what was lost in a stretch of it, at how the items were liked. */
const lostIn = ({ serves, all }: Row, weights: readonly number[]): readonly number[] => {
  let left = 0
  for (const [place, share] of serves.entries()) left += share * (weights[place] ?? 0)
  return serves.map((share, place) => (all * (1 - share) * (weights[place] ?? 0)) / left)
}

/** How items were liked that day, as builds: those counted, and those that must have been lost. */
const likedWith = (counted: readonly number[], rows: readonly Row[]): readonly number[] => {
  let weights = counted
  for (let round = 0; round < ROUNDS; round += 1) {
    const next = [...counted]
    for (const row of rows)
      for (const [place, lost] of lostIn(row, weights).entries())
        next[place] = (next[place] ?? 0) + lost
    const off = Math.max(...next.map((one, place) => Math.abs(one - (weights[place] ?? 0))))
    weights = next
    if (off < CLOSE) break
  }
  return weights
}

const rowOf = (ids: readonly string[], { serves, sold }: Stretch): Row => ({
  serves: ids.map((id) => serves[id] ?? 0),
  all: soldIn({ items: sold }),
})

/** Builds that a day lost, as far as what was sold beside tells. */
const unsold = (station: Menu, day: PastDay, mix: MenuMix): Spread => {
  if (day.soldOut.length === 0) return NOTHING
  const gone = day.soldOut.map((component) => ({
    component,
    ...strayed(station, day, mix, component),
  }))
  const stray = Object.fromEntries(gone.map(({ component, more }) => [component, more]))
  const stretches = stretchesOf(station, day, doWithoutAt(mix.parts, mix.without, stray))
  const ids = Object.keys(stretches[0]?.serves ?? {})
  const usual = sumOf(ids.map((id) => mix.weights[id] ?? 0))
  const counted = ids.map(
    (id) =>
      (mix.steady * (mix.weights[id] ?? 0)) / usual +
      sumOf(stretches.map(({ sold }) => sold[id] ?? 0)),
  )
  const rows = stretches
    .map((stretch) => rowOf(ids, stretch))
    .filter(({ serves }) => serves.some((share) => share < 1))
  const weights = likedWith(counted, rows)
  let [mean, variance, ofParts, beside] = [0, 0, 0, 0]
  for (const row of rows) {
    const own = lostIn(row, weights)
    const lost = sumOf(own)
    mean += lost
    beside += row.all
    variance += TOGETHER * lost * (1 + lost / row.all)
    ofParts += sumOf(own.filter((_, place) => (row.serves[place] ?? 0) > 0))
  }
  if (mean <= 0) return NOTHING
  const share = mean / (mean + beside)
  const ofTaste = mean ** 2 / (share * (1 - share) * sumOf(counted))
  const ofPart = ofParts ** 2 * Math.max(...gone.map((one) => one.variance))
  return { mean, variance: variance + ofTaste + ofPart }
}

/** Taps of a day: those of what was there again at its end are known to be lost, whatever else. */
const tapsOf = (station: Menu, day: PastDay) => {
  const onSale = station.items.filter(({ id }) => (day.items[id] ?? 0) > 0)
  const gone = onSale.filter((item) => ranOut(item, day.soldOut))
  const told = Object.entries(day.taps)
  const of = (isGone: boolean) =>
    sumOf(told.flatMap(([id, taps]) => (day.soldOut.includes(id) === isGone ? [taps] : [])))
  if (told.length > 0) return { taps: of(true), again: of(false) }
  return { taps: sumOf(gone.map((item) => tappedOfItem(station, item, day))), again: 0 }
}

const allRanOut = (station: Menu, day: PastDay): boolean => {
  const onSale = station.items.filter(({ id }) => (day.items[id] ?? 0) > 0)
  return onSale.length > 0 && onSale.every((item) => ranOut(item, day.soldOut))
}

export const wantedBuilds = (
  station: Menu,
  past: readonly PastDay[],
  mix: MenuMix,
): readonly WantedBuilds[] => {
  const days = past.map((day) => tapsOf(station, day))
  const beside = plausiblyLost(
    past.map((day, index) => ({
      expected: day.expected,
      seen: soldIn(day) + (days[index]?.again ?? 0),
      lost: unsold(station, day, mix),
      atLeast: allRanOut(station, day),
    })),
  )
  const lost = lostGuests(
    beside.map((spread, index) => ({ ...spread, taps: days[index]?.taps ?? 0 })),
  )
  return past.map((day, index): WantedBuilds => {
    const atLeast = allRanOut(station, day)
    const { mean, variance } = lost[index] ?? { mean: 0, variance: 0 }
    return { builds: soldIn(day) + (days[index]?.again ?? 0) + mean, unsure: variance, atLeast }
  })
}
