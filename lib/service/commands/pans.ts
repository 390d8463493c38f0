import { z } from 'zod'
import { findPan } from '#lib/menu/find.ts'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import type { PanState, RunningState, ServiceState } from '#lib/service/state.ts'
import { mostInPan } from '#lib/stock/capacity.ts'

export const loadSchema = z.strictObject({
  type: z.literal('load'),
  pan: idField,
  amount: amountField,
})
export const changePanSchema = z.strictObject({
  type: z.literal('changePan'),
  pan: idField,
  amount: amountField,
})
export const correctSchema = z.strictObject({
  type: z.literal('correct'),
  pan: idField,
  amount: amountField,
})

const onPan = (
  state: ServiceState,
  command: { readonly pan: string; readonly amount: number },
  atLeast: number,
  decide: (pan: PanState, state: RunningState) => Decision,
): Decision =>
  whenOpen(state, (running) => {
    const place = findPan(running.station, command.pan)
    const pan = running.pans[command.pan]
    if (!place || !pan) return refuse({ code: 'no-such-pan', id: command.pan })
    const most = mostInPan(running, place)
    const { amount } = command
    if (!Number.isSafeInteger(amount) || amount < atLeast || amount > most)
      return refuse({ code: 'absurd-amount', pan: command.pan, most })
    return decide(pan, running)
  })

export const decideLoad = (state: ServiceState, command: z.infer<typeof loadSchema>): Decision =>
  onPan(state, command, 1, (pan) =>
    pan.amount > 0
      ? refuse({ code: 'pan-not-empty', pan: command.pan })
      : happened({ type: 'panLoaded', pan: command.pan, amount: command.amount }),
  )

export const decideChangePan = (
  state: ServiceState,
  command: z.infer<typeof changePanSchema>,
): Decision =>
  onPan(state, command, 1, (pan) =>
    happened({
      type: 'panChanged',
      pan: command.pan,
      takenAway: pan.amount,
      amount: command.amount,
    }),
  )

export const decideCorrect = (
  state: ServiceState,
  command: z.infer<typeof correctSchema>,
): Decision =>
  onPan(state, command, 0, (pan) =>
    pan.amount === command.amount
      ? refuse({ code: 'already-so' })
      : happened({
          type: 'countCorrected',
          pan: command.pan,
          from: pan.amount,
          to: command.amount,
        }),
  )
