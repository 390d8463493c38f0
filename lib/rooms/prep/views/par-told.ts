/** What the loads of a component mean for the day, by its par as the plan's screen is told it. */
import type { ParTold } from '#lib/rooms/prep/facts/told-par.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** Portions of the larder that the day begins with, there still or taken for it already. */
export const fromLarder = ({ atHand, taken }: Pick<ParTold, 'atHand' | 'taken'>): number =>
  atHand.portions + taken

/** Portions that the day begins with: what is at hand, and what is made. */
export const portionsWith = (told: Pick<ParTold, 'atHand' | 'taken'>, made: number): number =>
  fromLarder(told) + made

/** On how many days of ten so many portions are enough, as computed of past services or the menu. */
export const enoughDays = ({ days }: Pick<ParTold, 'days'>, portions: number): number =>
  days.filter((wanted) => wanted <= portions).length

export interface DayDot {
  readonly portions: number
  /** So many portions would have been enough; not where it ran out, since nobody knows of how many. */
  readonly isEnough: boolean
}

/** Ten days, real ones where there are as many, and whether so many portions are enough. */
export const dotsOf = ({ days, real }: ParTold, portions: number): readonly DayDot[] =>
  real === null
    ? days.map((wanted) => ({ portions: wanted, isEnough: wanted <= portions }))
    : real.days.map((day) => ({
        portions: day.portions,
        isEnough: !day.atLeast && day.portions <= portions,
      }))

/** The most that a pan's stack or one of its days comes to, in portions. */
export const highestOf = (told: ParTold, made: number): number =>
  Math.max(portionsWith(told, made), ...dotsOf(told, 0).map(({ portions }) => portions))

/** Cents that one load more would leave over beside what is left already. */
export const oneMoreLeft = (told: ParTold, portions: number, size: number): number => {
  const left = (amount: number) =>
    told.days.reduce((sum, wanted) => sum + Math.max(0, amount - wanted), 0) / told.days.length
  return Math.round((left(portions + size) - left(portions)) * told.leftCents)
}

/**
 * What a guest may take where this runs out: the other bases of whatever is on sale with it. Empty where
 * it is no base, or where something has no other.
 * @param items ids of those on sale; null: all of them
 */
export const insteadOf = (
  { items, components }: Pick<StationDocument, 'items' | 'components'>,
  component: string,
  onSale: readonly string[] | null,
): readonly Component[] => {
  const choices = items
    .filter(({ id, base }) => (onSale === null || onSale.includes(id)) && base !== null)
    .map(({ base }) => base?.choices ?? [])
    .filter((one) => one.includes(component))
  const others = choices.map((one) => one.filter((id) => id !== component))
  if (others.length === 0 || others.some((one) => one.length === 0)) return []
  return components.filter(({ id }) => others.every((one) => one.includes(id)))
}
