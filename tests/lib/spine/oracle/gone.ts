/** Food that is read bad, or goes into the bin: nobody goes on with what was, or could be, made of it. */
import type { Recorded } from '#lib/service/events/event.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'
import { isAfter, NOWHERE } from '#tests/lib/spine/oracle/ledger.ts'
import { everyBuild, type Law, type Seen } from '#tests/lib/spine/oracle/seen.ts'
import { takenFromNow } from '#tests/lib/spine/oracle/standing.ts'

type Found = Extract<
  Recorded,
  { readonly type: 'takenOffSale' | 'throwOutPassed' | 'offSaleResolved' | 'discardSignedOff' }
>

const isFound = (event: Recorded): event is Found =>
  (event.type === 'takenOffSale' ||
    event.type === 'throwOutPassed' ||
    event.type === 'offSaleResolved' ||
    event.type === 'discardSignedOff') &&
  (event.what === 'pan' || event.what === 'backup')

const UNSAFE = ['past-time', 'past-date', 'out-of-limits', 'not-cooled', 'not-cooked']
const BAD = ['out-of-limits', 'not-cooled', 'not-cooked']

const stockAt = (state: RunningState, id: string) => state.pans[id] ?? state.backupPans[id]

const componentAt = ({ station }: RunningState, id: string): string =>
  station.line.wells.flatMap(({ pans }) => pans).find((one) => one.id === id)?.component ??
  station.backups.find((one) => one.id === id)?.component ??
  ''

/** Whether it goes into the bin with this event. */
const isGone = (event: Found, before: RunningState): boolean => {
  const isKnown = before.toThrowOut[`${event.what}/${event.id}`] !== undefined
  switch (event.type) {
    case 'throwOutPassed':
      return !isKnown
    case 'offSaleResolved':
      return event.way === 'discard'
    case 'discardSignedOff': {
      const isOff = stockAt(before, event.id)?.offSale != null
      return !isKnown && (UNSAFE.includes(event.reason) || isOff)
    }
    case 'takenOffSale':
      return false
  }
}

/** Whether what stands made of it isn't handed over as it is. */
const isBad = (event: Found, before: RunningState): boolean => {
  switch (event.type) {
    case 'throwOutPassed':
      return event.because === 'too-warm' && isGone(event, before)
    case 'takenOffSale':
      return event.why === 'out-of-limits'
    case 'offSaleResolved':
      return event.way === 'discard'
    case 'discardSignedOff':
      return (
        isGone(event, before) &&
        (BAD.includes(event.reason) || stockAt(before, event.id)?.offSale != null)
      )
  }
}

const now = ({ after }: Seen, name: string): Build | undefined => {
  const { ticket, letter } = namedBuild(name)
  return findBuild(after, ticket, letter)
}

const takes = (build: Build, component: string): boolean => (build.takes[component] ?? 0) > 0

/** What is being made with food that goes into the bin is stopped. */
export const makingStops: Law = (seen) =>
  seen.events.filter(isFound).flatMap((event) => {
    const { before } = seen
    const component = componentAt(before, event.id)
    const isRead = event.type === 'takenOffSale' && event.why === 'out-of-limits'
    if (!isRead && !isGone(event, before)) return []
    return everyBuild(before).flatMap(({ name, build }) => {
      if (build.state !== 'making' || !takes(build, component)) return []
      if (isRead) {
        const from = takenFromNow(before, seen.earlier, build.choice, component)
        if ((from === 'backup') !== (event.what === 'backup')) return []
      }
      const after = now(seen, name)
      return after?.state === 'making' && after.stop === null
        ? [`${name} is made on with ${component}: ${event.type} of ${event.id}`]
        : []
    })
  })

/** What stands made of food since it was last good isn't handed over as it is. */
export const madeStays: Law = (seen) =>
  seen.events.filter(isFound).flatMap((event) => {
    const { before, earlier, after } = seen
    if (!isBad(event, before)) return []
    const isNever =
      (event.type === 'discardSignedOff' && ['not-cooked', 'not-cooled'].includes(event.reason)) ||
      (event.type === 'takenOffSale' && event.lastGoodAt === null)
    const since = isNever ? NOWHERE : (earlier.good.get(event.id) ?? NOWHERE)
    const load = stockAt(before, event.id)?.load
    return everyBuild(before).flatMap(({ name, build }) => {
      const isMade = build.state === 'made' && isAfter(earlier.made.get(name) ?? NOWHERE, since)
      if (!isMade || !build.took.some((one) => one.pan === event.id && one.load === load)) return []
      const is = now(seen, name)
      return is?.state === 'made' && !is.hold && !is.stop && !after.toThrowOut[`build/${name}`]
        ? [`${name} stands made of ${event.id}, ${event.type}, and may be handed over`]
        : []
    })
  })

/** Food of a batch that was never good isn't sold on, in whatever pan it is. */
export const neverGood: Law = ({ events, before, after }) =>
  events.flatMap((event) => {
    if (event.type !== 'discardSignedOff' || event.what !== 'batch') return []
    if (!['not-cooked', 'not-cooled'].includes(event.reason)) return []
    return [...Object.entries(before.pans), ...Object.entries(before.backupPans)].flatMap(
      ([id, { batches, amount }]) => {
        const is = stockAt(after, id)
        return amount > 0 && batches.includes(event.id) && is?.offSale === null
          ? [`${id} sells on of ${event.id}, which was ${event.reason}`]
          : []
      },
    )
  })

/** What stands on a shelf that is read out of limits is held; thrown out with it, it goes. */
export const shelfStays: Law = (seen) =>
  seen.events.flatMap((event) => {
    const isBad = event.type === 'shelfRead' && !event.inLimits
    const isOut = event.type === 'shelfResolved' && event.way === 'discard'
    if (!isBad && !isOut) return []
    const { before, after } = seen
    const since = before.shelf?.offSale?.since ?? Number.POSITIVE_INFINITY
    return everyBuild(before).flatMap(({ name, build }) => {
      const is = now(seen, name)
      if (build.state !== 'made' || is?.state !== 'made') return []
      if (after.toThrowOut[`build/${name}`]) return []
      // What was made since a shelf was found out of its limits isn't held by reading it once more.
      if (isBad) return is.hold || is.stop || before.shelf?.offSale ? [] : [`${name} isn't held`]
      return build.since > since ? [] : [`${name} isn't thrown out with its shelf`]
    })
  })
