/** Folds what stops a build, and what becomes of it when that is acknowledged. */
import { strictest } from '#lib/needs/judge.ts'
import { keeps } from '#lib/rooms/care/facts/known-needs.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import {
  type BuildEvent,
  notBegun,
  put,
  release,
  reserve,
  takeOut,
  usedToWasted,
  withHad,
} from '#lib/service/folding/build-folding.ts'
import { keptByStop } from '#lib/service/reserved.ts'
import type { Build, Hold, RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

const found = (state: RunningState, event: BuildEvent): RunningState => {
  const { [buildName(event.ticket, event.letter)]: _, ...toFind } = state.toFind
  return { ...state, toFind }
}

/**
 * All that was told of a build's guest: what was told before stays told, so does not being sure, and
 * so do needs of a change that is dropped by this.
 */
const toldWith = (
  { choice, stop, hold }: Build,
  event: Pick<NonNullable<Hold['told']>, 'asked' | 'needs'> | null,
): Hold['told'] => {
  const before = hold?.told ?? null
  const dropped = (stop?.to?.choice.needs ?? []).filter((need) => !keeps(choice.needs, need))
  if (!event && dropped.length === 0) return before
  const isSure = before?.asked !== 'not-sure' && event?.asked !== 'not-sure'
  return {
    asked: isSure ? 'needs' : 'not-sure',
    needs: strictest([...(before?.needs ?? []), ...dropped, ...(event?.needs ?? [])]),
  }
}

type Holding = Extract<BuildEvent, { readonly type: 'needTold' | 'buildHeld' }>

/** What is told by it: of food that is made again, what its guest told once they had it. */
const saidBy = (event: Holding, { choice }: Build) => {
  if (event.type === 'needTold') return event
  return event.reason === 'need' ? choice : null
}

/** Stops a build in whatever state it is. */
export const held = (state: RunningState, event: Holding, build: Build): RunningState => {
  const told = toldWith(build, saidBy(event, build))
  const reason = event.type === 'needTold' || build.hold?.told ? 'need' : event.reason
  const pan = event.type === 'buildHeld' && reason === 'off-sale' ? event.pan : undefined
  const pans = pan === undefined ? {} : { pans: [...(build.hold?.pans ?? []), pan] }
  const drops =
    event.type === 'buildHeld' && event.dropsChange ? { dropsChange: true as const } : {}
  const isCancelled = build.stop?.reason === 'cancel'
  const next = put(release(state, keptByStop(build)), event, (one) => ({
    ...one,
    hold: { reason, at: event.at, told, ...pans, ...drops },
    stop: isCancelled ? one.stop : { reason, at: event.at, to: null },
  }))
  if (build.state !== 'handed-over') return next
  const { ticket, letter, at } = event
  const name = buildName(ticket, letter)
  return { ...next, toFind: { ...next.toFind, [name]: { ticket, letter, reason, at } } }
}

/** A choice that remembers what its guest told after it was handed over, also for a change of it. */
const remembering = (build: Build): BuildChoice => {
  const told = toldWith(build, null)
  const { choice } = build
  return told
    ? { ...choice, asked: told.asked, needs: strictest([...choice.needs, ...told.needs]) }
    : choice
}

/** Cancelled, a build of which its guest had food still says what they told by then. */
export const knownOfHad = (build: Build): Pick<Build, 'choice'> | null =>
  build.had ? { choice: remembering(build) } : null

type Acknowledged = Extract<BuildEvent, { readonly type: 'stopAcknowledged' }>

/** Gives a stopped build what it waits with from then on: its new choice, or its own and its hold. */
const waitingAgain = (state: RunningState, event: Acknowledged, build: Build): RunningState => {
  const to = build.stop?.to ?? null
  const isRemake = event.foodInIt ? 1 : 0
  return put(reserve(state, to?.takes ?? build.takes), event, ({ boundTo, ...one }) => ({
    ...notBegun(withHad(one)),
    // What bound it is thrown out only where food was in it.
    ...(event.foodInIt || boundTo === undefined ? {} : { boundTo }),
    ...to,
    state: 'waiting',
    took: [],
    until: null,
    stop: null,
    hold: to || one.hold?.reason === 'off-sale' ? null : one.hold,
    told: to ? false : one.told,
    version: one.version + (to ? 1 : 0),
    remakes: one.remakes + isRemake,
  }))
}

export const acknowledged = (
  state: RunningState,
  event: Acknowledged,
  build: Build,
): RunningState => {
  if (build.state === 'made' || build.state === 'handed-over') {
    const isOver = build.state === 'handed-over'
    const next = isOver ? found(state, event) : state
    if (!event.foodInIt)
      return put(next, event, (one) => ({
        ...one,
        choice: remembering(one),
        stop: null,
        hold: null,
        told: one.told || toldWith(one, null) !== null,
      }))
    const counted = {
      ...usedToWasted(next, build.takes),
      made: next.made - 1,
      handedOver: next.handedOver - (isOver ? 1 : 0),
    }
    return waitingAgain(counted, event, build)
  }
  let next = release(release(state, build.takes), keptByStop(build))
  if (event.foodInIt) next = takeOut(next, event.wasted, event.uncounted, 'wasted')
  const { stop, hold } = build
  // What was in it was to be thrown out: it is made again from what is left.
  const isRemade = stop?.reason === 'throw-out'
  if ((!stop?.to && !hold && !isRemade) || stop?.reason === 'cancel')
    return put(next, event, (one) => ({
      ...one,
      ...knownOfHad(one),
      state: 'cancelled',
      stop: null,
      hold: null,
      took: [],
    }))
  return waitingAgain(next, event, build)
}
