/** What folding one build's events is made of. */
import { addToAccounts, byComponent, takeFromPans } from '#lib/service/accounts.ts'
import type { Amounts } from '#lib/service/events/build-choice.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import { backupsInStep } from '#lib/service/folding/backups-in-step.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { findTicket, putTicket } from '#lib/service/tickets.ts'

export type BuildEvent = Extract<Recorded, { readonly ticket: number; readonly letter: string }>

export const buildOf = (state: RunningState, event: BuildEvent): Build => {
  const build = findTicket(state, event.ticket)?.builds.find((one) => one.letter === event.letter)
  if (!build) throw new Error(`no build ${event.ticket}${event.letter}`)
  return build
}

export const put = (
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

export const release = (state: RunningState, takes: Amounts): RunningState => ({
  ...state,
  accounts: addToAccounts(state.accounts, 'onTickets', takes, -1),
})

export const reserve = (state: RunningState, takes: Amounts): RunningState => ({
  ...state,
  accounts: addToAccounts(state.accounts, 'onTickets', takes),
})

export const takeOut = (
  state: RunningState,
  takings: readonly Taking[],
  uncounted: Amounts,
  column: 'used' | 'wasted',
): RunningState => {
  let accounts = addToAccounts(state.accounts, column, byComponent(state, takings))
  accounts = addToAccounts(accounts, column, uncounted)
  accounts = addToAccounts(accounts, 'corrected', uncounted)
  return backupsInStep(
    takeFromPans({ ...state, accounts }, takings),
    Object.keys(byComponent(state, takings)),
  )
}

export const usedToWasted = (state: RunningState, takes: Amounts): RunningState => ({
  ...state,
  accounts: addToAccounts(addToAccounts(state.accounts, 'used', takes, -1), 'wasted', takes),
})

/** Made again, a build still tells what its guest had of it before. */
export const withHad = (build: Build): Build => {
  if (build.state !== 'handed-over') return build
  const { choice, took, takes, since, madeAt, begunIn, madeIn, behind, had = [] } = build
  const one = {
    choice,
    took,
    takes,
    since,
    ...(madeAt === undefined ? {} : { madeAt }),
    ...(begunIn === undefined ? {} : { begunIn }),
    ...(madeIn === undefined ? {} : { madeIn }),
    ...(behind === undefined ? {} : { behind }),
  }
  return { ...build, had: [...had, one] }
}

/** A build of which nothing is taken yet. */
export const notBegun = ({
  begunIn: _,
  madeIn: __,
  behind: ___,
  screen: ____,
  tookFrom: _____,
  ...build
}: Build): Build => build

/** It goes on at another screen: from where in the log, and out of which pans, stays as it was. */
export const takenOver = (build: Build, screen: string | undefined): Build => ({
  ...build,
  ...(screen === undefined ? {} : { screen }),
  ...(build.screen === undefined ? {} : { tookFrom: build.screen }),
})
