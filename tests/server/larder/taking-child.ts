/** Sets a lot aside and takes of it, a little at a time, for as long as it lives. */
import type { LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { lotGuards } from '#lib/larder/guards.ts'
import { EMPTY_LARDER } from '#lib/larder/lot.ts'
import type { LogEntry } from '#server/event-log/port.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { coldRice } from '#tests/support/larder.ts'

type Entry = LogEntry & { readonly amount: number }

const [path = ''] = process.argv.slice(2)
const log = openSqliteLog<Entry, never>({ path })
const HELD = 1_000_000_000
let larder = EMPTY_LARDER
let position = 0

const both = async (amount: number, event: LarderRecorded): Promise<void> => {
  const own = { position: position + 1, at: event.at, command: event.command, type: event.type }
  const appended = await log.appendAll(
    [
      { service: 's-lunch', after: position, entries: [{ ...own, amount }], answers: [] },
      { service: 'larder-house', after: larder.position, entries: [event], answers: [] },
    ],
    lotGuards(larder, [event]),
  )
  if (appended === 'conflict') throw new Error('a conflict of one writer')
  position += 1
  larder = evolveLarder(larder, event)
  console.log(position)
}

const stamp = () => ({ position: larder.position + 1, at: 1_000, command: `c-${position}` })
await both(HELD, { type: 'lotSetAside', lot: 'a', amount: HELD, food: coldRice(), ...stamp() })
for (let turn = 1; ; turn += 1) {
  const by = { service: 's-lunch', station: 'line', batch: `b${turn}` }
  await both(-turn, { type: 'lotTaken', lot: 'a', amount: turn, by, ...stamp() })
}
