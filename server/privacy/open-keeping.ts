/** Keeping over the stores of a server, at its start and every hour from then on. */

import { createCounting } from '#server/privacy/counting.ts'
import { createKeeping, type Keeping, type KeepingPorts } from '#server/privacy/keeping.ts'
import { createSqliteRetention } from '#server/privacy/retention-store.ts'
import type { KnownRecords } from '#server/records/known-records.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

/** That a day of running has passed is seen within the hour. */
const SWEEP_EVERY_MS = 3_600_000

export interface OpenKeeping extends Keeping {
  /** Nothing is swept any more. */
  close(): void
}

/** What a crash left, and what is over, is gone when it settles: call it before anything is under way. */
export const openKeeping = async ({
  house,
  ...ports
}: Omit<KeepingPorts, 'store' | 'counting' | 'records'> & {
  readonly house: SqliteDatabase
  readonly records: KnownRecords
}): Promise<OpenKeeping> => {
  const { services, records } = ports
  const openedAt = (service: string): number | null => {
    const current = services.currents().find((rail) => rail.service === service)
    if (current) return current.state().openedAt
    return records.all().find((one) => one.service === service)?.openedAt ?? null
  }
  const counting = createCounting({
    house,
    guests: ports.guests,
    streams: ports.log.services,
    guards: ports.log.guards,
    openedAt,
    recorded: records.all,
  })
  const keeping = createKeeping({ ...ports, store: createSqliteRetention(house), counting })
  await keeping.begin()
  const sweeping = setInterval(() => void keeping.sweep(), SWEEP_EVERY_MS).unref()
  return { ...keeping, close: () => clearInterval(sweeping) }
}
