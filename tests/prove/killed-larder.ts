/** A whole server is killed while services set aside and take: after it they and the larder agree. */
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { isDeepStrictEqual } from 'node:util'
import type { LarderRecorded } from '#lib/larder/event.ts'
import { isLarderStream } from '#lib/larder/stream.ts'
import { civilDate } from '#lib/measure/civil.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { connectPlain, type Given, type PlainClient } from '#tests/prove/plain-client.ts'
import { createFindings, type Proof } from '#tests/prove/proof.ts'
import { judgeHouse, type Lived } from '#tests/support/house-laws.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { railStation } from '#tests/support/orders.ts'
import { publishIn } from '#tests/support/own-station.ts'

const OTHER = { ...railStation, id: 'birch-hall', name: 'Birch Hall' }
const PAN = 'pan-slaw'
const PORTION = 61_235
const SETTERS = { 's-one': railStation, 's-two': OTHER } as const
type Service = keyof typeof SETTERS
/** The first two set aside, the others take. */
const WORKERS: readonly Service[] = ['s-one', 's-two', 's-one', 's-two', 's-one']

/** Numbers of a seed, each below 1. */
const numbersOf = (seed: number): (() => number) => {
  let at = seed
  return () => {
    at = (at * 1_103_515_245 + 12_345) % 2_147_483_648
    return at / 2_147_483_648
  }
}

const readHouse = async (data: string): Promise<Lived> => {
  const log = openSqliteLog<Recorded, never>({ path: join(data, 'log.db') })
  try {
    const services: Record<string, readonly Recorded[]> = {}
    let larder: readonly LarderRecorded[] = []
    for (const stream of await log.services())
      if (isLarderStream(stream)) larder = await log.as<LarderRecorded, never>().read(stream, 0)
      else services[stream] = await log.read(stream, 0)
    return { larder, services }
  } finally {
    await log.close()
  }
}

interface Sent {
  readonly given: Given
  answer: Answer | null
}

interface Round {
  readonly number: number
  readonly sent: Map<string, Sent>
  readonly next: () => number
  /** Lots that are known to have been set aside: in this round and before. */
  readonly lots: string[]
}

const give = async (client: PlainClient, { sent }: Round, given: Given): Promise<Answer | null> => {
  const entry: Sent = { given, answer: null }
  sent.set(given.id, entry)
  entry.answer = await client.give(given)
  return entry.answer
}

/** Loads a pan and sets it aside, for as long as somebody answers. */
const setsAside = async (client: PlainClient, round: Round, service: string): Promise<void> => {
  for (let turn = 1; client.socket.connected; turn += 1) {
    const id = `${service}-${round.number}-${turn}`
    const amount = PORTION + Math.floor(round.next() * PORTION * 20)
    const load = { type: 'load', pan: PAN, amount } as Command
    const end = {
      ...{ type: 'endFood', what: 'pan', id: PAN, end: 'dry', how: 'weighed' },
      ...{
        initials: 'KT',
        preparedOn: civilDate(Date.now(), railStation.timeZone),
        lot: `lot-${id}`,
      },
    } as Command
    await give(client, round, { id: `load-${id}`, service, command: load })
    const answer = await give(client, round, { id: `end-${id}`, service, command: end })
    if (answer?.answer === 'accepted') round.lots.push(`lot-${id}`)
  }
}

const takes = async (
  client: PlainClient,
  round: Round,
  { at, service }: { readonly at: number; readonly service: Service },
): Promise<void> => {
  for (let turn = 1; client.socket.connected; turn += 1) {
    const lot = round.lots[Math.floor(round.next() * round.lots.length)]
    if (lot === undefined) {
      await pause(2)
      continue
    }
    const amount = 1 + Math.floor(round.next() * PORTION * 4)
    const command: Command = { type: 'takeFromLarder', lot, amount, why: 'not-found' }
    const id = `take-${round.number}-${at}-${turn}`
    await give(client, round, { id, service, command })
  }
}

const opened = async (url: string): Promise<void> => {
  for (const [service, station] of Object.entries(SETTERS)) {
    const lead = await connectPlain(url, 'lead', station.id)
    const open = { type: 'open', station: station.id, kind: 'real' } as Command
    const rest = openingCommands(station, Date.now(), { backups: [] }).filter(
      (one) => !('pan' in one && one.pan === PAN),
    )
    for (const [index, command] of [open, ...rest].entries()) {
      const answer = await lead.give({ id: `${service}-${index}`, service, command })
      if (answer?.answer !== 'accepted')
        throw new Error(`${JSON.stringify(command)}: ${JSON.stringify(answer)}`)
    }
    lead.close()
  }
}

/**
 * @param rounds how often it is killed
 * @param mostAnswers after so many answers at most, and up to 20 ms more
 */
export const proveKilledLarder = async (
  rounds: number,
  mostAnswers: number,
  seed = 15,
): Promise<Proof> => {
  const { failures, require } = createFindings()
  const next = numbersOf(seed)
  const data = temporaryFolder()
  await publishIn(data, railStation, OTHER)
  const lots: string[] = []
  let [unanswered, same, commands] = [0, 0, 0]
  for (let number = 1; number <= rounds; number += 1) {
    const round: Round = { number, sent: new Map(), next, lots }
    const server = await launchServer({ data, screens: false })
    if (number === 1) await opened(server.url)
    const clients = await Promise.all(
      WORKERS.map((service) => connectPlain(server.url, 'lead', SETTERS[service].id)),
    )
    const work = clients.map((client, at) => {
      const service = WORKERS[at] ?? 's-one'
      return at < 2 ? setsAside(client, round, service) : takes(client, round, { at, service })
    })
    const answers = Math.ceil(next() * mostAnswers)
    while ([...round.sent.values()].filter(({ answer }) => answer !== null).length < answers)
      await pause(5)
    await pause(next() * 20)
    require((await server.kill()).signal === 'SIGKILL', 'it ended by itself')
    for (const { socket } of clients) socket.disconnect()
    await Promise.all(work)
    const before = await readHouse(data)
    for (const problem of judgeHouse(before).problems)
      failures.push(`killed ${number} times: ${problem}`)
    const known = new Set(
      Object.values(before.services).flatMap((events) => events.map(({ command }) => command)),
    )
    for (const [id, { answer }] of round.sent)
      if (answer?.answer === 'accepted') require(known.has(id), `${id} was accepted and is lost`)
    const again = await launchServer({ data, screens: false })
    const leads = {
      's-one': await connectPlain(again.url, 'lead', railStation.id),
      's-two': await connectPlain(again.url, 'lead', OTHER.id),
    }
    for (const [id, { given, answer }] of round.sent) {
      const second = await leads[given.service === 's-two' ? 's-two' : 's-one'].give(given)
      require(second !== null, `${id} got no second answer`)
      if (answer === null) unanswered += 1
      else {
        same += 1
        require(isDeepStrictEqual(second, answer), `${id} got another answer the second time`)
      }
    }
    for (const one of Object.values(leads)) one.close()
    await again.stop()
    commands += round.sent.size
  }
  const { problems, seen } = judgeHouse(await readHouse(data))
  failures.push(...problems)
  require((seen['lots taken of'] ?? 0) > rounds, 'hardly anything was taken')
  require(unanswered > 0, 'each kill came when all was answered')
  return {
    title: `a whole server killed ${rounds} times while two services set aside and take`,
    figures: [
      `${commands} commands, ${unanswered} of them unanswered at a kill; ${same} second answers equal the first`,
      Object.entries(seen)
        .map(([name, count]) => `${name} ${count}`)
        .join(', '),
    ],
    failures,
  }
}
