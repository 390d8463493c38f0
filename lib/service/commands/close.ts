import { z } from 'zod'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { notYetClosed } from '#lib/service/not-yet-closed.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const closeSchema = z.strictObject({ type: z.literal('close') })
export const confirmClockSchema = z.strictObject({ type: z.literal('confirmClock') })

/** Closing is refused for the first thing that stands in its way. */
export const decideClose = (state: ServiceState, { now }: Circumstances): Decision =>
  whenOpen(state, (running) => {
    const [first] = notYetClosed(running, now)
    return first ? refuse(first) : happened({ type: 'serviceClosed', why: 'by-hand' })
  })

export const decideConfirmClock = (state: ServiceState): Decision =>
  whenOpen(state, (running) =>
    running.clockJump === null
      ? refuse({ code: 'already-so' })
      : happened({ type: 'clockConfirmed' }),
  )
