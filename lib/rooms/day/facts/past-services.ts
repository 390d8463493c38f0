/** What is read of the services of past days. */

import { learnPast, type PastTaught } from '#lib/estimate/demand-history.ts'
import { type ServiceCounts, total } from '#lib/estimate/service-counts.ts'
import { firstShares } from '#lib/rooms/advice/facts/stakes.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'
import type { KnownBias } from '#lib/service/events/stock-event.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Older services teach nothing more, and cost time. */
const MOST_PAST = 24
/** From day to day a bias moves about so much. Common practice, no source. */
const DAY_SD = 0.03
/** As unsure as one that was never measured, at most. */
const MOST_SD = 0.09

/**
 * Records of a station's services, oldest first, that teach the one ahead: a demo teaches demos, and a
 * practice teaches nothing, not even the next practice.
 */
export const ofKind = (
  records: readonly ServiceRecord[],
  station: string,
  kind: ServiceRecord['kind'],
): readonly ServiceRecord[] =>
  records
    .filter(
      (one) =>
        one.station === station &&
        one.kind === (kind === 'demo' ? 'demo' : 'real') &&
        one.neverOpened === undefined,
    )
    .sort((one, other) => one.openedAt - other.openedAt)

/** What a record says of the demand; null for a service that doesn't tell what guests want. */
export const demandTaught = ({
  counts,
  cutShort,
}: Pick<ServiceRecord, 'counts' | 'cutShort'>): ServiceCounts | null =>
  cutShort || total(counts.builds) <= 0 ? null : counts

/**
 * What past services teach of the one ahead. One in which nothing was sold, or that was cut short,
 * teaches nothing.
 */
export const pastTaught = (
  records: readonly ServiceRecord[],
  station: StationDocument,
  kind: ServiceRecord['kind'],
): PastTaught =>
  learnPast(
    ofKind(records, station.id, kind)
      .flatMap((record) => demandTaught(record) ?? [])
      .slice(-MOST_PAST),
    firstShares(station),
  )

/**
 * How heavy each component was last scooped, less sure by a day. Each service began from the ones
 * before it, so the newest says all.
 */
export const knownBiasOf = (
  records: readonly ServiceRecord[],
  station: string,
  kind: ServiceRecord['kind'],
): Readonly<Record<string, KnownBias>> => {
  const known: Record<string, KnownBias> = {}
  for (const { bias } of ofKind(records, station, kind))
    for (const [id, { bias: by, sd }] of Object.entries(bias))
      known[id] = { bias: by, sd: Math.min(MOST_SD, Math.sqrt(sd * sd + DAY_SD * DAY_SD)) }
  return known
}
