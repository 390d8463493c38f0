/** All that follows from a fact, in the order in which it is said. */
import type { Consequence, Happened } from '#lib/service/consequence.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { madeOfGone, stopsOfGone } from '#lib/spine/consequences/gone-food.ts'
import { guestsToFind } from '#lib/spine/consequences/guests-to-find.ts'
import { handedOverLists } from '#lib/spine/consequences/handed-over-lists.ts'
import { labelledBackups } from '#lib/spine/consequences/labelled-backups.ts'
import { liftedHolds } from '#lib/spine/consequences/lifted-holds.ts'
import { madeHolds, unmadeHolds, unsureHolds } from '#lib/spine/consequences/need-holds.ts'
import { neverGoodPans } from '#lib/spine/consequences/never-good-pans.ts'
import { offSaleMade, offSaleMaking } from '#lib/spine/consequences/off-sale-holds.ts'
import { remadeUnread } from '#lib/spine/consequences/remade-unread.ts'
import { shelfGone, shelfMade } from '#lib/spine/consequences/shelf-holds.ts'
import { shelfLists } from '#lib/spine/consequences/shelf-lists.ts'

export const CONSEQUENCES: readonly Consequence[] = [
  labelledBackups,
  neverGoodPans,
  stopsOfGone,
  madeOfGone,
  offSaleMaking,
  offSaleMade,
  shelfMade,
  shelfGone,
  unsureHolds,
  remadeUnread,
  unmadeHolds,
  madeHolds,
  guestsToFind,
  liftedHolds,
  handedOverLists,
  shelfLists,
]

/** The slices that rules read, each compared once a round whatever the number of rules that read it. */
const SLICES = [...new Set(CONSEQUENCES.flatMap(({ reads }) => reads))]
const BITS: ReadonlyMap<string, number> = new Map(SLICES.map((slice, at) => [slice, 2 ** at]))

const READ: ReadonlyMap<Consequence, number> = new Map(
  CONSEQUENCES.map((rule) => [
    rule,
    rule.reads.reduce((bits, slice) => bits | (BITS.get(slice) ?? 0), 0),
  ]),
)

/** A rule that isn't among them may read a slice that has no bit. */
const isTouched = (rule: Consequence, { before, after }: Happened, changed: number): boolean => {
  const read = READ.get(rule)
  return read === undefined
    ? rule.reads.some((slice) => before[slice] !== after[slice])
    : (read & changed) !== 0
}

const changedBits = ({ before, after }: Happened): number => {
  let bits = 0
  for (let at = 0; at < SLICES.length; at += 1) {
    const slice = SLICES[at]
    if (slice !== undefined && before[slice] !== after[slice]) bits |= 2 ** at
  }
  return bits
}

/**
 * What follows from what happened, by the rules whose slices of the state changed. The first rule that
 * has something to say says it alone: the next ones see the state with it.
 * @returns nothing more once all of it is in `after`
 */
export const consequences = (
  happened: Happened,
  rules: readonly Consequence[] = CONSEQUENCES,
): readonly ServiceEvent[] => {
  if (rules.length === 0) return []
  const changed = changedBits(happened)
  for (const rule of rules) {
    if (!isTouched(rule, happened, changed)) continue
    const events = rule.follow(happened)
    if (events.length > 0) return events
  }
  return []
}
