/** One of the two houses, as its screens are told of it. */
import type { Logger } from 'pino'
import type { WhichHouse } from '#lib/access/http.ts'
import type { Welcome } from '#lib/protocol/wire.ts'
import type { Access } from '#server/access/access.ts'
import type { Forecasts } from '#server/forecast/forecasts.ts'
import type { Guests } from '#server/guests/port.ts'
import type { Keeping } from '#server/privacy/keeping.ts'
import type { StationServices } from '#server/rail/station-services.ts'
import { type Asking, createAsking } from '#server/sockets/asking.ts'
import { createTelling, type Telling, type TellingPorts } from '#server/sockets/telling.ts'

interface NamedStation {
  readonly station: string
  readonly document: { readonly name: string }
}

/** What sockets need of a house that is open. */
export interface SocketHouse {
  readonly services: StationServices
  readonly guests: Guests
  readonly forecasts: Pick<Forecasts, 'newest' | 'onForecast'>
  readonly keeping: Pick<Keeping, 'onForgotten'>
  readonly stations: {
    find(station: string): NamedStation | null
    first(): NamedStation | null
  }
}

export interface WiredHouse {
  readonly which: WhichHouse
  readonly house: SocketHouse
  readonly asking: Asking
  readonly telling: Telling
  /** A device's, or the first. */
  station(id: string | null): Welcome['station']
}

/** Tells the screens of a house what happens in it, from now on. */
export const wireHouse = (
  which: WhichHouse,
  house: SocketHouse,
  ports: {
    readonly io: TellingPorts['io']
    readonly access: Access
    readonly logger: Logger
    /** A service was opened. */
    readonly onOpened: () => void
  },
): WiredHouse => {
  const { services, guests, forecasts, keeping, stations } = house
  const telling = createTelling({
    house: which,
    io: ports.io,
    guests,
    newest: (service) => forecasts.newest(service),
    logger: ports.logger,
  })
  services.onShow((rail, events) => {
    telling.happened(rail, events)
    if (events.some((event) => event.type === 'serviceOpened')) ports.onOpened()
  })
  forecasts.onForecast(telling.forecast)
  keeping.onForgotten(telling.forgotten)
  return {
    which,
    house,
    telling,
    asking: createAsking({ house: which, services, access: ports.access }),
    station: (id) => {
      const found = (id === null ? null : stations.find(id)) ?? stations.first()
      return found ? { id: found.station, name: found.document.name } : null
    },
  }
}
