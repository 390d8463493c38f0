import { join } from 'node:path'
import { NO_LABELS } from '#lib/larder/decide.ts'
import { type UnreadFrom, unreadFrom } from '#lib/larder/recall.ts'
import { receivingFood } from '#lib/larder/receiving-view.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { createPublications } from '#server/drafts/publications.ts'
import { openLabels } from '#server/labels/open-labels.ts'
import { openLarder } from '#server/larder/larder-rail.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import { createHouseContacts } from '#server/stations/house-contacts.ts'
import { openKnownStations } from '#server/stations/known-stations.ts'
import { createRevisions } from '#server/stations/revisions.ts'
import { createSqliteStations } from '#server/stations/sqlite.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import type { RailLog } from '#tests/support/gated-log.ts'
import { LOADS, railStation } from '#tests/support/orders.ts'
import { createRailRoom } from '#tests/support/rail-room.ts'

/** A second line of the house: the same food in its pans. */
export const SOUP: StationDocument = { ...railStation, id: 'soup-line', name: 'Soup line' }

/** A house of two stations over its file and a log, as the server composes it. */
export const openLabelHouse = async (path: string, log: RailLog) => {
  const file = openHouseDatabase({ path: join(path, 'house.db') })
  const faults: unknown[] = []
  const labels = openLabels({
    file,
    log,
    rails: () => [...services.currents(), ...services.planned()],
    fatal: (error) => faults.push(error),
  })
  const known = await openKnownStations({
    stations: createSqliteStations({ house: file, parse: (json) => stationSchema.parse(json) }),
    labels,
  })
  if (known.first() === null) for (const one of [railStation, SOUP]) await known.put(one)
  const { ports } = await createRailRoom({
    log,
    station: known.find,
    newestLabels: labels.newest,
    labelsGuard: labels.guard,
  })
  const services = await openStationServices(ports)
  const openItsLarder = (onUnread: (delivered: readonly UnreadFrom[]) => void) =>
    openLarder({
      house: labels.house,
      log: log.as(),
      guests: ports.guests,
      clock: ports.clock,
      labels: NO_LABELS,
      deliveries: {
        food: (ingredient) =>
          receivingFood(
            known.all().map(({ document }) => document),
            ingredient,
          ),
        guard: labels.guard,
        onUnread,
      },
      logger: ports.logger,
      fatal: (error) => faults.push(error),
    })
  const larder = await openItsLarder(labels.unread)
  services.onShow((_, events) => labels.take(events))
  const publications = createPublications(file, labels.house)
  const contacts = createHouseContacts({
    log,
    stations: known,
    revisions: createRevisions(file, (json) => stationSchema.parse(json)),
    rails: () => services.currents(),
    neverTouched: publications.neverTouched,
  })
  await labels.recover(unreadFrom(await larder.entries()))
  contacts.recover()
  return {
    labels,
    contacts,
    publications,
    known,
    services,
    larder,
    /** One whose process ends before the house has its label. */
    cutShortLarder: () => openItsLarder(() => undefined),
    faults,
    file,
    /** Opens a service of a station and loads its pans. */
    opened: async (station: string, service = `s-${station}`) => {
      await services.submit(service, 'open', { type: 'open', station, kind: 'real' }, 'lead')
      for (const [index, load] of LOADS.entries())
        await services.submit(service, `load-${index}`, load, 'lead')
      const rail = services.current(station)
      if (!rail) throw new Error(`no service of ${station}`)
      return rail
    },
    settled: async () => {
      await labels.idle()
      await services.idle()
    },
    close: () => {
      larder.close()
      services.close()
      closeDurableDatabase(file)
    },
  }
}
