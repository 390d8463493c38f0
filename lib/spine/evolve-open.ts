/**
 * Folds what happened in a service since it opened: the screens of the rush need no more of a plan than
 * what a snapshot tells. What is planned before is folded by evolve.ts, which asks this for the rest.
 */

import { mixedBy } from '#lib/rooms/care/facts/mixing.ts'
import { soiledPans } from '#lib/rooms/care/facts/soiling.ts'
import { withWiped } from '#lib/rooms/care/folds/wiped.ts'
import { afterSetBack } from '#lib/rooms/food/folds/clock-set-back.ts'
import { clockJumped, withReadSinceJump } from '#lib/rooms/food/folds/evolve-clock-jump.ts'
import { evolveFood } from '#lib/rooms/food/folds/evolve-food.ts'
import { withProbes } from '#lib/rooms/food/folds/probes.ts'
import { asAccepted, evolveBuild, spendCaution } from '#lib/rooms/making/folds/evolve-build.ts'
import { corrected } from '#lib/rooms/pans/folds/evolve-count.ts'
import { backupSet, loaded, toppedUp } from '#lib/rooms/pans/folds/evolve-pans.ts'
import { evolveShelf } from '#lib/rooms/shelf/folds/evolve-shelf.ts'
import { addToAccounts } from '#lib/service/accounts.ts'
import type { Recorded, Stamp, TicketSent } from '#lib/service/events/event.ts'
import type { PlanEvent } from '#lib/service/events/plan-event.ts'
import type { PrepEvent } from '#lib/service/events/prep-event.ts'
import { backupsInStep } from '#lib/service/folding/backups-in-step.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { findTicket, putTicket } from '#lib/service/tickets.ts'
import { without } from '#lib/service/without.ts'
import { evolveStock, taught } from '#lib/spine/evolve-stock.ts'
import { opened } from '#lib/spine/opened.ts'

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
        until: null,
        since: event.at,
      })),
    }),
  }
}

/** While nobody has said what a jump of the clock was, back-up pans that it leaves in doubt aren't ready. */
const inStep = (state: RunningState): RunningState =>
  backupsInStep(
    state,
    state.station.components.map(({ id }) => id),
  )

/** What happens to a service that runs, and to the food of one that is planned. */
export type SinceOpened = Exclude<Recorded, PlanEvent | PrepEvent>

/** Whoever accepted the others isn't there any more. */
const usedOnly = (cautions: ServiceState['cautions']): ServiceState['cautions'] =>
  Object.fromEntries(Object.entries(cautions).filter(([, { build }]) => build !== null))

const fold = (state: RunningState, event: SinceOpened): RunningState => {
  switch (event.type) {
    case 'serviceOpened':
      throw new Error('a service is opened once')
    case 'panLoaded':
    case 'panChanged':
      return loaded(state, event)
    case 'panToppedUp':
      return toppedUp(state, event)
    case 'shelfRead':
    case 'shelfReadingMissed':
    case 'shelfResolved':
      return evolveShelf(state, event)
    case 'panSoiled': {
      if (!state.pans[event.pan]) throw new Error(`the line has no pan ${event.pan}`)
      return { ...state, pans: soiledPans(state, event.pan, event.by) ?? state.pans }
    }
    case 'backupSet':
      return backupSet(state, event)
    case 'labelChanged':
      return {
        ...state,
        ...mixedBy(state, event),
        revision: event.revision,
        ...(event.version === undefined
          ? {}
          : { labelVersions: { ...state.labelVersions, [event.ingredient]: event.version } }),
        labelChanges: [
          ...state.labelChanges,
          { ingredient: event.ingredient, at: event.at, read: event.label !== null },
        ],
      }
    case 'contactsChanged':
      return {
        ...state,
        station: { ...state.station, contacts: event.contacts },
        contactsRevision: event.revision,
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
      return corrected(state, event)
    case 'ticketSent':
      if (event.ticket !== state.nextTicket) throw new Error(`ticket ${event.ticket} out of order`)
      return sent(state, event)
    case 'ticketPaid': {
      const ticket = findTicket(state, event.ticket)
      if (!ticket) throw new Error(`no ticket ${event.ticket}`)
      const { writtenOff: _, ...rest } = ticket
      const off = event.writtenOff ? { writtenOff: event.writtenOff } : {}
      return { ...state, ...putTicket(state, { ...rest, paid: event.paid, ...off }) }
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
      return inStep(clockJumped(state, event))
    case 'clockConfirmed': {
      const byMs = state.clockJump?.byMs ?? 0
      return inStep({ ...(byMs < 0 ? afterSetBack(state, -byMs) : state), clockJump: null })
    }
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
    case 'holdLifted':
      return evolveBuild(state, event)
    case 'daySet':
    case 'wasteRecorded':
    case 'portionsKept':
    case 'keepEnded':
    case 'wantedGone':
    case 'scoopMissed':
    case 'scoopFound':
    case 'adviceTold':
    case 'adviceAnswered':
    case 'adviceLapsed':
    case 'buildWaits':
      return evolveStock(state, event)
    // All others are of food: the type checker sees that none is left over.
    default:
      return evolveFood(state, event)
  }
}

/** With all that an event teaches beside its own fold. @throws as `evolveOpen` does */
export const foldedWith = (
  state: RunningState,
  event: SinceOpened,
  own: RunningState = fold(state, event),
): RunningState => {
  const folded = withWiped(state, withProbes(own, event), event.position)
  const next: RunningState = {
    ...taught(state, folded, event),
    at: event.at,
    position: event.position,
  }
  return next.clockJump === null ? next : inStep(withReadSinceJump(next, event))
}

/**
 * The state after an event of a service that is or was open.
 * @throws where the event can't have happened in this state, and where it is of a plan
 */
export const evolveOpen = (state: ServiceState, event: Recorded): ServiceState => {
  if (!isRunning(state)) {
    if (event.type !== 'serviceOpened') throw new Error(`${event.type} before the service opened`)
    return { ...opened(event), at: event.at, position: event.position }
  }
  // What was given out and not paid may be paid, or written off, after that.
  if (state.stage !== 'open' && event.type !== 'ticketPaid')
    throw new Error(`${event.type} after the service closed`)
  return foldedWith(state, event as SinceOpened)
}
