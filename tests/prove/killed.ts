import { isDeepStrictEqual } from 'node:util'
import type { Answer } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { whenRoom, workAs } from '#tests/prove/kitchen.ts'
import { foldLog, readLog } from '#tests/prove/offline-log.ts'
import { DEMO_SERVICE, orderNumber } from '#tests/prove/orders.ts'
import { connectPlain, type Given } from '#tests/prove/plain-client.ts'
import { createFindings, type Proof } from '#tests/prove/proof.ts'
import { type LaunchedServer, launchServer, temporaryFolder } from '#tests/support/launch-server.ts'

/** Everything that was sent, in order, with the first answer where there was one. */
type Sent = Map<string, { readonly given: Given; answer: Answer | null }>

const COUNTERS = 4
/** Orders under way at each counter at a time, so that the kill finds some of them anywhere. */
const AT_A_TIME = 2

const sendOrders = async (
  server: LaunchedServer,
  sent: Sent,
  range: { readonly from: number; readonly to: number },
  onAnswer: () => void,
): Promise<void> => {
  const crew = connectCrew(server.url, 'lead')
  await whenView(crew.client, (view) => view.link === 'live')
  const lead = await connectPlain(server.url, 'lead')
  const counters = await Promise.all(
    Array.from({ length: COUNTERS }, () => connectPlain(server.url, 'counter')),
  )
  const give = async (by: typeof lead, given: Given): Promise<void> => {
    const entry = { given, answer: null as Answer | null }
    sent.set(given.id, entry)
    entry.answer = await by.give(given)
  }
  const underway = new Set<Promise<void>>()
  const stopWork = workAs(crew.client, (id, command) => {
    const one = give(lead, { id, service: DEMO_SERVICE, command })
    underway.add(one)
    void one.finally(() => underway.delete(one))
  })
  let next = range.from
  const queue = async (counter: typeof lead): Promise<void> => {
    while (next < range.to && counter.socket.connected) {
      await whenRoom(crew.client)
      if (next >= range.to || !counter.socket.connected) return
      const index = next
      next += 1
      const id = `order-${index}`
      await give(counter, { id, service: DEMO_SERVICE, command: orderNumber(index) })
      if (sent.get(id)?.answer) onAnswer()
    }
  }
  await Promise.all(
    counters.flatMap((counter) => Array.from({ length: AT_A_TIME }, () => queue(counter))),
  )
  await whenView(
    crew.client,
    ({ state, link }) => link === 'lost' || Object.keys(state.tickets).length === 0,
  )
  stopWork()
  await Promise.all(underway)
  for (const one of [crew, lead, ...counters]) one.close()
}

const sendAllAgain = async (
  server: LaunchedServer,
  sent: Sent,
  compare: (id: string, first: Answer | null, second: Answer | null) => void,
): Promise<void> => {
  const lead = await connectPlain(server.url, 'lead')
  for (const [id, { given, answer }] of [...sent]) {
    const second = await lead.give(given)
    compare(id, answer, second)
    sent.set(id, { given, answer: second })
  }
  lead.close()
}

/** Each accepted command has its events once, in one piece, where its answer says. */
const onceEach = (
  entries: readonly Recorded[],
  sent: Sent,
  require: (isSo: boolean, otherwise: string) => void,
): void => {
  const byCommand = new Map<string, Recorded[]>()
  for (const entry of entries)
    if (entry.command !== null)
      byCommand.set(entry.command, [...(byCommand.get(entry.command) ?? []), entry])
  for (const [id, { answer }] of sent) {
    const found = byCommand.get(id) ?? []
    const at = found.map(({ position }) => position)
    if (answer?.answer !== 'accepted') {
      require(found.length === 0, `${id} not accepted, found at ${at}`)
      continue
    }
    const types = found.map(({ type }) => type).filter((type) => type !== 'buildHeld')
    const isInOnePiece = at.every((position, index) => position === (at[0] ?? 0) + index)
    require(at.at(-1) === answer.position &&
      isInOnePiece &&
      new Set(types).size === types.length, `${id} accepted at ${answer.position}, found at ${at}`)
  }
  const known = entries.filter(({ command }) => command !== null && sent.has(command)).length
  const others = entries.filter(({ command }) => command === null || !sent.has(command))
  require(others.every(
    ({ command, type }) =>
      command?.startsWith('demo-') === true || (command === null && type.startsWith('advice')),
  ), 'events that nobody asked for')
  require(known + others.length === entries.length, 'events are missing')
}

/**
 * The server is killed in the middle of so many orders, started again, and everything is sent
 * again under the same ids; then the rest.
 */
export const proveKilled = async (orders: number): Promise<Proof> => {
  const { failures, require } = createFindings()
  const data = temporaryFolder()
  const sent: Sent = new Map()
  const first = await launchServer({ data, screens: false })
  let answered = 0
  let ended: Promise<unknown> | null = null
  await sendOrders(first, sent, { from: 0, to: orders }, () => {
    answered += 1
    if (answered >= orders / 2) ended ??= first.kill()
  })
  await ended
  const firstSent = [...sent.values()]
  const unanswered = firstSent.filter(({ answer }) => answer === null).length
  require(unanswered > 0, 'the kill came too late: everything was answered')
  const kept = await readLog(data)
  const keptIds = new Set(kept.map(({ command }) => command))
  for (const { given, answer } of firstSent)
    if (answer?.answer === 'accepted')
      require(keptIds.has(given.id), `${given.id} was accepted and lost by the kill`)

  const second = await launchServer({ data, screens: false })
  let same = 0
  await sendAllAgain(second, sent, (id, before, after) => {
    require(after !== null, `${id} got no second answer`)
    if (before === null) return
    same += 1
    require(isDeepStrictEqual(
      after,
      before,
    ), `${id}: ${JSON.stringify(before)} became ${JSON.stringify(after)}`)
  })
  const from = Math.max(
    ...[...sent.keys()].map((id) => Number(/^order-(\d+)$/.exec(id)?.[1] ?? -1)),
  )
  await sendOrders(second, sent, { from: from + 1, to: orders }, () => {})
  await sendAllAgain(second, sent, (id, before, after) =>
    require(isDeepStrictEqual(after, before), `${id} got another answer the third time`),
  )
  const health = await second.health()
  await second.stop()
  const entries = await readLog(data)
  onceEach(entries, sent, require)
  const { service } = health as { service: { position: number; hash: string } }
  const folded = await foldLog(data, service.position)
  require(service.hash === folded.hash &&
    service.position === folded.position, 'the log does not fold to what was served')
  const sends = entries.filter(({ type }) => type === 'ticketSent').length
  require(sends >= orders * 0.9, `only ${sends} of ${orders} orders were accepted`)
  return {
    title: `killed in the middle of ${orders} orders`,
    figures: [
      `${firstSent.length} commands sent before the kill, ${unanswered} of them unanswered`,
      `${same} second answers equal the first; ${sent.size} commands in all, each sent again at the end`,
      `${sends} of ${orders} orders accepted, each once in the log of ${entries.length} events`,
    ],
    failures,
  }
}
