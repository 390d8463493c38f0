/** What a tap on the ask step makes of a guest's needs. */

import { type Ordering, withDraft } from '#lib/rooms/orders/views/ordering.ts'
import { type Need, type NeedCode, type Reason, usualHandling } from '#lib/station/codes/codes.ts'

const needFor = (code: NeedCode): Need => ({ code, handling: usualHandling(code), reason: null })

const has = (needs: readonly Need[], code: NeedCode): boolean =>
  needs.some((one) => one.code === code)

const without = (needs: readonly Need[], codes: readonly NeedCode[]): readonly Need[] =>
  needs.filter((one) => !codes.includes(one.code))

/** A tile: its need is told, or taken back with all its kinds. */
export const tapNeed = (
  needs: readonly Need[],
  code: NeedCode,
  kinds: readonly NeedCode[],
): readonly Need[] =>
  has(needs, code) || kinds.some((kind) => has(needs, kind))
    ? without(needs, [code, ...kinds])
    : [...needs, needFor(code)]

/** One kind only: the first one takes the whole group's place, the last one gives it back. */
export const tapKind = (
  needs: readonly Need[],
  group: NeedCode,
  kind: NeedCode,
  kinds: readonly NeedCode[],
): readonly Need[] => {
  if (!has(needs, kind)) return [...without(needs, [group]), needFor(kind)]
  const left = without(needs, [kind])
  return kinds.some((one) => has(left, one)) ? left : [...left, needFor(group)]
}

const changed = (
  needs: readonly Need[],
  code: NeedCode,
  change: (need: Need) => Partial<Need>,
): readonly Need[] =>
  needs.map((need) => (need.code === code ? { ...need, ...change(need) } : need))

export const otherHandling = (needs: readonly Need[], code: NeedCode): readonly Need[] =>
  changed(needs, code, ({ handling }) => ({
    handling: handling === 'keep-apart' ? 'leave-out' : 'keep-apart',
  }))

/**
 * A reason is told, or taken back by a second tap. Who has celiac disease keeps apart, unless the
 * guest then says otherwise: a reason by itself decides nothing.
 */
export const tapReason = (
  needs: readonly Need[],
  code: NeedCode,
  reason: Reason,
): readonly Need[] =>
  changed(needs, code, (need) => {
    if (need.reason === reason) return { reason: null }
    return reason === 'coeliac' ? { reason, handling: 'keep-apart' } : { reason }
  })

/** Needs with those that stay: none of them is taken away or weakened. */
export const withKept = (needs: readonly Need[], kept: readonly Need[]): readonly Need[] => [
  ...needs.map((need) => {
    const own = kept.find((one) => one.code === need.code)
    return own?.handling === 'keep-apart' && need.handling === 'leave-out' ? own : need
  }),
  ...kept.filter((one) => !has(needs, one.code)),
]

/** The build in sight is for the guest of another one, who was asked already. */
export const sameGuest = (ordering: Ordering, index: number): Ordering => {
  const asked = ordering.drafts[index]
  if (!asked || asked.asked === null || asked.asked === 'not-sure') return ordering
  const { asSaid = [] } = asked
  const known = { asked: asked.asked, needs: asked.needs, asSaid }
  return { ...withDraft(ordering, known), step: 'choose' }
}
