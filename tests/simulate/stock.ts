/** The food of a simulated service as it really is; what the station believes of it is in its state. */

import type { ReadingKind } from '#lib/estimate/scoop-bias.ts'
import { batchesInOrder } from '#lib/rooms/food/facts/food-now.ts'
import { cookedReading, INVENTED_INITIALS } from '#lib/rooms/food/facts/invented-readings.ts'
import { holdsAtMost } from '#lib/rooms/pans/facts/capacity.ts'
import { levelOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { loadFields } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { componentOf } from '#lib/station/find.ts'
import { demoStation } from '#server/demo-station.ts'
import type { Chance } from '#tests/simulate/chance.ts'
import type { Room } from '#tests/simulate/room.ts'
import { type ComponentFacts, components } from '#tests/simulate/scenario.ts'

interface Food {
  readonly facts: ComponentFacts
  /** How heavy it is scooped. */
  readonly bias: number
  /** Portions by weight in the pan on the line, in truth. */
  real: number
  /** Of those, promised to builds in the making. */
  promised: number
  /** Portions by weight of finished batches behind the line, in truth. */
  readonly behind: Map<string, number>
  /** Loads that aren't there yet. */
  underway: number
  firstGap: number | null
  lost: number
}

export interface Stock {
  readonly foods: readonly Food[]
  readonly of: (id: string) => Food
  readonly onEvent: (event: ServiceEvent) => void
  /** Cooks what stands ready at opening, loads the pan, and leaves the rest behind the line. */
  readonly open: (id: string, minute: number, pan: number, backUp: number) => void
  readonly startBatch: (id: string, loads: number, minute: number) => void
  readonly refill: (minute: number) => void
  readonly read: (id: string, kind: ReadingKind, minute: number, isBad?: boolean) => void
  readonly lose: (id: string, portions: number, minute: number) => void
  /** Whether so many portions are really there for a build that starts now. */
  readonly isThere: (id: string, portions: number) => boolean
}

/** A load's real size strays by this, and so does how long it takes. */
const LOAD_SD = 0.03
const MINUTES_SD = 0.15
const SCOOP_SD = 0.1
/** A pan on the line is heaped to so many times its usual portions, where it takes that. */
const HEAPED = 1.6
/** What a build may be short of a full portion. */
const BARELY = 0.6

const MINUTE_MS = 60_000

export const behindReally = ({ behind }: Pick<Food, 'behind'>): number =>
  [...behind.values()].reduce((sum, portions) => sum + portions, 0)

export const createStock = (
  getRoom: () => Room,
  bias: Readonly<Record<string, number>>,
  chance: Chance,
  later: (minute: number, act: (minute: number) => void) => void,
): Stock => {
  const foods = components.map(
    (facts): Food => ({
      facts,
      bias: bias[facts.id] ?? 0,
      real: 0,
      promised: 0,
      behind: new Map(),
      underway: 0,
      firstGap: null,
      lost: 0,
    }),
  )
  const byId = new Map(foods.map((food) => [food.facts.id, food]))
  const of = (id: string): Food => {
    const food = byId.get(id)
    if (!food) throw new Error(`no food ${id}`)
    return food
  }
  const about = ({ facts }: Food): number =>
    facts.isCounted ? 1 : 1 + LOAD_SD * chance.normal(0, 1)
  const must = (minute: number, command: Command) => getRoom().must(minute, command)

  /** A batch is finished: cooked to its limit, where it has one. */
  const finish = ({ facts }: Food, batch: string, portions: number, minute: number): void => {
    const reading = cookedReading(demoStation, componentOf(demoStation, facts.id))
    // Each load that was begun is read, a moment after the one before it.
    for (let left = getRoom().state().batches[batch]?.loads ?? 1; reading && left > 0; left -= 1)
      must(minute, {
        type: 'recordCooking',
        batch,
        reading: { ...reading, at: getRoom().instant(minute) - left },
        initials: INVENTED_INITIALS,
      })
    must(minute, { type: 'finishBatch', batch, amount: portions * facts.portion })
  }

  const inPan = ({ facts }: Food): number => getRoom().state().pans[facts.pan]?.amount ?? 0

  const leftIn = (batch: string): number => {
    const there = getRoom().state().batches[batch]
    return there ? leftOfBatch(there) : 0
  }

  /** From a batch onto the line: into an empty pan, or added to what is left in it. */
  const put = (food: Food, batch: string, amount: number, minute: number): void => {
    const { facts, behind } = food
    const component = componentOf(demoStation, facts.id)
    const left = leftIn(batch)
    const real = behind.get(batch) ?? 0
    const moved = real * (amount / left)
    must(minute, {
      type: inPan(food) > 0 ? 'topUp' : 'load',
      pan: facts.pan,
      amount,
      ...loadFields(demoStation, component, { now: getRoom().instant(minute), batch }),
      batch,
    })
    food.real += moved
    if (amount < left) behind.set(batch, real - moved)
    else behind.delete(batch)
  }

  const refillOne = (food: Food, minute: number): void => {
    const { facts, behind } = food
    if (behind.size === 0) return
    const state = getRoom().state()
    const levels = { [facts.id]: levelOf(state, facts.id) }
    if (sellable(state, levels, facts.id) > Math.max(4, 0.25 * facts.usualPortions)) return
    const most = Math.min(
      HEAPED * facts.usualPortions * facts.portion,
      holdsAtMost(state, facts.pan) ?? Number.POSITIVE_INFINITY,
    )
    for (const batch of batchesInOrder(state, facts.id)) {
      const left = leftIn(batch)
      const amount = Math.min(
        left,
        Math.floor((most - inPan(food)) / facts.portion) * facts.portion,
      )
      if (amount < facts.portion) return
      put(food, batch, amount, minute)
    }
  }

  return {
    foods,
    of,
    onEvent: (event) => {
      if (event.type !== 'buildFinished') return
      const taken: Record<string, number> = {}
      for (const { pan, amount } of event.took) {
        const food = foods.find(({ facts }) => facts.pan === pan)
        if (food) taken[food.facts.id] = (taken[food.facts.id] ?? 0) + amount
      }
      for (const [id, amount] of Object.entries(event.uncounted))
        taken[id] = (taken[id] ?? 0) + amount
      for (const [id, amount] of Object.entries(taken)) {
        const food = of(id)
        const portions = amount / food.facts.portion
        const noise = food.facts.isCounted ? 0 : SCOOP_SD * Math.sqrt(portions)
        const used = portions * (1 + food.bias) + noise * chance.normal(0, 1)
        food.real = Math.max(0, food.real - Math.max(0, used))
        food.promised = Math.max(0, food.promised - portions)
      }
    },
    open: (id, minute, pan, backUp) => {
      const food = of(id)
      const batch = `${id}-0`
      const startedAt = getRoom().instant(minute) - 60 * MINUTE_MS
      must(minute, { type: 'startBatch', batch, component: id, loads: 1, startedAt })
      finish(food, batch, pan + backUp, minute)
      food.behind.set(batch, (pan + backUp) * about(food))
      put(food, batch, pan * food.facts.portion, minute)
    },
    startBatch: (id, loads, minute) => {
      const food = of(id)
      const { remake } = food.facts
      if (!remake) throw new Error(`${id} can't be made again`)
      const slow = chance.factor(MINUTES_SD)
      const begun = getRoom().instant(minute)
      const name = `${id}-${getRoom().commands()}`
      const start = (at: number, load: number) =>
        must(at, {
          type: 'startBatch',
          batch: `${name}-${load}`,
          component: id,
          loads: loads - load,
          startedAt: begun + load * remake.minutesPerLoad * MINUTE_MS,
        })
      start(minute, 0)
      food.underway += loads
      for (let load = 0; load < loads; load += 1) {
        const takes = remake.minutes + load * remake.minutesPerLoad
        later(minute + takes * slow, (ready) => {
          const batch = `${name}-${load}`
          food.underway -= 1
          food.behind.set(batch, remake.portionsPerLoad * about(food))
          finish(food, batch, remake.portionsPerLoad, ready)
          // The loads that aren't here yet are a batch of their own.
          if (load + 1 < loads) start(ready, load + 1)
          refillOne(food, ready)
        })
      }
    },
    refill: (minute) => {
      for (const food of foods) refillOne(food, minute)
    },
    read: (id, kind, minute, isBad = false) => {
      const { facts, real } = of(id)
      const { pan, usualPortions: full, portion, tareMg } = facts
      const byWeight = kind === 'weighing' && !facts.isCounted && tareMg !== null
      const noise = kind === 'eye-check' ? 0.05 * full : byWeight ? 0.1 + 0.004 * full : 0.3
      const seen = real + chance.normal(0, noise)
      const read = Math.max(0, isBad ? seen + (chance.happens(0.5) ? 0.5 : -0.5) * full : seen)
      const amount = Math.round(read * portion)
      // What was counted to nothing and holds something was counted wrongly: nobody put any in.
      const isEnded = getRoom().state().pans[pan]?.ended === true
      const was = isEnded && amount > 0 ? { was: 'slip' as const } : {}
      if (kind === 'eye-check' && !(isEnded && amount === 0)) {
        const quarters = Math.max(0, Math.min(4, Math.round((4 * read) / full)))
        must(minute, { type: 'correct', pan, quarters, ...was })
      } else if (byWeight)
        getRoom().give(minute, { type: 'correct', pan, weighedMg: tareMg + amount, ...was })
      else must(minute, { type: 'correct', pan, amount, kind: 'count', ...was })
    },
    lose: (id, portions, minute) => {
      const food = of(id)
      food.lost += portions
      food.firstGap ??= minute
    },
    isThere: (id, portions) => {
      const food = of(id)
      return food.real - food.promised * (1 + food.bias) >= portions * (1 + food.bias) * BARELY
    },
  }
}
