import { closeSync, fdatasyncSync, openSync, rmSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { pino } from 'pino'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Command } from '#lib/spine/registry.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { createServerClock } from '#server/rail/clock.ts'
import { createLabelsGuard } from '#server/rail/labels-guard.ts'
import { openRail } from '#server/rail/rail.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import type { Verdict } from '#tests/bench/verdict.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'
import { createMemoryGuests } from '#tests/support/memory-guests.ts'
import { LOADS, railStation } from '#tests/support/orders.ts'

const TOGETHER = 32
const SLICE_MS = 500
const SLICES = 6
const BLOCK = Buffer.alloc(4_096, 1)

/** How often `act` is done in a second, over one slice of time. */
const rateOf = async (act: () => Promise<void> | void): Promise<number> => {
  const begun = performance.now()
  let times = 0
  while (performance.now() - begun < SLICE_MS) {
    await act()
    times += 1
  }
  return (times * 1_000) / (performance.now() - begun)
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * Commands that are durable a second through the rail and the SQLite log, one at a time and as they
 * come together, against bare synced writes of a page to the same disk: in turns, on one machine.
 */
export const benchDurableCommits = async (): Promise<Verdict> => {
  const folder = temporaryFolder()
  const log = openSqliteLog<Recorded, StoredAnswer>({ path: join(folder, 'log.db') })
  const rail = await openRail({
    service: 's-bench',
    log,
    guests: createMemoryGuests(),
    clock: createServerClock(),
    station: () => ({ revision: 1, document: railStation }),
    newestLabels: () => ({}),
    labelsGuard: createLabelsGuard(log, 'bench'),
    logger: pino({ level: 'silent' }),
    fatal: (error) => {
      throw error
    },
  })
  let given = 0
  const give = (command: Command) => {
    given += 1
    return rail.submit(`command-${given}`, command, 'lead')
  }
  await give({ type: 'open', station: railStation.id, kind: 'real' })
  for (const load of LOADS) await give(load)
  const toggle = (): Command => ({
    type: given % 2 === 0 ? 'stopSelling' : 'resumeSelling',
    what: 'item',
    id: 'harbor-tuna',
  })
  if (given % 2 !== 0) await give({ type: 'correct', pan: 'pan-rice', amount: 1 })

  const file = openSync(join(folder, 'floor'), 'w')
  const rates = { floor: [] as number[], single: [] as number[], together: [] as number[] }
  for (let slice = 0; slice < SLICES; slice += 1) {
    rates.floor.push(
      await rateOf(() => {
        writeSync(file, BLOCK)
        fdatasyncSync(file)
      }),
    )
    rates.single.push(await rateOf(async () => void (await give(toggle()))))
    rates.together.push(
      await rateOf(async () => {
        await Promise.all(Array.from({ length: TOGETHER }, () => give(toggle())))
      }),
    )
  }
  closeSync(file)
  const commits = log.commits()
  rail.close()
  await log.close()
  rmSync(folder, { recursive: true, force: true })
  const floor = mean(rates.floor)
  const single = mean(rates.single)
  const together = mean(rates.together) * TOGETHER
  return {
    title: `durable commands: ${Math.round(single)} a second one at a time, ${Math.round(together)} where ${TOGETHER} come together`,
    figures: [
      `bare synced writes of ${BLOCK.length} bytes: ${Math.round(floor)} a second`,
      `one at a time ${(single / floor).toFixed(2)} times that; together ${(together / floor).toFixed(1)} times that, ${(together / single).toFixed(1)} times one at a time`,
      `${given} commands in ${commits} commits; no bound is set`,
    ],
    isWithin: true,
  }
}
