/** (b) Every hold has a cause, which stands until somebody who may has answered it. */

import type { Build } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { inTheWay } from '#tests/lib/spine/oracle/fits.ts'
import { everyBuild, type Law } from '#tests/lib/spine/oracle/seen.ts'
import { inTheWayNow } from '#tests/lib/spine/oracle/standing.ts'

/** Held for the line before food was made: over with its cause. What a guest told, they answer. */
export const holdsAreLifted: Law = (seen) =>
  seen.isStale
    ? []
    : everyBuild(seen.after).flatMap(({ name, build }) => {
        const { state, hold, stop, told, choice } = build
        const isOfLine = hold?.reason === 'label' || hold?.reason === 'contact'
        if (state !== 'waiting' || !isOfLine || hold.told || told || choice.asked === 'not-sure')
          return []
        if (stop?.to || stop?.reason === 'cancel') return []
        // Its guest hears first that what they asked for came of nothing.
        if (seen.ledger.changes.get(name) === 'dropped') return []
        // Its guest had food of it before: a person answers.
        if (build.had?.length) return []
        return inTheWay(seen, build, name).maybe.length === 0
          ? [`${name} waits, and is held for nothing: ${hold.reason}`]
          : []
      })

/** How a hold names the shelf of made food, where it names a pan. */
const SHELF = '@shelf'

/** What a guest said of a build: as it is, as it is to become, and what they told late. */
const saidOf = ({ choice, stop, hold }: Build): readonly Need[] => [
  ...choice.needs,
  ...(stop?.to?.choice.needs ?? []),
  ...(hold?.told?.needs ?? []),
]

/** What isn't said any more since somebody said it otherwise. */
const SAID_ANEW = ['buildChanged', 'buildStopped', 'buildCancelled']

/** What a guest told stays told until it is said anew, and so does what came of no change. */
export const toldStays: Law = ({ before, after, events }) =>
  everyBuild(before).flatMap(({ name, build }) => {
    const { ticket, letter } = namedBuild(name)
    const now = findBuild(after, ticket, letter)
    const isAnswer = build.stop?.to != null || now?.state === 'cancelled'
    const isAnew = events.some(
      (one) =>
        (SAID_ANEW.includes(one.type) || (one.type === 'stopAcknowledged' && isAnswer)) &&
        'letter' in one &&
        one.ticket === ticket &&
        one.letter === letter,
    )
    if (!now || now === build || isAnew) return []
    const kept = saidOf(now)
    return saidOf(build)
      .filter(
        ({ code, handling }) =>
          !kept.some((one) => one.code === code && [handling, 'keep-apart'].includes(one.handling)),
      )
      .map(({ code }) => `${name} doesn't keep from ${code} any more, and nobody said so`)
  })

/** A change that came of nothing isn't passed over in silence. */
export const droppedIsTold: Law = ({ events, earlier }) =>
  events.flatMap((event) =>
    event.type === 'holdLifted' &&
    earlier.changes.get(`${event.ticket}${event.letter}`) === 'dropped'
      ? [`${event.ticket}${event.letter} goes on as it was, and nobody told its guest`]
      : [],
  )

/** Once food may be in it nothing but a person says that it is good. */
export const madeIsntLifted: Law = ({ before, events }) =>
  events.flatMap((event) => {
    if (event.type !== 'holdLifted') return []
    const { ticket, letter } = event
    const was = findBuild(before, ticket, letter)
    return was && was.state !== 'waiting' && !events.some(({ type }) => type === 'stopAcknowledged')
      ? [`${ticket}${letter} is ${was.state}, and its hold is lifted by itself`]
      : []
  })

/** What is held for a pan is held for as long as that is off sale. */
export const pansHold: Law = ({ after }) =>
  everyBuild(after).flatMap(({ name, build: { hold, state, stop } }) => {
    if (hold?.reason !== 'off-sale') return []
    // It is thrown out, and its answered stop makes it what its guest changed it to.
    if (stop?.to && after.toThrowOut[`build/${name}`]) return []
    const good = (hold.pans ?? []).filter(
      (pan) =>
        (pan === SHELF ? after.shelf : (after.pans[pan] ?? after.backupPans[pan]))?.offSale == null,
    )
    return good.length > 0 || !hold.pans?.length
      ? [`${name} is ${state} and held for ${good.join()}, which isn't off sale`]
      : []
  })

/** A new hold for a label or for contact has something in its way that wasn't accepted. */
export const holdsHaveCauses: Law = (seen) =>
  seen.events.flatMap((event) => {
    if (event.type !== 'buildHeld' || event.reason === 'off-sale') return []
    const { ticket, letter, reason } = event
    const build = findBuild(seen.after, ticket, letter)
    const name = `${ticket}${letter}`
    if (!build?.hold || build.hold.reason === 'off-sale') return []
    if (build.choice.asked === 'not-sure' || build.hold.told) return []
    const was = findBuild(seen.before, ticket, letter)
    const isUnread = seen.isStale && (was?.remakes ?? 0) < build.remakes
    if (isUnread) return []
    // A change that was under way and doesn't fit any more is dropped by its hold.
    const dropped = was?.stop?.to?.choice
    const isOfChange =
      dropped && inTheWayNow(seen.after, seen.ledger, dropped, name).maybe.length > 0
    return !isOfChange && inTheWay(seen, build, name).maybe.length === 0
      ? [`${name} is ${build.state} and was held for nothing: ${reason}`]
      : []
  })

/** A hold ends with an answer, a change, or an event that says that its cause is over. */
const ENDS = [
  'holdLifted',
  'stopAcknowledged',
  'buildChanged',
  'buildCancelled',
  'finishTakenBack',
  'offSaleResolved',
  'throwOutPassed',
  'buildStopped',
  'discardSignedOff',
  'buildRemade',
  'shelfResolved',
]

export const holdsEndSaid: Law = ({ before, after, events }) =>
  everyBuild(before).flatMap(({ name, build: { hold } }) => {
    if (!hold) return []
    const { ticket, letter } = namedBuild(name)
    const now = findBuild(after, ticket, letter)
    return now?.hold || events.some(({ type }) => ENDS.includes(type))
      ? []
      : [`${name} isn't held for ${hold.reason} any more, and nothing says so`]
  })
