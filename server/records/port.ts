import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'

/** A service record as it was put, and which putting it was. */
export interface KeptRecord {
  /** Counts up from 1 within its service: a record that is made anew replaces the one before. */
  readonly revision: number
  readonly record: ServiceRecord
}

/** Service records: what outlives the events of a service. */
export interface ServiceRecords {
  /** Keeps a record as its service's newest, durable when the promise settles. */
  put(record: ServiceRecord): Promise<number>
  /** The newest record of each service, oldest service first. */
  list(): Promise<readonly KeptRecord[]>
}
