import { connect } from 'node:net'
import type { Answer } from '#lib/protocol/wire.ts'
import type { Command } from '#lib/spine/registry.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { whenRoom, workAs } from '#tests/prove/kitchen.ts'
import { readLog } from '#tests/prove/offline-log.ts'
import { DEMO_SERVICE, orderNumber } from '#tests/prove/orders.ts'
import { connectPlain } from '#tests/prove/plain-client.ts'
import { createFindings, type Proof } from '#tests/prove/proof.ts'
import { launchServer } from '#tests/support/launch-server.ts'

const COUNTERS = 4
const AT_A_TIME = 2
const HARD_STOP_MS = 5_000

/**
 * SIGTERM while counters send without a pause: the server ends well and in time, and what it
 * answered is what the log holds.
 */
export const proveEnded = async (afterAnswers: number): Promise<Proof> => {
  const { failures, require } = createFindings()
  const server = await launchServer({ screens: false })
  const counters = await Promise.all(
    Array.from({ length: COUNTERS }, () => connectPlain(server.url, 'counter')),
  )
  // As a browser keeps one open ahead of need: nothing is ever asked on it.
  const silent = connect(server.port, '127.0.0.1')
  const crew = connectCrew(server.url, 'lead')
  await whenView(crew.client, (view) => view.link === 'live')
  const lead = await connectPlain(server.url, 'lead')
  const answers = new Map<string, Answer | null>()
  let count = 0
  let asked: number | null = null
  const give = async (by: typeof lead, id: string, command: Command): Promise<void> => {
    answers.set(id, null)
    const answer = await by.give({ id, service: DEMO_SERVICE, command })
    answers.set(id, answer)
    if (asked !== null || answers.size < afterAnswers) return
    asked = performance.now()
    server.signal('SIGTERM')
  }
  const stopWork = workAs(crew.client, (id, command) => void give(lead, id, command))
  const send = async (counter: typeof lead): Promise<void> => {
    while (counter.socket.connected) {
      if (asked === null) await whenRoom(crew.client)
      if (!counter.socket.connected) return
      count += 1
      await give(counter, `order-${count}`, orderNumber(count))
    }
  }
  await Promise.all(
    counters.flatMap((counter) => Array.from({ length: AT_A_TIME }, () => send(counter))),
  )
  stopWork()
  const { code, stderr } = await server.ended
  const took = performance.now() - (asked ?? Number.NaN)
  silent.destroy()
  for (const one of [crew, lead, ...counters]) one.close()
  require(code === 0, `ended with ${code}: ${stderr}`)
  require(took < HARD_STOP_MS, `ended after ${Math.round(took)} ms`)
  require(stderr === '', `said ${stderr}`)

  const entries = await readLog(server.data)
  const logged = new Set(entries.map(({ command }) => command))
  const tally = { accepted: 0, refused: 0, 'not taken': 0, unanswered: 0 }
  for (const [id, answer] of answers) {
    tally[answer?.answer ?? 'unanswered'] += 1
    if (answer?.answer === 'accepted')
      require(logged.has(id), `${id} was accepted and is not there`)
    if (answer?.answer === 'refused' || answer?.answer === 'not taken')
      require(!logged.has(id), `${id} was ${answer.answer} and is there`)
    if (answer === null) require(!logged.has(id), `${id} is there and was not answered`)
  }
  require(tally.accepted >= afterAnswers / 2, `only ${tally.accepted} were accepted`)
  require(answers.size >= afterAnswers, 'the signal came too early')
  return {
    title: `SIGTERM during sends, after ${afterAnswers}`,
    figures: [
      `exit ${code} after ${Math.round(took)} ms; ${answers.size} sent: ${tally.accepted} accepted, ${tally.refused} refused, ${tally['not taken']} not taken, ${tally.unanswered} unanswered`,
    ],
    failures,
  }
}
