/** What stands between an order and its being sent, and the command that sends it. */

import type { ChangeCommand } from '#lib/rooms/orders/commands/change.ts'
import type { SendCommand } from '#lib/rooms/orders/commands/send.ts'
import {
  type Ordering,
  type SettledDraft,
  settleAll,
  toSayAgain,
} from '#lib/rooms/orders/views/ordering.ts'
import { isKeptApart } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'

/** The one thing to do next; `index` is the build that it is about. */
export type NextStep =
  /** Not asked, nothing chosen, or it can't be made. */
  | { readonly step: 'order'; readonly index: number }
  /** Several bases fit equally: the guest chooses. */
  | { readonly step: 'base'; readonly index: number; readonly bases: readonly string[] }
  | { readonly step: 'say-again'; readonly index: number }
  /** Nobody in charge is signed on, and something is kept apart. */
  | { readonly step: 'sign-on'; readonly index: number }
  /** The person in charge accepts its cautions with the guest. */
  | { readonly step: 'accept'; readonly index: number }
  /** The guest reads the turned screen and agrees. */
  | { readonly step: 'turn'; readonly index: number }
  | { readonly step: 'send' }

type Settled = NonNullable<SettledDraft['settled']>

const isReady = (settled: Settled | null): settled is Settled =>
  settled !== null && settled.blocked === null && settled.choice.asked !== 'not-sure'

const isAccepted = ({ toAccept, choice }: Settled): boolean =>
  toAccept.length === 0 || choice.caution !== null

/** What has to be done next before the order is sent, the build in sight before the others. */
export const nextStep = (ordering: Ordering, state: RunningState): NextStep => {
  const all = settleAll(ordering, state).map(({ settled }) => settled)
  const first = (is: (settled: Settled | null) => boolean): number | null => {
    const current = all[ordering.current]
    if (current !== undefined && is(current)) return ordering.current
    const index = all.findIndex(is)
    return index === -1 ? null : index
  }
  const unready = first((one) => !isReady(one))
  if (unready !== null) return { step: 'order', index: unready }
  const choosing = first((one) => one !== null && one.toChoose.length > 0)
  if (choosing !== null)
    return { step: 'base', index: choosing, bases: all[choosing]?.toChoose ?? [] }
  const again = toSayAgain(ordering, settleAll(ordering, state))
  if (again !== null) return { step: 'say-again', index: again }
  const isApart = (one: Settled | null) => one !== null && isKeptApart(one.choice)
  const apart = first(isApart)
  if (apart !== null && state.inCharge === null) return { step: 'sign-on', index: apart }
  const asks = first((one) => one !== null && !isAccepted(one))
  if (asks !== null) return { step: 'accept', index: asks }
  const silent = first((one) => isApart(one) && one?.choice.agreed === false)
  if (silent !== null) return { step: 'turn', index: silent }
  return { step: 'send' }
}

/** The command that sends the order as it was read back; null while it can't be sent. */
export const commandOf = (
  ordering: Ordering,
  state: RunningState,
): SendCommand | ChangeCommand | null => {
  if (nextStep(ordering, state).step !== 'send') return null
  const all = settleAll(ordering, state)
  const builds = all.flatMap(({ settled }) => (settled ? [settled.choice] : []))
  const said = ordering.drafts.map((draft) => draft.said?.said ?? [])
  const [first] = builds
  if (!first) return null
  if (ordering.changing) {
    const { ticket, letter } = ordering.changing
    return { type: 'change', ticket, letter, to: first, readBack: true, said: said[0] ?? [] }
  }
  const name = ordering.name === '' ? {} : { name: ordering.name }
  return { type: 'send', builds, paid: ordering.paid, readBack: true, said, ...name }
}
