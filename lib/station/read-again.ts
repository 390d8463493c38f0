/** Labels that were read too long ago to count: recipes of makers change, and packs with them. */
import type { Ingredient, StationDocument } from '#lib/station/station-document.ts'

const DAY_MS = 86_400_000

/** Civil days from one date to another, as 2026-11-25; below 0 where it is earlier. */
const daysFrom = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY_MS

/**
 * Whether a label was read so long before a civil day that it has to be read again: more days than
 * the station says (common practice, no source). Nobody having read it is something else.
 */
export const isReadAgain = (
  { readAgainDays }: Pick<StationDocument, 'readAgainDays'>,
  { readOn }: Pick<Ingredient, 'readOn'>,
  on: string,
): boolean => readOn !== null && daysFrom(readOn, on) > readAgainDays

const byDay = new WeakMap<StationDocument, Map<string, StationDocument>>()

const unreadOn = (station: StationDocument, on: string): StationDocument => {
  const isAgain = (one: Ingredient) => isReadAgain(station, one, on)
  return station.ingredients.some(isAgain)
    ? {
        ...station,
        ingredients: station.ingredients.map((one) =>
          isAgain(one) ? { ...one, readOn: null } : one,
        ),
      }
    : station
}

/**
 * A document as its labels count on a civil day: what was read too long ago is as unread, so that
 * only what it contains counts. The same object for the same day; the document itself where nothing
 * is too old, and where no day is known.
 */
export const asReadOn = (station: StationDocument, on: string | undefined): StationDocument => {
  if (on === undefined) return station
  const days = byDay.get(station) ?? new Map<string, StationDocument>()
  byDay.set(station, days)
  const known = days.get(on) ?? unreadOn(station, on)
  days.set(on, known)
  return known
}
