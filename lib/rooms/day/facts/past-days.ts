/** Past services as par reads them. */
import { isNeeded, type PastDay, type Sold } from '#lib/estimate/par/past-day.ts'
import { total } from '#lib/estimate/service-counts.ts'
import { civilDate } from '#lib/measure/civil.ts'
import { demandTaught, ofKind } from '#lib/rooms/day/facts/past-services.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** A year of weekly services, or two months of daily ones. */
const MOST_PAST = 40

type Lists = Readonly<Record<string, readonly number[]>>

const totals = (lists: Lists): Readonly<Record<string, number>> =>
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

/** The slot in which a list comes to so many in all, or its last one that counts anything. */
const slotOf = (list: readonly number[] | undefined, many = Number.POSITIVE_INFINITY): number => {
  let sum = 0
  const reached = (list ?? []).findIndex((count) => {
    sum += count
    return sum >= many
  })
  return reached >= 0 ? reached : (list ?? []).findLastIndex((count) => count > 0)
}

/**
 * What had been sold as a component was taken last. Who finds it gone counts as wanting it too, with a
 * build that goes without or by a tap alone: so where items that were sold can't be made without it
 * that was as the last of them was sold, else as what was wanted of it came to what was taken out. In
 * the five minutes in which it was, what is beside it was sold before and after alike: half counts.
 */
const soldUntil = (
  { counts, components }: Pick<ServiceRecord, 'counts' | 'components'>,
  { items }: Pick<StationDocument, 'items'>,
  component: string,
): Sold => {
  const needing = items
    .filter((item) => isNeeded(item, component) && total(counts.items[item.id]) > 0)
    .map(({ id }) => id)
  const own = components[component]
  const taken = own ? own.used / own.portion.amount : Number.POSITIVE_INFINITY
  const last =
    needing.length > 0
      ? Math.max(...needing.map((id) => slotOf(counts.items[id])))
      : slotOf(counts.portions[component], taken)
  const upTo = (lists: Lists, whole: readonly string[]) =>
    Object.fromEntries(
      Object.entries(lists).map(([id, list]) => {
        const half = whole.includes(id) ? 0 : (list[last] ?? 0) / 2
        return [id, total(list.slice(0, last + 1)) - half]
      }),
    )
  const takings = upTo(counts.takings, [component])
  const taps = total((counts.taps?.[component] ?? []).slice(0, last + 1))
  return {
    items: upTo(counts.items, needing),
    takings: { ...takings, [component]: Math.max(0, (takings[component] ?? 0) - taps) },
  }
}

type Station = Pick<StationDocument, 'id' | 'timeZone' | 'items'>

const read = new WeakMap<ServiceRecord, { readonly station: Station; readonly day: PastDay }>()

/** What a record tells; null where it doesn't teach. The same of the same record, since it is read often. */
const pastDayOf = (record: ServiceRecord, station: Station): PastDay | null => {
  const known = read.get(record)
  if (known?.station.items === station.items && known.station.timeZone === station.timeZone)
    return known.day
  const counts = demandTaught(record)
  if (counts === null) return null
  const soldOut = goneAtEnd(record)
  const day: PastDay = {
    on: civilDate(record.openedAt, station.timeZone),
    expected: counts.expected,
    builds: total(counts.builds),
    items: totals(counts.items),
    takings: totals(counts.takings),
    portions: totals(counts.portions),
    taps: totals(counts.taps ?? {}),
    soldOut,
    until: Object.fromEntries(
      soldOut.map((component) => [component, soldUntil(record, station, component)]),
    ),
  }
  read.set(record, { station, day })
  return day
}

/**
 * The services that teach the one ahead what a day wants, the oldest first: real ones of this station
 * for a real one. What ran out wanted at least as much; a practice, or a service that was cut short,
 * teaches nothing.
 */
export const pastDays = (
  records: readonly ServiceRecord[],
  station: Station,
  kind: ServiceRecord['kind'],
): readonly PastDay[] =>
  ofKind(records, station.id, kind)
    .flatMap((record) => pastDayOf(record, station) ?? [])
    .slice(-MOST_PAST)
