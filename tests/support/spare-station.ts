/** The station that random histories happen on, and what their steps have in common. */
import fc from 'fast-check'
import type { ServiceState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import {
  backupReady,
  batches,
  demoStation,
  eventsOf,
  type Given,
  happening,
  load,
  NOTHING,
  ofPortions,
  onward,
  type Told,
  when,
} from '#tests/support/service.ts'

/**
 * The demo station with a second pan of slaw and of tuna, so that a build takes out of two, and with
 * every claim declared and no contact of rice, so that scoops are lent, and that says something.
 */
export const stationWithSpares: StationDocument = {
  ...demoStation,
  ingredients: demoStation.ingredients.map((one) => ({
    ...one,
    claims: { halal: 'declared', kosher: 'declared' },
  })),
  contacts: (demoStation.contacts ?? []).filter(({ id }) => id !== 'bases'),
  line: {
    wells: [
      ...demoStation.line.wells,
      {
        id: 'spares',
        held: 'cold',
        pans: ['slaw', 'tuna'].map((component) => ({
          id: `pan-${component}-spare`,
          component,
          size: 'third',
          depthIn: 4,
          tareMg: null,
          capacityFlOz: null,
          usualPortions: 20,
        })),
      },
    ],
  },
}

/** And with a shelf on which made food is held hot, so that it is read. */
export const stationWithShelf: StationDocument = {
  ...stationWithSpares,
  safety: {
    ...stationWithSpares.safety,
    shelf: { ...stationWithSpares.safety.shelf, held: 'hot' },
  },
}

export const pans = pansOf(stationWithSpares)
export const items = stationWithSpares.items
export const components = stationWithSpares.components.map((one) => one.id)

/** A step of a history: a command, once the service has come to where it is. */
export type Step = (state: ServiceState) => Given

/** True nine times in ten. */
export const mostly = fc.integer({ min: 0, max: 9 }).map((one) => one > 0)

export const opened = (): Told => {
  const station = () => ({ revision: 1, document: stationWithSpares })
  const open: Given = { type: 'open', station: 'alder-hall', kind: 'real' }
  const told = happening(NOTHING, eventsOf(when(NOTHING, open, { station })))
  const ready = onward(
    told,
    { type: 'signOn' },
    ...batches(),
    ...stationWithSpares.backups
      .filter((one) => one.protected)
      .map(({ component }) => backupReady(component, 3)),
  )
  return stationWithSpares.line.wells
    .flatMap((well) => well.pans)
    .filter((pan) => !pan.id.endsWith('spare'))
    .reduce((so, pan) => onward(so, load(pan.id, ofPortions(pan.component, 6))), ready)
}
