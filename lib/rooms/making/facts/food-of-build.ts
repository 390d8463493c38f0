/** What a build's food says of when it may be sold, started, finished and handed over. */

import { waitFor } from '#lib/estimate/wait.ts'
import { clockDoubtOf } from '#lib/rooms/food/facts/clock-doubt.ts'
import { offSaleBecause } from '#lib/rooms/food/facts/off-sale.ts'
import { wantedFrom } from '#lib/rooms/pans/facts/behind.ts'
import { type PastByThen, pastByThen } from '#lib/rooms/pans/facts/by-then.ts'
import type { Lacking } from '#lib/rooms/pans/facts/levels.ts'
import { sellingUntil } from '#lib/rooms/pans/facts/selling.ts'
import type { Withdrawal } from '#lib/rooms/pans/facts/short.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { type MadeUntil, madeUntil } from '#lib/safety/time-control.ts'
import { lastsUntil, limitsOf } from '#lib/service/food-limits.ts'
import {
  boundAt,
  componentIn,
  isUsable,
  stockOf,
  usableIn,
  whereIs,
} from '#lib/service/held-stock.ts'
import type { NotLeft } from '#lib/service/refusal.ts'
import { shelfNow } from '#lib/service/shelf.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'

const lineOf = (state: RunningState, component: string): readonly string[] =>
  linePansOf(state.station, component).map(({ id }) => id)

/** Whether food of a component stands on the line that may not be sold, and isn't to be thrown out. */
export const isOffSale = (state: RunningState, component: string): boolean =>
  lineOf(state, component).some(
    (id) =>
      (state.pans[id]?.amount ?? 0) > 0 &&
      !isUsable(state, 'pan', id) &&
      boundAt(state, 'pan', id) === undefined,
  )

/** Why there isn't enough of a component. */
export const goneBecause = (state: RunningState, { component, endsAt }: Lacking): NotLeft => {
  if (endsAt !== null) return { code: 'past-throw-out-by-then', component, at: endsAt }
  return isOffSale(state, component)
    ? offSaleBecause(component, clockDoubtOf(state, component))
    : { code: 'sold-out', component }
}

/** What is in the making may hold food that is off sale: it waits until that is resolved. */
export const couldBeOffSale = (state: RunningState, build: Build): string | null => {
  const { line } = wantedFrom(state, build.choice, build.takes)
  for (const [component, amount] of Object.entries(line)) {
    if (amount <= 0 || !isOffSale(state, component)) continue
    const usable = lineOf(state, component).reduce((sum, id) => sum + usableIn(state, 'pan', id), 0)
    if (usable < amount) return component
  }
  return null
}

/** Whether a build that is started now would be finished past the time of something it takes. */
export const pastIfStarted = (
  state: RunningState,
  build: Build,
  now: number,
): PastByThen | null => {
  const wait = waitFor(state.buildTimes, { before: 0, making: 0, own: 1 }, 1)
  const then = sellingUntil(state, now, now + (wait?.late ?? 0) * 1000)
  return pastByThen(then, wantedFrom(state, build.choice, build.takes))
}

/**
 * Until when made food may wait and be handed over, by its shelf and all that it took. What was taken
 * beyond the counts came out of some pan of its component: the first to go governs.
 * @param boundTo throw-out time of what was made of it before and taken back
 */
export const untilOf = (
  state: RunningState,
  { took, uncounted }: Withdrawal,
  madeAt: number,
  boundTo: number | null = null,
): MadeUntil => {
  const { shelf } = state.station.safety
  const behind = took.filter(({ pan }) => whereIs(state, pan) === 'backup')
  const beyond = Object.keys(uncounted).flatMap((component) =>
    behind.some(({ pan }) => componentIn(state.station, pan) === component)
      ? []
      : lineOf(state, component),
  )
  const taken = [...took.map(({ pan }) => pan), ...beyond].map((pan) => {
    const what = whereIs(state, pan)
    const stock = what && stockOf(state, what, pan)
    return stock ? lastsUntil(state, stock) : null
  })
  return madeUntil(
    {
      madeAt,
      taken: [...taken, boundTo],
      shelfHeld: shelfNow(state),
      collectWithinMs: shelf.collectWithinMin * MINUTE_MS,
    },
    limitsOf(state.station),
  )
}
