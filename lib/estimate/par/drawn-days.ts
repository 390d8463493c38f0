/** Days as they may come: each a list of whole builds, drawn of what past days teach. */
import type { DaySize } from '#lib/estimate/par/day-size.ts'
import { type DayTaste, type OnSale, rateOf, tastesOf } from '#lib/estimate/par/day-taste.ts'
import { type Draws, drawsFrom } from '#lib/estimate/par/draws.ts'
import { type DrawnDay, type Laying, laying } from '#lib/estimate/par/laid-day.ts'
import type { MenuMix } from '#lib/estimate/par/menu-mix.ts'
import { TOGETHER } from '#lib/estimate/par/wanted-builds.ts'

/** Builds of a day that are drawn one by one. */
const MOST_BUILDS = 100
const SEED = 20_261_129

/** Place of one of several shares, which are 1 together. */
const oneOf = (shares: readonly { readonly share: number }[], at: number): number => {
  let rest = at
  for (let index = 0; index < shares.length; index += 1) {
    rest -= shares[index]?.share ?? 0
    if (rest <= 0) return index
  }
  return shares.length - 1
}

const layBuild = (row: Laying, taste: DayTaste, draws: Draws): void => {
  const item = oneOf(taste, draws.uniform())
  const { parts = [], bases = [] } = taste[item] ?? {}
  for (const { place, share, more } of parts)
    if (share >= 1 || draws.uniform() < share) row.add(place, draws.uniform() < more ? 2 : 1)
  if (bases.length > 0) {
    const chosen = oneOf(bases, draws.uniform())
    row.addBase(bases[chosen]?.place ?? 0)
    for (const [index, { place }] of bases.entries()) if (index !== chosen) row.addBase(place)
  }
  row.end(item)
}

/** So many days as they may come, the same each time. Cost grows with days times builds. */
export const drawnDays = (
  station: OnSale,
  size: DaySize,
  mix: MenuMix,
  days: number,
): readonly DrawnDay[] => {
  const draws = drawsFrom(SEED)
  const tasteOf = tastesOf(station, mix)
  const row = laying(station.components.length)
  return Array.from({ length: days }, (_, index): DrawnDay => {
    const rate = station.items.length === 0 ? 0 : rateOf(size, index, draws)
    const strayed = rate + Math.sqrt(TOGETHER * rate) * draws.normal()
    const count = Math.max(0, Math.round(strayed))
    const each = Math.max(1, count / MOST_BUILDS)
    const taste = tasteOf(draws)
    for (let build = Math.round(count / each); build > 0; build -= 1) layBuild(row, taste, draws)
    return row.day(each)
  })
}
