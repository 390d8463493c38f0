import { acknowledged, held, knownOfHad } from '#lib/rooms/making/folds/evolve-held.ts'
import { earliestThrowOut } from '#lib/safety/time-control.ts'
import { addToAccounts, byComponent } from '#lib/service/accounts.ts'
import { type BuildChoice, takesOf } from '#lib/service/events/build-choice.ts'
import type { AcceptedBuild } from '#lib/service/events/event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import { backupsInStep } from '#lib/service/folding/backups-in-step.ts'
import {
  type BuildEvent,
  buildOf,
  notBegun,
  put,
  release,
  reserve,
  takenOver,
  takeOut,
  usedToWasted,
  withHad,
} from '#lib/service/folding/build-folding.ts'
import { withoutPanHold } from '#lib/service/folding/pan-hold.ts'
import { stockOf, whereIs, withStock } from '#lib/service/held-stock.ts'
import { keptByStop } from '#lib/service/reserved.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

/**
 * Undoes the use of a build that was never made. Food of a pan that has been changed since went
 * away with that pan; a pan that has been counted since was counted with the food in it; what was
 * beyond the count goes back to being uncounted.
 */
const neverUsed = (state: RunningState, build: Build): RunningState => {
  let put: RunningState = state
  const counted: Taking[] = []
  const gone: Taking[] = []
  for (const taking of build.took) {
    const what = whereIs(state, taking.pan)
    const pan = what && stockOf(put, what, taking.pan)
    if (what === null || pan?.load !== taking.load) gone.push(taking)
    else if (pan.counted !== taking.counted) counted.push(taking)
    else
      put = withStock(put, what, taking.pan, (held) => ({
        ...held,
        amount: held.amount + taking.amount,
      }))
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
  return backupsInStep({ ...put, accounts }, Object.keys(took))
}

/** Its time says from now on what bound it. */
const unbound = ({ boundTo: _, ...build }: Build): Build => build

/** A build as a log of any version says it: version 1 knew no agreement and no acceptance. */
export const asAccepted = (build: AcceptedBuild): AcceptedBuild => ({
  ...build,
  choice: {
    ...build.choice,
    agreed: build.choice.agreed ?? false,
    caution: build.choice.caution ?? null,
  },
})

/** Marks the acceptance under which a build was accepted, so that it counts for no other. */
export const spendCaution = (
  cautions: RunningState['cautions'],
  { caution }: BuildChoice,
  ticket: number,
  letter: string,
): RunningState['cautions'] => {
  const key = `c${caution}`
  const acceptance = cautions[key]
  return caution === null || acceptance === undefined
    ? cautions
    : { ...cautions, [key]: { ...acceptance, build: buildName(ticket, letter) } }
}

const using = (state: RunningState, event: BuildEvent, choice: BuildChoice): RunningState => ({
  ...state,
  cautions: spendCaution(state.cautions, choice, event.ticket, event.letter),
})

/** Folds what happened to one build. @throws where there is no such build. */
export const evolveBuild = (state: RunningState, event: BuildEvent): RunningState => {
  const build = buildOf(state, event)
  switch (event.type) {
    case 'needTold':
    case 'buildHeld':
      return held(state, event, build)
    case 'holdLifted':
      return put(state, event, (one) => ({ ...one, hold: null, stop: null }))
    case 'buildChanged': {
      const to = asAccepted(event.to)
      const next = using(reserve(release(state, build.takes), to.takes), event, to.choice)
      return put(next, event, (one) => ({
        ...one,
        ...to,
        hold: null,
        told: false,
        version: one.version + 1,
      }))
    }
    case 'buildCancelled': {
      const next =
        build.state === 'made'
          ? usedToWasted(state, build.takes)
          : release(release(state, build.takes), keptByStop(build))
      return put(next, event, (one) => ({
        ...one,
        ...knownOfHad(one),
        state: 'cancelled',
        took: [],
        stop: null,
        hold: null,
      }))
    }
    case 'buildStopped': {
      const to = event.to ? asAccepted(event.to) : null
      const held = event.reason === 'throw-out' ? withoutPanHold(build) : build
      const stopped: Build = { ...held, stop: { reason: event.reason, at: event.at, to } }
      const next = reserve(release(state, keptByStop(build)), keptByStop(stopped))
      return put(to ? using(next, event, to.choice) : next, event, () => stopped)
    }
    case 'stopAcknowledged':
      return acknowledged(state, event, build)
    case 'buildStarted':
      return put(state, event, (one) =>
        event.tookOver
          ? takenOver(one, event.screen)
          : {
              ...one,
              state: 'making',
              begunIn: event.position,
              ...(event.behind === undefined ? {} : { behind: event.behind }),
              ...(event.screen === undefined ? {} : { screen: event.screen }),
            },
      )
    case 'buildFinished': {
      const next = takeOut(release(state, build.takes), event.took, event.uncounted, 'used')
      return put({ ...next, made: next.made + 1 }, event, (one) => ({
        ...unbound(one),
        state: 'made',
        took: event.took,
        until: event.until ?? null,
        madeAt: event.at,
        madeIn: event.position,
      }))
    }
    case 'finishTakenBack': {
      const making: Build = { ...build, state: 'making' }
      const next = reserve(reserve(neverUsed(state, build), build.takes), keptByStop(making))
      // Nobody can tell whether what is finished next is that food: its time isn't moved on.
      const boundTo = earliestThrowOut([build.until?.throwOutAt ?? null, build.boundTo ?? null])
      return put({ ...next, made: next.made - 1 }, event, (one) => ({
        ...one,
        state: 'making',
        took: [],
        until: null,
        ...(boundTo === null ? {} : { boundTo }),
      }))
    }
    case 'buildRemade': {
      // A tool may stand in for a scoop since: it is made again with the portions of now.
      const takes = takesOf(build.choice, state.portions)
      const next = reserve(usedToWasted(state, build.takes), takes)
      return put(
        {
          ...next,
          made: next.made - 1,
          handedOver: next.handedOver - (event.from === 'handed-over' ? 1 : 0),
        },
        event,
        (one) => ({
          ...notBegun(withHad(one)),
          state: 'waiting',
          takes,
          took: [],
          until: null,
          remakes: one.remakes + 1,
        }),
      )
    }
    case 'buildHandedOver':
      return put({ ...state, handedOver: state.handedOver + 1 }, event, (one) => ({
        ...one,
        state: 'handed-over',
      }))
  }
}
