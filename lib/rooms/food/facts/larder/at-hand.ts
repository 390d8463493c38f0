/** What of the larder may be counted on for a day ahead. */
import { lotEndsAt, thawedMark } from '#lib/larder/days.ts'
import { lotCooling } from '#lib/larder/due.ts'
import type { LarderState, Lot } from '#lib/larder/lot.ts'
import { lotBarred, lotsInOrder } from '#lib/larder/take.ts'
import { type HereNow, madeOtherwise } from '#lib/rooms/food/facts/larder/from-larder.ts'
import type { CivilDate } from '#lib/safety/date-stamp.ts'
import type { RunningState } from '#lib/service/state.ts'

export interface LotAtHand {
  readonly lot: string
  /** Whole portions, as this station's portion is. */
  readonly portions: number
  /** Its last day, thawed for the day ahead where it is frozen; null: dry food without one. */
  readonly lastDay: CivilDate | null
  readonly isFrozen: boolean
}

export interface AtHand {
  /** What is taken first first. */
  readonly lots: readonly LotAtHand[]
  /** Whole portions of them together. */
  readonly portions: number
  /** Lots of it that are there and aren't counted on: still cooling, unread, too old, or another's. */
  readonly others: number
  /** Lots that this day could use and a service before it counts on: how many, by that service's day. */
  readonly promised: readonly { readonly on: CivilDate; readonly lots: number }[]
}

export interface DayAtHand {
  readonly now: number
  /** The day ahead: its civil date, and when its doors close, epoch milliseconds. */
  readonly on: CivilDate
  readonly until: number
  /** Lots by id that services before it count on, each with that service's day; none: left away. */
  readonly counted?: Readonly<Record<string, CivilDate>>
}

/** The last day of a lot on the day ahead; false where it doesn't last until its doors close. */
const lastsFor = (lot: Lot, { on, until }: DayAtHand): CivilDate | null | false => {
  if (lot.frozen !== null) {
    const mark = thawedMark({ ...lot, frozen: lot.frozen }, on)
    return mark !== null && until <= mark.endsAt ? mark.lastDay : false
  }
  const endsAt = lotEndsAt(lot)
  return endsAt === null || until <= endsAt ? (lot.dateMark?.lastDay ?? null) : false
}

/**
 * Lots of a component that may be sold until the doors of a day ahead close, as far as is known now:
 * nothing bars them, their dates last, what was cooled is cold, and here they are made of the same.
 * Unknown isn't counted on.
 */
export const atHandFor = (
  state: HereNow,
  larder: LarderState,
  component: string,
  day: DayAtHand,
): AtHand => {
  const portion = state.portions[component]
  const all = lotsInOrder(larder).filter(([, lot]) => lot.component === component)
  const promised = new Map<CivilDate, number>()
  let [amount, promisedLots] = [0, 0]
  const lots = all.flatMap(([id, lot]): LotAtHand[] => {
    const lastDay = lastsFor(lot, day)
    const isCold = lot.kept !== 'cooling' || lotCooling(lot, day.now).state === 'cooled'
    const isUsable =
      portion !== undefined &&
      lastDay !== false &&
      isCold &&
      lotBarred(larder, id, day.now) === null &&
      madeOtherwise(state, lot) === null
    if (!isUsable) return []
    const before = day.counted?.[id]
    if (before !== undefined) {
      promised.set(before, (promised.get(before) ?? 0) + 1)
      promisedLots += 1
      return []
    }
    amount += lot.amount
    const isFrozen = lot.frozen !== null
    return [{ lot: id, portions: Math.floor(lot.amount / portion.amount), lastDay, isFrozen }]
  })
  return {
    lots,
    portions: portion ? Math.floor(amount / portion.amount) : 0,
    others: all.length - lots.length - promisedLots,
    promised: [...promised].map(([on, count]) => ({ on, lots: count })),
  }
}

/**
 * Whole portions of a component that came out of the larder into a planned service and may be sold until
 * its doors close. @param until that moment, epoch milliseconds
 */
export const takenFor = (
  { portions, batches }: Pick<RunningState, 'portions' | 'batches'>,
  component: string,
  until: number,
): number => {
  const portion = portions[component]
  const amount = Object.values(batches)
    .filter((one) => one.component === component && one.lot !== undefined)
    .filter(({ thrownOutAt, offSale }) => thrownOutAt === null && offSale === null)
    .filter(({ dateMark }) => dateMark === null || until <= dateMark.endsAt)
    .reduce((sum, one) => sum + one.amount - one.loaded, 0)
  return portion ? Math.floor(amount / portion.amount) : 0
}
