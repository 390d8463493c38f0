/** The limits of food and what local code says otherwise, in English. */

import type { LimitGroup } from '#lib/editor/limits/own-limit.ts'
import type { LimitName } from '#lib/safety/limits.ts'
import type { Limit } from '#lib/safety/local-variants.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { counted } from '#lib/words/counted-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const groups: Readonly<Record<LimitGroup, string>> = {
  cooking: 'Cooking',
  reheating: 'Reheating',
  holding: 'Holding',
  cooling: 'Cooling',
  clock: 'Time alone',
  dates: 'Dates',
  receiving: 'Deliveries',
}

const names: Readonly<Record<LimitName, string>> = {
  cookFishOrMeat: 'Fish and whole meat, cooked to',
  cookEggsToOrder: 'Eggs to order, cooked to',
  cookEggsBatch: 'Eggs in a batch, cooked to',
  cookGroundMeat: 'Ground meat, cooked to',
  cookPoultryOrStuffed: 'Poultry and what is stuffed, cooked to',
  cookMicrowave: 'Cooked in a microwave, to',
  cookPlant: 'Plants held hot, cooked to',
  firstHeating: 'Cooked in two goes: first heating',
  reheat: 'Reheated to',
  reheatMicrowave: 'Reheated in a microwave, to',
  reheatCommercialPack: 'From a sealed pack, reheated to',
  reheatWithin: 'Reheated within',
  hotHolding: 'Held hot',
  hotHoldingRoast: 'A whole roast, held hot',
  coldHolding: 'Held cold',
  shellEggAir: 'Air around eggs in the shell',
  coolingFrom: 'Cooling is counted from',
  coolingFirstTo: 'Cooled first to',
  coolingFirstWithin: 'The first part within',
  coolingTo: 'Cooled in all to',
  coolingWithin: 'All of it within',
  coolingFromRoomWithin: 'Cooled from room temperature within',
  timeOnly4h: 'On time alone',
  timeOnlyStartCold: 'Put on the clock cold, at',
  timeOnlyStartHot: 'Put on the clock hot, at',
  timeOnlyStartRoom: 'Put on the clock as it was cut or opened, at',
  timeOnly6h: 'On time alone, cold and read meanwhile',
  timeOnlyWarmest: 'Meanwhile never warmer than',
  dateMark: 'Ready food is kept',
  dateMarkCold: 'For that it is held at',
  dateMarkAfter: 'A date is marked on what is held longer than',
  receivedCold: 'Cold food, as it is delivered',
  receivedByItsLaw: 'Milk, clams and oysters, as they are delivered',
  receivedEggAir: 'Air around eggs in the shell, as they are delivered',
  receivedHot: 'Cooked food that is delivered hot',
  receivedCooledWithin: 'What came warmer by its own law, cooled within',
}

const withinOf = (ms: number): string => {
  const minutes = ms / 60_000
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${minutes} min`
}

const figure = (limit: Limit, scale: Scale): string => {
  if ('combinations' in limit) return safetyWords.heat(limit, scale)
  if ('bound' in limit) return safetyWords.limit(limit, scale)
  if ('days' in limit) return `${counted(limit.days, 'day', 'days')}, the first day counted`
  return withinOf(limit.withinMs)
}

export const menuLimitsEn = {
  decides: safetyWords.decides,
  parts: 'Parts of food’s limits',
  groups,
  names,
  model: (limit: Limit, scale: Scale) =>
    `Model code: ${figure(limit, scale)}. ${safetyWords.paragraph(limit)}`,
  differs: 'Local code differs',
  differsIn: (name: string) => `Local code differs: ${name}`,
  own: (name: string) => `What local code says: ${name}`,
  takeOwn: 'Back to the model code',
  degrees: { 'at-least': 'or above', 'at-most': 'or below' },
  temperature: 'Temperature',
  within: 'Minutes at most',
  days: 'Days, the first day counted',
  seconds: 'Held for, seconds (0 is at once)',
  stand: 'Then stands covered, seconds',
  addWay: 'Or at another temperature',
  takeWay: 'Take this way out',
  document: 'Which code or letter says so',
  paragraph: 'Its paragraph',
  known: 'How it is known',
  knownWays: { seen: 'read there', memory: 'from memory' },
  beside: {
    looser: 'Asks less than the model code: it takes being read in the local code itself.',
    stricter: 'Asks more than the model code.',
    same: 'Asks what the model code asks.',
  },
  count: (own: number) =>
    own === 0
      ? 'No limit differs: the model code’s hold.'
      : `${counted(own, 'limit differs', 'limits differ')} from the model code.`,
} as const
