/** What a day may be like: how many come, and what they like, drawn of what past days teach. */
import { normalUpTo } from '#lib/estimate/count-chances.ts'
import type { DaySize } from '#lib/estimate/par/day-size.ts'
import { type Draws, evenly } from '#lib/estimate/par/draws.ts'
import { firstOdds, type MenuMix, shareAt, usualBase } from '#lib/estimate/par/menu-mix.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export type OnSale = Pick<StationDocument, 'items' | 'components'>

/** Of the builds of an item, how many take a component; of those, how many take two portions. */
interface PartTaste {
  readonly place: number
  readonly share: number
  readonly more: number
}

/** One of the bases of an item: of its builds, so many take it. */
interface BaseTaste {
  readonly place: number
  readonly share: number
}

interface ItemTaste {
  /** Of all builds, so many are this item. */
  readonly share: number
  readonly parts: readonly PartTaste[]
  /** As the item has them. */
  readonly bases: readonly BaseTaste[]
}

export type DayTaste = readonly ItemTaste[]

/** The value under which a standard normal lies with a chance. */
export const normalAt = (chance: number): number => {
  let [low, high] = [-6, 6]
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2
    if (normalUpTo(middle) < chance) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Builds that a day wants on average, the whole row of days being spread as its size says. */
export const rateOf = ({ cases }: DaySize, index: number, draws: Draws): number => {
  let rest = draws.uniform()
  const chosen = cases.find(({ weight }) => {
    rest -= weight
    return rest <= 0
  })
  const { mean, sd } = chosen ?? cases.at(-1) ?? { mean: 0, sd: 0 }
  return Math.exp(mean + sd * normalAt(evenly(index)))
}

const LEAST_SHAPE = 0.05

/** A menu, ready to be drawn of. */
export const tastesOf = (
  { items, components }: OnSale,
  mix: MenuMix,
): ((draws: Draws) => DayTaste) => {
  const places = new Map(components.map(({ id }, index) => [id, index]))
  const placed = (id: string) => {
    const place = places.get(id)
    return place === undefined ? [] : [{ id, place }]
  }
  const strays = components.map(({ id }) => mix.parts[id] ?? { odds: 0, sd: 0 })
  const whole = items.reduce((sum, { id }) => sum + (mix.weights[id] ?? 1), 0)
  const shapes = items.map((item) => ({
    shape: Math.max(LEAST_SHAPE, (mix.steady * (mix.weights[item.id] ?? 1)) / whole),
    parts: item.parts.flatMap(({ component }) =>
      placed(component).map(({ id, place }) => ({
        place,
        first: firstOdds(item, id),
        more: (mix.each[id] ?? 1) - 1,
      })),
    ),
    bases: (item.base?.choices ?? []).flatMap((choice) =>
      placed(choice).map(({ id, place }) => ({ place, weight: usualBase(item, id) })),
    ),
  }))
  const leaning = [...new Set(shapes.flatMap(({ bases }) => bases.map(({ place }) => place)))]
  return (draws) => {
    const moods = strays.map(({ odds, sd }) => odds + sd * draws.normal())
    const leans: number[] = []
    for (const place of leaning) {
      const { odds, sd } = mix.bases[components[place]?.id ?? ''] ?? { odds: 0, sd: 0 }
      leans[place] = Math.exp(odds + sd * draws.normal())
    }
    const weights = shapes.map(({ shape }) => draws.gamma(shape))
    const all = weights.reduce((sum, one) => sum + one, 0)
    return shapes.map(({ parts, bases }, index): ItemTaste => {
      const own = bases.map(({ place, weight }) => weight * (leans[place] ?? 1))
      const allBases = own.reduce((sum, one) => sum + one, 0)
      return {
        share: (weights[index] ?? 0) / all,
        parts: parts.map(({ place, first, more }) => ({
          place,
          share: first === null ? 1 : shareAt(first + (moods[place] ?? 0)),
          more,
        })),
        bases: bases.map(({ place }, base) => ({ place, share: (own[base] ?? 0) / allBases })),
      }
    })
  }
}
