import { addToAccounts, byComponent, takeFromPans } from '#lib/service/accounts.ts'
import type { Amounts } from '#lib/service/build-choice.ts'
import type { Recorded, Taking } from '#lib/service/event.ts'
import type { Build, PanState, RunningState } from '#lib/service/state.ts'
import { findTicket, putTicket } from '#lib/service/tickets.ts'

export type BuildEvent = Extract<Recorded, { readonly ticket: number; readonly letter: string }>

const put = (
  state: RunningState,
  event: BuildEvent,
  change: (build: Build) => Build,
): RunningState => {
  const ticket = findTicket(state, event.ticket)
  if (!ticket) throw new Error(`no ticket ${event.ticket}`)
  const builds = ticket.builds.map((build) => {
    if (build.letter !== event.letter) return build
    const next = change(build)
    return next.state === build.state ? next : { ...next, since: event.at }
  })
  return { ...state, ...putTicket(state, { ...ticket, builds }) }
}

const release = (state: RunningState, takes: Amounts): RunningState => ({
  ...state,
  accounts: addToAccounts(state.accounts, 'onTickets', takes, -1),
})

const reserve = (state: RunningState, takes: Amounts): RunningState => ({
  ...state,
  accounts: addToAccounts(state.accounts, 'onTickets', takes),
})

const takeOut = (
  state: RunningState,
  takings: readonly Taking[],
  uncounted: Amounts,
  column: 'used' | 'wasted',
): RunningState => {
  let accounts = addToAccounts(state.accounts, column, byComponent(state, takings))
  accounts = addToAccounts(accounts, column, uncounted)
  accounts = addToAccounts(accounts, 'corrected', uncounted)
  return { ...state, accounts, pans: takeFromPans(state.pans, takings) }
}

const usedToWasted = (state: RunningState, takes: Amounts): RunningState => ({
  ...state,
  accounts: addToAccounts(addToAccounts(state.accounts, 'used', takes, -1), 'wasted', takes),
})

/**
 * Undoes the use of a build that was never made. Food of a pan that has been changed since went
 * away with that pan; a pan that has been counted since was counted with the food in it; what was
 * beyond the count goes back to being uncounted.
 */
const neverUsed = (state: RunningState, build: Build): RunningState => {
  const pans: Record<string, PanState> = { ...state.pans }
  const counted: Taking[] = []
  const gone: Taking[] = []
  for (const taking of build.took) {
    const pan = pans[taking.pan]
    if (pan?.load !== taking.load) gone.push(taking)
    else if (pan.counted !== taking.counted) counted.push(taking)
    else pans[taking.pan] = { ...pan, amount: pan.amount + taking.amount }
  }
  const took = byComponent(state, build.took)
  const uncounted = Object.fromEntries(
    Object.entries(build.takes)
      .map(([component, amount]) => [component, amount - (took[component] ?? 0)] as const)
      .filter(([, amount]) => amount > 0),
  )
  let accounts = addToAccounts(state.accounts, 'used', build.takes, -1)
  accounts = addToAccounts(accounts, 'corrected', uncounted, -1)
  accounts = addToAccounts(accounts, 'corrected', byComponent(state, counted), -1)
  accounts = addToAccounts(accounts, 'takenAway', byComponent(state, gone))
  return { ...state, accounts, pans }
}

const buildOf = (state: RunningState, event: BuildEvent): Build => {
  const build = findTicket(state, event.ticket)?.builds.find((one) => one.letter === event.letter)
  if (!build) throw new Error(`no build ${event.ticket}${event.letter}`)
  return build
}

/** What a build's new choice takes beyond its old one: held while a stop isn't acknowledged. */
export const beyond = (before: Amounts, after: Amounts): Amounts =>
  Object.fromEntries(
    Object.entries(after)
      .map(([component, amount]) => [component, amount - (before[component] ?? 0)] as const)
      .filter(([, amount]) => amount > 0),
  )

const acknowledged = (
  state: RunningState,
  event: Extract<BuildEvent, { readonly type: 'stopAcknowledged' }>,
  build: Build,
): RunningState => {
  const to = build.stop?.to ?? null
  let next = release(state, build.takes)
  if (to) next = release(next, beyond(build.takes, to.takes))
  if (event.foodInIt) next = takeOut(next, event.wasted, event.uncounted, 'wasted')
  if (!to) return put(next, event, (one) => ({ ...one, state: 'cancelled', stop: null, took: [] }))
  return put(reserve(next, to.takes), event, (one) => ({
    ...one,
    ...to,
    state: 'waiting',
    stop: null,
    version: one.version + 1,
    remakes: one.remakes + (event.foodInIt ? 1 : 0),
  }))
}

/** Folds what happened to one build. @throws where there is no such build. */
export const evolveBuild = (state: RunningState, event: BuildEvent): RunningState => {
  const build = buildOf(state, event)
  switch (event.type) {
    case 'buildChanged':
      return put(reserve(release(state, build.takes), event.to.takes), event, (one) => ({
        ...one,
        ...event.to,
        version: one.version + 1,
      }))
    case 'buildCancelled': {
      const next =
        build.state === 'made' ? usedToWasted(state, build.takes) : release(state, build.takes)
      return put(next, event, (one) => ({ ...one, state: 'cancelled', took: [] }))
    }
    case 'buildStopped': {
      const next = event.to ? reserve(state, beyond(build.takes, event.to.takes)) : state
      return put(next, event, (one) => ({
        ...one,
        stop: { reason: event.reason, at: event.at, to: event.to },
      }))
    }
    case 'stopAcknowledged':
      return acknowledged(state, event, build)
    case 'buildStarted':
      return put(state, event, (one) => ({ ...one, state: 'making' }))
    case 'buildFinished': {
      const next = takeOut(release(state, build.takes), event.took, event.uncounted, 'used')
      return put({ ...next, made: next.made + 1 }, event, (one) => ({
        ...one,
        state: 'made',
        took: event.took,
      }))
    }
    case 'finishTakenBack': {
      const next = reserve(neverUsed(state, build), build.takes)
      return put({ ...next, made: next.made - 1 }, event, (one) => ({
        ...one,
        state: 'making',
        took: [],
      }))
    }
    case 'buildRemade': {
      const next = reserve(usedToWasted(state, build.takes), build.takes)
      return put(
        {
          ...next,
          made: next.made - 1,
          handedOver: next.handedOver - (event.from === 'handed-over' ? 1 : 0),
        },
        event,
        (one) => ({ ...one, state: 'waiting', took: [], remakes: one.remakes + 1 }),
      )
    }
    case 'buildHandedOver':
      return put({ ...state, handedOver: state.handedOver + 1 }, event, (one) => ({
        ...one,
        state: 'handed-over',
      }))
  }
}
