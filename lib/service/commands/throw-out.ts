import { z } from 'zod'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
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
import type { ServiceEvent } from '#lib/service/event.ts'
import { DISCARD_REASONS, type DiscardReason } from '#lib/service/food-event.ts'
import type { HeldStock } from '#lib/service/food-state.ts'
import { allStock, stockOf, throwOutKey } from '#lib/service/held-stock.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { madeToThrowOut, panHolds, stopsFor } from '#lib/service/thrown-out.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'

export const throwOutSchema = z.strictObject({
  type: z.literal('throwOut'),
  what: z.enum(['pan', 'backup', 'batch', 'build', 'rest']),
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

/** For these it was never good since it was loaded. */
const NEVER_GOOD: readonly DiscardReason[] = ['not-cooled', 'not-cooked']

const lastGood = ({ offSale, readings }: HeldStock, reason: DiscardReason): number | null => {
  if (NEVER_GOOD.includes(reason)) return null
  return offSale ? offSale.lastGoodAt : (readings.at(-1)?.at ?? null)
}

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
  const suspect = { what, id, lastGoodAt: lastGood(stock, reason) }
  // What is past its time or date binds what was made of it by that time itself.
  const isBad = NEVER_GOOD.includes(reason) || reason === 'out-of-limits'
  const takesAlong = stock.offSale !== null || (isNew && isBad)
  const events = [
    { type: 'discardSignedOff', what, id, amount: away, reason } as const,
    ...(isNew ? stopsFor(state, [id]) : []),
    ...(takesAlong ? madeToThrowOut(state, suspect, 'out-of-limits') : []),
  ]
  return happened(...withHolds(state, events, circumstances))
}

const throwOutBuild = (
  state: RunningState,
  { id, reason }: ThrowOut,
  circumstances: Circumstances,
): Decision => {
  const { ticket, letter } = namedBuild(id)
  const build = findBuild(state, ticket, letter)
  if (!build) return refuse({ code: 'no-such-build', build: id })
  const signed = { type: 'discardSignedOff', what: 'build', id, amount: 0, reason } as const
  if (build.state !== 'made')
    return state.toThrowOut[throwOutKey('build', id)]
      ? happened(signed)
      : refuse({ code: 'wrong-state', build: id, state: build.state })
  // What was bound was made before, and thrown out with its hold: this one is another.
  const bound = state.toThrowOut[throwOutKey('build', id)]
  if (bound && build.since > bound.since) return happened(signed)
  if (build.hold) return refuse({ code: 'build-held', build: id, reason: build.hold.reason })
  const event = { type: 'buildRemade', ticket, letter, from: 'made' } as const
  const again = madeAgain(state, build, event, id, circumstances)
  return 'refusal' in again ? again : happened(signed, ...again.events)
}

/** Of one making, a ton or so many pieces and no more. */
const MOST_OF_BATCH = 1_000_000_000

/** What was loaded of a batch that was never good isn't sold on either: the person in charge decides. */
const panOf = (state: RunningState, batch: string): readonly ServiceEvent[] =>
  allStock(state)
    .filter(
      ({ stock }) =>
        stock.amount > 0 &&
        (stock.offSale === null ||
          stock.offSale.lastGoodAt !== null ||
          stock.offSale.why !== 'out-of-limits') &&
        stock.batches.includes(batch),
    )
    .flatMap(({ what, id }) => [
      { type: 'takenOffSale', what, id, why: 'out-of-limits', lastGoodAt: null } as const,
      ...panHolds(state, { what, id, lastGoodAt: null }),
    ])

const throwOutBatch = (
  state: RunningState,
  { id, reason, amount }: ThrowOut,
  circumstances: Circumstances,
): Decision => {
  const batch = Object.hasOwn(state.batches, id) ? state.batches[id] : undefined
  if (!batch) return refuse({ code: 'no-such-batch', batch: id })
  if (batch.thrownOutAt !== null) return refuse({ code: 'already-so' })
  const left = leftOfBatch(batch)
  const most = batch.finishedAt === null ? MOST_OF_BATCH : left * 2
  const away = amount ?? left
  if (!Number.isSafeInteger(away) || away < 0 || away > most)
    return refuse({ code: 'absurd-amount', pan: batch.component, most })
  const signed = { type: 'discardSignedOff', what: 'batch', id, amount: away, reason } as const
  if (!NEVER_GOOD.includes(reason)) return happened(signed)
  return happened(...withHolds(state, [signed, ...panOf(state, id)], circumstances))
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
export const decideThrowOut = (
  state: ServiceState,
  command: ThrowOut,
  circumstances: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    const { what } = command
    if (command.initials === undefined) return refuse({ code: 'not-initialled' })
    if (what === 'pan' || what === 'backup')
      return throwOutPan(running, { ...command, what }, circumstances)
    if (what === 'build') return throwOutBuild(running, command, circumstances)
    return what === 'batch'
      ? throwOutBatch(running, command, circumstances)
      : throwOutRest(running, command)
  })
