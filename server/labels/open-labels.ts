/** The house's labels over its stores: what the rails and the stations are given of them, and a start. */
import type { UnreadFrom } from '#lib/larder/recall.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { ServiceState } from '#lib/service/state.ts'
import type { EventLog } from '#server/event-log/port.ts'
import { type HouseLabels, openHouseLabels } from '#server/labels/house-labels.ts'
import type { Labels } from '#server/labels/port.ts'
import { createSqliteLabels } from '#server/labels/sqlite.ts'
import { createLabelsGuard, type LabelsGuard } from '#server/rail/labels-guard.ts'
import type { Rail } from '#server/rail/rail.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import type { SqliteDatabase } from '#server/store/durable-database.ts'

export interface OpenLabels extends HouseLabels {
  readonly guard: LabelsGuard
  /** Id of the house that they are of. */
  readonly house: string
  /** Those of an ingredient that came after a version, in order. */
  readonly since: Labels['since']
  /**
   * What was cut short between a service, or the larder, and the house is done now, from either side.
   * @param delivered what deliveries made unread
   */
  recover(delivered: readonly UnreadFrom[]): Promise<void>
}

export const houseOf = (file: SqliteDatabase): string => {
  const id = file.prepare<[], string>('SELECT id FROM house').pluck().get()
  if (id === undefined) throw new Error('the house has no row')
  return id
}

/** @param deps.rails the newest service of each station, and those that are planned */
export const openLabels = (deps: {
  readonly file: SqliteDatabase
  readonly log: EventLog<Recorded, StoredAnswer>
  readonly rails: () => readonly Rail[]
  readonly fatal: (error: unknown) => void
}): OpenLabels => {
  const { file, log, rails, fatal } = deps
  const house = houseOf(file)
  const guard = createLabelsGuard(log, house)
  const rows = createSqliteLabels(file, house)
  const labels = openHouseLabels({ labels: rows, guard, rails, fatal })

  const isAhead = ({ labelVersions = {} }: ServiceState): boolean =>
    Object.entries(labelVersions).some(
      ([ingredient, version]) => version > (labels.find(ingredient, null)?.version ?? 0),
    )

  return {
    ...labels,
    guard,
    house,
    since: rows.since,
    recover: async (delivered) => {
      labels.unread(delivered)
      for (const rail of rails())
        if (isAhead(rail.state())) labels.take(await log.read(rail.service, 0))
      await labels.idle()
      labels.spread()
    },
  }
}
