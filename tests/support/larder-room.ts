import { pino } from 'pino'
import type { ReceivingFood } from '#lib/larder/delivery.ts'
import type { LarderEvent, LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { lotGuards } from '#lib/larder/guards.ts'
import type { UnreadFrom } from '#lib/larder/recall.ts'
import type { LabelHistory } from '#lib/larder/relabelled.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { type Larder, type LarderLog, openLarder } from '#server/larder/larder-rail.ts'
import { createLabelsGuard } from '#server/rail/labels-guard.ts'
import { createMemoryGuests } from '#tests/support/memory-guests.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { createTestClock } from '#tests/support/rail-room.ts'

/** The one food that is delivered there. */
const MILK: ReceivingFood = {
  name: 'Milk',
  limits: MODEL_CODE,
  timeZone: 'UTC',
  scale: 'F',
  cold: null,
}

/** A house's larder over a log and guests in memory, with a clock that is told. */
export const createLarderRoom = async (from: {
  readonly at: number
  readonly log?: LarderLog
  readonly labels?: LabelHistory
}) => {
  const log: LarderLog = from.log ?? createMemoryLog()
  const guests = createMemoryGuests()
  const time = createTestClock(from.at)
  const faults: unknown[] = []
  const labels = createLabelsGuard(log.as(), 'house')
  const unread: UnreadFrom[] = []
  const open = (): Promise<Larder> =>
    openLarder({
      house: 'house',
      log,
      guests,
      clock: time.clock,
      labels: from.labels ?? { newest: () => ({}), from: () => [] },
      deliveries: {
        food: (ingredient) => (ingredient === 'milk' ? MILK : null),
        guard: labels,
        onUnread: (delivered) => unread.push(...delivered),
      },
      logger: pino({ level: 'silent' }),
      fatal: (error) => faults.push(error),
    })
  const larder = await open()
  /** As a service appends it: beside the larder's own rail, with its guards. */
  const append = async (...events: readonly LarderEvent[]) => {
    const before = await larder.newest()
    const entries = events.map(
      (event, index): LarderRecorded => ({
        ...event,
        position: before.position + 1 + index,
        at: Math.max(time.clock.now(), before.at),
        command: 'service',
      }),
    )
    entries.reduce(evolveLarder, before)
    const guards = lotGuards(before, entries)
    return log.append(larder.stream, before.position, entries, [], guards)
  }
  const types = async () => (await log.read(larder.stream, 0)).map(({ type }) => type)
  return { log, guests, time, faults, larder, labels, unread, open, append, types }
}
