/**
 * Who comes to the line and what they want: the truth of the simulation, which the forecasts don't
 * know. It is not their model: guests come in bursts behind bells that are late, waves swell by
 * themselves, groups want the same, and tastes differ by school, by day and by wave.
 */

import { countBuild, noCounts, type ServiceCounts } from '#lib/estimate/service-counts.ts'
import { NO_BUILD_TIMES } from '#lib/estimate/wait.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { usualChoice } from '#lib/service/events/build-choice.ts'
import { demoStation } from '#server/demo-station.ts'
import { type Chance, chanceOf } from '#tests/simulate/chance.ts'
import { components, scenario, type World } from '#tests/simulate/scenario.ts'

/** What a guest wants in one build: portions by component, its base among them. */
export interface Wish {
  readonly item: string
  readonly base: string | null
  readonly parts: Readonly<Record<string, number>>
}

export interface Guest {
  /** Minute of the day. */
  readonly at: number
  readonly wishes: readonly Wish[]
  /** What they would have instead, each, where the heart of a wish is gone; null: they leave. */
  readonly instead: readonly (Wish | null)[]
  /** They come back and want the first build otherwise, so many minutes later. */
  readonly changesAfter: number | null
  readonly cancelsAfter: number | null
}

export interface School {
  readonly seed: number
  readonly waves: readonly number[]
  readonly background: number
  readonly popularity: readonly number[]
  /** Log odds that a part is wanted, by item and component. */
  readonly odds: Readonly<Record<string, number>>
  readonly twice: number
  readonly bias: Readonly<Record<string, number>>
}

export interface Day {
  readonly guests: readonly Guest[]
  readonly expected: number
  /** How heavy each component is scooped today. */
  readonly bias: Readonly<Record<string, number>>
}

const odds = (share: number): number => Math.log(share / (1 - share))
const shareOf = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds))
const keyOf = (item: string, component: string): string => `${item}/${component}`

export const schoolOf = (seed: number): School => {
  const chance = chanceOf(seed, 'school')
  const size = scenario.builds * chance.factor(0.12)
  const waves = scenario.bells.map(() => chance.gamma(12))
  const all = waves.reduce((sum, wave) => sum + wave, 0)
  return {
    seed,
    waves: waves.map((wave) => (0.82 * size * wave) / all),
    background: 0.18 * size,
    popularity: [5, 3, 2].map((weight) => chance.gamma(4 * weight)),
    odds: Object.fromEntries(
      demoStation.items.flatMap((item) =>
        item.parts.map((part) => [
          keyOf(item.id, part.component),
          odds(part.usual === 'no' ? 0.15 : 0.82) + chance.normal(0, 0.5),
        ]),
      ),
    ),
    twice: 0.03 + 0.05 * chance.uniform(),
    bias: Object.fromEntries(
      components.map(({ id, isCounted }) => [id, isCounted ? 0 : -0.15 + 0.3 * chance.uniform()]),
    ),
  }
}

const BUILDS_A_GROUP = [0.76, 0.17, 0.07]
const buildsAGroup = BUILDS_A_GROUP.reduce((sum, share, index) => sum + share * (index + 1), 0)

const wishOf = (
  school: School,
  chance: Chance,
  item: (typeof demoStation.items)[number],
  mood: (key: string) => number,
): Wish => {
  const usual = usualChoice(item)
  const portions = () => (chance.happens(school.twice) ? 2 : 1)
  const parts: Record<string, number> = {}
  for (const part of item.parts) {
    const key = keyOf(item.id, part.component)
    const isWanted =
      part.required ||
      part.component === item.heart ||
      chance.happens(shareOf((school.odds[key] ?? 0) + mood(key)))
    if (isWanted) parts[part.component] = portions()
  }
  const base = item.base
    ? (item.base.choices[
        chance.oneOf(
          item.base.choices.map(
            (choice) => (choice === usual.base ? 2 : 1) * Math.exp(mood(choice)),
          ),
        )
      ] ?? null)
    : null
  return { item: item.id, base, parts }
}

/** One day of a school, by its number. */
export const dayOf = (school: School, number: number): Day => {
  const chance = chanceOf(school.seed, `day ${number}`)
  const moods = new Map<string, number>()
  const moodOf = (spread: number) => (key: string) => {
    const before = moods.get(key)
    if (before !== undefined) return before
    const mood = chance.normal(0, spread)
    moods.set(key, mood)
    return mood
  }
  const mood = moodOf(0.35)
  const volume = chance.factor(0.18)
  const popularity = school.popularity.map((weight) => chance.gamma(0.8 * weight))
  const sizes = school.waves.map((wave) => wave * volume * chance.factor(0.16))
  const sum = sizes.reduce((all, size) => all + size, 0) + school.background * volume
  const guests: Guest[] = []
  const add = (at: number, tilt: readonly number[]): void => {
    if (at < scenario.opens || at >= scenario.closes) return
    const group = chance.oneOf(BUILDS_A_GROUP) + 1
    const weights = popularity.map((weight, index) => weight * (tilt[index] ?? 1))
    const itemFor = (without: string | null) => {
      const open = demoStation.items.map((item, index) =>
        item.id === without ? 0 : (weights[index] ?? 0),
      )
      return demoStation.items[chance.oneOf(open)] ?? demoStation.items[0]
    }
    const wishes: Wish[] = []
    const instead: (Wish | null)[] = []
    const together = chance.happens(0.4) ? itemFor(null) : null
    for (let i = 0; i < group; i += 1) {
      const item = together ?? itemFor(null)
      if (!item) continue
      const wish = wishOf(school, chance, item, mood)
      const other = itemFor(wish.item)
      wishes.push(wish)
      instead.push(other && chance.happens(0.65) ? wishOf(school, chance, other, mood) : null)
    }
    guests.push({
      at,
      wishes,
      instead,
      changesAfter: chance.happens(0.06) ? 0.4 + 1.5 * chance.uniform() : null,
      cancelsAfter: chance.happens(0.015) ? 0.5 + 2 * chance.uniform() : null,
    })
  }
  for (const [index, bell] of scenario.bells.entries()) {
    const rings = bell + chance.normal(0, 1.3)
    const tilt = demoStation.items.map(() => (chance.happens(0.2) ? chance.factor(0.35) : 1))
    const come = chance.poisson((sizes[index] ?? 0) / buildsAGroup)
    for (let i = 0; i < come; i += 1)
      add(chance.happens(0.12) ? rings + 40 * chance.uniform() : rings + 3 * chance.gamma(2), tilt)
  }
  const strollers = chance.poisson((school.background * volume) / buildsAGroup)
  for (let i = 0; i < strollers; i += 1)
    add(scenario.opens + (scenario.closes - scenario.opens) * chance.uniform(), [])
  return {
    guests: guests.sort((one, other) => one.at - other.at),
    expected: Math.max(5, Math.round((sum * chance.factor(0.12)) / 5) * 5),
    bias: Object.fromEntries(
      Object.entries(school.bias).map(([id, bias]) => [
        id,
        bias === 0 ? 0 : bias + chance.normal(0, 0.015),
      ]),
    ),
  }
}

export const wantedOf = (wish: Wish): Record<string, number> => ({
  ...wish.parts,
  ...(wish.base === null ? {} : { [wish.base]: (wish.parts[wish.base] ?? 0) + 1 }),
})

/** What was wanted in a service, by five minutes, up to a minute of the day. */
const countsOf = ({ guests, expected }: Day, world: World, until: number): ServiceCounts =>
  guests
    .filter(({ at }) => at < until)
    .reduce(
      (counts, { at, wishes }) =>
        wishes.reduce(
          (sum, wish) => countBuild(sum, at, { item: wish.item, portions: wantedOf(wish) }),
          counts,
        ),
      {
        ...noCounts(scenario.opens, scenario.closes, expected),
        ...(world === 'doors' ? { doors: true as const } : {}),
      },
    )

const recorded = (openedAt: number, counts: ServiceCounts): ServiceRecord => ({
  format: 'level-scoop/service-record',
  version: 1,
  service: `s-${openedAt}`,
  station: demoStation.id,
  kind: 'real',
  revision: 1,
  openedAt,
  closedAt: openedAt,
  counts,
  made: 0,
  components: {},
  bias: {},
  batches: [],
  readings: [],
  buildTimes: NO_BUILD_TIMES,
})

/** How far into its day a service goes that is cut short, as by a fire alarm. */
const CUT_AT = 0.45
/** After so many real days comes one of practice, and one that is cut short. */
const PRACTICE_EVERY = 4
const CUT_EVERY = 5

/** The service records of so many past days of a school, with what else happened between. */
export const recordsOf = (school: School, days: number, world: World): readonly ServiceRecord[] =>
  Array.from({ length: days }, (_, index) => index).flatMap((index) => {
    const number = index - days
    const at = -number * 10
    const real = recorded(at, countsOf(dayOf(school, number), world, scenario.closes))
    if (world === 'plain') return [real]
    const other = dayOf(school, number - 10_000)
    const cutAt = scenario.opens + CUT_AT * (scenario.closes - scenario.opens)
    const cut = recorded(at + 1, countsOf(other, world, cutAt))
    const practice = recorded(at + 2, practised(other))
    return [
      real,
      ...(index % CUT_EVERY === 0 ? [{ ...cut, cutShort: true as const }] : []),
      ...(index % PRACTICE_EVERY === 0 ? [{ ...practice, kind: 'practice' as const }] : []),
    ]
  })

/** A class orders from itself: two dozen builds at once, right at the doors, of one item as it comes. */
const practised = ({ expected }: Day): ServiceCounts =>
  Array.from({ length: 24 }).reduce<ServiceCounts>(
    (counts) => {
      const [item] = demoStation.items
      if (!item) return counts
      const portions = Object.fromEntries(item.parts.map(({ component }) => [component, 1]))
      return countBuild(counts, scenario.opens, { item: item.id, portions })
    },
    { ...noCounts(scenario.opens, scenario.closes, expected), doors: true },
  )
