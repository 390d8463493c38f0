/**
 * Random days of a house: services of two stations that are planned, open and closed, and the larder
 * between them, over one log that two servers write to. Appends fail between, servers start again from
 * the log, and time passes. What is done is chosen by plain numbers, so that it shrinks and is repeated.
 */
import type { LarderCommand } from '#lib/larder/command.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import { endsAt } from '#lib/rooms/day/facts/ends/food-history.ts'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { isRunning, isUnderWay, type RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { batchCommands, loadFields, openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { pansOf } from '#lib/station/find.ts'
import { demoStation } from '#server/demo-station.ts'
import { nextToClose } from '#tests/support/closing-steps.ts'
import { beginHouse, type House, type World } from '#tests/support/house-world.ts'
import { usual } from '#tests/support/orders.ts'
import { PLAN } from '#tests/support/plans.ts'
import { settle } from '#tests/support/rail-room.ts'

export interface Move {
  /** What is done: a place in `DOINGS`. */
  readonly does: keyof typeof DOINGS
  /** Which service, lot, place and amount: whatever is there is counted by it. */
  readonly pick: number
  readonly which: number
  readonly share: number
  /** Of the two servers, by which. */
  readonly server: 0 | 1
  /** The append after so many fails, and the first server starts again from the log; none where null. */
  readonly failsAfter: number | null
}

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR

const of = <One>(all: readonly One[], pick: number): One | undefined =>
  all.length === 0 ? undefined : all[pick % all.length]

const counted = (world: World, name: string): void => {
  world.counts[name] = (world.counts[name] ?? 0) + 1
}

/** Sent to a server; null where it fell over before it answered. */
const sent = async (
  world: World,
  { server }: Move,
  service: string,
  command: Command,
): Promise<Answer | null> => {
  world.next += 1
  const asked = world.servers[server].services.submit(
    service,
    `c-${world.next}`,
    command,
    'in-charge',
  )
  const answer = await Promise.race([asked.catch(() => null), quiet()])
  counted(world, `${command.type} ${answer?.answer ?? 'unanswered'}`)
  if (answer === null) counted(world, 'fell over')
  return answer
}

/** Long after anything that is answered at all was: what waits for a failed store waits for ever. */
const quiet = async (): Promise<null> => {
  for (let turn = 0; turn < 40; turn += 1) await new Promise((next) => setImmediate(next))
  return null
}

const asks = async (world: World, { server }: Move, command: LarderCommand): Promise<void> => {
  world.next += 1
  const asked = world.servers[server].larder.submit(`l-${world.next}`, command)
  const answer = await Promise.race([asked.catch(() => null), quiet()])
  counted(world, `${command.type} ${answer?.answer ?? 'unanswered'}`)
}

interface Found {
  readonly service: string
  readonly state: RunningState
}

const stateOf = async (world: World, move: Move, service: string): Promise<RunningState | null> => {
  const rail = await world.servers[move.server].services.find(service)
  const state = rail?.state()
  return state && isRunning(state) ? state : null
}

/** Services in one of these stages, as the server that does it knows them. */
const inStage = async (
  world: World,
  move: Move,
  stages: readonly string[],
): Promise<readonly Found[]> => {
  const found: Found[] = []
  for (const { service } of world.known) {
    const state = await stateOf(world, move, service)
    if (state && isUnderWay(state) && stages.includes(state.stage)) found.push({ service, state })
  }
  return found
}

const dayAfter = (world: World, days: number): string =>
  new Date(world.time.clock.now() - 6 * HOUR + days * DAY).toISOString().slice(0, 10)

type Doing = (world: World, move: Move) => Promise<void>

const plans: Doing = async (world, move) => {
  const document = of(world.documents, move.which)
  if (!document) return
  const service = `s-${world.next}`
  const answer = await sent(world, move, service, {
    ...PLAN,
    bells: null,
    items: null,
    station: document.id,
    on: dayAfter(world, move.pick % 3),
    guests: { walkIn: 40, groups: [] },
    crew: [],
  } as Command)
  if (answer?.answer !== 'refused') world.known.push({ service, station: document.id })
}

/** Opened, planned before or not, and its pans loaded of batches of its own. */
const opens: Doing = async (world, move) => {
  const now = world.time.clock.now()
  const planned = of(await inStage(world, move, ['planned']), move.pick)
  const station = planned?.state.station.id ?? of(world.documents, move.which)?.id ?? ''
  const service = planned?.service ?? `s-${world.next}`
  if (!planned) world.known.push({ service, station })
  const answer = await sent(world, move, service, {
    type: 'open',
    station,
    kind: 'real',
  } as Command)
  if (answer?.answer !== 'accepted' || move.share > 70) return
  for (const command of openingCommands(demoStation, now, { backups: [] }))
    await sent(world, move, service, command)
}

const FOODS = ['slaw', 'tuna', 'chicken', 'rice'] as const

const prepares: Doing = async (world, move) => {
  const planned = of(await inStage(world, move, ['planned']), move.pick)
  const component = demoStation.components.find(({ id }) => id === of(FOODS, move.which))
  if (!planned || !component) return
  const now = world.time.clock.now()
  const told = { now, batch: `prep-${world.next}` }
  for (const one of batchCommands(demoStation, component, 1_000_000 + move.share, told))
    await sent(world, move, planned.service, one)
}

const STEP = { waiting: 'start', making: 'finish', made: 'handOver' } as const

const sells: Doing = async (world, move) => {
  const item = of(['garden-chicken', 'harbor-tuna', 'bean-and-pepper'], move.which) ?? ''
  const order = { type: 'send', builds: [usual(item)], paid: false, readBack: true } as const
  const open = of(await inStage(world, move, ['open']), move.pick)
  if (!open) return
  await sent(world, move, open.service, order as Command)
  for (let step = 0; step < 1 + (move.share % 3); step += 1) {
    const state = await stateOf(world, move, open.service)
    const next = state && openBuilds(state)[0]
    const does = next && Object.entries(STEP).find(([at]) => at === next.build.state)?.[1]
    if (!next || !does) return
    const at = { ticket: next.ticket.number, letter: next.build.letter }
    const read = does === 'start' ? { read: true } : {}
    await sent(world, move, open.service, { type: does, ...at, ...read } as Command)
  }
}

/** A pan or batch comes to an end that is offered; under a name that was used before once in a while. */
const ends: Doing = async (world, move) => {
  const found = of(await inStage(world, move, ['planned', 'open']), move.pick)
  const place = found && of(toAnswer(found.state), move.which)
  if (!found || !place) return
  const now = world.time.clock.now()
  const { what, id, amount } = place
  const dates = { preparedOn: dayAfter(world, 0) }
  const offered = endsAt(found.state, place, now, { read: true, dates }).filter(
    ({ offered, end }) => offered && end !== 'crew',
  )
  // Thrown out by itself it would be most of what happens.
  const kept = offered.filter(({ end }) => end !== 'throw-out')
  const end = of(kept.length > 0 && move.share > 10 ? kept : offered, move.share)?.end
  if (!end) return
  const lots = Object.keys(world.servers[move.server].larder.state().lots)
  const reused = move.share % 17 === 0 ? of(lots, move.pick) : undefined
  const part = move.share % 3 === 0 ? Math.ceil((amount * (move.share + 1)) / 101) : undefined
  const reading = {
    ...{ tenths: end === 'cool' ? 1500 : 380, scale: 'F', probe: 'probe 1' },
    where: 'middle-stirred',
  } as const
  await sent(world, move, found.service, {
    ...{ type: 'endFood', what, id, end, how: 'weighed', initials: 'KT', ...dates },
    lot: reused ?? `lot-${world.next}`,
    ...(part === undefined || part === 0 ? {} : { amount: part }),
    ...(end === 'throw-out' || end === 'dry' ? {} : { reading }),
    ...(end === 'cool' ? { presentUntil: now + 8 * HOUR } : {}),
  } as Command)
}

const takes: Doing = async (world, move) => {
  const found = of(await inStage(world, move, ['planned', 'open']), move.pick)
  const { lots, gone } = world.servers[move.server].larder.state()
  const ids = [...Object.keys(lots), ...Object.keys(gone).slice(-2)]
  const lot = of(ids, move.which)
  if (!found || lot === undefined) return
  const held = lots[lot]?.amount ?? 1_000
  const amount = move.share > 60 ? held : Math.max(1, Math.ceil((held * (move.share + 45)) / 100))
  const why = move.share % 2 === 0 ? { why: 'not-found' } : {}
  await sent(world, move, found.service, { type: 'takeFromLarder', lot, amount, ...why } as Command)
}

/** Both servers want all of one lot at once, each into another service, and one of them twice. */
const bothTake: Doing = async (world, move) => {
  const found = await inStage(world, move, ['planned', 'open'])
  const [lot, held] = of(Object.entries(world.servers[0].larder.state().lots), move.which) ?? []
  if (lot === undefined || held === undefined || found.length === 0) return
  const part = Math.ceil((held.amount * (move.share + 40)) / 140)
  await Promise.all(
    ([0, 1, 0] as const).map(async (server, at) => {
      const into = of(found, move.pick + server)
      const amount = at === 1 ? held.amount : part
      const command: Command = { type: 'takeFromLarder', lot, amount, why: 'not-found' }
      if (into) await sent(world, { ...move, server }, into.service, command)
    }),
  )
}

/** What was taken is loaded into its pan on the line. */
const loads: Doing = async (world, move) => {
  const open = of(await inStage(world, move, ['open']), move.pick)
  const [batch, taken] =
    of(
      Object.entries(open?.state.batches ?? {}).filter(
        ([, one]) => one.lot !== undefined && leftOfBatch(one) > 0 && one.thrownOutAt === null,
      ),
      move.which,
    ) ?? []
  if (!open || batch === undefined || taken === undefined) return
  const component = demoStation.components.find(({ id }) => id === taken.component)
  const pan = pansOf(demoStation).find((one) => one.component === taken.component)
  if (!component || !pan) return
  const now = world.time.clock.now()
  const amount = Math.max(1, Math.floor((leftOfBatch(taken) * (move.share + 1)) / 101))
  const fields = loadFields(demoStation, component, { now, batch })
  await sent(world, move, open.service, {
    type: (open.state.pans[pan.id]?.amount ?? 0) > 0 ? 'changePan' : 'load',
    pan: pan.id,
    amount,
    notFirst: true,
    ...fields,
    batch,
  } as Command)
}

const ofLarder: Doing = async (world, move) => {
  const { lots, gone } = world.servers[move.server].larder.state()
  const lot = of([...Object.keys(lots), ...Object.keys(gone).slice(-1)], move.which)
  if (lot === undefined) return
  const initials = 'KT'
  const tenths =
    move.share > 90 ? 500 : lots[lot]?.kept === 'cooling' && move.share > 40 ? 690 : 390
  const reading = { tenths, scale: 'F', probe: 'probe 1', where: 'middle-stirred' } as const
  const read: LarderCommand = { type: 'readLot', lot, initials, reading }
  const asked: readonly LarderCommand[] = [
    ...[read, read, read, read],
    { type: 'freezeLot', lot, initials },
    { type: 'thawLot', lot, initials },
    { type: 'throwOutLot', lot, initials, reason: 'other' },
    { type: 'anotherTookLot', lot },
    { type: 'lotIsBack', lot },
  ]
  const command = of(asked, move.pick)
  if (command) await asks(world, move, command)
}

const MOST_STEPS_TO_CLOSE = 40

const closes: Doing = async (world, move) => {
  const open = of(await inStage(world, move, ['open']), move.pick)
  if (!open) return
  for (let step = 0; step < MOST_STEPS_TO_CLOSE; step += 1) {
    const state = await stateOf(world, move, open.service)
    if (state?.stage !== 'open') return
    const answer = await sent(world, move, open.service, nextToClose(state) as Command)
    if (answer?.answer !== 'accepted') return
  }
}

const STRETCHES = [5 * MINUTE, 20 * MINUTE, HOUR, HOUR, 3 * HOUR, 20 * HOUR, 3 * DAY, 7 * DAY]

const passes: Doing = async (world, move) => {
  world.time.pass(of(STRETCHES, move.pick) ?? 0)
  // Nothing looks at once: the laptop was off, or its timers are late.
  if (move.share > 50) return
  for (const { services, larder } of world.servers) {
    services.look()
    larder.look()
    await Promise.race([Promise.all([services.idle(), larder.idle()]), quiet()])
  }
}

const DOINGS = {
  plans,
  opens,
  prepares,
  sells,
  ends,
  takes,
  bothTake,
  loads,
  ofLarder,
  closes,
  passes,
} satisfies Readonly<Record<string, Doing>>

export const DOES = Object.keys(DOINGS) as readonly (keyof typeof DOINGS)[]

/** The append after so many more fails as a disk does. */
const failAfter = ({ gated }: World, more: number): void =>
  more === 0
    ? gated.fail(new Error('the disk is full'))
    : gated.overtake(async () => failAfter({ gated } as World, more - 1))

const startsAgain = async (world: World): Promise<void> => {
  world.servers[0].services.close()
  world.servers[0].larder.close()
  world.gated.overtake(async () => undefined)
  world.servers[0] = await world.begins(0)
  counted(world, 'started again')
}

/** Lives them, one after the other; the log that is left, and how often what was done. */
export const liveDays = async (moves: readonly Move[]): Promise<House> => {
  const world = await beginHouse()
  for (const move of moves) {
    if (move.failsAfter !== null) failAfter(world, move.failsAfter)
    // It is the first server's append that fails.
    await DOINGS[move.does](world, move.failsAfter === null ? move : { ...move, server: 0 })
    if (move.failsAfter !== null) await startsAgain(world)
  }
  await settle()
  for (const { services, larder } of world.servers) {
    services.close()
    larder.close()
  }
  return world
}
