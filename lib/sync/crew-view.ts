/** What a crew screen holds of the service that it follows. */

import type { ConnectRefusal } from '#lib/access/http.ts'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import type { Welcome } from '#lib/protocol/wire.ts'
import type { PickUpPicture } from '#lib/rooms/shelf/views/pick-up.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import type { Pending } from '#lib/sync/outbox.ts'

export type Link = 'connecting' | 'live' | 'lost'

export interface CrewView {
  readonly link: Link
  /** Why the server doesn't let this screen in; null where it does, or can't be reached. */
  readonly refused: ConnectRefusal | null
  readonly welcome: Welcome | null
  readonly service: string | null
  readonly position: number
  readonly state: ServiceState
  readonly picture: PickUpPicture | null
  /** Names by the id of the command that sent the ticket. */
  readonly names: Readonly<Record<string, string>>
  /** The newest; null until there is one, and after the close. */
  readonly forecast: StationForecast | null
  readonly pending: readonly Pending[]
  /** The device's monotonic clock when the server was last heard, milliseconds. */
  readonly heardAt: number | null
  /** Server time minus the device's monotonic clock, so that ages are the server's. */
  readonly serverOffset: number
}

export const NO_VIEW: CrewView = {
  link: 'connecting',
  refused: null,
  welcome: null,
  service: null,
  position: 0,
  state: NOT_OPENED,
  picture: null,
  names: {},
  forecast: null,
  pending: [],
  heardAt: null,
  serverOffset: 0,
}

/** Of two of one service the newest wins; a clock that was set back doesn't make it an older one. */
export const isNewer = (one: StationForecast, before: StationForecast | null): boolean =>
  before === null ||
  before.service !== one.service ||
  one.position > before.position ||
  (one.position === before.position && one.at >= before.at)
