/** What had left the hot or cold shelf of made food by the time that something is found of it. */

import { shelfNext } from '#lib/rooms/food/facts/shelf-reading.ts'
import { handedOverSince } from '#lib/rooms/shelf/facts/handed-over-with.ts'
import type { Consequence, Happened } from '#lib/service/consequence.ts'
import type { BuildHandedOver, ServiceEvent } from '#lib/service/events/event.ts'
import type {
  FoundBecause,
  HandedOverBuild,
  HandedOverEvent,
} from '#lib/service/events/handed-over-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { keyOf } from '#lib/service/held-stock.ts'
import { SHELF } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild } from '#lib/service/tickets.ts'
import { listed } from '#lib/spine/consequences/handed-over-lists.ts'

interface Found {
  readonly because: FoundBecause
  readonly since: number
  readonly builds: readonly HandedOverBuild[]
}

const foundOf = (state: RunningState, because: FoundBecause, since: number | null): Found | null =>
  since === null ? null : { because, since, builds: handedOverSince(state, since) }

/** While only a reading is missed what stood there by then may go on: it joins the list as it leaves. */
const joining = (
  state: RunningState,
  { ticket, letter }: BuildHandedOver,
  at: number,
): Found | null => {
  const missed = state.shelf?.missed
  const madeAt = findBuild(state, ticket, letter)?.madeAt
  // Whatever is made after that counts as at room temperature from the start.
  if (!missed || madeAt === undefined || madeAt > missed.since) return null
  const builds = [{ build: buildName(ticket, letter), at }]
  return { because: 'reading-missed', since: missed.lastGoodAt, builds }
}

/**
 * Of a shelf that nobody knew to be hot or cold, as it is while it is off sale, nothing is found: its
 * 4 hours allowed what left it.
 */
const findingOf = (before: RunningState, event: ServiceEvent, now: number): Found | null => {
  const { goodAt = null, missed } = before.shelf ?? {}
  switch (event.type) {
    case 'shelfRead':
      return foundOf(before, 'out-of-limits', goodAt ?? missed?.lastGoodAt ?? null)
    case 'shelfReadingMissed':
      return foundOf(before, 'reading-missed', event.lastGoodAt ?? null)
    case 'buildHandedOver':
      return joining(before, event, now)
    default:
      return null
  }
}

/**
 * A reading in limits that was only late: told before what left could have been out for 4 hours, and
 * before the next one is due. What left in an earlier gap stays listed.
 */
const goodAgain = ({ before, after, known: { now } }: Happened): readonly HandedOverEvent[] => {
  const entry = after.toTell[keyOf('shelf', SHELF)]
  const missed = before.shelf?.missed
  const next = shelfNext(after)
  if (!missed || !next || entry?.because !== 'reading-missed') return []
  const { withinMs } = limitsOf(after.station).timeOnly4h
  const isSoon = now - missed.lastGoodAt < withinMs && now < next.dueAt
  if (!isSoon || entry.since < missed.lastGoodAt) return []
  const builds = entry.builds.map(({ build }) => build)
  return [{ type: 'handedOverAnswered', what: 'shelf', id: SHELF, answer: 'good-again', builds }]
}

export const shelfLists: Consequence = {
  name: 'shelf-lists',
  reads: ['shelf', 'tickets'],
  follow: (happened) => {
    const { before, after, events, known } = happened
    return events.flatMap((event): readonly HandedOverEvent[] => {
      if (event.type === 'shelfRead' && event.inLimits) return goodAgain(happened)
      const found = findingOf(before, event, known.now)
      const list = found && listed(after.toTell, { what: 'shelf', id: SHELF, ...found })
      return list ? [list] : []
    })
  },
}
