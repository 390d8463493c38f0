/** The fields of what is read of food, and of what governs it. */
import { each, type Fields, list } from '#lib/access/seen/classed.ts'
import { LABEL, TEMPERATURE } from '#lib/access/seen/station-fields.ts'
import type { AdviceReason, ByWhen } from '#lib/estimate/advice-reason.ts'
import type { HeatReading } from '#lib/safety/cooking.ts'
import type { DateStamp } from '#lib/safety/date-stamp.ts'
import type { RushWindow } from '#lib/safety/holding.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { SanitizerReading } from '#lib/safety/sanitizer.ts'
import type { MadeUntil, TimeClock } from '#lib/safety/time-control.ts'
import type { GoesAlong } from '#lib/service/events/end-event.ts'
import type { HeldFood, LoadedFood, RestToThrowOut } from '#lib/service/events/food-event.ts'
import type { KnownBias } from '#lib/service/events/stock-event.ts'

/** Whether it was initialled counts, since nothing else does; whose initials they are isn't in it. */
export const READING: Fields<Reading> = {
  temperature: TEMPERATURE,
  at: 'always',
  probe: 'text',
  where: 'always',
  initialled: 'always',
  cleaned: 'always',
}

export const HEAT_READING: Fields<HeatReading> = {
  ...READING,
  heldSeconds: 'always',
  stoodSeconds: 'always',
}

export const SANITIZER: Fields<SanitizerReading> = {
  kind: 'always',
  mgPerL: 'always',
  water: TEMPERATURE,
  ph: 'always',
}

export const CLOCK: Fields<TimeClock> = {
  rule: 'always',
  startedAt: 'always',
  throwOutAt: 'always',
}

export const STAMP_OF_DATE: Fields<DateStamp> = {
  lastDay: 'always',
  endsAt: 'always',
  useBy: 'always',
  thawedOn: 'always',
}

export const HELD_FOOD: Fields<HeldFood> = {
  heldBy: 'always',
  clock: CLOCK,
  dateMark: STAMP_OF_DATE,
  finishedAt: 'always',
  guarded: 'always',
  dayEndsAt: 'always',
}

export const GOES_ALONG: Fields<GoesAlong> = {
  unit: 'always',
  heldBy: 'always',
  dateMark: STAMP_OF_DATE,
  frozen: { on: 'always', daysLeft: 'always', useBy: 'always' },
  finishedAt: 'always',
  batches: list({ batch: 'always', startedAt: 'always', finishedAt: 'always' }),
  cooking: list(HEAT_READING),
  cooling: list(READING),
  coolingFrom: 'always',
  presentUntil: 'always',
  cooledAgain: 'always',
  reheated: 'always',
  soiledBy: list('always'),
  touched: list({ component: 'always', madeOf: list('always') }),
  stoodOpen: 'always',
  madeOf: list('always'),
  labels: each('always'),
  before: list({ ingredient: 'always', label: LABEL }),
  reading: READING,
}

export const UNTIL: Fields<MadeUntil> = {
  collectBy: 'always',
  throwOutAt: 'always',
  roomUntil: 'always',
}

export const RUSH: Fields<RushWindow> = { from: 'always', to: 'always' }

export const REST: Fields<RestToThrowOut> = { id: 'always', because: 'always' }

export const LOADED: Fields<LoadedFood> = {
  batch: 'always',
  bought: 'always',
  food: HELD_FOOD,
  reading: READING,
  startsClock: 'always',
  from: 'always',
  weighed: 'always',
  rest: REST,
  leaves: list({ pan: 'always', by: 'always' }),
}

export const BIAS: Fields<KnownBias> = { bias: 'always', sd: 'always' }

export const BY_WHEN: Fields<ByWhen> = { early: 'always', likely: 'always', late: 'always' }

/** Why the lead is told to do something: of pans and batches, in portions and times. */
export const ADVICE_REASON: Fields<AdviceReason> = {
  why: 'always',
  what: 'always',
  of: 'always',
  id: 'always',
  component: 'always',
  dueAt: 'always',
  awayFrom: 'always',
  because: 'always',
  items: list('always'),
  behind: 'always',
  nextAt: 'always',
  loads: 'always',
  portions: 'always',
  chance: 'always',
  by: BY_WHEN,
  readyAt: 'always',
  latestStart: 'always',
  gapIfNow: 'always',
  gapIfLater: 'always',
  leftWith: 'always',
  leftWithout: 'always',
  forItems: list('always'),
  withoutIt: list('always'),
  keep: 'always',
  free: 'always',
  left: 'always',
  sd: 'always',
  lookedAt: 'always',
}
