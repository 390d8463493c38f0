/** How long a guest waits, as it is said to them. */

import { type Wait, waitFor } from '#lib/estimate/wait.ts'
import { waitNow } from '#lib/rooms/pans/facts/wait-now.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** Whole minutes, at least 1; equal where one number says it. */
export type Minutes = Wait['minutes']

/** Of an order of so many builds that is sent now; null without an assembler. */
export const waitIfSent = (state: RunningState, builds: number): Minutes | null =>
  waitNow(state, builds)?.minutes ?? null

/** Of a ticket that was sent, until all of it is made; null from then on. */
export const waitOfTicket = (state: RunningState, number: number): Minutes | null => {
  const queue = { before: 0, making: 0, own: 0 }
  for (const { ticket, build } of openBuilds(state)) {
    const isOwn = ticket.number === number
    if (build.state === 'waiting' && ticket.number <= number) queue[isOwn ? 'own' : 'before'] += 1
    if (build.state === 'making') queue[isOwn ? 'own' : 'making'] += 1
  }
  if (queue.own === 0) return null
  return waitFor(state.buildTimes, queue, state.assemblers)?.minutes ?? null
}
