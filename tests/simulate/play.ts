/** Plays one service from opening until the last build is handed over. */

import { demandAhead, type PastTaught } from '#lib/estimate/demand-history.ts'
import { rushOf } from '#lib/estimate/rush.ts'
import { total } from '#lib/estimate/service-counts.ts'
import { forecastNow } from '#lib/rooms/advice/facts/forecast-now.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { instantAt, minuteAt } from '#lib/service/minute.ts'
import type { RunningState } from '#lib/service/state.ts'
import { createAgenda } from '#tests/simulate/agenda.ts'
import { chanceOf } from '#tests/simulate/chance.ts'
import { createCrew, type Waited } from '#tests/simulate/crew.ts'
import { createLead, type Policy } from '#tests/simulate/lead.ts'
import { costOf, type Outcomes } from '#tests/simulate/planner.ts'
import { openRoom, type Room } from '#tests/simulate/room.ts'
import { components, opensIn, scenario, type World } from '#tests/simulate/scenario.ts'
import { behindReally, createStock } from '#tests/simulate/stock.ts'
import { readWaiting } from '#tests/simulate/watch.ts'
import type { Day } from '#tests/simulate/world.ts'

/** What was said of one component at one moment, and whether it came so. */
export interface Said {
  readonly chance: number
  readonly came: boolean
}

export interface Played {
  readonly outcomes: Outcomes
  /** Components that somebody wanted while there was none. */
  readonly gaps: readonly string[]
  readonly toClose: readonly Said[]
  readonly toNextBatch: readonly Said[]
  readonly waits: readonly Waited[]
  /** Builds that somebody wanted and didn't get whole. */
  readonly notWhole: number
  readonly toldAt: readonly number[]
  readonly toldInRush: number
  /** Suggestions to start what can't be made again. */
  readonly impossible: number
  readonly batches: number
  readonly commands: number
  /** The service as it ended, and all that happened in it. */
  readonly end: RunningState
  readonly events: readonly ServiceEvent[]
}

const LOOK_MINUTES = 0.5
const READ_MINUTES = 9
const BAD_READINGS = 0.03
const LOW = 3
const LOOK_AGAIN_MINUTES = 4
const AFTER_CLOSE_MINUTES = 90

/**
 * With the policy `nothing`, what stands ready and which batches come is drawn at random, and one
 * forecast of each component is made at a moment drawn at random: nobody acts on what it says.
 */
export const playService = (
  seed: number,
  day: Day,
  taught: PastTaught,
  policy: Policy,
  world: World = 'plain',
): Played => {
  const { closes } = scenario
  const opens = opensIn(world)
  const isProbed = policy === 'nothing'
  const { profile, shares } = demandAhead(taught, {
    opens: scenario.opens,
    closes,
    expected: day.expected,
    ...(world === 'doors' ? { doors: true } : {}),
  })
  const agenda = createAgenda()
  const draw = chanceOf(seed, 'opening')
  const stock = createStock(() => room, day.bias, chanceOf(seed, 'food'), agenda.at)
  const room: Room = openRoom(world, day.expected, stock.onEvent)
  for (const { id, usualPortions, backUp } of components) {
    if (!isProbed) {
      stock.open(id, opens, usualPortions, backUp)
      continue
    }
    const pan = Math.ceil(usualPortions * (0.5 + 0.5 * draw.uniform()))
    const usually = total(profile) * (shares[id]?.mean ?? 0)
    const all = usually * (0.6 + 0.9 * draw.uniform())
    stock.open(id, opens, pan, Math.max(0, Math.round(all - pan)))
  }
  const crew = createCrew(room, stock, agenda, chanceOf(seed, 'crew'))
  const lead = createLead(policy, room, stock, taught, agenda.at, chanceOf(seed, 'lead'))
  for (const guest of day.guests) agenda.at(guest.at, (minute) => crew.arrive(guest, minute))

  const look = (minute: number): void => {
    room.tick(minute)
    readWaiting(room, minute)
    stock.refill(minute)
    const state = room.state()
    for (const { facts, behind } of stock.foods) {
      const nominal = (state.pans[facts.pan]?.amount ?? 0) / facts.portion
      const owed = (state.accounts[facts.id]?.onTickets ?? 0) / facts.portion
      const lookedAt = minuteAt(state, state.lookedAt[facts.id] ?? state.openedAt)
      if (behind.size === 0 && nominal - owed <= LOW && minute - lookedAt > LOOK_AGAIN_MINUTES)
        stock.read(facts.id, 'count', minute)
    }
    lead.look(minute)
    if (minute + LOOK_MINUTES < closes) agenda.at(minute + LOOK_MINUTES, look)
  }
  agenda.at(opens + LOOK_MINUTES, look)

  const readings = chanceOf(seed, 'readings')
  for (let at = opens + READ_MINUTES; at < closes; at += READ_MINUTES * readings.factor(0.3)) {
    const id = components[readings.oneOf(components.map(() => 1))]?.id ?? ''
    const kind = readings.happens(0.2) ? 'weighing' : 'eye-check'
    const isBad = readings.happens(BAD_READINGS)
    agenda.at(at, (minute) => stock.read(id, kind, minute, isBad))
  }

  const probes: { id: string; batchBy: number | null; close: number; batch: number }[] = []
  if (isProbed)
    for (const { id, remake } of components) {
      const moment = opens + (closes - opens) * draw.uniform()
      const batch = remake && draw.happens(0.3) ? 1 + draw.oneOf([2, 1]) : 0
      const begun = opens + (moment - opens) * draw.uniform()
      if (batch > 0) agenda.at(begun, (minute) => stock.startBatch(id, batch, minute))
      agenda.at(moment, (at) => {
        if (stock.of(id).firstGap !== null) return
        const said = forecastNow(room.state(), taught, {
          position: room.position(),
          now: room.instant(at),
          firstBefore: null,
        }).components[id]
        if (!said) throw new Error(`nothing is forecast of ${id}`)
        const isInTime = remake !== null && said.beforeNextBatch !== null
        probes.push({
          id,
          batchBy: isInTime ? at + remake.minutes : null,
          close: said.chance,
          batch: said.beforeNextBatch ?? 0,
        })
      })
    }
  agenda.runUntil(closes + AFTER_CLOSE_MINUTES)

  const outcomes = Object.fromEntries(
    stock.foods.map((food) => {
      const { facts, real, underway, lost } = food
      const left = real + behindReally(food) + underway * (facts.remake?.portionsPerLoad ?? 0)
      return [facts.id, costOf(facts, lost, left)]
    }),
  )
  const end = room.state()
  const rush = rushOf(profile)
  const isRush = (minute: number): boolean => {
    const at = instantAt(end, minute)
    return end.rushes.some(({ from, to }) => from <= at && at < to) || rush.isAt(end.counts, minute)
  }
  const told = end.adviceLog.filter(({ kind }) => kind !== 'safety')
  return {
    outcomes,
    gaps: stock.foods.filter(({ firstGap }) => firstGap !== null).map(({ facts }) => facts.id),
    toClose: probes.map(({ id, close }) => ({
      chance: close,
      came: stock.of(id).firstGap !== null,
    })),
    toNextBatch: probes.flatMap(({ id, batchBy, batch }) => {
      if (batchBy === null) return []
      const first = stock.of(id).firstGap
      return [{ chance: batch, came: first !== null && first <= batchBy }]
    }),
    waits: crew.waits,
    notWhole: crew.notWhole(),
    toldAt: told.map(({ at }) => at),
    toldInRush: told.filter(({ at, kind }) => kind !== 'sold-out' && isRush(at)).length,
    impossible: told.filter(({ key, kind }) => {
      const facts = components.find(({ id }) => key.endsWith(` ${id}`))
      return kind === 'start-batch' && !facts?.remake
    }).length,
    batches: lead.batches(),
    commands: room.commands(),
    end,
    events: room.events(),
  }
}
