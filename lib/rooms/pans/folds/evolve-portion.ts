/** Another portion of a component from now on: its scoop is missing, or back. */

import { afterLending, afterReturn } from '#lib/rooms/care/facts/lent-scoops.ts'
import { rescaled } from '#lib/rooms/pans/facts/first-beliefs.ts'
import type { Amounts } from '#lib/service/events/build-choice.ts'
import { portionsTaken } from '#lib/service/events/build-choice.ts'
import type { Stamp } from '#lib/service/events/event.ts'
import type { ScoopFound, ScoopMissed } from '#lib/service/events/stock-event.ts'
import { release, reserve } from '#lib/service/folding/build-folding.ts'
import { keptBy } from '#lib/service/reserved.ts'
import type { Build, RunningState, Ticket } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

const reportioned = (build: Build, component: string, amount: number): Build => {
  const over = (choice: Build['choice'], takes: Amounts): Amounts => {
    const portions = portionsTaken(choice, component)
    return portions > 0 ? { ...takes, [component]: portions * amount } : takes
  }
  const { stop } = build
  return {
    ...build,
    takes: over(build.choice, build.takes),
    stop: stop?.to
      ? { ...stop, to: { ...stop.to, takes: over(stop.to.choice, stop.to.takes) } }
      : stop,
  }
}

/** Builds that wait are made with the new portion; one in the making was begun with the old one. */
const waitingReportioned = (
  state: RunningState,
  component: string,
  amount: number,
): RunningState => {
  let next = state
  const changed = new Map<number, Map<string, Build>>()
  for (const { ticket, build } of openBuilds(state)) {
    if (build.state !== 'waiting') continue
    const to = reportioned(build, component, amount)
    next = reserve(release(next, keptBy(build)), keptBy(to))
    const builds = changed.get(ticket.number) ?? new Map<string, Build>()
    changed.set(ticket.number, builds.set(build.letter, to))
  }
  if (changed.size === 0) return next
  const tickets = Object.fromEntries(
    Object.entries(state.tickets).map(([key, ticket]): [string, Ticket] => {
      const builds = changed.get(ticket.number)
      return builds === undefined
        ? [key, ticket]
        : [key, { ...ticket, builds: ticket.builds.map((one) => builds.get(one.letter) ?? one) }]
    }),
  )
  return { ...next, tickets }
}

const lent = (
  state: RunningState,
  { component, measures }: ScoopMissed,
): RunningState['toolsIn'] => {
  const toolsIn: Record<string, readonly string[]> = { ...state.toolsIn }
  for (const { id } of measures)
    toolsIn[id] = [...new Set([...(toolsIn[id] ?? []), component])].sort()
  return toolsIn
}

const washed = (state: RunningState, tools: readonly string[]): RunningState['toolsIn'] =>
  Object.fromEntries(Object.entries(state.toolsIn).filter(([id]) => !tools.includes(id)))

export const portionChanged = (
  state: RunningState,
  event: (ScoopMissed | ScoopFound) & Stamp,
): RunningState => {
  const { component, portion } = event
  const before = state.portions[component]
  if (!before) throw new Error(`the station has no component ${component}`)
  const standIn = state.standIns[component]
  const belief = state.beliefs[component]
  const usual = standIn?.usual ?? before
  const ownBias =
    standIn?.ownBias ??
    (belief ? { bias: belief.bias, sd: Math.sqrt(belief.biasVar) } : { bias: 0, sd: 0 })
  const { [component]: _, ...others } = state.standIns
  const isBack = event.type === 'scoopFound'
  const waiting = waitingReportioned(state, component, portion.amount)
  const next: RunningState = {
    ...waiting,
    portions: { ...state.portions, [component]: portion },
    standIns: isBack
      ? others
      : { ...others, [component]: { measures: event.measures, usual, ownBias, at: event.at } },
    toolsIn: isBack
      ? event.washed
        ? washed(state, standIn?.measures.map(({ id }) => id) ?? [])
        : state.toolsIn
      : lent(state, event),
    beliefs: belief
      ? {
          ...state.beliefs,
          [component]: rescaled(belief, before.amount / portion.amount, isBack ? ownBias : null),
        }
      : state.beliefs,
  }
  return { ...next, lent: isBack ? afterReturn(next) : afterLending(next, event) }
}
