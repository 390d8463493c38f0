/** What is at stake with a portion of each component, from the menu's prices and what portions cost. */

import type { Stakes } from '#lib/estimate/newsvendor.ts'
import { usualChoice } from '#lib/service/events/build-choice.ts'
import type { Item, StationDocument } from '#lib/station/station-document.ts'

/** What a portion costs where nobody said. Common practice, no source. */
const USUAL_COST_CENTS = 30
/** What is wanted and not there loses at least this, or nothing would ever be made for it. */
const LEAST_LOST_CENTS = 5
/** How often a build takes a part, by how its item usually has it. Common practice, no source. */
const FIRST_IN = 0.8
const FIRST_NOT = 0.15

/** Cents of one portion, a usual guess where nobody said. */
export const portionCents = (station: StationDocument, id: string): number =>
  station.components.find((one) => one.id === id)?.costCents ?? USUAL_COST_CENTS

const itemCost = (station: StationDocument, item: Item): number => {
  const usual = usualChoice(item)
  return Object.entries(usual.parts).reduce(
    (sum, [id, part]) => sum + part.portions * portionCents(station, id),
    usual.base === null ? 0 : portionCents(station, usual.base),
  )
}

/**
 * Cents lost with a portion that was wanted and not there, the whole build's margin where it is an
 * item's heart, and with one that is left over.
 */
export const stakesOf = (station: StationDocument, id: string): Stakes => {
  const hearts = station.items.filter((item) => item.heart === id)
  const extra = station.components.find((one) => one.id === id)?.extraCents ?? 0
  const leftCents = portionCents(station, id)
  const lost =
    hearts.length === 0
      ? extra - leftCents
      : hearts.reduce((sum, item) => sum + item.priceCents - itemCost(station, item), 0) /
        hearts.length
  return { lostCents: Math.max(LEAST_LOST_CENTS, lost), leftCents }
}

/** How often a build would take each component if nothing were known, 0 to 1. */
export const firstShares = (station: StationDocument): Readonly<Record<string, number>> =>
  Object.fromEntries(
    station.components.map(({ id }) => [
      id,
      station.items.reduce((sum, item) => {
        const part = item.parts.find((one) => one.component === id)
        const base = item.base?.choices.includes(id) ? 1 / item.base.choices.length : 0
        const taken = part?.required ? 1 : part ? (part.usual === 'no' ? FIRST_NOT : FIRST_IN) : 0
        return sum + (base + taken) / station.items.length
      }, 0),
    ]),
  )
