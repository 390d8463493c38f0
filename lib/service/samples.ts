import { pansOf } from '#lib/menu/find.ts'
import { isKeptApart } from '#lib/service/build-choice.ts'
import type { CommandType } from '#lib/service/command-type.ts'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import { type Command, decide } from '#lib/service/decide.ts'
import { mayDo, type Role } from '#lib/service/roles.ts'
import { ofTheFood } from '#lib/service/sample-food.ts'
import {
  choices,
  needsToTry,
  ofTheKitchen,
  otherChoice,
  plainest,
} from '#lib/service/sample-orders.ts'
import { ofTheStock } from '#lib/service/sample-stock.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { findTicket, openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'

const onBuilds = (
  builds: readonly QueuedBuild[],
  make: (at: { ticket: number; letter: string }, queued: QueuedBuild) => readonly Command[],
): readonly Command[] =>
  builds.flatMap((queued) =>
    make({ ticket: queued.ticket.number, letter: queued.build.letter }, queued),
  )

/** The newest ticket's that are handed over, and all whose guests are to be found. */
const handedOver = (state: RunningState): readonly QueuedBuild[] => {
  const numbers = new Set([
    ...Object.values(state.toFind).map((one) => one.ticket),
    ...Array.from({ length: 8 }, (_, index) => state.nextTicket - 1 - index),
  ])
  return [...numbers].flatMap((number) => {
    const ticket = findTicket(state, number)
    return (ticket?.builds ?? [])
      .filter((build) => build.state === 'handed-over')
      .flatMap((build) => (ticket ? [{ ticket, build }] : []))
  })
}

/** All that stands made, as if nobody could tell which is which. */
const mixedUp = (builds: readonly QueuedBuild[]): readonly Command[] => {
  const made = builds.filter(({ build }) => build.state === 'made')
  const at = made.map(({ ticket, build }) => ({ ticket: ticket.number, letter: build.letter }))
  return [{ type: 'remakeMixedUp', builds: at.slice(0, 2) }]
}

/** Commands worth trying, several for each type, the likeliest first. */
const candidates = (state: RunningState): readonly Command[] => {
  const builds = openBuilds(state)
  const tickets = Object.values(state.tickets)
  const pans = pansOf(state.station)
  const past = Object.values(state.past).flatMap((chunk) => Object.values(chunk))
  return [
    ...choices(state).map(
      (choice): Command => ({
        type: 'send',
        builds: [choice],
        paid: false,
        readBack: true,
      }),
    ),
    ...ofTheFood(state),
    ...pans.map(
      (pan): Command => ({
        type: 'correct',
        pan: pan.id,
        amount: (state.pans[pan.id]?.amount ?? 0) + (state.portions[pan.component]?.amount ?? 0),
        ...(state.pans[pan.id]?.ended ? { was: 'slip' } : {}),
      }),
    ),
    ...onBuilds(builds, (at, { build }) =>
      [...plainest(state, build), ...otherChoice(state, build.choice)].map((to) => ({
        type: 'change',
        ...at,
        to,
        readBack: true,
      })),
    ),
    ...onBuilds(builds, (at, { build }) => [
      isKeptApart(build.choice) ? { type: 'start', ...at, read: true } : { type: 'start', ...at },
    ]),
    ...onBuilds(builds, (at) => [
      { type: 'cancel', ...at },
      { type: 'acknowledge', ...at, foodInIt: false },
      { type: 'acknowledge', ...at, foodInIt: true },
      { type: 'finish', ...at },
      { type: 'takeBack', ...at, made: false },
      { type: 'remake', ...at },
      { type: 'handOver', ...at },
    ]),
    ...mixedUp(builds),
    ...onBuilds([...builds, ...handedOver(state)], (at) =>
      needsToTry(state).map((need) => ({
        type: 'tellNeed',
        ...at,
        asked: 'needs',
        needs: [need],
      })),
    ),
    ...onBuilds(handedOver(state), (at, { build }) => [
      { type: 'acknowledge', ...at, foodInIt: false },
      ...plainest(state, build).map(
        (to): Command => ({ type: 'change', ...at, to, readBack: true }),
      ),
    ]),
    ...ofTheKitchen(state),
    ...past.flatMap((ticket) =>
      ticket.builds.map(
        (build): Command => ({ type: 'remake', ticket: ticket.number, letter: build.letter }),
      ),
    ),
    ...[...tickets, ...past].map(
      (one): Command => ({ type: 'pay', ticket: one.number, paid: !one.paid }),
    ),
    ...state.station.components.flatMap(({ id }): Command[] => [
      { type: 'stopSelling', what: 'component', id },
      { type: 'resumeSelling', what: 'component', id },
    ]),
    ...state.station.items.flatMap(({ id }): Command[] => [
      { type: 'stopSelling', what: 'item', id },
      { type: 'resumeSelling', what: 'item', id },
    ]),
    ...ofTheStock(state),
    { type: 'confirmClock' },
    { type: 'close' },
  ]
}

/** One valid example of each command that a role could give now, without ids of its own. */
export const samplesFor = (
  state: ServiceState,
  role: Role,
  station: string,
): Partial<Record<CommandType, Command>> => {
  const circumstances: Circumstances = {
    now: state.at,
    by: role,
    service: state.service,
    otherIsOpen: state.stage === 'open',
    station: () => null,
    newestRevision: state.revision,
  }
  const samples: Partial<Record<CommandType, Command>> = {}
  if (state.stage !== 'open' && mayDo(role, 'open'))
    samples.open = { type: 'open', station, kind: 'demo' }
  if (!isRunning(state)) return samples
  for (const command of candidates(state))
    if (
      samples[command.type] === undefined &&
      mayDo(role, command.type) &&
      'events' in decide(state, command, circumstances)
    )
      samples[command.type] = command
  return samples
}
