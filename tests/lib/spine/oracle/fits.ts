/** (a) Whatever goes on fits its guest, by the pans that it is, or was, taken from. */
import type { Build } from '#lib/service/state.ts'
import { findBuild, namedBuild } from '#lib/service/tickets.ts'
import { everyBuild, isUnmade, type Law, type Seen } from '#tests/lib/spine/oracle/seen.ts'
import {
  type InItsWay,
  inTheWayMaking,
  inTheWayNow,
  inTheWayOf,
} from '#tests/lib/spine/oracle/standing.ts'

/** What stands in a build's way as it goes on, after what happened. */
export const inTheWay = ({ after, ledger }: Seen, build: Build, name: string): InItsWay => {
  const choice = build.stop?.to?.choice ?? build.choice
  const made = ledger.made.get(name)
  if (build.state === 'making' && !build.stop?.to)
    return inTheWayMaking(after, ledger, choice, name)
  if (isUnmade(build) || made === undefined) return inTheWayNow(after, ledger, choice, name)
  const begun = ledger.begun.get(name)
  const food = { choice, took: build.took, made, ...(begun ? { begun } : {}) }
  return inTheWayOf(after, ledger, food, name)
}

const saying = ({ surely }: InItsWay): string =>
  surely.map(({ component, need, why }) => `${component} ${need} ${why}`).join(', ')

/** A build that waits, is being made or stands made, and isn't held. */
export const fits: Law = (seen) =>
  everyBuild(seen.after).flatMap(({ name, build }) => {
    const { state, hold, stop } = build
    if (hold || stop?.reason === 'cancel' || state === 'cancelled' || state === 'handed-over')
      return []
    const choice = stop?.to?.choice ?? build.choice
    if (isUnmade(build) && choice.asked === 'not-sure')
      return [`${name} is ${state} and not held: its guest isn't sure`]
    if (choice.needs.length === 0) return []
    const found = inTheWay(seen, build, name)
    return found.surely.length > 0 ? [`${name} is ${state} and not held: ${saying(found)}`] : []
  })

/** Food is taken anew: with an older document nobody can say whether it fits. */
export const fitsWhenMadeAgain: Law = ({ before, after, isStale }) =>
  isStale
    ? everyBuild(after).flatMap(({ name, build }) => {
        const { ticket, letter } = namedBuild(name)
        const was = findBuild(before, ticket, letter)
        const isAgain = was !== undefined && was.remakes < build.remakes
        return isAgain && build.state === 'waiting' && build.choice.needs.length > 0 && !build.hold
          ? [`${name} is made again with an older document, and not held`]
          : []
      })
    : []
