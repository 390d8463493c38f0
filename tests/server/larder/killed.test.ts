import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import type { LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { EMPTY_LARDER } from '#lib/larder/lot.ts'
import type { LogEntry } from '#server/event-log/port.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { runChild } from '#tests/support/child.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const taking = fileURLToPath(new URL('taking-child.ts', import.meta.url))

type Entry = LogEntry & { readonly amount: number }

it.each([1, 40, 111])(
  '[LA34] killed after %d commits of a service and the larder, every milligram is in both or in neither',
  async (commits) => {
    const path = join(temporaryFolder(), 'log.db')
    const killed = await runChild(taking, [path], {
      onOutput: (output, kill) => {
        if (output.split('\n').length > commits) kill()
      },
    })
    expect(killed.signal).toBe('SIGKILL')
    const told = killed.output.split('\n').length - 1
    const log = openSqliteLog<Entry, never>({ path })
    const service = await log.read('s-lunch', 0)
    const entries = await log.as<LarderRecorded, never>().read('larder-house', 0)
    const { a } = entries.reduce(evolveLarder, EMPTY_LARDER).lots
    expect(service.length).toBe(entries.length)
    expect(service.length).toBeGreaterThanOrEqual(told)
    expect(a?.amount).toBe(service.reduce((sum, { amount }) => sum + amount, 0))
    expect(await log.guard('lot:a')).toBe(a?.version)
    await log.close()
  },
  60_000,
)
