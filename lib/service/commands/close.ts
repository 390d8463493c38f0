import { z } from 'zod'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

export const closeSchema = z.strictObject({ type: z.literal('close') })
export const confirmClockSchema = z.strictObject({ type: z.literal('confirmClock') })

/** Closing leaves no guest standing: every build is handed over or cancelled, every guest found. */
export const decideClose = (state: ServiceState): Decision =>
  whenOpen(state, (running) => {
    const count = openBuilds(running).length
    if (count > 0) return refuse({ code: 'builds-open', count })
    const toFind = Object.keys(running.toFind).length
    return toFind > 0
      ? refuse({ code: 'guests-to-find', count: toFind })
      : happened({ type: 'serviceClosed', why: 'by-hand' })
  })

export const decideConfirmClock = (state: ServiceState): Decision =>
  whenOpen(state, (running) =>
    running.clockJump === null
      ? refuse({ code: 'already-so' })
      : happened({ type: 'clockConfirmed' }),
  )
