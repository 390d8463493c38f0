/** How what stands on the shelf stands there: which together, which at its end, what is missing. */
import { needsOf } from '#lib/rooms/care/facts/held.ts'
import type { OnShelf } from '#lib/rooms/shelf/views/hand-over.ts'
import type { Together } from '#lib/rooms/shelf/views/places.ts'
import { type Strip, stripOf } from '#lib/rooms/shelf/views/strip.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, findTicket, openBuilds } from '#lib/service/tickets.ts'

/** A third of the time in which it is to be collected, and it moves to where it is seen. */
const LAST_PART = 1 / 3

/** Whether it stands there too long; `now` is the server's, epoch milliseconds. */
export const standsLong = ({ until, madeAt }: OnShelf, now: number): boolean =>
  until !== null && now >= until.collectBy - (until.collectBy - madeAt) * LAST_PART

const keepsApart = (build: Build): boolean =>
  needsOf(build).some(({ handling }) => handling === 'keep-apart')

export interface Stand extends Together {
  readonly ticket: number
  /** They are of one ticket and stand on one tray, also once some of them are gone. */
  readonly onTray: boolean
}

export interface Stands {
  /** In the order in which the first of each came. */
  readonly stands: readonly Stand[]
  /** Names of those that aren't made yet, though others of their ticket stand there. */
  readonly missing: readonly string[]
}

/** `shelf`: what stands there, the one that stands longest first. */
export const standsOf = (state: RunningState, shelf: readonly OnShelf[], now: number): Stands => {
  const apart: Stand[] = shelf
    .filter(({ askFirst }) => askFirst)
    .map(({ ticket, name }) => ({ ticket, names: [name], atEnd: true, onTray: false }))
  const plain = shelf.filter(({ askFirst }) => !askFirst)
  const tickets = [...new Set(plain.map(({ ticket }) => ticket))]
  const missing: string[] = []
  const stands = tickets.map((number): Stand => {
    const builds = (findTicket(state, number)?.builds ?? []).filter(
      (build) => build.state !== 'cancelled' && !keepsApart(build),
    )
    const standing = plain.filter(({ ticket }) => ticket === number)
    const here = builds.filter(({ letter, state: is, hold }) => {
      if (standing.some((one) => one.letter === letter)) return true
      const isMissing = hold === null && (is === 'waiting' || is === 'making')
      if (isMissing) missing.push(buildName(number, letter))
      return isMissing
    })
    return {
      ticket: number,
      names: here.map(({ letter }) => buildName(number, letter)),
      atEnd: standing.some((one) => standsLong(one, now)),
      onTray: builds.length > 1,
    }
  })
  return { stands: [...stands, ...apart], missing }
}

export interface BeingMade {
  readonly name: string
  /** null of what is kept apart. */
  readonly strip: Strip | null
}

/** What is being made, in the order of the line. */
export const beingMade = (state: RunningState): readonly BeingMade[] =>
  openBuilds(state)
    .filter(({ build }) => build.state === 'making')
    .map(({ ticket, build }) => ({
      name: buildName(ticket.number, build.letter),
      strip: keepsApart(build) ? null : stripOf(state.station, build.choice),
    }))
