/** The service records in memory, and the writing of a new one when a service has closed. */
import type { Logger } from 'pino'
import type { PastTaught } from '#lib/estimate/demand-history.ts'
import { knownBiasOf, pastTaught } from '#lib/rooms/day/facts/past-services.ts'
import { type ServiceRecord, serviceRecord } from '#lib/rooms/day/facts/service-record.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { KnownBias } from '#lib/service/events/stock-event.ts'
import { isRunning } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { Rail } from '#server/rail/rail.ts'
import type { ServiceRecords } from '#server/records/port.ts'

export interface KnownRecords {
  all(): readonly ServiceRecord[]
  knownBias(station: string, kind: ServiceRecord['kind']): Readonly<Record<string, KnownBias>>
  /**
   * What past services teach of the one ahead. Learning takes a good part of a second, so it is done
   * once for as many records, ahead of the service that needs it where that can be.
   */
  taught(station: StationDocument, kind: ServiceRecord['kind']): PastTaught
  /** Writes the record of a service that has closed, once. */
  take(rail: Rail): void
  /** Settles when nothing is being written any more. */
  idle(): Promise<void>
}

export const openKnownRecords = async (ports: {
  readonly records: ServiceRecords
  /** All that happened in a service, in order. */
  readonly events: (service: string) => Promise<readonly Recorded[]>
  readonly logger: Logger
  readonly fatal: (error: unknown) => void
}): Promise<KnownRecords> => {
  const known = new Map(
    (await ports.records.list()).map(({ record }) => [record.service, record] as const),
  )
  const learned = new Map<string, { readonly from: string; readonly past: PastTaught }>()
  const taught: KnownRecords['taught'] = (station, kind) => {
    const key = `${station.id} ${kind}`
    const from = `${known.size} ${station.components.map(({ id }) => id).join(' ')}`
    const before = learned.get(key)
    if (before?.from === from) return before.past
    const past = pastTaught([...known.values()], station, kind)
    learned.set(key, { from, past })
    return past
  }
  let writing: Promise<void> = Promise.resolve()
  const underway = new Set<string>()

  const write = async (rail: Rail): Promise<void> => {
    const state = rail.state()
    if (!isRunning(state) || state.stage !== 'closed' || known.has(state.service)) return
    const record = serviceRecord(state, await ports.events(rail.service))
    await ports.records.put(record)
    known.set(record.service, record)
    taught(state.station, state.kind)
  }

  return {
    all: () => [...known.values()],
    knownBias: (station, kind) => knownBiasOf([...known.values()], station, kind),
    taught,
    take: (rail) => {
      if (rail.state().stage !== 'closed' || underway.has(rail.service)) return
      underway.add(rail.service)
      writing = writing
        .then(() => write(rail))
        .catch((error: unknown) => {
          ports.logger.error({ err: error, service: rail.service }, 'a record was not written')
          ports.fatal(error)
        })
        .finally(() => underway.delete(rail.service))
    },
    idle: () => writing,
  }
}
