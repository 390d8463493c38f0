/** A house in memory: one log, two servers on it, two stations, and a clock that is told. */
import { pino } from 'pino'
import type { LarderRecorded } from '#lib/larder/event.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { type Larder, type LarderLog, openLarder } from '#server/larder/larder-rail.ts'
import type { ServerClock } from '#server/rail/clock.ts'
import { createLabelsGuard } from '#server/rail/labels-guard.ts'
import { openStationServices, type StationServices } from '#server/rail/station-services.ts'
import { createGatedLog, type GatedLog, type RailLog } from '#tests/support/gated-log.ts'
import { createMemoryGuests } from '#tests/support/memory-guests.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { createRailRoom, createTestClock, type TestClock } from '#tests/support/rail-room.ts'

interface Server {
  readonly services: StationServices
  readonly larder: Larder
}

export interface House {
  readonly log: RailLog
  readonly larderLog: LarderLog
  readonly counts: Record<string, number>
  readonly stream: string
}

export interface World extends House {
  readonly gated: GatedLog
  readonly time: TestClock
  readonly servers: [Server, Server]
  readonly documents: readonly StationDocument[]
  /** All that was ever begun, with its station. */
  readonly known: { readonly service: string; readonly station: string }[]
  begins(which: 0 | 1): Promise<Server>
  next: number
}

const BEGINS_AT = Date.parse('2026-11-25T16:00:00Z')
const SILENT = pino({ level: 'silent' })

export const beginHouse = async (): Promise<World> => {
  const within: RailLog = createMemoryLog()
  const gated = createGatedLog(within)
  const time = createTestClock(BEGINS_AT)
  const documents = [demoStation, { ...demoStation, id: 'birch-hall', name: 'Birch Hall' }]
  const guests = createMemoryGuests()
  const { ports } = await createRailRoom({ log: within, clock: time.clock as ServerClock })
  const begins = async (which: 0 | 1): Promise<Server> => {
    const log = which === 0 ? gated.log : within
    const fatal = () => undefined
    const larder = await openLarder({
      house: 'house',
      log: log.as() as unknown as LarderLog,
      guests,
      clock: time.clock,
      labels: { newest: () => ({}), from: () => [] },
      // Nothing is delivered in it.
      deliveries: {
        food: () => null,
        guard: createLabelsGuard(within, 'house'),
        onUnread: () => undefined,
      },
      logger: SILENT,
      fatal,
    })
    const services = await openStationServices({
      ...ports,
      log,
      guests,
      larder,
      logger: SILENT,
      fatal,
      station: (id) => {
        const document = documents.find((one) => one.id === id)
        return document ? { revision: 1, document } : null
      },
    })
    return { services, larder }
  }
  const servers: [Server, Server] = [await begins(0), await begins(1)]
  return {
    log: within,
    larderLog: within.as<LarderRecorded, never>() as unknown as LarderLog,
    stream: servers[0].larder.stream,
    gated,
    time,
    servers,
    documents,
    known: [],
    counts: {},
    begins,
    next: 1,
  }
}
