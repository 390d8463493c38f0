import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import type { Command } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'
import { DEMO_SERVICE, orderNumber } from '#tests/prove/orders.ts'
import { connectPlain, type PlainClient } from '#tests/prove/plain-client.ts'
import { createFindings, type Proof } from '#tests/prove/proof.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { refillOf } from '#tests/support/refill.ts'

/** Where a tracer is on this machine; undefined where there is none. */
export const tracer = ['/usr/bin/strace', '/usr/local/bin/strace'].find((path) => existsSync(path))

const syncsOf = (trace: string): number =>
  readFileSync(trace, 'utf8')
    .split('\n')
    .filter((line) => /\bf(data)?sync\(\d+<[^>]*\/log\.db(-wal|-journal)?>/.test(line)).length

const commitsOf = (health: Record<string, unknown>): number => Number(health.commits)

/** Orders that the pans hold; between rounds all is made and handed over, and every pan changed. */
const ROUND = 10

const clear = async (lead: PlainClient, tickets: number): Promise<void> => {
  const made = Array.from({ length: ROUND }, (_, index) => tickets - index).flatMap((ticket) =>
    (['start', 'finish', 'handOver'] as const).map(
      (type): Command => ({ type, ticket, letter: 'A' }),
    ),
  )
  const changed = refillOf(demoStation, String(tickets), Date.now())
  for (const [index, command] of [...made, ...changed].entries())
    await lead.give({ id: `clear-${tickets}-${index}`, service: DEMO_SERVICE, command })
}

/** So many sends, each awaited before the next: the log's files are synced at least as often. */
export const proveSyncs = async (sends: number): Promise<Proof> => {
  const { failures, require } = createFindings()
  const title = `syncs of the log's files during ${sends} single sends`
  if (tracer === undefined)
    return { title, figures: [], failures: ['syncs are counted with strace, which is not here'] }
  const trace = join(temporaryFolder(), 'trace')
  const before = [tracer, '-D', '-f', '-y', '-e', 'trace=fsync,fdatasync', '-o', trace]
  const server = await launchServer({ screens: false, before })
  const lead = await connectPlain(server.url, 'lead')
  await pause(300)
  const toStart = syncsOf(trace)
  let [accepted, syncs, commits] = [0, 0, 0]
  for (let sent = 0; sent < sends; ) {
    const before = { syncs: syncsOf(trace), commits: commitsOf(await server.health()) }
    const upTo = Math.min(sends, sent + ROUND)
    for (; sent < upTo; sent += 1) {
      const given = { id: `order-${sent}`, service: DEMO_SERVICE, command: orderNumber(sent) }
      if ((await lead.give(given))?.answer === 'accepted') accepted += 1
    }
    commits += commitsOf(await server.health()) - before.commits
    await pause(200)
    syncs += syncsOf(trace) - before.syncs
    await clear(lead, sent)
  }
  lead.close()
  await server.kill()
  require(accepted === sends, `only ${accepted} of ${sends} were accepted`)
  require(commits === sends, `${commits} commits for ${sends} single sends`)
  require(syncs >= sends, `only ${syncs} syncs for ${sends} sends`)
  return {
    title,
    figures: [`${syncs} syncs, ${commits} commits, ${toStart} syncs to start`],
    failures,
  }
}
