/** Days as they may come: each a list of whole builds, drawn of what past days teach. */
import { normalUpTo } from '#lib/estimate/count-chances.ts'
import type { DaySize } from '#lib/estimate/par/day-size.ts'
import { type Draws, drawsFrom, evenly } from '#lib/estimate/par/draws.ts'
import { baseShares, firstOdds, type MenuMix, shareAt } from '#lib/estimate/par/menu-mix.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** One build of a day, or several that are alike. */
export interface DrawnBuild {
  /** Place of its item in the menu. */
  readonly item: number
  /** Places of the components that it has, with the portions of each; its base is apart. */
  readonly components: readonly number[]
  readonly portions: readonly number[]
  /** Places of its bases, the one it wants first; none where its item has no base. */
  readonly bases: readonly number[]
}

export interface DrawnDay {
  readonly builds: readonly DrawnBuild[]
  /** How many builds one of them is: more than one on days beyond `MOST_BUILDS`. */
  readonly each: number
  /** Portions that it wants of each component, by place. */
  readonly wanted: readonly number[]
}

/** Builds of a day that are drawn one by one. */
const MOST_BUILDS = 100
/** Variance of a count by its mean: guests come in groups. */
const TOGETHER = 1.4
const SEED = 20_261_129

/** The value under which a standard normal lies with a chance. */
const normalAt = (chance: number): number => {
  let [low, high] = [-6, 6]
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2
    if (normalUpTo(middle) < chance) low = middle
    else high = middle
  }
  return (low + high) / 2
}

const oneOf = (shares: readonly number[], at: number): number => {
  let rest = at * shares.reduce((sum, one) => sum + one, 0)
  for (const [index, share] of shares.entries()) {
    rest -= share
    if (rest <= 0) return index
  }
  return shares.length - 1
}

/** How many builds a day has, the whole row of days being spread as `size` says. */
const countOf = ({ cases }: DaySize, index: number, draws: Draws): number => {
  const chosen =
    cases[
      oneOf(
        cases.map(({ weight }) => weight),
        draws.uniform(),
      )
    ]
  if (!chosen) return 0
  const rate = Math.exp(chosen.mean + chosen.sd * normalAt(evenly(index)))
  return Math.max(0, Math.round(rate + Math.sqrt(TOGETHER * rate) * draws.normal()))
}

interface PartOf {
  readonly place: number
  readonly share: number
  readonly more: number
}

/** What a day's guests like: parts and bases of each item that is on sale. */
interface DayTaste {
  readonly weights: readonly number[]
  readonly parts: readonly (readonly PartOf[])[]
  readonly bases: readonly (readonly number[])[]
}

type Menu = Pick<StationDocument, 'items' | 'components'>

const tasteOf = (
  { items, components }: Menu,
  mix: MenuMix,
  places: ReadonlyMap<string, number>,
  draws: Draws,
): DayTaste => {
  const whole = items.reduce((sum, { id }) => sum + (mix.weights[id] ?? 1), 0)
  const moods = new Map(
    components.map(({ id }) => {
      const { odds, sd } = mix.parts[id] ?? { odds: 0, sd: 0 }
      return [id, odds + sd * draws.normal()]
    }),
  )
  const leaning = new Map(
    Object.entries(mix.bases).map(([id, { odds, sd }]) => [id, odds + sd * draws.normal()]),
  )
  return {
    weights: items.map(({ id }) =>
      draws.gamma(Math.max(0.05, (mix.steady * (mix.weights[id] ?? 1)) / whole)),
    ),
    parts: items.map((item) =>
      item.parts.flatMap(({ component }): PartOf[] => {
        const place = places.get(component)
        if (place === undefined) return []
        const first = firstOdds(item, component)
        const share = first === null ? 1 : shareAt(first + (moods.get(component) ?? 0))
        return [{ place, share, more: (mix.each[component] ?? 1) - 1 }]
      }),
    ),
    bases: items.map((item) => baseShares(item, (choice) => leaning.get(choice) ?? 0)),
  }
}

/**
 * So many days as they may come, the same each time. Of `station` only what is on sale; components
 * have their places in it. Cost grows with days times builds.
 */
export const drawnDays = (
  station: Menu,
  size: DaySize,
  mix: MenuMix,
  days: number,
): readonly DrawnDay[] => {
  const places = new Map(station.components.map(({ id }, index) => [id, index]))
  const draws = drawsFrom(SEED)
  return Array.from({ length: days }, (_, index): DrawnDay => {
    const count = station.items.length === 0 ? 0 : countOf(size, index, draws)
    const each = Math.max(1, count / MOST_BUILDS)
    const taste = tasteOf(station, mix, places, draws)
    const wanted: number[] = station.components.map(() => 0)
    const want = (place: number, portions: number) => {
      wanted[place] = (wanted[place] ?? 0) + portions * each
    }
    const builds = Array.from({ length: Math.round(count / each) }, (): DrawnBuild => {
      const item = oneOf(taste.weights, draws.uniform())
      const components: number[] = []
      const portions: number[] = []
      for (const { place, share, more } of taste.parts[item] ?? []) {
        if (share < 1 && draws.uniform() >= share) continue
        const amount = draws.uniform() < more ? 2 : 1
        components.push(place)
        portions.push(amount)
        want(place, amount)
      }
      const choices = station.items[item]?.base?.choices ?? []
      const chosen = choices.length > 0 ? oneOf(taste.bases[item] ?? [], draws.uniform()) : -1
      const bases = [chosen, ...choices.keys()].flatMap((one, at) =>
        one < 0 || (at > 0 && one === chosen) ? [] : (places.get(choices[one] ?? '') ?? []),
      )
      if (bases[0] !== undefined) want(bases[0], 1)
      return { item, components, portions, bases }
    })
    return { builds, each, wanted }
  })
}
