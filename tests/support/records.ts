import { countBuild, noCounts } from '#lib/estimate/service-counts.ts'
import { NO_BUILD_TIMES } from '#lib/estimate/wait.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'

const DAY_MS = 86_400_000

/** The record of a service with so many chicken builds, on a day by its number. */
export const recordOf = (
  day: number,
  builds: number,
  over: Partial<ServiceRecord> = {},
): ServiceRecord => ({
  format: 'level-scoop/service-record',
  version: 1,
  service: `s-${day}`,
  station: 'alder-hall',
  kind: 'real',
  revision: 1,
  openedAt: day * DAY_MS,
  closedAt: day * DAY_MS + 9_000_000,
  counts: Array.from({ length: builds }).reduce<ServiceRecord['counts']>(
    (counts, _, index) =>
      countBuild(counts, 645 + index, { item: 'garden-chicken', portions: { chicken: 1 } }),
    noCounts(645, 795, builds),
  ),
  made: builds,
  components: {},
  bias: {},
  batches: [],
  readings: [],
  buildTimes: NO_BUILD_TIMES,
  ...over,
})
