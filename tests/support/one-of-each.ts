/** A command of each type: before the opening and after the close none is taken, whatever it says. */

import { usualChoice } from '#lib/service/events/build-choice.ts'
import type { CommandType } from '#lib/spine/registry.ts'
import { labelOf } from '#lib/station/label.ts'
import { fahrenheit } from '#tests/support/food.ts'
import type { Given } from '#tests/support/service.ts'
import { items, stationWithSpares } from '#tests/support/spare-station.ts'

const [item] = items
const [ingredient] = stationWithSpares.ingredients
if (!item || !ingredient) throw new Error('the station sells nothing')
const label = labelOf(ingredient)

const at = { ticket: 1, letter: 'A' }
const reading = fahrenheit(38)
const initials = 'KT'
const to = usualChoice(item)

export const ONE_OF_EACH: Readonly<Record<CommandType, Given>> = {
  plan: {
    type: 'plan',
    station: stationWithSpares.id,
    kind: 'real',
    on: '2026-11-27',
    doorsOpen: '11:00',
    doorsClose: '13:00',
  },
  dropPlan: { type: 'dropPlan' },
  planPrep: { type: 'planPrep', foods: [{ component: 'slaw', loads: 1, portions: 20 }] },
  tickTask: { type: 'tickTask', task: 'make.slaw', initials: 'KT' },
  takeBackTick: { type: 'takeBackTick', task: 'make.slaw' },
  passTask: { type: 'passTask', task: 'make.slaw', far: 2, where: 'table', initials: 'KT' },
  open: { type: 'open', station: stationWithSpares.id, kind: 'real' },
  startBatch: { type: 'startBatch', batch: 'opening-rice', component: 'rice', loads: 1 },
  recordCooking: { type: 'recordCooking', batch: 'b1', reading, initials },
  finishBatch: { type: 'finishBatch', batch: 'b1', amount: 1 },
  takeFromLarder: { type: 'takeFromLarder', lot: 'lot-a', amount: 1, initials },
  recordCooling: { type: 'recordCooling', batch: 'b1', reading, initials },
  recordReheating: {
    type: 'recordReheating',
    batch: 'b1',
    place: 'range',
    startedAt: 0,
    reading,
    initials,
  },
  startTimeClock: {
    type: 'startTimeClock',
    what: 'pan',
    id: 'pan-slaw',
    leftAt: 0,
    from: 'cold',
    rule: '4h',
    reading,
    initials,
  },
  load: { type: 'load', pan: 'pan-pita', amount: 1 },
  changePan: { type: 'changePan', pan: 'pan-pita', amount: 1 },
  topUp: { type: 'topUp', pan: 'pan-pita', amount: 1 },
  correct: { type: 'correct', pan: 'pan-pita', amount: 1 },
  send: { type: 'send', builds: [to], readBack: true },
  change: { type: 'change', ...at, to, readBack: true },
  cancel: { type: 'cancel', ...at },
  acknowledge: { type: 'acknowledge', ...at, foodInIt: true },
  start: { type: 'start', ...at },
  finish: { type: 'finish', ...at },
  takeBack: { type: 'takeBack', ...at, made: true },
  remake: { type: 'remake', ...at },
  remakeMixedUp: { type: 'remakeMixedUp', builds: [at, { ...at, letter: 'B' }] },
  handOver: { type: 'handOver', ...at },
  pay: { type: 'pay', ticket: 1, paid: true },
  stopSelling: { type: 'stopSelling', what: 'item', id: item.id },
  resumeSelling: { type: 'resumeSelling', what: 'item', id: item.id },
  signOn: { type: 'signOn' },
  signOff: { type: 'signOff' },
  acceptCaution: { type: 'acceptCaution', build: to, reason: 'guest-accepts' },
  tellNeed: { type: 'tellNeed', ...at, asked: 'not-sure', needs: [] },
  changeLabel: { type: 'changeLabel', ingredient: ingredient.id, label },
  notSameProduct: { type: 'notSameProduct', ingredient: ingredient.id },
  soilPan: { type: 'soilPan', pan: 'pan-slaw', by: 'cheddar' },
  setBackup: { type: 'setBackup', component: 'slaw', ready: false },
  readTemperature: { type: 'readTemperature', id: 'pan-slaw', reading, initials },
  readShelf: { type: 'readShelf', reading, initials },
  readSanitizer: {
    type: 'readSanitizer',
    mgPerL: 100,
    water: { tenths: 750, scale: 'F' },
    ph: null,
    initials,
  },
  resolveShelf: { type: 'resolveShelf', way: 'discard' },
  resolveOffSale: { type: 'resolveOffSale', what: 'pan', id: 'pan-slaw', way: 'discard' },
  throwOut: { type: 'throwOut', what: 'pan', id: 'pan-slaw', reason: 'quality', initials },
  answerHandedOver: {
    type: 'answerHandedOver',
    what: 'pan',
    id: 'pan-slaw',
    answer: 'told',
    seen: 1,
    initials,
  },
  setDay: { type: 'setDay', assemblers: 1 },
  waste: { type: 'waste', pan: 'pan-pita', amount: 1, reason: 'dropped' },
  keep: { type: 'keep', component: 'rice', portions: 1, for: [item.id] },
  endKeep: { type: 'endKeep', component: 'rice' },
  wantedGone: { type: 'wantedGone', item: item.id },
  missScoop: { type: 'missScoop', component: 'rice' },
  scoopBack: { type: 'scoopBack', component: 'rice' },
  answerAdvice: { type: 'answerAdvice', key: 'sold-out/rice', answer: 'done' },
  wait: { type: 'wait', ...at },
  confirmClock: { type: 'confirmClock' },
  endFood: {
    type: 'endFood',
    what: 'pan',
    id: 'pan-slaw',
    end: 'cold',
    how: 'not-checked',
    initials,
  },
  throwOutHot: { type: 'throwOutHot', initials },
  close: { type: 'close' },
}

/** Of things that there aren't: refused whenever they are said. */
export const NONSENSE: readonly Given[] = [
  { type: 'stopSelling', what: 'item', id: 'kelp-roll' },
  { type: 'notSameProduct', ingredient: 'kelp' },
  { type: 'correct', pan: 'pan-nowhere', amount: 1 },
  { type: 'scoopBack', component: 'kelp' },
  { type: 'recordCooking', batch: 'b99', reading, initials },
  { type: 'finishBatch', batch: 'b99', amount: 1 },
  { type: 'startBatch', component: 'kelp', loads: 1 },
  { type: 'keep', component: 'kelp', portions: 1, for: [item.id] },
  { type: 'setDay', closesAt: '00:01' },
]
