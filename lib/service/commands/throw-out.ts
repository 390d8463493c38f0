import { z } from 'zod'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { madeAgain } from '#lib/service/commands/make.ts'
import { withHolds } from '#lib/service/commands/with-holds.ts'
import { DISCARD_REASONS, type DiscardReason } from '#lib/service/food-event.ts'
import { stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { stopsFor } from '#lib/service/thrown-out.ts'
import { findBuild } from '#lib/service/tickets.ts'

export const throwOutSchema = z.strictObject({
  type: z.literal('throwOut'),
  what: z.enum(['pan', 'backup', 'batch', 'build']),
  /** A build by its name, 21A. */
  id: idField,
  /** What was thrown out, where it was weighed or counted; else all that was counted to be there. */
  amount: amountField.optional(),
  reason: z.enum(DISCARD_REASONS),
  initials: initialsField,
})

type ThrowOut = z.infer<typeof throwOutSchema>

/** Nobody eats on with what was thrown out for these. */
const UNSAFE: readonly DiscardReason[] = [
  'past-time',
  'past-date',
  'out-of-limits',
  'not-cooled',
  'not-cooked',
]

const throwOutPan = (
  state: RunningState,
  { what, id, reason, amount }: ThrowOut & { readonly what: 'pan' | 'backup' },
  circumstances: Circumstances,
): Decision => {
  const stock = stockOf(state, what, id)
  if (!stock)
    return refuse(what === 'pan' ? { code: 'no-such-pan', id } : { code: 'no-such-backup-pan', id })
  const isBound = state.toThrowOut[throwOutKey(what, id)] !== undefined
  if (stock.amount <= 0 && !isBound && stock.offSale === null)
    return refuse({ code: 'nothing-there', id })
  const most = Math.max(stock.amount * 2, stock.full)
  const away = amount ?? stock.amount
  if (!Number.isSafeInteger(away) || away < 0 || away > most)
    return refuse({ code: 'absurd-amount', pan: id, most })
  const isNew = (UNSAFE.includes(reason) || stock.offSale !== null) && !isBound
  const events = [
    { type: 'discardSignedOff', what, id, amount: away, reason } as const,
    ...(isNew ? stopsFor(state, [id]) : []),
  ]
  return happened(...withHolds(state, events, circumstances))
}

const throwOutBuild = (
  state: RunningState,
  { id, reason }: ThrowOut,
  circumstances: Circumstances,
): Decision => {
  const [, number = '', letter = ''] = /^(\d+)([A-Z]{1,2})$/.exec(id) ?? []
  const ticket = Number(number)
  const build = findBuild(state, ticket, letter)
  if (!build) return refuse({ code: 'no-such-build', build: id })
  const signed = { type: 'discardSignedOff', what: 'build', id, amount: 0, reason } as const
  if (build.state !== 'made')
    return state.toThrowOut[throwOutKey('build', id)]
      ? happened(signed)
      : refuse({ code: 'wrong-state', build: id, state: build.state })
  if (build.hold) return refuse({ code: 'build-held', build: id, reason: build.hold.reason })
  const event = { type: 'buildRemade', ticket, letter, from: 'made' } as const
  const again = madeAgain(state, build, event, id, circumstances)
  return 'refusal' in again ? again : happened(signed, ...again.events)
}

/**
 * Somebody initials that food was thrown out: what was to be, or what is before its time. A made
 * build that was is made again.
 */
export const decideThrowOut = (
  state: ServiceState,
  command: ThrowOut,
  circumstances: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    const { what, id, reason } = command
    if (command.initials === undefined) return refuse({ code: 'not-initialled' })
    if (what === 'pan' || what === 'backup')
      return throwOutPan(running, { ...command, what }, circumstances)
    if (what === 'build') return throwOutBuild(running, command, circumstances)
    const batch = Object.hasOwn(running.batches, id) ? running.batches[id] : undefined
    if (!batch) return refuse({ code: 'no-such-batch', batch: id })
    if (batch.thrownOutAt !== null) return refuse({ code: 'already-so' })
    return happened({ type: 'discardSignedOff', what, id, amount: 0, reason })
  })
