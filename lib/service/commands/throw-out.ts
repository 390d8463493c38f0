import { z } from 'zod'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { DISCARD_REASONS } from '#lib/service/food-event.ts'
import { allStock, stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import { INVENTED_INITIALS } from '#lib/service/invented-readings.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'

const fields = {
  what: z.enum(['pan', 'backup', 'batch', 'build', 'rest']),
  /** A build by its name, 21A. */
  id: idField,
  /** What was thrown out, where it was weighed or counted; else all that was counted to be there. */
  amount: amountField.optional(),
  reason: z.enum(DISCARD_REASONS),
  initials: initialsField,
}

type ThrowOut = Told<typeof fields>

const throwOutPan = (
  state: RunningState,
  { what, id, reason, amount }: ThrowOut & { readonly what: 'pan' | 'backup' },
): Decision => {
  const stock = stockOf(state, what, id)
  if (!stock) return refuse({ code: 'unknown', what, id })
  const isBound = state.toThrowOut[throwOutKey(what, id)] !== undefined
  if (stock.amount <= 0 && !isBound && stock.offSale === null)
    return refuse({ code: 'nothing-there', id })
  const most = Math.max(stock.amount * 2, stock.full)
  const away = amount ?? stock.amount
  if (!Number.isSafeInteger(away) || away < 0 || away > most)
    return refuse({ code: 'absurd-amount', pan: id, most })
  return happened({ type: 'discardSignedOff', what, id, amount: away, reason })
}

const throwOutBuild = (state: RunningState, { id, reason }: ThrowOut): Decision => {
  const { ticket, letter } = namedBuild(id)
  const build = findBuild(state, ticket, letter)
  if (!build) return refuse({ code: 'unknown', what: 'build', id })
  const signed = { type: 'discardSignedOff', what: 'build', id, amount: 0, reason } as const
  if (build.state !== 'made')
    return state.toThrowOut[throwOutKey('build', id)]
      ? happened(signed)
      : refuse({ code: 'wrong-state', build: id, state: build.state })
  // What was bound was made before, and thrown out with its hold: this one is another.
  const bound = state.toThrowOut[throwOutKey('build', id)]
  if (bound && build.since > bound.since) return happened(signed)
  if (build.hold) return refuse({ code: 'build-held', build: id, reason: build.hold.reason })
  return happened(signed, { type: 'buildRemade', ticket, letter, from: 'made' })
}

/** Of one making, a ton or so many pieces and no more. */
const MOST_OF_BATCH = 1_000_000_000

const throwOutBatch = (state: RunningState, { id, reason, amount }: ThrowOut): Decision => {
  const batch = Object.hasOwn(state.batches, id) ? state.batches[id] : undefined
  if (!batch) return refuse({ code: 'unknown', what: 'batch', id })
  if (batch.thrownOutAt !== null) return refuse({ code: 'already-so' })
  const left = leftOfBatch(batch)
  const most = batch.finishedAt === null ? MOST_OF_BATCH : left * 2
  const away = amount ?? left
  if (!Number.isSafeInteger(away) || away < 0 || away > most)
    return refuse({ code: 'absurd-amount', pan: batch.component, most })
  return happened({ type: 'discardSignedOff', what: 'batch', id, amount: away, reason })
}

const throwOutRest = (state: RunningState, { id, reason, amount }: ThrowOut): Decision => {
  const rest = state.toThrowOut[throwOutKey('rest', id)]?.rest
  if (!rest) return refuse({ code: 'nothing-there', id })
  const most = rest.amount * 2
  const away = amount ?? rest.amount
  if (!Number.isSafeInteger(away) || away < 0 || away > most)
    return refuse({ code: 'absurd-amount', pan: rest.component, most })
  return happened({ type: 'discardSignedOff', what: 'rest', id, amount: away, reason })
}

/**
 * Somebody initials that food was thrown out: what was to be, or what is before its time. A made
 * build that was is made again.
 */
export const throwOut = defineCommand({
  type: 'throwOut',
  who: ['assembly', 'hand-over'],
  stages: ['open'],
  schema: fields,
  decide: (state, command) => {
    const { what } = command
    if (command.initials === undefined) return refuse({ code: 'not-initialled' })
    if (what === 'pan' || what === 'backup') return throwOutPan(state, { ...command, what })
    if (what === 'build') return throwOutBuild(state, command)
    return what === 'batch' ? throwOutBatch(state, command) : throwOutRest(state, command)
  },
  sample: (state) =>
    allStock(state).map(
      ({ what, id }) => ({ what, id, reason: 'quality', initials: INVENTED_INITIALS }) as const,
    ),
  rules: ['F19', 'B16', 'B21', 'B33'],
  example: { what: 'pan', id: 'pan-rice', reason: 'past-time', initials: 'KT' },
  tells:
    ' (`what`: `pan`, `backup`, `batch`, `build`, or `rest`, what was taken out of a pan on a clock; `reason`: `past-time`, `past-date`, `out-of-limits`, `not-cooled`, `not-cooked`, `quality`, `left-over` or `other`; `amount` where it was weighed)',
})
