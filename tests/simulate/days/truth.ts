/**
 * A station over weeks: the truth of the simulation, which par doesn't know. It is not par's model:
 * guests come in groups that want the same, tastes differ for each part of each item by day, weekdays
 * have their sizes, the whole drifts, and what the lead expects tells a part of it.
 */
import { usualChoice } from '#lib/service/events/build-choice.ts'
import type { Item, StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { type Chance, chanceOf } from '#tests/simulate/chance.ts'

const withHeart = (
  from: string,
  more: Pick<Item, 'id' | 'name' | 'priceCents' | 'heart'>,
): Item => {
  const item = demoStation.items.find(({ id }) => id === from)
  if (!item) throw new Error(`the station has no item ${from}`)
  return {
    ...item,
    ...more,
    parts: item.parts
      .filter(({ component }) => component !== item.heart)
      .map((part) =>
        part.component === more.heart ? { ...part, usual: 'in' as const, required: true } : part,
      ),
  }
}

/** The demo's station with one item more, so that its menu can change. */
export const daysStation: StationDocument = {
  ...demoStation,
  items: [
    ...demoStation.items,
    withHeart('bean-and-pepper', {
      ...{ id: 'pepper-plate', name: 'Pepper plate', priceCents: 500, heart: 'peppers' },
    }),
  ],
}

/** What one guest wants: an item, its base, and portions of the rest. */
export interface Wish {
  readonly item: Item
  readonly base: string | null
  readonly parts: Readonly<Record<string, number>>
}

export interface Truth {
  readonly seed: number
  readonly builds: number
  readonly weekdays: readonly number[]
  readonly popularity: readonly number[]
  readonly odds: ReadonlyMap<string, number>
  readonly twice: number
  /** How many percent a week the station grows or shrinks, as a logarithm. */
  readonly drift: number
  /** Whether the lead says guests before. */
  readonly saysGuests: boolean
}

/** Weekdays on which it opens, a week's places of a service. */
export const DAYS_A_WEEK = 5
const WEEKDAY_SD = 0.16
const DAY_SD = 0.17
/** How far what the lead expects follows what the day will be, and strays from it. */
const TOLD = 0.6
const TOLD_SD = 0.12
const GROUP = [0.7, 0.2, 0.1]
const GROUP_MEAN = GROUP.reduce((sum, share, index) => sum + share * (index + 1), 0)
const MOOD_SD = 0.35

export const truthOf = (seed: number): Truth => {
  const chance = chanceOf(seed, 'station')
  return {
    seed,
    builds: 45 + 65 * chance.uniform(),
    weekdays: Array.from({ length: DAYS_A_WEEK }, () => chance.normal(0, WEEKDAY_SD)),
    popularity: [5, 3, 2, 2].map((weight) => chance.gamma(4 * weight)),
    odds: new Map(
      daysStation.items.flatMap((item) =>
        item.parts.map((part) => [
          `${item.id}/${part.component}`,
          (part.usual === 'no' ? -1.7 : 1.5) + chance.normal(0, 0.5),
        ]),
      ),
    ),
    twice: 0.03 + 0.05 * chance.uniform(),
    drift: chance.normal(0, 0.02),
    saysGuests: chance.happens(0.7),
  }
}

/** What is known before a day to whoever knows the station. */
export interface Ahead {
  /** Number of the week, the first is 0, and of the day in it. */
  readonly week: number
  readonly weekday: number
  readonly items: readonly Item[]
}

/** Ids of what is sold in a week: all, or all but one; every second week begins with another menu. */
export const menuOf = ({ seed }: Truth, week: number): readonly Item[] => {
  const chance = chanceOf(seed, `menu ${Math.floor(week / 2)}`)
  const without = Math.floor(chance.uniform() * (daysStation.items.length + 2))
  return daysStation.items.filter((_, index) => index !== without)
}

/** The logarithm of the builds that a day wants but for its own chance. */
const usualSize = ({ builds, weekdays, drift }: Truth, { week, weekday }: Ahead): number =>
  Math.log(builds) + (weekdays[weekday] ?? 0) + drift * week

/** How far the day itself strays; `told` is what the lead makes of it before. */
export interface DaySize {
  readonly stray: number
  readonly told: number
}

export const sizeOf = (truth: Truth, { week, weekday }: Ahead): DaySize => {
  const chance = chanceOf(truth.seed, `size ${week} ${weekday}`)
  const stray = chance.normal(0, DAY_SD)
  return { stray, told: TOLD * stray + chance.normal(0, TOLD_SD) }
}

/** Guests that the lead expects, in fives; null where nobody says. */
export const expectedOf = (truth: Truth, ahead: Ahead, { told }: DaySize): number | null =>
  truth.saysGuests
    ? Math.max(5, Math.round(Math.exp(usualSize(truth, ahead) + told) / 5) * 5)
    : null

/** How far a day strays by what is told, for a planner who knows all but the day itself. */
export const strayTold = (truth: Truth, { told }: DaySize, chance: Chance): number => {
  if (!truth.saysGuests) return chance.normal(0, DAY_SD)
  const gain = (TOLD * DAY_SD ** 2) / ((TOLD * DAY_SD) ** 2 + TOLD_SD ** 2)
  return chance.normal(gain * told, DAY_SD * Math.sqrt(1 - gain * TOLD))
}

/** The guests of a day that strays so far, in the order in which they come. */
export const guestsOf = (
  truth: Truth,
  ahead: Ahead,
  stray: number,
  chance: Chance,
): readonly Wish[] => {
  const moods = new Map<string, number>()
  const mood = (key: string): number => {
    const before = moods.get(key) ?? chance.normal(0, MOOD_SD)
    moods.set(key, before)
    return before
  }
  const weights = ahead.items.map((item) => {
    const own = truth.popularity[daysStation.items.findIndex(({ id }) => id === item.id)] ?? 1
    return chance.gamma(0.8 * own)
  })
  const wish = (item: Item): Wish => {
    const parts: Record<string, number> = {}
    for (const part of item.parts) {
      const key = `${item.id}/${part.component}`
      const odds = (truth.odds.get(key) ?? 0) + mood(key)
      if (part.required || chance.happens(1 / (1 + Math.exp(-odds))))
        parts[part.component] = chance.happens(truth.twice) ? 2 : 1
    }
    const usual = usualChoice(item).base
    const choices = item.base?.choices ?? []
    const base =
      choices[chance.oneOf(choices.map((one) => (one === usual ? 2 : 1) * Math.exp(mood(one))))] ??
      null
    return { item, base, parts }
  }
  const groups = chance.poisson(Math.exp(usualSize(truth, ahead) + stray) / GROUP_MEAN)
  return Array.from({ length: groups }).flatMap(() => {
    const any = () => ahead.items[chance.oneOf(weights)] ?? ahead.items[0]
    const same = chance.happens(0.4) ? any() : undefined
    return Array.from({ length: chance.oneOf(GROUP) + 1 }).flatMap(() => {
      const item = same ?? any()
      return item ? [wish(item)] : []
    })
  })
}

/** The day as it comes. */
export const comes = (truth: Truth, ahead: Ahead): readonly Wish[] =>
  guestsOf(
    truth,
    ahead,
    sizeOf(truth, ahead).stray,
    chanceOf(truth.seed, `day ${ahead.week} ${ahead.weekday}`),
  )
