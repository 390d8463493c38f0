/** Days of a lot: until when it lasts, what is left of them in the freezer, and after it. */
import type { Frozen, Lot, LotFood } from '#lib/larder/lot.ts'
import { civilDate, daysBetween } from '#lib/measure/civil.ts'
import { daysLeftFrozen, stampOf } from '#lib/safety/date-marks.ts'
import { type CivilDate, type DateStamp, earlierUseBy } from '#lib/safety/date-stamp.ts'
import { limitsWith, type SafetyLimits } from '#lib/safety/limits.ts'

export const limitsOfLot = ({ under }: Pick<LotFood, 'under'>): SafetyLimits =>
  limitsWith(under.limits)

/** The civil day of an instant where the lot is kept. */
export const dayOf = ({ under }: Pick<LotFood, 'under'>, at: number): CivilDate =>
  civilDate(at, under.timeZone)

/** When it is past its date, epoch milliseconds; null in the freezer, and of dry food without one. */
export const lotEndsAt = ({ kept, dateMark }: Pick<LotFood, 'kept' | 'dateMark'>): number | null =>
  kept === 'frozen' ? null : (dateMark?.endsAt ?? null)

export type FreezeProblem = 'no-days-left' | 'wrong-day'

type Told = { readonly preparedOn?: CivilDate | undefined; readonly useBy?: CivilDate | undefined }

/**
 * What is left of a lot's days as it goes into the freezer. The day of freezing isn't counted, except
 * where it is day 1 or may be it: a first day that nobody told is taken as the latest that can be; or
 * where it was thawed on that day. Days in the freezer before aren't used: of what was thawed the days
 * count from there. What is told never lengthens its date. Source: FDA Food Code 2022, 3-501.17(A) and 3-501.18(A).
 */
export const frozenFrom = (
  lot: Pick<LotFood, 'dateMark' | 'startedAt' | 'under'>,
  on: CivilDate,
  { preparedOn, useBy }: Told = {},
): Frozen | FreezeProblem => {
  if (preparedOn !== undefined && preparedOn > on) return 'wrong-day'
  // It was thawed once: its maker's date still stands.
  const makers = earlierUseBy(useBy, lot.dateMark?.useBy)
  const { dateMark } = lot
  if (dateMark === null || (makers !== undefined && makers < on)) return 'no-days-left'
  const begun = lot.startedAt === null ? on : dayOf(lot, lot.startedAt)
  const first = preparedOn !== undefined && preparedOn < begun ? preparedOn : begun
  const byMark = daysLeftFrozen(dateMark, on, first)
  // How long it lay in the freezer isn't known here: a day 1 that is told as earlier shortens what is left.
  const byFirst =
    dateMark.thawedOn === undefined
      ? limitsOfLot(lot).dateMark.days - Math.max(1, daysBetween(first, on))
      : byMark - daysBetween(first, begun)
  const daysLeft = Math.min(byMark, byFirst)
  return daysLeft < 1 ? 'no-days-left' : { on, daysLeft, useBy: makers ?? null }
}

const plusDays = (date: CivilDate, days: number): CivilDate =>
  civilDate(stampOf(date, 'UTC').endsAt + (days - 1) * 86_400_000, 'UTC')

/** The date of what is thawed on a day, which counts; null where its maker's date was over before. */
export const thawedMark = (
  { frozen, under }: Pick<Lot, 'under'> & { readonly frozen: Frozen },
  on: CivilDate,
): DateStamp | null => {
  const last = plusDays(on, frozen.daysLeft - 1)
  const lastDay = frozen.useBy !== null && frozen.useBy < last ? frozen.useBy : last
  if (lastDay < on) return null
  const makers = frozen.useBy === null ? {} : { useBy: frozen.useBy }
  return { ...stampOf(lastDay, under.timeZone), ...makers, thawedOn: on }
}
