/** The fields of food that was set aside between services. */
import { each, type Fields, list } from '#lib/access/seen/classed.ts'
import { HEAT_READING, READING, STAMP_OF_DATE } from '#lib/access/seen/food-fields.ts'
import { LABEL, LIMITS } from '#lib/access/seen/station-fields.ts'
import type { LotFood } from '#lib/larder/lot.ts'

export const LOT_FOOD: Fields<LotFood> = {
  component: 'always',
  name: 'always',
  unit: 'always',
  from: { service: 'always', station: 'always', what: 'always', id: 'always' },
  how: 'always',
  kept: 'always',
  cooledFrom: 'always',
  cooling: list(READING),
  cooledAgain: 'always',
  reheated: 'always',
  cooking: list(HEAT_READING),
  readings: list(READING),
  startedAt: 'always',
  finishedAt: 'always',
  dateMark: STAMP_OF_DATE,
  frozen: { on: 'always', daysLeft: 'always', useBy: 'always' },
  soiledBy: list('always'),
  touched: list({ component: 'always', madeOf: list('always') }),
  batches: list('always'),
  stoodOpen: 'always',
  madeOf: list('always'),
  labels: each('always'),
  before: list({ ingredient: 'always', label: LABEL }),
  presentUntil: 'always',
  under: { limits: LIMITS, timeZone: 'always', scale: 'always' },
}
