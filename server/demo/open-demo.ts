import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { StationServices } from '#server/rail/station-services.ts'
import type { KeptStation } from '#server/stations/port.ts'

const DEMO_SERVICE = 's-demo'

/**
 * With an empty data folder an order can be taken at once: a demo service with loaded pans. Called
 * again after a start that was cut short in the middle, what was done already has no second effect.
 */
const openDemo = async (
  services: StationServices,
  station: StationDocument,
  now: number,
  service = DEMO_SERVICE,
): Promise<void> => {
  await services.submit(
    service,
    'demo-open',
    { type: 'open', station: station.id, kind: 'demo' },
    'lead',
  )
  // Told of the moment of its opening, so that a command given again is the same command.
  const openedAt = (await services.find(service))?.state().openedAt ?? now
  for (const [index, command] of openingCommands(station, openedAt, { isDated: true }).entries())
    await services.submit(service, `demo-opening-${index + 1}`, command, 'lead')
}

/** Opens the demo where no service was ever opened, and does what was left undone of that. */
export const beginDemo = async (
  services: StationServices,
  first: KeptStation<StationDocument> | null,
  now: number,
): Promise<void> => {
  if (first === null) return
  const newest = services.current(first.station)
  const isUnderWay = newest?.service === DEMO_SERVICE && newest.state().stage === 'open'
  if (newest === null || isUnderWay) await openDemo(services, first.document, now)
}

/** Opens another service of the demo where none of it is open: whoever opens the demo can order at once. */
export const openNewDemo = async (
  services: StationServices,
  first: KeptStation<StationDocument> | null,
  now: number,
): Promise<void> => {
  if (first === null || services.current(first.station)?.state().stage === 'open') return
  await openDemo(services, first.document, now, `${DEMO_SERVICE}-${now}`)
}
