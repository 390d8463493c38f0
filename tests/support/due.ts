import { bare } from '#lib/service/bare.ts'
import { type Due, type DueWith, fallDue } from '#lib/service/due.ts'
import type { ServiceState } from '#lib/service/state.ts'

/** What has fallen due by now, each with the moment at which it did. */
export const due = (state: ServiceState, now: number, known: DueWith = {}): readonly Due[] =>
  fallDue(state, now, 0, known).recorded.map((one) => ({ due: one.due ?? now, event: bare(one) }))
