/** What has to be done about food now, by the rules of safety: told always, also in a rush. */

import type { SafetyReason } from '#lib/estimate/advice-reason.ts'
import type { Suggestion } from '#lib/estimate/station-forecast.ts'
import { batchReadBy } from '#lib/rooms/food/facts/batch-watch.ts'
import { coolingStay } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { coolingOf, holdingOf, practiceOf } from '#lib/rooms/food/facts/food-now.ts'
import { sanitizerNext } from '#lib/rooms/food/facts/sanitizer.ts'
import { shelfNext } from '#lib/rooms/food/facts/shelf-reading.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { nextMonitoring } from '#lib/safety/time-control.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import type { OffSale } from '#lib/service/food-state.ts'
import { boundAt, type StockKind } from '#lib/service/held-stock.ts'
import { allPlaces, componentAt, type Placed } from '#lib/service/place.ts'
import { onShelf, SHELF, shelfHeldBy } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

/** What comes first among duties; no cents. */
const RANK: Readonly<Record<SafetyReason['what'], number>> = {
  'throw-out': 7,
  'out-of-limits': 6,
  'reading-missed': 5,
  'cooling-due': 4,
  'throw-out-soon': 3,
  'reading-due': 2,
  collect: 1,
}

/** So long before its time is over it is said. Common practice, no source. */
const SOON_MS = 15 * MINUTE_MS
/** So long before a stage of cooling is over it is said. Common practice, no source. */
const COOLING_SOON_MS = 20 * MINUTE_MS

const duty = (reason: Omit<SafetyReason, 'why'>): Suggestion => ({
  key: `safety ${reason.what} ${reason.of} ${reason.id}`,
  kind: 'safety',
  saves: RANK[reason.what],
  reason: { why: 'safety', ...reason },
})

const whyOff = ({ why }: OffSale): SafetyReason['what'] =>
  why === 'reading-missed' || why === 'monitoring-missed' ? 'reading-missed' : 'out-of-limits'

const ofThrowOut = (state: RunningState): readonly Suggestion[] =>
  Object.values(state.toThrowOut).map(({ what, id, rest, because }) =>
    duty({
      because,
      what: 'throw-out',
      of: what,
      id,
      component: rest?.component ?? componentAt(state, what, id) ?? null,
      dueAt: null,
    }),
  )

/** What stands on the line or behind it, and may be sold. */
const ofStanding = (
  state: RunningState,
  place: Placed,
  stock: StockKind,
  now: number,
): readonly Suggestion[] => {
  const { id, component, food, readings } = place
  const at = { of: stock, id, component }
  const due: Suggestion[] = []
  const holding = holdingOf(state, stock, id, now)
  if (holding?.state === 'ask')
    due.push(duty({ ...at, what: 'reading-due', dueAt: holding.next.dueAt }))
  if (holding?.state === 'missed') due.push(duty({ ...at, what: 'reading-missed', dueAt: null }))
  const monitoring = food?.clock ? nextMonitoring(food.clock, readings) : null
  if (monitoring !== null && monitoring - now <= practiceOf(state.station).askBeforeMs)
    due.push(duty({ ...at, what: 'reading-due', dueAt: monitoring }))
  const until = lastsUntil(state, place)
  if (until !== null && until - now <= SOON_MS)
    due.push(duty({ ...at, what: 'throw-out-soon', dueAt: until }))
  return due
}

/** A batch, while it is made, cools or waits. */
const ofBatch = (state: RunningState, id: string, now: number): readonly Suggestion[] => {
  const batch = state.batches[id]
  if (!batch) return []
  const at = { of: 'batch' as const, id, component: batch.component }
  const cooling = coolingOf(state.station, batch, now)
  const isCooling = cooling?.state === 'first-stage' || cooling?.state === 'second-stage'
  const stay = coolingStay(state.station, batch, now)
  const away = stay?.isTooShort ? { awayFrom: stay.until } : {}
  if (isCooling && Math.min(cooling.dueAt, away.awayFrom ?? cooling.dueAt) - now <= COOLING_SOON_MS)
    return [duty({ ...at, what: 'cooling-due', dueAt: cooling.dueAt, ...away })]
  const readBy = batchReadBy(state, id, now)
  return readBy !== null && readBy - now <= practiceOf(state.station).askBeforeMs
    ? [duty({ ...at, what: 'reading-due', dueAt: readBy })]
    : []
}

const ofPlaces = (state: RunningState, now: number): readonly Suggestion[] =>
  allPlaces(state).flatMap((place): readonly Suggestion[] => {
    const { what, id, component, stage, offSale } = place
    if (stage === 'gone' || stage === 'empty' || boundAt(state, what, id)) return []
    if (offSale) {
      const cooled = offSale.why === 'cooling-missed' ? { because: 'not-cooled' as const } : {}
      return [duty({ of: what, id, component, what: whyOff(offSale), dueAt: null, ...cooled })]
    }
    return what === 'batch' ? ofBatch(state, id, now) : ofStanding(state, place, what, now)
  })

/** The shelf itself, where it is hot or cold: what stands there counts as room temperature without. */
const ofHeldShelf = (state: RunningState, now: number): readonly Suggestion[] => {
  if (shelfHeldBy(state) === null) return []
  const at = { of: 'shelf', id: SHELF, component: null } as const
  if (state.shelf?.offSale) return [duty({ ...at, what: 'out-of-limits', dueAt: null })]
  const next = shelfNext(state)
  if (!next)
    return onShelf(state).length > 0 ? [duty({ ...at, what: 'reading-missed', dueAt: null })] : []
  return now >= next.askAt ? [duty({ ...at, what: 'reading-due', dueAt: next.dueAt })] : []
}

/** What is wiped down with it isn't off sale: it comes behind food that is. */
const SANITIZER_OUT = RANK['cooling-due']

const ofSanitizer = (state: RunningState, now: number): readonly Suggestion[] => {
  const next = sanitizerNext(state)
  if (!next || (next.askAt !== null && now < next.askAt)) return []
  const at = { of: 'sanitizer', id: '@sanitizer', component: null } as const
  return state.sanitizer && state.sanitizer.problem !== null
    ? [{ ...duty({ ...at, what: 'out-of-limits', dueAt: null }), saves: SANITIZER_OUT }]
    : [duty({ ...at, what: 'reading-due', dueAt: next.dueAt })]
}

const ofShelf = (state: RunningState, now: number): readonly Suggestion[] =>
  openBuilds(state).flatMap(({ ticket, build }): Suggestion[] => {
    const id = buildName(ticket.number, build.letter)
    if (build.state !== 'made' || !build.until || now < build.until.collectBy) return []
    if (boundAt(state, 'build', id) !== undefined) return []
    return [
      duty({ what: 'collect', of: 'build', id, component: null, dueAt: build.until.collectBy }),
    ]
  })

export const safetyDue = (state: RunningState, now: number): readonly Suggestion[] => [
  ...ofThrowOut(state),
  ...ofPlaces(state, now),
  ...ofHeldShelf(state, now),
  ...ofSanitizer(state, now),
  ...ofShelf(state, now),
]
