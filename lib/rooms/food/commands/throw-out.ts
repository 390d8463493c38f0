import { z } from 'zod'
import { INVENTED_INITIALS } from '#lib/rooms/food/facts/invented-readings.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { amountField, idField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { DISCARD_REASONS, PLACE_KINDS, type Place } from '#lib/service/events/food-event.ts'
import { allStock, boundAt } from '#lib/service/held-stock.ts'
import { noPlace, placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'

const fields = {
  what: z.enum([...PLACE_KINDS, 'build', 'rest']),
  /** A build by its name, 21A. */
  id: idField,
  /** What was thrown out, where it was weighed or counted; else all that was counted to be there. */
  amount: amountField.optional(),
  reason: z.enum(DISCARD_REASONS),
  initials: initialsField,
}

type ThrowOut = Told<typeof fields>

/** Of one making, a ton or so many pieces and no more. */
const MOST_OF_BATCH = 1_000_000_000

/** `called`: what a refusal names it by. */
const signOff = (
  { what, id, reason, amount }: ThrowOut,
  food: { readonly amount: number; readonly most: number; readonly called: string },
): Decision => {
  const away = amount ?? food.amount
  if (!Number.isSafeInteger(away) || away < 0 || away > food.most)
    return refuse({ code: 'absurd-amount', pan: food.called, most: food.most })
  return happened({ type: 'discardSignedOff', what, id, amount: away, reason })
}

const throwOutPlace = (state: RunningState, command: ThrowOut, place: Place): Decision => {
  const { what, id } = place
  const placed = placeOf(state, place)
  if (!placed) return refuse(noPlace(place))
  const { stage, amount, full, component, offSale } = placed
  if (stage === 'gone') return refuse({ code: 'already-so' })
  if (stage === 'empty' && !boundAt(state, what, id) && offSale === null)
    return refuse({ code: 'nothing-there', id })
  const most = stage === 'making' ? MOST_OF_BATCH : Math.max(amount * 2, full)
  return signOff(command, { amount, most, called: what === 'batch' ? component : id })
}

const throwOutBuild = (state: RunningState, { id, reason }: ThrowOut): Decision => {
  const { ticket, letter } = namedBuild(id)
  const build = findBuild(state, ticket, letter)
  if (!build) return refuse({ code: 'unknown', what: 'build', id })
  const signed = { type: 'discardSignedOff', what: 'build', id, amount: 0, reason } as const
  if (build.state !== 'made')
    return boundAt(state, 'build', id)
      ? happened(signed)
      : refuse({ code: 'wrong-state', build: id, state: build.state })
  // What was bound was made before, and thrown out with its hold: this one is another.
  const bound = boundAt(state, 'build', id)
  if (bound && build.since > bound.since) return happened(signed)
  if (build.hold) return refuse({ code: 'build-held', build: id, reason: build.hold.reason })
  return happened(signed, { type: 'buildRemade', ticket, letter, from: 'made' })
}

const throwOutRest = (state: RunningState, command: ThrowOut): Decision => {
  const rest = boundAt(state, 'rest', command.id)?.rest
  if (!rest) return refuse({ code: 'nothing-there', id: command.id })
  const { amount, component } = rest
  return signOff(command, { amount, most: amount * 2, called: component })
}

/**
 * Somebody initials that food was thrown out: what was to be, or what is before its time. A made
 * build that was is made again.
 */
export const throwOut = defineCommand({
  type: 'throwOut',
  who: ['assembly', 'hand-over'],
  stages: ['planned', 'open'],
  schema: fields,
  decide: (state, command) => {
    const { what, id } = command
    if (command.initials === undefined) return refuse({ code: 'not-initialled' })
    if (what === 'build') return throwOutBuild(state, command)
    return what === 'rest'
      ? throwOutRest(state, command)
      : throwOutPlace(state, command, { what, id })
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
