/** What a crew reads because the rules ask for it: the pans on the line, and what waits behind it. */
import { componentOf, findComponent } from '#lib/menu/find.ts'
import { holdingOf, leftOfBatch } from '#lib/service/food-now.ts'
import { allStock, componentIn } from '#lib/service/held-stock.ts'
import { loadFields } from '#lib/service/opening-commands.ts'
import type { Room } from '#tests/simulate/room.ts'

/** What waits is read again after so long: more often than the rules ask. */
const READ_AGAIN_MS = 90 * 60_000

/** Reads the temperature of every pan that asks for it. */
export const readTemperatures = (room: Room, minute: number): void => {
  const state = room.state()
  for (const { what, id } of allStock(state)) {
    const holding = holdingOf(state, what, id, room.instant(minute))
    const component = findComponent(state.station, componentIn(state.station, id) ?? '')
    if (!component || (holding?.state !== 'ask' && holding?.state !== 'missed')) continue
    const { reading, initials } = loadFields(state.station, component)
    if (reading) room.must(minute, { type: 'readTemperature', what, id, reading, initials })
  }
}

/** Reads what waits hot behind the line, before it has been unread for too long. */
export const readWaiting = (room: Room, minute: number): void => {
  const { station, batches } = room.state()
  for (const [id, batch] of Object.entries(batches)) {
    const component = componentOf(station, batch.component)
    const newest = batch.cooking.at(-1)?.at ?? Number.POSITIVE_INFINITY
    if (component.held !== 'hot' || leftOfBatch(batch) === 0) continue
    if (room.instant(minute) - newest < READ_AGAIN_MS) continue
    const { reading, initials } = loadFields(station, component)
    if (reading) room.must(minute, { type: 'recordCooking', batch: id, reading, initials })
  }
}
