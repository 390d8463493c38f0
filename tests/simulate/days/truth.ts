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

/** An item as guests want it, ready to be drawn of: moods have their places among those of the menu. */
interface Wanting {
  readonly item: Item
  readonly popularity: number
  readonly parts: readonly {
    readonly component: string
    readonly isRequired: boolean
    readonly odds: number
    readonly mood: number
  }[]
  readonly bases: readonly { readonly id: string; readonly weight: number; readonly mood: number }[]
}

const wantings = new WeakMap<readonly Item[], { readonly of: Truth; readonly all: Wanting[] }>()

const wantingOf = (truth: Truth, items: readonly Item[]): readonly Wanting[] => {
  const known = wantings.get(items)
  if (known?.of === truth) return known.all
  const moods = new Map<string, number>()
  const moodAt = (key: string): number => {
    const place = moods.get(key) ?? moods.size
    moods.set(key, place)
    return place
  }
  const all = items.map((item): Wanting => {
    const usual = usualChoice(item).base
    return {
      item,
      popularity: truth.popularity[daysStation.items.findIndex(({ id }) => id === item.id)] ?? 1,
      parts: item.parts.map(({ component, required }) => {
        const key = `${item.id}/${component}`
        const odds = truth.odds.get(key) ?? 0
        return { component, isRequired: required === true, odds, mood: moodAt(key) }
      }),
      bases: (item.base?.choices ?? []).map((id) => ({
        ...{ id, weight: id === usual ? 2 : 1, mood: moodAt(id) },
      })),
    }
  })
  wantings.set(items, { of: truth, all })
  return all
}

/** The guests of a day that strays so far, in the order in which they come. */
export const guestsOf = (
  truth: Truth,
  ahead: Ahead,
  stray: number,
  chance: Chance,
): readonly Wish[] => {
  const moods: number[] = []
  const moodOf = (place: number): number => {
    const before = moods[place] ?? chance.normal(0, MOOD_SD)
    moods[place] = before
    return before
  }
  const menu = wantingOf(truth, ahead.items)
  const weights = menu.map(({ popularity }) => chance.gamma(0.8 * popularity))
  const wish = ({ item, parts: wanted, bases }: Wanting): Wish => {
    const parts: Record<string, number> = {}
    for (const { component, isRequired, odds, mood } of wanted) {
      const today = odds + moodOf(mood)
      if (isRequired || chance.happens(1 / (1 + Math.exp(-today))))
        parts[component] = chance.happens(truth.twice) ? 2 : 1
    }
    const liked = bases.map(({ weight, mood }) => weight * Math.exp(moodOf(mood)))
    const base = bases[chance.oneOf(liked)]?.id ?? null
    return { item, base, parts }
  }
  const groups = chance.poisson(Math.exp(usualSize(truth, ahead) + stray) / GROUP_MEAN)
  return Array.from({ length: groups }).flatMap(() => {
    const any = () => menu[chance.oneOf(weights)] ?? menu[0]
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
