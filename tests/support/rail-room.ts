import { pino } from 'pino'
import type { Answer } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Role } from '#lib/service/roles.ts'
import type { Command } from '#lib/spine/registry.ts'
import { demoStation } from '#server/demo-station.ts'
import type { Guests } from '#server/guests/port.ts'
import { createServerClock } from '#server/rail/clock.ts'
import { createLabelsGuard } from '#server/rail/labels-guard.ts'
import { openRail, type Rail } from '#server/rail/rail.ts'
import type { RailPorts } from '#server/rail/rail-ports.ts'
import { createGatedLog, type GatedLog } from '#tests/support/gated-log.ts'
import { createMemoryGuests } from '#tests/support/memory-guests.ts'
import { LOADS, OPEN, railStation } from '#tests/support/orders.ts'

export const NOON = Date.UTC(2026, 2, 2, 17)

/** A clock that stands still until it is told otherwise. */
export interface TestClock {
  /** Both the wall clock and the monotonic one go on. */
  pass(ms: number): void
  /** Somebody sets the wall clock. */
  set(at: number): void
  readonly clock: RailPorts['clock']
}

export const createTestClock = (start = NOON): TestClock => {
  let wall = start
  let monotonic = 1_000
  return {
    pass: (ms) => {
      wall += ms
      monotonic += ms
    },
    set: (at) => {
      wall = at
    },
    clock: createServerClock(
      () => wall,
      () => monotonic,
    ),
  }
}

export interface RailRoom {
  readonly rail: Rail
  readonly gated: GatedLog
  readonly guests: Guests
  readonly time: TestClock
  readonly ports: RailPorts
  /** What was shown, batch by batch. */
  readonly shown: (readonly Recorded[])[]
  readonly faults: unknown[]
  readonly logged: string[]
  give(id: string, command: Command, by?: Role): Promise<Answer>
  /** Everything the log holds of the service. */
  entries(): Promise<readonly Recorded[]>
}

/** A rail over stores in memory, with nothing opened yet. */
export const createRailRoom = async (change: Partial<RailPorts> = {}): Promise<RailRoom> => {
  const gated = createGatedLog()
  const guests = createMemoryGuests()
  const time = createTestClock()
  const shown: (readonly Recorded[])[] = []
  const faults: unknown[] = []
  const logged: string[] = []
  const ports: RailPorts = {
    service: 's-lunch',
    log: gated.log,
    guests,
    clock: time.clock,
    station: (id) => (id === demoStation.id ? { revision: 1, document: railStation } : null),
    newestLabels: () => ({}),
    labelsGuard: createLabelsGuard(change.log ?? gated.log, 'house'),
    logger: pino({ level: 'trace' }, { write: (line) => logged.push(line) }),
    fatal: (error) => faults.push(error),
    ...change,
  }
  const rail = await openRail(ports)
  rail.onShow((events) => shown.push(events))
  return {
    rail,
    gated,
    guests,
    time,
    ports,
    shown,
    faults,
    logged,
    give: (id, command, by = 'lead') => rail.submit(id, command, by),
    entries: () => ports.log.read(ports.service, 0),
  }
}

/** A rail whose service is open and whose pans are loaded: positions 1 to 11. */
export const createOpenRoom = async (change: Partial<RailPorts> = {}): Promise<RailRoom> => {
  const room = await createRailRoom(change)
  await Promise.all([
    room.give('open', OPEN),
    ...LOADS.map((load, index) => room.give(`load-${index}`, load)),
  ])
  return room
}

/** Lets all that doesn't wait for a timer happen. */
export const settle = async (): Promise<void> => {
  for (let turn = 0; turn < 5; turn += 1) await new Promise((next) => setImmediate(next))
}
