/** Past services as par reads them. */
import type { PastDay } from '#lib/estimate/par/past-day.ts'
import { total } from '#lib/estimate/service-counts.ts'
import { civilDate } from '#lib/measure/civil.ts'
import { demandTaught, ofKind } from '#lib/rooms/day/facts/past-services.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** A year of weekly services, or two months of daily ones. */
const MOST_PAST = 40

const totals = (
  lists: Readonly<Record<string, readonly number[]>>,
): Readonly<Record<string, number>> =>
  Object.fromEntries(Object.entries(lists).map(([id, list]) => [id, total(list)]))

/**
 * Components that it had, and of which less than a portion was left as it ended: what came to its end
 * then was still there, also where it was thrown out.
 */
const goneAtEnd = ({
  components,
  ends = [],
}: Pick<ServiceRecord, 'components' | 'ends'>): readonly string[] =>
  Object.entries(components).flatMap(([id, { portion, loaded, left }]) => {
    const ended = ends
      .filter(({ component }) => component === id)
      .reduce((sum, { amount }) => sum + amount, 0)
    return loaded > 0 && left + ended < portion.amount ? [id] : []
  })

/**
 * The services that teach the one ahead what a day wants, the oldest first: real ones of this station
 * for a real one. What ran out wanted at least as much; a practice, or a service that was cut short,
 * teaches nothing.
 */
export const pastDays = (
  records: readonly ServiceRecord[],
  station: Pick<StationDocument, 'id' | 'timeZone'>,
  kind: ServiceRecord['kind'],
): readonly PastDay[] =>
  ofKind(records, station.id, kind)
    .flatMap((record): PastDay[] => {
      const counts = demandTaught(record)
      if (counts === null) return []
      return [
        {
          on: civilDate(record.openedAt, station.timeZone),
          expected: counts.expected,
          builds: total(counts.builds),
          items: totals(counts.items),
          takings: totals(counts.takings),
          portions: totals(counts.portions),
          soldOut: goneAtEnd(record),
        },
      ]
    })
    .slice(-MOST_PAST)
