import type { LarderEvent, LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { EMPTY_LARDER, type LarderState, type LotFood } from '#lib/larder/lot.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import { at, read } from '#tests/support/readings.ts'

/** Rice that was cooked and cooled on 1 October, day 1: its last day is the 7th. */
export const coldRice = (more: Partial<LotFood> = {}): LotFood => ({
  component: 'rice',
  name: 'Rice',
  unit: 'mg',
  from: { service: 'lunch', station: 'line', what: 'batch', id: 'b1' },
  how: 'weighed',
  kept: 'cold',
  cooledFrom: 'cooked',
  cooling: [],
  cooledAgain: false,
  reheated: false,
  cooking: [],
  readings: [read(39, '14:00')],
  startedAt: at('09:00'),
  finishedAt: at('10:00'),
  dateMark: stampOf('2026-10-07', 'UTC'),
  frozen: null,
  soiledBy: [],
  touched: [],
  batches: ['b1'],
  stoodOpen: false,
  madeOf: ['rice'],
  labels: null,
  before: [],
  presentUntil: null,
  under: { limits: {}, timeZone: 'UTC', scale: 'F' },
  ...more,
})

/** Rice that cools since it was read at 140 °F. */
export const coolingRice = (from = '14:00', more: Partial<LotFood> = {}): LotFood =>
  coldRice({ kept: 'cooling', cooling: [read(140, from)], readings: [], ...more })

/** A larder after events, each at a moment of its own. */
export const larderAfter = (
  events: readonly (readonly [at: number, event: LarderEvent])[],
  before: LarderState = EMPTY_LARDER,
): LarderState =>
  events.reduce<LarderState>(
    (state, [moment, event]) =>
      evolveLarder(state, {
        ...event,
        at: moment,
        position: state.position + 1,
        command: null,
      } as LarderRecorded),
    before,
  )

export const setAside = (lot: string, food: LotFood, amount = 1_000_000): LarderEvent => ({
  type: 'lotSetAside',
  lot,
  amount,
  food,
})
