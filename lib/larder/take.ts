/** Which lot is taken, and why one isn't. */
import { dayOf, lotEndsAt, thawedMark } from '#lib/larder/days.ts'
import { lotCooling, lotReadBy } from '#lib/larder/due.ts'
import {
  type GoneHow,
  goneIn,
  type LarderState,
  type Lot,
  type LotBound,
  lotIn,
} from '#lib/larder/lot.ts'

export type LotProblem =
  | { readonly code: 'no-such-lot' }
  /** It is gone, and how. */
  | { readonly code: 'lot-gone'; readonly how: GoneHow; readonly at: number }
  | { readonly code: 'lot-bound'; readonly why: LotBound }
  | { readonly code: 'lot-unread'; readonly since: number }
  | { readonly code: 'lot-no-days-left' }
  | { readonly code: 'lot-holds-less'; readonly left: number; readonly unit: Lot['unit'] }
  /** An older one stands there: that one first, or it is said why not. */
  | { readonly code: 'older-lot'; readonly older: string }
  | { readonly code: 'larder-clock-unsure' }

/** Why nothing of a lot comes into a service. */
export type TakeProblem =
  | LotProblem
  /** Here it is made of something else, or counted otherwise: what it declares isn't known here. */
  | { readonly code: 'made-otherwise' }
  /** Its label is another than the one by which it was set aside. */
  | { readonly code: 'label-changed'; readonly ingredient: string }
  /** On the line of another station: what touched it there isn't known here. */
  | { readonly code: 'stood-open-elsewhere' }
  /** What touched it where it was made isn't known here. */
  | { readonly code: 'touched-unknown' }

/** Why nothing of a lot is used at a moment; null where nothing bars it. Unknown bars. */
export const lotBarred = (state: LarderState, id: string, now: number): LotProblem | null => {
  const lot = lotIn(state, id)
  if (!lot) {
    const gone = goneIn(state, id)
    return gone ? { code: 'lot-gone', how: gone.how, at: gone.at } : { code: 'no-such-lot' }
  }
  if (state.clockJump !== null) return { code: 'larder-clock-unsure' }
  if (lot.bound !== null) return { code: 'lot-bound', why: lot.bound.why }
  const endsAt = lotEndsAt(lot)
  if (endsAt !== null && now >= endsAt) return { code: 'lot-bound', why: 'date' }
  if (lot.kept === 'cooling') {
    const cooling = lotCooling(lot, now)
    const isOnItsWay = 'dueAt' in cooling || cooling.state === 'cooled'
    return isOnItsWay ? null : { code: 'lot-bound', why: 'cooling-missed' }
  }
  if (lot.frozen !== null)
    return thawedMark({ ...lot, frozen: lot.frozen }, dayOf(lot, now)) === null
      ? { code: 'lot-no-days-left' }
      : null
  const readBy = lotReadBy(lot)
  const since = lot.unreadSince ?? (readBy !== null && now >= readBy ? readBy : null)
  return since === null ? null : { code: 'lot-unread', since }
}

/** What goes first: the earliest date, then what was finished first. */
const before = (one: readonly [string, Lot], other: readonly [string, Lot]): number => {
  const day = (lot: Lot) => lotEndsAt(lot) ?? Number.POSITIVE_INFINITY
  const [a, b] = [day(one[1]), day(other[1])]
  if (a !== b) return a < b ? -1 : 1
  // Of unknown age counts as the oldest.
  const age = (one[1].finishedAt ?? 0) - (other[1].finishedAt ?? 0)
  if (age !== 0) return age
  return one[0] < other[0] ? -1 : 1
}

/** All lots, what goes first first. */
export const lotsInOrder = ({
  lots,
}: Pick<LarderState, 'lots'>): readonly (readonly [string, Lot])[] =>
  Object.entries(lots).sort(before)

/** Lots of a component that may be taken, what goes first first. */
export const lotsToTake = (
  state: LarderState,
  component: string,
  now: number,
): readonly (readonly [string, Lot])[] =>
  lotsInOrder(state).filter(
    ([id, lot]) => lot.component === component && lotBarred(state, id, now) === null,
  )

/**
 * Why so much of a lot isn't taken; null where it may be. `amount` in its unit; `barredHere`: why nothing
 * of a lot comes in where it is asked: such an older one holds up no other.
 */
export const lotTakeProblem = (
  state: LarderState,
  id: string,
  {
    amount,
    now,
    saysWhy,
    barredHere = () => null,
  }: {
    readonly amount: number
    readonly now: number
    readonly saysWhy: boolean
    readonly barredHere?: (lot: Lot) => TakeProblem | null
  },
): TakeProblem | null => {
  const barred = lotBarred(state, id, now)
  const lot = lotIn(state, id)
  if (barred !== null || !lot) return barred ?? { code: 'no-such-lot' }
  if (!Number.isSafeInteger(amount) || amount < 1 || amount > lot.amount)
    return { code: 'lot-holds-less', left: lot.amount, unit: lot.unit }
  const here = barredHere(lot)
  if (here !== null) return here
  const oldest = lotsToTake(state, lot.component, now).find(([, one]) => barredHere(one) === null)
  return oldest && oldest[0] !== id && !saysWhy ? { code: 'older-lot', older: oldest[0] } : null
}
