/**
 * Folds what happened into the state of a service. The server and every crew screen run this same
 * function; it decides nothing and asks no clock.
 */
import { pansOf } from '#lib/menu/find.ts'
import { newestOf } from '#lib/menu/newest-document.ts'
import { addToAccounts, EMPTY_ACCOUNT } from '#lib/service/accounts.ts'
import type { Recorded, ServiceOpened, Stamp, TicketSent } from '#lib/service/event.ts'
import { asAccepted, evolveBuild, spendCaution } from '#lib/service/evolve-build.ts'
import { mixedBy, unmixedBy } from '#lib/service/mixing.ts'
import { soiledPans } from '#lib/service/soiling.ts'
import { isRunning, NOT_OPENED, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { findTicket, putTicket } from '#lib/service/tickets.ts'

const opened = (event: ServiceOpened & Stamp): ServiceState => {
  const station = newestOf(event.station)
  return {
    ...NOT_OPENED,
    stage: 'open',
    service: event.service,
    kind: event.kind,
    revision: event.revision,
    station,
    portions: event.portions,
    openedAt: event.at,
    closesItselfAt: event.closesItselfAt,
    pans: Object.fromEntries(
      pansOf(station).map((pan) => [
        pan.id,
        { amount: 0, full: 0, load: 0, counted: 0, loadedAt: 0, soiledBy: [] },
      ]),
    ),
    accounts: Object.fromEntries(station.components.map((one) => [one.id, EMPTY_ACCOUNT])),
  }
}

const sent = (state: RunningState, event: TicketSent & Stamp): RunningState => {
  const builds = event.builds.map(asAccepted)
  return {
    ...state,
    nextTicket: event.ticket + 1,
    cautions: builds.reduce(
      (cautions, build) => spendCaution(cautions, build.choice, event.ticket, build.letter),
      state.cautions,
    ),
    accounts: builds.reduce(
      (accounts, build) => addToAccounts(accounts, 'onTickets', build.takes),
      state.accounts,
    ),
    ...putTicket(state, {
      number: event.ticket,
      sentBy: event.command,
      named: event.named,
      sentAt: event.at,
      paid: event.paid,
      builds: builds.map((build) => ({
        ...build,
        state: 'waiting',
        took: [],
        stop: null,
        hold: null,
        told: false,
        remakes: 0,
        version: 0,
        since: event.at,
      })),
    }),
  }
}

const withPan = (
  state: RunningState,
  pan: string,
  event: Stamp,
  amounts: { readonly to: number; readonly column: 'loaded' | 'corrected'; readonly by: number },
  isWashed = false,
): RunningState => {
  const before = state.pans[pan]
  const component = pansOf(state.station).find((one) => one.id === pan)?.component
  if (!before || component === undefined) throw new Error(`the line has no pan ${pan}`)
  const isLoad = amounts.column === 'loaded'
  return {
    ...state,
    pans: {
      ...state.pans,
      [pan]: {
        amount: amounts.to,
        full: isLoad ? amounts.to : Math.max(before.full, amounts.to),
        load: before.load + (isLoad ? 1 : 0),
        counted: before.counted + (isLoad ? 0 : 1),
        loadedAt: isLoad ? event.at : before.loadedAt,
        soiledBy: isWashed ? [] : before.soiledBy,
      },
    },
    accounts: addToAccounts(state.accounts, amounts.column, { [component]: amounts.by }),
  }
}

const takenAway = (state: RunningState, pan: string, amount: number): RunningState => {
  const component = pansOf(state.station).find((one) => one.id === pan)?.component ?? ''
  return {
    ...state,
    accounts: addToAccounts(state.accounts, 'takenAway', { [component]: amount }),
  }
}

const without = <Value>(
  record: Readonly<Record<string, Value>>,
  key: string,
): Readonly<Record<string, Value>> => {
  const { [key]: _, ...rest } = record
  return rest
}

/** Whoever accepted the others isn't there any more. */
const usedOnly = (cautions: ServiceState['cautions']): ServiceState['cautions'] =>
  Object.fromEntries(Object.entries(cautions).filter(([, { build }]) => build !== null))

const fold = (state: RunningState, event: Recorded): ServiceState => {
  switch (event.type) {
    case 'serviceOpened':
      throw new Error('a service is opened once')
    case 'panLoaded':
      return withPan(
        event.washed ? { ...state, ...unmixedBy(state, event.pan) } : state,
        event.pan,
        event,
        { to: event.amount, column: 'loaded', by: event.amount },
        event.washed,
      )
    case 'panChanged':
      return withPan(
        takenAway({ ...state, ...unmixedBy(state, event.pan) }, event.pan, event.takenAway),
        event.pan,
        event,
        { to: event.amount, column: 'loaded', by: event.amount },
        true,
      )
    case 'panSoiled': {
      if (!state.pans[event.pan]) throw new Error(`the line has no pan ${event.pan}`)
      return { ...state, pans: soiledPans(state, event.pan, event.by) ?? state.pans }
    }
    case 'backupSet':
      return {
        ...state,
        backups: event.ready
          ? { ...state.backups, [event.component]: event.at }
          : without(state.backups, event.component),
      }
    case 'labelChanged':
      return {
        ...state,
        ...mixedBy(state, event),
        revision: event.revision,
        labelChanges: [
          ...state.labelChanges,
          { ingredient: event.ingredient, at: event.at, read: event.label !== null },
        ],
      }
    case 'inChargeSignedOn':
      return { ...state, inCharge: event.at }
    case 'inChargeSignedOff':
      return { ...state, inCharge: null, cautions: usedOnly(state.cautions) }
    case 'cautionAccepted': {
      const { item, food, needs, findings, reason, at } = event
      return {
        ...state,
        nextCaution: event.caution + 1,
        cautions: {
          ...state.cautions,
          [`c${event.caution}`]: { item, food, needs, findings, reason, at, build: null },
        },
      }
    }
    case 'countCorrected':
      return withPan(state, event.pan, event, {
        to: event.to,
        column: 'corrected',
        by: event.to - event.from,
      })
    case 'ticketSent':
      if (event.ticket !== state.nextTicket) throw new Error(`ticket ${event.ticket} out of order`)
      return sent(state, event)
    case 'ticketPaid': {
      const ticket = findTicket(state, event.ticket)
      if (!ticket) throw new Error(`no ticket ${event.ticket}`)
      return { ...state, ...putTicket(state, { ...ticket, paid: event.paid }) }
    }
    case 'sellingStopped':
      return {
        ...state,
        notSelling: {
          ...state.notSelling,
          [event.what]: { ...state.notSelling[event.what], [event.id]: event.at },
        },
      }
    case 'sellingResumed':
      return {
        ...state,
        notSelling: {
          ...state.notSelling,
          [event.what]: without(state.notSelling[event.what], event.id),
        },
      }
    case 'clockJumped':
      return { ...state, clockJump: { byMs: event.byMs, at: event.at } }
    case 'clockConfirmed':
      return { ...state, clockJump: null }
    case 'serviceClosed':
      return { ...state, stage: 'closed', closedAt: event.at }
    case 'buildChanged':
    case 'buildCancelled':
    case 'buildStopped':
    case 'stopAcknowledged':
    case 'buildStarted':
    case 'buildFinished':
    case 'finishTakenBack':
    case 'buildRemade':
    case 'buildHandedOver':
    case 'needTold':
    case 'buildHeld':
      return evolveBuild(state, event)
  }
}

/**
 * The state after an event.
 * @throws where the event can't have happened in this state: such an event is never committed.
 */
export const evolve = (state: ServiceState, event: Recorded): ServiceState => {
  if (!isRunning(state)) {
    if (event.type !== 'serviceOpened') throw new Error(`${event.type} before the service opened`)
    return { ...opened(event), at: event.at }
  }
  if (state.stage === 'closed') throw new Error(`${event.type} after the service closed`)
  return { ...fold(state, event), at: event.at }
}
