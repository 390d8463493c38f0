/**
 * Folds what happened into the state of a service, from the moment it is planned. It decides nothing
 * and asks no clock; the server and the screens that follow a planned service run this function.
 */
import { expectedBy } from '#lib/rooms/day/facts/expected-by.ts'
import { evolvePrep } from '#lib/rooms/prep/folds/evolve-prep.ts'
import type { Recorded, Stamp } from '#lib/service/events/event.ts'
import type { PlanEvent, ServicePlan, ServicePlanned } from '#lib/service/events/plan-event.ts'
import type { PrepEvent } from '#lib/service/events/prep-event.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { evolveOpen, foldedWith } from '#lib/spine/evolve-open.ts'
import { newestEvent } from '#lib/spine/newest-event.ts'
import { opened } from '#lib/spine/opened.ts'

type AsPlanned = Omit<ServicePlanned, 'type'>

const PLAN_EVENTS: ReadonlySet<string> = new Set<(PlanEvent | PrepEvent)['type']>([
  'servicePlanned',
  'planChanged',
  'planFollowed',
  'planDropped',
  'prepPlanned',
  'taskTicked',
  'tickTakenBack',
  'taskPassed',
])

/** As it will be at its doors' opening, with nothing in it yet. */
const planned = (
  { plan, minuteOfDay, ...copied }: AsPlanned,
  stamp: Pick<Stamp, 'position' | 'command'>,
): RunningState => {
  const { invented, day } = copied.station
  return {
    ...opened({
      ...copied,
      type: 'serviceOpened',
      kind: plan.kind,
      closesItselfAt: null,
      minuteOfDay,
      ...(invented ? {} : { servedOn: plan.on }),
      followsProbes: true,
      guestsExpected: expectedBy(plan),
      closesAt: plan.closesAt,
      assemblers: day.assemblers,
      position: stamp.position,
      command: stamp.command,
      at: plan.opensAt,
    }),
    stage: 'planned',
    plan,
  }
}

/** What was prepared, read and thrown out so far: no change of the plan, and no opening, loses any. */
const withPrepared = (next: RunningState, state: RunningState): RunningState => ({
  ...next,
  accounts: { ...next.accounts, ...state.accounts },
  batches: state.batches,
  nextBatch: state.nextBatch,
  toThrowOut: state.toThrowOut,
  toTell: state.toTell,
  wastes: state.wastes,
  ...(state.ends ? { ends: state.ends } : {}),
  mixing: state.mixing,
  labelChanges: state.labelChanges,
  clockJump: state.clockJump,
  ...(state.prep ? { prep: state.prep } : {}),
  ...(state.probes ? { probes: state.probes } : {}),
  ...(state.sanitizer ? { sanitizer: state.sanitizer } : {}),
})

/** Items that the plan doesn't sell, as if somebody had stopped each at the opening. */
const notOnSale = (state: RunningState, { items }: ServicePlan): RunningState['notSelling'] => ({
  component: {},
  item:
    items === null
      ? {}
      : Object.fromEntries(
          state.station.items
            .filter(({ id }) => !items.includes(id))
            .map(({ id }) => [id, state.openedAt]),
        ),
})

const openedAsPlanned = (
  state: RunningState,
  event: Extract<Recorded, { type: 'serviceOpened' }>,
): RunningState => {
  const { plan } = state
  const next = withPrepared(opened(event), state)
  const { probes, ...unfollowed } = next
  const own = event.followsProbes === true && probes ? next : unfollowed
  return { ...own, ...(plan ? { plan, notSelling: notOnSale(own, plan) } : {}) }
}

const asPlanned = (state: RunningState, plan: ServicePlan): AsPlanned => ({
  service: state.service,
  revision: state.revision,
  station: state.station,
  ...(state.labelVersions ? { labels: state.labelVersions } : {}),
  portions: state.portions,
  plan,
  minuteOfDay: state.openedMinute,
})

const evolvePlanned = (state: RunningState, event: Recorded): RunningState => {
  const { plan } = state
  if (!plan) throw new Error('a service is planned without a plan')
  const { at, position } = event
  const again = (as: AsPlanned): RunningState => ({
    ...withPrepared(planned(as, event), state),
    at,
    position,
  })
  switch (event.type) {
    case 'servicePlanned':
      throw new Error('a service is planned once')
    case 'planChanged': {
      const { minuteOfDay } = event
      return again({ ...asPlanned(state, event.plan), minuteOfDay })
    }
    case 'planFollowed': {
      const { revision, station, labels, portions } = event
      const copied = { revision, station, portions, ...(labels ? { labels } : {}) }
      return again({ ...asPlanned(state, plan), ...copied })
    }
    case 'prepPlanned':
    case 'taskTicked':
    case 'tickTakenBack':
    case 'taskPassed':
      return { ...state, prep: evolvePrep(state.prep, event), at, position }
    case 'planDropped':
      return { ...state, stage: 'closed', closedAt: at, at, position }
    case 'serviceOpened':
      return foldedWith(state, event, openedAsPlanned(state, event))
    default:
      return foldedWith(state, event)
  }
}

/**
 * The state after an event.
 * @throws where the event can't have happened in this state: such an event is never committed.
 */
export const evolve = (state: ServiceState, recorded: Recorded): ServiceState => {
  const event = newestEvent(recorded)
  if (isRunning(state) && state.stage === 'planned') return evolvePlanned(state, event)
  if (!isRunning(state) && event.type === 'servicePlanned')
    return { ...planned(event, event), at: event.at, position: event.position }
  if (PLAN_EVENTS.has(event.type)) throw new Error(`${event.type} of a service that isn’t planned`)
  return evolveOpen(state, event)
}
