/** What a crew reads because the rules ask for it: the pans on the line, and what waits behind it. */

import { waitingOf } from '#lib/rooms/food/facts/batch-watch.ts'
import { holdingOf } from '#lib/rooms/food/facts/food-now.ts'
import { allStock, componentIn } from '#lib/service/held-stock.ts'
import { loadFields } from '#lib/spine/opening-commands.ts'
import { componentOf, findComponent } from '#lib/station/find.ts'
import type { Room } from '#tests/simulate/room.ts'

/** Reads the temperature of every pan that asks for it. */
export const readTemperatures = (room: Room, minute: number): void => {
  const state = room.state()
  for (const { what, id } of allStock(state)) {
    const holding = holdingOf(state, what, id, room.instant(minute))
    const component = findComponent(state.station, componentIn(state.station, id) ?? '')
    if (!component || (holding?.state !== 'ask' && holding?.state !== 'missed')) continue
    const { reading, initials } = loadFields(state.station, component, {
      now: room.instant(minute),
    })
    const clean = reading && { ...reading, cleaned: true }
    if (clean) room.must(minute, { type: 'readTemperature', what, id, reading: clean, initials })
  }
}

/** Reads what waits behind the line, before it has been unread for too long. */
export const readWaiting = (room: Room, minute: number): void => {
  const state = room.state()
  for (const [id, batch] of Object.entries(state.batches)) {
    const component = componentOf(state.station, batch.component)
    if (batch.offSale === null && waitingOf(state, id, room.instant(minute))?.state !== 'ask')
      continue
    const { reading, initials } = loadFields(state.station, component, {
      now: room.instant(minute),
    })
    if (reading)
      room.must(minute, { type: 'readTemperature', what: 'batch', id, reading, initials })
  }
}
