/**
 * How many portions of each component days want, as it is said of a day ahead: of many days' rates and
 * tastes, each with the chances of its own count, and not of single builds. What the loads are weighed
 * over is drawn apart from it, since loads that come out well over some days fit their accidents.
 */
import type { DaySize } from '#lib/estimate/par/day-size.ts'
import {
  type DayTaste,
  normalAt,
  type OnSale,
  rateOf,
  tastesOf,
} from '#lib/estimate/par/day-taste.ts'
import { drawsFrom } from '#lib/estimate/par/draws.ts'
import type { MenuMix } from '#lib/estimate/par/menu-mix.ts'
import { TOGETHER } from '#lib/estimate/par/wanted-builds.ts'

interface SaidDays {
  /** By place of the component: portions wanted on average. */
  readonly means: readonly number[]
  /** By place: portions of days that are equally likely, the fewest first. */
  readonly sorted: readonly Float64Array[]
}

const SEED = 11_292_026
const DAYS = 320
/** Of one day's count: the middles of so many equally likely parts. */
const PARTS = 6
const SCORES = Array.from({ length: PARTS }, (_, part) => normalAt((part + 0.5) / PARTS))

interface PerBuild {
  /** Portions of a build on average, and of their squares, by place. */
  readonly mean: Float64Array
  readonly square: Float64Array
}

const perBuild = (taste: DayTaste, components: number): PerBuild => {
  const [mean, square] = [new Float64Array(components), new Float64Array(components)]
  const add = (place: number, share: number, more: number) => {
    mean[place] = (mean[place] ?? 0) + share * (1 + more)
    square[place] = (square[place] ?? 0) + share * (1 + 3 * more)
  }
  for (const { share: own, parts, bases } of taste) {
    for (const { place, share, more } of parts) add(place, own * share, more)
    for (const { place, share } of bases) add(place, own * share, 0)
  }
  return { mean, square }
}

/**
 * The portions under which a count of this mean and variance lies, at a standard normal score: a gamma
 * by its cube root (E. B. Wilson and M. M. Hilferty, "The distribution of chi-square", 1931; from memory).
 */
const portionsAt = (mean: number, variance: number, score: number): number => {
  const ninth = variance / (9 * mean * mean)
  return mean * Math.max(0, 1 - ninth + score * Math.sqrt(ninth)) ** 3
}

export const saidDays = (station: OnSale, size: DaySize, mix: MenuMix): SaidDays => {
  const draws = drawsFrom(SEED)
  const tasteOf = tastesOf(station, mix)
  const components = station.components.length
  const sums = new Float64Array(components)
  const sorted = station.components.map(() => new Float64Array(DAYS * PARTS))
  for (let day = 0; day < DAYS && station.items.length > 0; day += 1) {
    const rate = rateOf(size, day, draws)
    const { mean, square } = perBuild(tasteOf(draws), components)
    for (let place = 0; place < components; place += 1) {
      const each = mean[place] ?? 0
      if (each <= 0) continue
      const variance = rate * ((square[place] ?? 0) + (TOGETHER - 1) * each * each)
      sums[place] = (sums[place] ?? 0) + rate * each
      const own = sorted[place]
      if (!own) continue
      for (let part = 0; part < PARTS; part += 1)
        own[day * PARTS + part] = portionsAt(rate * each, variance, SCORES[part] ?? 0)
    }
  }
  return { means: Array.from(sums, (sum) => sum / DAYS), sorted: sorted.map((own) => own.sort()) }
}
