import { bare } from '#lib/service/events/bare.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { type Due, type DueWith, fallDue } from '#lib/spine/due.ts'

/** What has fallen due by now, each with the moment at which it did. */
export const due = (state: ServiceState, now: number, known: DueWith = {}): readonly Due[] =>
  fallDue(state, now, 0, known).recorded.map((one) => ({ due: one.due ?? now, event: bare(one) }))
