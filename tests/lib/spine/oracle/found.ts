/** (c) What was handed over and is found not to fit, or not to be good, is listed until it is answered. */
import type { Recorded } from '#lib/service/events/event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, findBuild, namedBuild } from '#lib/service/tickets.ts'
import type { Unsuited } from '#tests/lib/needs/oracle/taken.ts'
import {
  type Given,
  isAfter,
  type Ledger,
  NOWHERE,
  type Where,
} from '#tests/lib/spine/oracle/ledger.ts'
import type { Law, Seen } from '#tests/lib/spine/oracle/seen.ts'
import { inTheWayOf } from '#tests/lib/spine/oracle/standing.ts'

/** What has to be listed. */
export interface Owed {
  /** Builds whose guests are to be found. */
  readonly toFind: Set<string>
  /** Builds by the place of their food, as `pan/pan-rice`; of a batch the place is any. */
  readonly toTell: Map<string, Set<string>>
}

export const createOwed = (): Owed => ({ toFind: new Set(), toTell: new Map() })

const keysOf = (found: readonly Unsuited[]): readonly string[] =>
  found.flatMap(({ component, need, why, reached }) => [
    `${component} ${need} ${why}`,
    ...reached.map((one) => `${component} ${need} ${why} ${one}`),
  ])

const LATE = ['labelChanged', 'contactsChanged', 'panSoiled', 'backupSet']

const isToldLate = (event: Recorded): boolean =>
  ('brought' in event && event.brought !== undefined) ||
  (LATE.includes(event.type) && (event.type !== 'backupSet' || event.soiledBy !== undefined))

/** Food that guests have, and of which something is told now that wasn't before. */
const noLongerFit = (
  { before, after, events, earlier, ledger }: Seen,
  { toFind, toTell }: Owed,
): void => {
  if (!events.some(isToldLate)) return
  for (const food of earlier.given) {
    const { build: name } = food
    const { ticket, letter } = namedBuild(name)
    const build = findBuild(before, ticket, letter)
    if (!build) continue
    const isStill =
      build.state === 'handed-over' && earlier.made.get(name)?.position === food.made.position
    if (isStill && build.hold) continue
    // Once they had it more may have been told of its guest.
    const had = isStill ? { ...food, choice: build.choice } : food
    if (had.choice.needs.length === 0) continue
    const then = new Set(keysOf(inTheWayOf(before, earlier, had, name).surely))
    const now = keysOf(inTheWayOf(after, ledger, had, name).surely)
    if (now.every((one) => then.has(one))) continue
    if (isStill) toFind.add(name)
    else tell({ toFind, toTell }, `build/${name}`, [name])
  }
}

interface Bad {
  readonly what: string
  readonly id: string
  /** Where it was last known to be good. */
  readonly since: Where
}

const UNSAID = ['past-time', 'past-date', 'out-of-limits']
const NEVER = ['not-cooked', 'not-cooled']

/** Pans of which something is found with an event. What is over with its time was good until then. */
const badBy = (event: Recorded, before: RunningState, earlier: Ledger): Bad | null => {
  if (!('what' in event) || (event.what !== 'pan' && event.what !== 'backup')) return null
  const { what, id } = event
  const since = earlier.good.get(id) ?? NOWHERE
  const load = earlier.loaded.get(id) ?? NOWHERE
  const stock = what === 'pan' ? before.pans[id] : before.backupPans[id]
  switch (event.type) {
    case 'takenOffSale':
      return { what, id, since: event.lastGoodAt === null ? load : since }
    case 'readingMissed':
      return { what, id, since }
    case 'throwOutPassed':
      return event.because === 'too-warm' ? { what, id, since } : null
    case 'discardSignedOff': {
      if (NEVER.includes(event.reason)) return { what, id, since: load }
      const isKnown = stock?.offSale != null || before.toThrowOut[`${what}/${id}`] !== undefined
      return UNSAID.includes(event.reason) && !isKnown ? { what, id, since } : null
    }
    default:
      return null
  }
}

const isOf = ({ took, made }: Given, { what, id, since }: Bad, state: RunningState): boolean => {
  const load = (what === 'pan' ? state.pans[id] : state.backupPans[id])?.load
  return isAfter(made, since) && took.some((one) => one.pan === id && one.load === load)
}

const tell = ({ toTell }: Owed, place: string, builds: readonly string[]): void => {
  const known = toTell.get(place) ?? new Set()
  for (const one of builds) known.add(one)
  if (known.size > 0) toTell.set(place, known)
}

/** Food whose reading is missed may be handed over: it joins the list. */
const joins = (owed: Owed, event: Recorded, { before, earlier, after }: Seen): void => {
  if (event.type !== 'buildHandedOver') return
  const build = findBuild(after, event.ticket, event.letter)
  const name = buildName(event.ticket, event.letter)
  for (const { pan, load } of build?.took ?? []) {
    const what = before.pans[pan] ? 'pan' : 'backup'
    const stock = before.pans[pan] ?? before.backupPans[pan]
    const isUnread = stock?.offSale?.why.endsWith('missed') === true && stock.load === load
    const made = earlier.made.get(name) ?? NOWHERE
    if (isUnread && isAfter(made, earlier.good.get(pan) ?? NOWHERE))
      tell(owed, `${what}/${pan}`, [name])
  }
}

/** How the list of what left the shelf is called. */
const OF_SHELF = 'shelf/@shelf'

/** What left the shelf since it was last read hot, once it is read warm or isn't read. */
const leftTheShelf = (owed: Owed, event: Recorded, { earlier, ledger }: Seen): void => {
  const isBad = event.type === 'shelfRead' && !event.inLimits && !earlier.shelfOut
  if (isBad || event.type === 'shelfReadingMissed') {
    const since = earlier.shelf ?? earlier.shelfMissed?.good
    if (since === undefined) return
    const left = earlier.given.filter((one) => isAfter(one.left, since))
    tell(
      owed,
      OF_SHELF,
      left.map(({ build }) => build),
    )
  }
  // What stood there unread and goes on joins the list.
  if (event.type !== 'buildHandedOver' || earlier.shelfMissed === null) return
  const name = buildName(event.ticket, event.letter)
  const made = ledger.made.get(name) ?? NOWHERE
  if (isAfter(earlier.shelfMissed.at, made)) tell(owed, OF_SHELF, [name])
}

/** Good again is only what was made of the food that was read. */
const isAnswered = (
  { before, earlier }: Seen,
  event: Extract<Recorded, { readonly type: 'handedOverAnswered' }>,
  build: string,
): boolean => {
  const load = (before.pans[event.id] ?? before.backupPans[event.id])?.load
  const own = earlier.given.filter((one) => one.build === build)
  const took = own.flatMap((one) => one.took.filter(({ pan }) => pan === event.id))
  return event.answer !== 'good-again' || took.every((one) => one.load === load)
}

const answered = ({ toFind, toTell }: Owed, seen: Seen): void => {
  for (const event of seen.events) {
    if (event.type === 'stopAcknowledged') toFind.delete(buildName(event.ticket, event.letter))
    if (event.type !== 'handedOverAnswered') continue
    for (const place of [`${event.what}/${event.id}`, 'any'])
      for (const one of event.builds)
        if (isAnswered(seen, event, one)) toTell.get(place)?.delete(one)
  }
}

/** Writes down what is owed after what happened. */
export const owe = (owed: Owed, seen: Seen): void => {
  const { events, before, earlier } = seen
  answered(owed, seen)
  for (const event of events) {
    const name = 'letter' in event ? buildName(event.ticket, event.letter) : ''
    const { ticket, letter } = namedBuild(name)
    if (event.type === 'needTold' && findBuild(before, ticket, letter)?.state === 'handed-over')
      owed.toFind.add(name)
    const bad = badBy(event, before, earlier)
    if (bad)
      tell(
        owed,
        `${bad.what}/${bad.id}`,
        earlier.given.filter((one) => isOf(one, bad, before)).map(({ build }) => build),
      )
    if (event.type === 'discardSignedOff' && event.what === 'batch' && NEVER.includes(event.reason))
      tell(
        owed,
        'any',
        earlier.given
          .filter(({ took }) => took.some(({ batches }) => batches?.includes(event.id)))
          .map(({ build }) => build),
      )
    joins(owed, event, seen)
    leftTheShelf(owed, event, seen)
  }
  noLongerFit(seen, owed)
}

/** What is owed and isn't listed. */
export const unlisted = ({ toFind, toTell }: Owed, { after }: Seen): readonly string[] => [
  ...[...toFind].filter((one) => !after.toFind[one]).map((one) => `${one} isn't to be found`),
  ...[...toTell].flatMap(([place, builds]) => {
    const lists = Object.entries(after.toTell).filter(([key]) => place === 'any' || key === place)
    const listed = new Set(lists.flatMap(([, { builds: some }]) => some.map(({ build }) => build)))
    return [...builds]
      .filter((one) => !listed.has(one))
      .map((one) => `${one} isn't told of, with food of ${place}`)
  }),
]

/** Nothing leaves a list but what was answered. */
export const listsStay: Law = ({ before, after, events }) => {
  const said = (type: Recorded['type'], isMeant: (event: Recorded) => boolean): boolean =>
    events.some((event) => event.type === type && isMeant(event))
  const found = Object.values(before.toFind).filter(
    ({ ticket, letter }) =>
      !after.toFind[buildName(ticket, letter)] &&
      !said(
        'stopAcknowledged',
        (event) => 'letter' in event && event.letter === letter && event.ticket === ticket,
      ),
  )
  const told = Object.entries(before.toTell).filter(
    ([key, { what, id, builds }]) =>
      !builds.every(({ build }) => after.toTell[key]?.builds.some((one) => one.build === build)) &&
      !said(
        'handedOverAnswered',
        (event) => 'what' in event && event.what === what && event.id === id,
      ),
  )
  return [
    ...found.map(({ ticket, letter }) => `${ticket}${letter} isn't to be found any more`),
    ...told.map(([key]) => `${key} isn't told any more`),
  ]
}
