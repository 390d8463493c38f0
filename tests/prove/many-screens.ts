import { randomUUID } from 'node:crypto'
import { setTimeout as pause } from 'node:timers/promises'
import type { Role } from '#lib/service/roles.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { type CrewConnection, connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { workAs } from '#tests/prove/kitchen.ts'
import { foldLog } from '#tests/prove/offline-log.ts'
import { DEMO_SERVICE, orderNumber } from '#tests/prove/orders.ts'
import { connectPlain } from '#tests/prove/plain-client.ts'
import { createFindings, type Proof, quantile } from '#tests/prove/proof.ts'
import { launchServer } from '#tests/support/launch-server.ts'

const CREW: readonly Role[] = ['counter', 'assembly', 'hand-over', 'lead']

const roleOf = (index: number): Role => CREW[index % CREW.length] ?? 'lead'

const ms = (value: number): string => `${value.toFixed(1)} ms`

/**
 * So many crew screens on one service while orders come at a rate and are made and handed over,
 * and pans are changed: each ends with the state that the log folds to, as its role is sent it. Screens, counters and crew
 * share one process here, so the times include what the screens' own work costs.
 */
export const proveManyScreens = async (
  screens: number,
  ordersASecond: number,
  seconds: number,
  judgesPace: boolean,
): Promise<Proof> => {
  const { failures, require } = createFindings()
  const server = await launchServer({ screens: false })
  const crew: CrewConnection[] = Array.from({ length: screens }, (_, index) =>
    connectCrew(server.url, roleOf(index)),
  )
  await Promise.all(crew.map(({ client }) => whenView(client, (view) => view.link === 'live')))
  const lead = await connectPlain(server.url, 'lead')
  const counters = await Promise.all(
    Array.from({ length: 5 }, () => connectPlain(server.url, 'counter')),
  )
  const underway = new Set<Promise<unknown>>()
  const notAccepted = new Map<string, number>()
  const times: number[] = []
  let commands = 0
  const give = async (by: typeof lead, id: string, command: ReturnType<typeof orderNumber>) => {
    commands += 1
    const begun = performance.now()
    const answer = await by.give({ id, service: DEMO_SERVICE, command })
    if (command.type === 'send') times.push(performance.now() - begun)
    if (answer?.answer === 'accepted') return
    const code =
      answer === null
        ? 'no answer'
        : answer.answer === 'refused'
          ? answer.refusal.code
          : answer.because.code
    const what = `${command.type} ${code}`
    notAccepted.set(what, (notAccepted.get(what) ?? 0) + 1)
  }
  const begin = (by: typeof lead, id: string, command: ReturnType<typeof orderNumber>) => {
    const one = give(by, id, command)
    underway.add(one)
    void one.finally(() => underway.delete(one))
  }
  const [watched] = crew
  if (!watched) throw new Error('no screens')
  const stopWork = workAs(watched.client, (id, command) => begin(lead, id, command))

  const begun = performance.now()
  const orders = ordersASecond * seconds
  for (let index = 0; index < orders; index += 1) {
    const wait = begun + (index * 1_000) / ordersASecond - performance.now()
    if (wait > 0) await pause(wait)
    const counter = counters[index % counters.length] ?? lead
    begin(counter, `order-${randomUUID()}`, orderNumber(index))
  }
  const took = (performance.now() - begun) / 1_000
  while (underway.size > 0) await Promise.all(underway)
  await whenView(watched.client, ({ state }) => Object.keys(state.tickets).length === 0)
  stopWork()
  await Promise.all(underway)

  const health = (await server.health()) as {
    service: { position: number; hash: string }
    commits: number
  }
  const { position } = health.service
  const hashes = await Promise.all(
    crew.map(async ({ client }) => {
      let hash: string | null = null
      const stands = whenView(client, (view) => {
        if (view.position === position) hash = stateHash(view.state)
        return hash !== null
      })
      await stands.catch(() => {})
      return hash
    }),
  )
  const behind = hashes.filter((hash) => hash === null).length
  require(behind === 0, `${behind} screens did not catch up`)
  for (const one of [...crew, lead, ...counters]) one.close()
  await server.stop()
  const folded = await foldLog(server.data, position)
  require(folded.position === position, `the log ends at ${folded.position}, not ${position}`)
  require(folded.hash === health.service.hash, 'the server served another state than the log')
  const theirs = new Map<string, string>()
  for (const role of CREW) theirs.set(role, (await foldLog(server.data, position, role)).hash)
  const different = hashes.filter((hash, index) => hash !== theirs.get(roleOf(index))).length
  require(different ===
    0, `${different} screens ended with another state than the log, as it is sent to their role`)
  const accepted =
    times.length -
    [...notAccepted]
      .filter(([what]) => what.startsWith('send'))
      .reduce((sum, [, count]) => sum + count, 0)
  require(accepted >= orders * 0.9, `only ${accepted} of ${orders} orders were accepted`)
  if (judgesPace)
    require(took <=
      seconds * 1.1 + 0.5, `the orders took ${took.toFixed(1)} s instead of ${seconds}`)
  return {
    title: `${screens} crew screens, ${ordersASecond} orders a second for ${seconds} s`,
    figures: [
      `${orders} orders in ${took.toFixed(1)} s, ${accepted} accepted; ${commands} commands, ${position} events, ${health.commits} commits`,
      `answer to an order: p50 ${ms(quantile(times, 0.5))}, p99 ${ms(quantile(times, 0.99))}, longest ${ms(Math.max(...times))}`,
      `${screens - different} of ${screens} screens end with the hash of the log as it is sent to their role; the log's own is ${folded.hash.slice(0, 12)}`,
      ...[...notAccepted].map(([what, count]) => `not accepted: ${count} x ${what}`),
    ],
    failures,
  }
}
