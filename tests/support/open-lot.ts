import { stampOf } from '#lib/safety/date-marks.ts'
import { read } from '#tests/support/food.ts'
import { coldRice } from '#tests/support/larder.ts'
import { type Given, given, happening, type Told } from '#tests/support/service.ts'

const food = coldRice({
  component: 'slaw',
  stoodOpen: true,
  dateMark: stampOf('2026-11-28', 'UTC'),
})

/** A lot that was open on a line is in the service, and is to be a protected back-up. */
export const onlyOpen: readonly [Told, Given] = [
  happening(given(), [{ type: 'foodTaken', batch: 'b9', lot: 'lot-a', amount: 900_000, food }]),
  { type: 'setBackup', component: 'slaw', ready: true, amount: 300_000, batch: 'b9', ...read(38) },
]
