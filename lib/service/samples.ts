import { itemOf, pansOf } from '#lib/menu/find.ts'
import { type BuildChoice, isKeptApart, usualChoice } from '#lib/service/build-choice.ts'
import type { CommandType } from '#lib/service/command-type.ts'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import { type Command, decide } from '#lib/service/decide.ts'
import { mayDo, type Role } from '#lib/service/roles.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { openBuilds, type QueuedBuild } from '#lib/service/tickets.ts'
import { itemLeft, levelsOf, sellable } from '#lib/stock/levels.ts'

const choices = (state: RunningState): readonly BuildChoice[] => {
  const levels = levelsOf(state)
  return state.station.items.map((item) => {
    const usual = usualChoice(item)
    const { gone } = itemLeft(state, levels, item.id)
    const base =
      item.base?.choices.find((choice) => sellable(state, levels, choice) > 0) ?? usual.base
    return {
      ...usual,
      base,
      parts: {
        ...usual.parts,
        ...Object.fromEntries(
          gone.map((id) => [
            id,
            { placement: 'no' as const, portions: 0, because: 'gone' as const },
          ]),
        ),
      },
    }
  })
}

const otherChoice = (state: RunningState, choice: BuildChoice): readonly BuildChoice[] => {
  const item = itemOf(state.station, choice.item)
  const others = (item.base?.choices ?? []).filter((base) => base !== choice.base)
  const parts = item.parts
    .filter((part) => !part.required && part.component !== item.heart)
    .map(
      (part): BuildChoice => ({
        ...choice,
        parts: {
          ...choice.parts,
          [part.component]:
            choice.parts[part.component]?.placement === 'no'
              ? { placement: 'in', portions: 1, because: 'asked' }
              : { placement: 'no', portions: 0, because: 'asked' },
        },
      }),
    )
  return [...parts, ...others.map((base) => ({ ...choice, base }))]
}

const onBuilds = (
  builds: readonly QueuedBuild[],
  make: (at: { ticket: number; letter: string }, queued: QueuedBuild) => readonly Command[],
): readonly Command[] =>
  builds.flatMap((queued) =>
    make({ ticket: queued.ticket.number, letter: queued.build.letter }, queued),
  )

/** Commands worth trying, several for each type, the likeliest first. */
const candidates = (state: RunningState): readonly Command[] => {
  const builds = openBuilds(state)
  const tickets = Object.values(state.tickets)
  const pans = pansOf(state.station)
  const past = Object.values(state.past).flatMap((chunk) => Object.values(chunk))
  const usual = (pan: (typeof pans)[number]) =>
    pan.usualPortions * (state.portions[pan.component]?.amount ?? 0)
  return [
    ...choices(state).map((choice): Command => ({ type: 'send', builds: [choice], paid: false })),
    ...pans.map((pan): Command => ({ type: 'load', pan: pan.id, amount: usual(pan) })),
    ...pans.map((pan): Command => ({ type: 'changePan', pan: pan.id, amount: usual(pan) })),
    ...pans.map(
      (pan): Command => ({
        type: 'correct',
        pan: pan.id,
        amount: (state.pans[pan.id]?.amount ?? 0) + (state.portions[pan.component]?.amount ?? 0),
      }),
    ),
    ...onBuilds(builds, (at, { build }) =>
      otherChoice(state, build.choice).map((to) => ({ type: 'change', ...at, to })),
    ),
    ...onBuilds(builds, (at, { build }) => [
      isKeptApart(build.choice) ? { type: 'start', ...at, read: true } : { type: 'start', ...at },
    ]),
    ...onBuilds(builds, (at) => [
      { type: 'cancel', ...at },
      { type: 'acknowledge', ...at, foodInIt: false },
      { type: 'finish', ...at },
      { type: 'takeBack', ...at, made: false },
      { type: 'remake', ...at },
      { type: 'handOver', ...at },
    ]),
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
