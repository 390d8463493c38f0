/** What a station's menu says of what its components are worth and do to each other. */

import type { PastTaught } from '#lib/estimate/demand-history.ts'
import { type StationAhead, stationAhead } from '#lib/estimate/forecast.ts'
import type { Stakes } from '#lib/estimate/newsvendor.ts'
import { stakesOf } from '#lib/rooms/advice/facts/stakes.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface MenuTaught extends Omit<StationAhead, 'model'> {
  readonly stakes: Readonly<Record<string, Stakes>>
}

interface Worked {
  readonly items: StationDocument['items']
  readonly components: StationDocument['components']
  readonly menu: MenuTaught
}

/** Worked out once for as long as neither the menu nor what the past taught changes. */
const worked = new WeakMap<PastTaught, Worked>()

export const menuTaught = (station: StationDocument, taught: PastTaught): MenuTaught => {
  const { items, components } = station
  const before = worked.get(taught)
  if (before?.items === items && before.components === components) return before.menu
  const none = { profile: [], straying: taught.straying, shares: taught.shares }
  const { knockOn, changing, bases } = stationAhead(station, none, taught.past)
  const stakes = Object.fromEntries(components.map(({ id }) => [id, stakesOf(station, id)]))
  const menu = { knockOn, changing, bases, stakes }
  worked.set(taught, { items, components, menu })
  return menu
}
