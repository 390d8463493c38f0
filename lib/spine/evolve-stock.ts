/** Folds what a service teaches of demand, of what the pans hold, and of build times. */

import {
  countBuild,
  noCounts,
  type ServiceCounts,
  type Wanted,
} from '#lib/estimate/service-counts.ts'
import { withBuildTime } from '#lib/estimate/wait.ts'
import { answeredPlace } from '#lib/rooms/advice/facts/advice-answered.ts'
import { believed } from '#lib/rooms/pans/facts/beliefs.ts'
import { firstBeliefs } from '#lib/rooms/pans/facts/first-beliefs.ts'
import { isKeptFor } from '#lib/rooms/pans/facts/kept.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { portionChanged } from '#lib/rooms/pans/folds/evolve-portion.ts'
import { closesAt } from '#lib/service/closing.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { Recorded, ServiceOpened, Stamp } from '#lib/service/events/event.ts'
import type { StockEvent } from '#lib/service/events/stock-event.ts'
import { takeOut } from '#lib/service/folding/build-folding.ts'
import { minuteAt } from '#lib/service/minute.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { type AdviceEntry, NO_STOCK, type StockState } from '#lib/service/stock-state.ts'
import { buildName, findBuild, findTicket } from '#lib/service/tickets.ts'

const DAY_MINUTES = 1_440
const MINUTE_MS = 60_000

/** Whole minutes of a count's closing, from the plan or, where there is none, the usual length. */
const closingMinute = (
  state: Pick<StockState, 'openedMinute' | 'closesAt'> & { readonly openedAt: number },
): number =>
  Math.round(state.openedMinute + (closesAt(state, state.openedAt) - state.openedAt) / MINUTE_MS)

/** The stock's part of a service that was just opened. */
export const openedStock = (
  event: ServiceOpened & Stamp,
  components: readonly string[],
): StockState => {
  const openedMinute = event.minuteOfDay ?? Math.floor(event.at / MINUTE_MS) % DAY_MINUTES
  const expected = event.guestsExpected ?? null
  const said = event.closesAt ?? null
  const closing = closingMinute({ openedMinute, closesAt: said, openedAt: event.at })
  const untilDoors = Math.max(0, (event.doorsAt ?? event.at) - event.at) / MINUTE_MS
  return {
    ...NO_STOCK,
    openedMinute,
    expected,
    closesAt: said,
    assemblers: event.assemblers ?? 1,
    counts: {
      ...noCounts(Math.floor(openedMinute + untilDoors), closing, expected),
      ...(event.doorsAt === undefined ? {} : { doors: true }),
    },
    beliefs: firstBeliefs(event.portions, components, event.knownBias ?? {}),
  }
}

/** What a build's guest wanted, what they went without since it was gone included. */
export const wantedBy = (choice: BuildChoice): Wanted => {
  const portions: Record<string, number> = {}
  if (choice.base !== null) portions[choice.base] = 1
  for (const [id, part] of Object.entries(choice.parts)) {
    const wanted = part.placement === 'no' ? (part.because === 'gone' ? 1 : 0) : part.portions
    if (wanted > 0) portions[id] = (portions[id] ?? 0) + wanted
  }
  return { item: choice.item, portions }
}

/** The choice that counts as wanted; null for what isn't wanted any more. */
const standing = (build: Build | undefined): BuildChoice | null => {
  if (!build || build.state === 'cancelled' || build.stop?.reason === 'cancel') return null
  return (build.stop?.to ?? build).choice
}

interface Recount {
  readonly ticket: number
  readonly minute: number
  readonly from: BuildChoice | null
  readonly to: BuildChoice | null
}

/** Keeps count of the demand, and of what was kept for whom. */
const recounted = (state: RunningState, { ticket, minute, from, to }: Recount): RunningState => {
  let counts: ServiceCounts = state.counts
  if (from) counts = countBuild(counts, minute, wantedBy(from), -1)
  if (to) counts = countBuild(counts, minute, wantedBy(to))
  const keeps = Object.fromEntries(
    Object.entries(state.keeps).map(([component, keep]) => {
      if (ticket < keep.fromTicket) return [component, keep]
      const takenBy = (choice: BuildChoice | null): number => {
        if (!choice || !isKeptFor(keep, choice)) return 0
        return (choice.base === component ? 1 : 0) + (choice.parts[component]?.portions ?? 0)
      }
      const more = takenBy(to) - takenBy(from)
      return [component, more === 0 ? keep : { ...keep, taken: keep.taken + more }]
    }),
  )
  return { ...state, counts, keeps }
}

const withoutWait = (state: RunningState, name: string): RunningState => {
  if (state.waits[name] === undefined) return state
  const { [name]: _, ...waits } = state.waits
  return { ...state, waits }
}

type OfBuild = Extract<Recorded, { readonly ticket: number; readonly letter: string }>

const isOfBuild = (event: Recorded): event is OfBuild => 'letter' in event && 'ticket' in event

const afterBuild = (before: RunningState, after: RunningState, event: OfBuild): RunningState => {
  const was = findBuild(before, event.ticket, event.letter)
  const is = findBuild(after, event.ticket, event.letter)
  const name = buildName(event.ticket, event.letter)
  let next = withoutWait(after, name)
  if (event.type === 'buildFinished' && was?.state === 'making')
    next = {
      ...next,
      buildTimes: withBuildTime(next.buildTimes, (event.at - was.since) / 1000),
    }
  const from = standing(was)
  const to = standing(is)
  if (from === to) return next
  // Who was told that there is none any more wanted it all the same.
  if (to === null && from !== null && shortBuilds(before).has(name)) return next
  const minute = minuteAt(after, findTicket(after, event.ticket)?.sentAt ?? event.at)
  return recounted(next, { ticket: event.ticket, minute, from, to })
}

/**
 * The state after an event with what the event teaches: demand, beliefs, build times. `after` is
 * what the event itself made of the state before.
 */
export const taught = (
  before: RunningState,
  after: RunningState,
  event: Recorded,
): RunningState => {
  let next = after
  if (event.type === 'ticketSent')
    for (const { choice } of event.builds)
      next = recounted(next, {
        ticket: event.ticket,
        minute: minuteAt(after, event.at),
        from: null,
        to: choice,
      })
  else if (isOfBuild(event)) next = afterBuild(before, next, event)
  return { ...next, ...believed(before, next, event) }
}

const answerLast = (
  log: readonly AdviceEntry[],
  key: string,
  answer: AdviceEntry['answer'],
  at: number,
): readonly AdviceEntry[] => {
  const place = answeredPlace(log, key, at)
  const last = log[place]
  if (!last || (answer === 'lapsed' && last.answer !== 'open'))
    throw new Error(`no open advice ${key}`)
  return log.with(place, { ...last, answer, answeredAt: at })
}

const planned = (
  state: RunningState,
  event: Extract<StockEvent, { type: 'daySet' }>,
): RunningState => {
  const next = {
    ...state,
    expected: event.guestsExpected === undefined ? state.expected : event.guestsExpected,
    closesAt: event.closesAt === undefined ? state.closesAt : event.closesAt,
    assemblers: event.assemblers ?? state.assemblers,
  }
  return {
    ...next,
    counts: { ...next.counts, closes: closingMinute(next), expected: next.expected },
  }
}

/** Folds what happened to stock, demand and advice. */
export const evolveStock = (state: RunningState, event: StockEvent & Stamp): RunningState => {
  switch (event.type) {
    case 'daySet':
      return planned(state, event)
    case 'wasteRecorded': {
      const { component, reason, amount } = event
      const own = state.wastes[component]
      return {
        ...takeOut(state, event.took, event.uncounted, 'wasted'),
        wastes: {
          ...state.wastes,
          [component]: { ...own, [reason]: (own?.[reason] ?? 0) + amount },
        },
      }
    }
    case 'portionsKept': {
      const { component, portions, at } = event
      const keep = { portions, for: event.for, fromTicket: state.nextTicket, taken: 0, at }
      return { ...state, keeps: { ...state.keeps, [component]: keep } }
    }
    case 'keepEnded': {
      const { [event.component]: _, ...keeps } = state.keeps
      return { ...state, keeps }
    }
    case 'wantedGone': {
      const portions = Object.fromEntries(event.components.map((id) => [id, 1]))
      const minute = minuteAt(state, event.at)
      return { ...state, counts: countBuild(state.counts, minute, { item: null, portions }) }
    }
    case 'scoopMissed':
    case 'scoopFound':
      return portionChanged(state, event)
    case 'adviceTold': {
      const { key, kind, saves, reason } = event
      if (state.adviceLog.some((one) => one.key === key && one.answer === 'open'))
        throw new Error(`advice ${key} is open already`)
      const told: AdviceEntry = {
        key,
        kind,
        saves,
        reason,
        at: minuteAt(state, event.at),
        answer: 'open',
        answeredAt: null,
      }
      return { ...state, adviceLog: [...state.adviceLog, told] }
    }
    case 'adviceAnswered':
    case 'adviceLapsed': {
      const answer = event.type === 'adviceLapsed' ? 'lapsed' : event.answer
      const at = minuteAt(state, event.at)
      return { ...state, adviceLog: answerLast(state.adviceLog, event.key, answer, at) }
    }
    case 'buildWaits':
      return {
        ...state,
        waits: { ...state.waits, [event.build]: { component: event.component, at: event.at } },
      }
  }
}
