/** Food that is found bad, and the builds that were handed over with it by then. */

import {
  handedOverOfBatch,
  handedOverWith,
  isMadeWith,
  notKnownSince,
} from '#lib/rooms/shelf/facts/handed-over-with.ts'
import type { Consequence } from '#lib/service/consequence.ts'
import type { BuildHandedOver, ServiceEvent } from '#lib/service/events/event.ts'
import type { DiscardReason, Place } from '#lib/service/events/food-event.ts'
import {
  type FoundBecause,
  type HandedOverBuild,
  type HandedOverEvent,
  type HandedOverFound,
  isMissed,
} from '#lib/service/events/handed-over-event.ts'
import { allStock, boundAt, isOfStock, keyOf, type Suspect } from '#lib/service/held-stock.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'

/** What somebody says of food which they throw out, where nobody found it before. */
const SAID: Readonly<Partial<Record<DiscardReason, FoundBecause>>> = {
  'past-time': 'time',
  'past-date': 'date',
  'out-of-limits': 'out-of-limits',
  'not-cooked': 'not-cooked',
  'not-cooled': 'not-cooled',
}

interface Finding extends Suspect {
  readonly because: FoundBecause
}

/** What is found with an event, of a pan on the line or behind it; null where nothing is. */
const findingOf = (state: RunningState, event: ServiceEvent, due: number): Finding | null => {
  if (!('what' in event) || !isOfStock(event)) return null
  const { what, id } = event
  const at = { what, id }
  const placed = placeOf(state, at)
  const readAt = placed?.newest?.at ?? null
  switch (event.type) {
    case 'takenOffSale': {
      const { why, lastGoodAt } = event
      return why === 'cooling-missed' ? null : { ...at, lastGoodAt, because: why }
    }
    case 'readingMissed': {
      const because = placed?.food?.clock ? 'monitoring-missed' : 'reading-missed'
      return { ...at, lastGoodAt: readAt, because }
    }
    case 'throwOutPassed': {
      const { because } = event
      // Until it was over its time allowed it.
      const lastGoodAt = because === 'time' || because === 'date' ? due : readAt
      return { ...at, lastGoodAt, because }
    }
    case 'discardSignedOff': {
      const because = SAID[event.reason]
      if (because === undefined) return null
      if (because === 'not-cooked' || because === 'not-cooled')
        return { ...at, lastGoodAt: null, because }
      const isKnown = placed?.offSale != null || boundAt(state, what, id)
      return isKnown ? null : { ...at, lastGoodAt: readAt, because }
    }
    default:
      return null
  }
}

/** A whole list of a place, where it says more than the one before; null where it doesn't. */
export const listed = (
  toTell: RunningState['toTell'],
  { what, id, because, since, builds }: Omit<HandedOverFound, 'type'>,
): HandedOverFound | null => {
  const before = toTell[keyOf(what, id)]
  const known = new Set(before?.builds.map(({ build }) => build))
  const more = builds.filter(({ build }) => !known.has(build))
  // What was handed over while a date held, or of an earlier load, is no worse by what is found now.
  const isOfListed = builds.some(({ build }) => known.has(build))
  const isWorse =
    before !== undefined && isMissed(before.because) && !isMissed(because) && isOfListed
  return more.length === 0 && !isWorse
    ? null
    : {
        type: 'handedOverFound',
        what,
        id,
        because: before && !isMissed(before.because) ? before.because : because,
        since: Math.min(since, before?.since ?? since),
        builds: [...(before?.builds ?? []), ...more],
      }
}

/** A batch that was never good, in whatever pan it was: those that no pan has named yet. */
const ofBatch = (
  state: RunningState,
  toTell: RunningState['toTell'],
  event: ServiceEvent,
  named: ReadonlySet<string>,
): HandedOverFound | null => {
  if (event.type !== 'discardSignedOff' || event.what !== 'batch') return null
  const { what, id, reason } = event
  if (reason !== 'not-cooked' && reason !== 'not-cooled') return null
  const { finishedAt, startedAt } = state.batches[id] ?? { finishedAt: null, startedAt: 0 }
  const builds = handedOverOfBatch(state, id).filter(({ build }) => !named.has(build))
  return listed(toTell, { what, id, because: reason, since: finishedAt ?? startedAt, builds })
}

/** While only a reading is missed made food goes on: what is handed over then joins the list. */
const joining = (
  state: RunningState,
  toTell: RunningState['toTell'],
  { ticket, letter }: BuildHandedOver,
  now: number,
): readonly HandedOverFound[] => {
  const build = findBuild(state, ticket, letter)
  if (!build) return []
  const one: HandedOverBuild = { build: buildName(ticket, letter), at: now }
  return allStock(state).flatMap(({ what, id, stock: { offSale } }) => {
    if (!offSale || !isMissed(offSale.why)) return []
    const because = offSale.why
    const suspect = { what, id, lastGoodAt: offSale.lastGoodAt }
    if (!isMadeWith(state, build, suspect)) return []
    const since = notKnownSince(state, suspect)
    return listed(toTell, { what, id, because, since, builds: [one] }) ?? []
  })
}

/** A reading that was only late: nothing bad was read, so there is nothing to tell. */
const goodAgain = (
  state: RunningState,
  toTell: RunningState['toTell'],
  { what, id }: Place,
): readonly HandedOverEvent[] => {
  const entry = toTell[keyOf(what, id)]
  const placed = placeOf(state, { what, id })
  if (entry?.because !== 'reading-missed' || !placed) return []
  // What was made of an earlier load nobody read again.
  if (entry.since < placed.since) return []
  const builds = entry.builds.map(({ build }) => build)
  return [{ type: 'handedOverAnswered', what, id, answer: 'good-again', builds }]
}

/** Lists of builds that were handed over with food of which something is found, or found good again. */
export const handedOverLists: Consequence = {
  name: 'handed-over-lists',
  reads: ['pans', 'backupPans', 'batches', 'tickets', 'past', 'toThrowOut'],
  follow: ({ before, after, events, known: { now, due = now } }) => {
    const { toTell } = after
    const found = events.flatMap((event) => {
      const finding = findingOf(before, event, due)
      if (!finding) return []
      const { what, id, because } = finding
      const since = notKnownSince(before, finding)
      const builds = handedOverWith(before, finding)
      return listed(toTell, { what, id, because, since, builds }) ?? []
    })
    const named = new Set(
      // A list of anything else than food says nothing of a batch.
      [...Object.values(toTell), ...found]
        .filter(({ what, because }) => (what === 'pan' || what === 'backup') && !isMissed(because))
        .flatMap(({ builds }) => builds.map(({ build }) => build)),
    )
    const more = events.flatMap((event): readonly HandedOverEvent[] => {
      if (event.type === 'buildHandedOver') return joining(before, toTell, event, now)
      if (event.type === 'temperatureRead' && event.lifts === true)
        return goodAgain(before, toTell, event)
      const found = ofBatch(before, toTell, event, named)
      return found ? [found] : []
    })
    return [...found, ...more]
  },
}
