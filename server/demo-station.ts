import demo from '#fixtures/stations/alder-hall.json' with { type: 'json' }
import { findComponent, pansOf } from '#lib/menu/find.ts'
import { portionOf } from '#lib/menu/portion.ts'
import { stationSchema } from '#lib/menu/schema.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'
import type { Command } from '#lib/service/decide.ts'

/** The station that a new data folder starts with. */
export const demoStation: StationDocument = stationSchema.parse(demo)

/** The protected back-up pans of the station, standing ready. */
export const backupsOf = (station: StationDocument): readonly Command[] =>
  station.backups
    .filter((backup) => backup.protected)
    .map(({ component }) => ({ type: 'setBackup', component, ready: true }))

/** Every pan loaded as the station usually does. */
export const loadsOf = (station: StationDocument): readonly Command[] =>
  pansOf(station).flatMap((pan): Command[] => {
    const component = findComponent(station, pan.component)
    return component
      ? [
          {
            type: 'load',
            pan: pan.id,
            amount: pan.usualPortions * portionOf(component).amount,
          },
        ]
      : []
  })
