/**
 * A half-typed order as text, for a page that is loaded anew. A guest's needs are in it, since
 * without them it could go on as if nothing had been told; a name and a reason are not.
 */

import { knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import type { Draft } from '#lib/rooms/orders/facts/draft.ts'
import { withKept } from '#lib/rooms/orders/views/asking.ts'
import { needTold } from '#lib/rooms/orders/views/changing.ts'
import { type KeptDraft, type KeptOrder, keptFrom } from '#lib/rooms/orders/views/kept-shape.ts'
import { goTo, isUntouched } from '#lib/rooms/orders/views/order-answered.ts'
import { IDLE, type Ordering, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { isOpenToChange } from '#lib/rooms/orders/views/tickets-to-change.ts'
import type { Selling } from '#lib/rooms/pans/facts/selling.ts'
import { findBuild } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { findItem } from '#lib/station/find.ts'

const keptDraft = ({ asked, needs, asSaid = [], item, base, wishes, said }: Draft): KeptDraft => ({
  asked,
  needs: needs.map(({ code, handling, reason }) => ({
    code,
    handling,
    hadReason: reason !== null,
  })),
  asSaid,
  item,
  base,
  wishes,
  // A key tells reasons, too; with one the needs are asked about again, and all of it is said anew.
  said: said && needs.some(({ reason }) => reason !== null) ? '' : (said?.key ?? null),
})

/** null where there is nothing to keep: nothing is typed, and no number is yet to be told. */
export const orderToKeep = (ordering: Ordering, service: string): string | null => {
  const { step, drafts, current, paid, changing, telling, arrived, sending } = ordering
  const isTyped = sending === null && !isUntouched({ ...ordering, step: 'ask' })
  if (!isTyped && arrived.length === 0) return null
  const kept: KeptOrder = {
    shape: 1,
    service,
    arrived,
    order: isTyped
      ? {
          step:
            step === 'choose' || step === 'others' ? step : step === 'turned' ? 'choose' : 'ask',
          drafts: drafts.map(keptDraft),
          current,
          paid,
          changing,
          telling,
        }
      : null,
  }
  return JSON.stringify(kept)
}

/** As it was told; whose reason isn't known any more is kept apart, and is asked about again. */
const needsOf = (kept: KeptDraft['needs'], own: readonly Need[]): readonly Need[] =>
  withKept(
    kept.map(({ code, handling, hadReason }): Need => {
      const accepted = own.find((one) => one.code === code)
      if (accepted?.handling === handling) return accepted
      return { code, handling: hadReason ? 'keep-apart' : handling, reason: null }
    }),
    own,
  )

const isReasonLost = ({ needs }: KeptDraft, own: readonly Need[]): boolean =>
  needs.some(
    ({ code, handling, hadReason }) =>
      hadReason && !own.some((one) => one.code === code && one.handling === handling),
  )

/** What was read back counts as read only while it is the same; else all of it is new. */
const withReadings = (ordering: Ordering, kept: readonly KeptDraft[], state: Selling): Ordering => {
  const all = settleAll(ordering, state)
  const drafts = ordering.drafts.map((draft, index): Draft => {
    const key = kept[index]?.said ?? null
    const reading = all[index]?.reading ?? null
    if (key === null) return draft
    return { ...draft, said: reading?.key === key ? reading : { key, statements: [], said: [] } }
  })
  return { ...ordering, drafts }
}

const typed = (kept: NonNullable<KeptOrder['order']>, state: Selling): Ordering | null => {
  const { changing, telling, paid, step } = kept
  const at = changing ?? telling
  const build = at && findBuild(state, at.ticket, at.letter)
  if (at && (!build || (changing && !isOpenToChange(build)))) return null
  if (kept.drafts.some(({ item }) => item !== null && !findItem(state.station, item))) return null
  const own = build ? knownNeeds(build) : []
  const drafts = kept.drafts.map(
    ({ asked, needs, asSaid, item, base, wishes }): Draft => ({
      asked,
      needs: needsOf(needs, own),
      asSaid,
      item,
      base,
      wishes,
      said: null,
      agreed: null,
      accepted: null,
    }),
  )
  const ordering: Ordering = { ...IDLE, drafts, paid, changing, telling }
  if (telling) {
    if (step !== 'others') return ordering
    const { asked = 'none', needs = [] } = build?.hold?.told ?? {}
    return asked === 'none' ? null : needTold(ordering, { asked, needs }, state)
  }
  const lost = kept.drafts.findIndex((one) => isReasonLost(one, own))
  const isLost = lost !== -1
  const open = goTo(ordering, isLost ? lost : kept.current)
  const there = withReadings(open, kept.drafts, state)
  return isLost || step === 'ask' ? { ...there, step: 'ask' } : there
}

/**
 * What a page that was loaded anew goes on with; null where the text isn't one of ours, is of
 * another service, or tells nothing that still holds. Acceptances and the guest's agreement are
 * asked for again.
 */
export const restoredOrder = (text: string | null, state: Selling): Ordering | null => {
  const kept = text === null ? null : keptFrom(text)
  if (!kept || kept.service !== state.service) return null
  const order = kept.order && typed(kept.order, state)
  if (!order && kept.arrived.length === 0) return null
  return { ...(order ?? IDLE), arrived: kept.arrived }
}
