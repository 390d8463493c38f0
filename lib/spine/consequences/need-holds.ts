/** Holds of builds that don't fit their guests as things are. */

import type { InTheWay } from '#lib/rooms/care/facts/standing.ts'
import { goesOnAs, standingAsBefore, standingOf } from '#lib/rooms/making/facts/build-standing.ts'
import type { Consequence, Happened } from '#lib/service/consequence.ts'
import type { BuildHeld, HoldReason } from '#lib/service/events/event.ts'
import type { Build, RunningState, ServiceState } from '#lib/service/state.ts'
import {
  buildName,
  findBuild,
  findTicket,
  openBuilds,
  type QueuedBuild,
} from '#lib/service/tickets.ts'

/** All that a verdict on an accepted build reads. */
export const VERDICT_SLICES: readonly (keyof ServiceState)[] = [
  'station',
  'pans',
  'backupPans',
  'backups',
  'lent',
  'tickets',
  'past',
  'cautions',
]

const OF_LABELS: readonly InTheWay['why'][] = ['contains', 'unknown', 'may-contain', 'not-listed']

/** Why it is held, as its guest is told: a need of theirs, a label, or what touched what. */
export const holdReason = (
  { before, after }: Pick<Happened, 'before' | 'after'>,
  build: Build,
  standing: readonly InTheWay[] | null,
): HoldReason => {
  if (build.told) return 'need'
  const isOfContact = before.station?.contacts !== after.station?.contacts
  if (before.station !== after.station && !isOfContact) return 'label'
  return standing?.some(({ why }) => OF_LABELS.includes(why)) ? 'label' : 'contact'
}

/** Nobody goes on with it as it is; what is held for a pan may, when that is found good. */
const isStopped = ({ stop, hold }: Build): boolean =>
  stop?.reason === 'cancel' || (stop?.to == null && hold !== null && hold.reason !== 'off-sale')

/** Whether food for it is still to be taken, as what it is or as what it is to become. */
const isUnmade = ({ state, stop }: Build): boolean =>
  state === 'waiting' || state === 'making' || stop?.to != null

/** Builds that go on: the open ones, and what handed-over ones are to become once their guests are found. */
const goingOn = (state: RunningState): readonly QueuedBuild[] => [
  ...openBuilds(state),
  ...Object.values(state.toFind).flatMap(({ ticket: number, letter }) => {
    const ticket = findTicket(state, number)
    const build = findBuild(state, number, letter)
    return ticket && build?.stop?.to && build.state === 'handed-over' ? [{ ticket, build }] : []
  }),
]

const holdsOf = (happened: Happened, isMeant: (build: Build) => boolean): readonly BuildHeld[] =>
  goingOn(happened.after).flatMap(({ ticket, build }): BuildHeld[] => {
    if (isStopped(build) || !isMeant(build)) return []
    const { number } = ticket
    const { letter } = build
    const name = buildName(number, letter)
    const { before, after, known } = happened
    const asNow = standingOf(after, build, name, known.checker)
    const asBefore = standingAsBefore(before, after, build, name, known.checker)
    const standing = asNow && asBefore && [...asNow, ...asBefore]
    return standing?.length === 0
      ? []
      : [
          {
            type: 'buildHeld',
            ticket: number,
            letter,
            reason: holdReason(happened, build, standing),
            ...(build.stop?.to ? { dropsChange: true } : {}),
          },
        ]
  })

/** What is still to be taken, by the pans that it would be taken from. */
export const unmadeHolds: Consequence = {
  name: 'unmade-holds',
  reads: VERDICT_SLICES,
  follow: (happened) => holdsOf(happened, isUnmade),
}

/** What stands made, by the pans that it was taken from: what got into one may be in it. */
export const madeHolds: Consequence = {
  name: 'made-holds',
  reads: VERDICT_SLICES,
  follow: (happened) => holdsOf(happened, (build) => !isUnmade(build)),
}

/** Its guest wasn't sure once they had the food: made again, nobody knows what fits them. */
export const unsureHolds: Consequence = {
  name: 'unsure-holds',
  reads: ['tickets'],
  follow: ({ after }) =>
    openBuilds(after).flatMap(({ ticket, build }): BuildHeld[] =>
      isStopped(build) || goesOnAs(build).asked !== 'not-sure'
        ? []
        : [{ type: 'buildHeld', ticket: ticket.number, letter: build.letter, reason: 'need' }],
    ),
}
