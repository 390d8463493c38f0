/** The class of every field of every event, by the event's type. */
import { AWAY, each, type Fields, list } from '#lib/access/seen/classed.ts'
import {
  ADVICE_REASON,
  BIAS,
  CLOCK,
  HEAT_READING,
  HELD_FOOD,
  LOADED,
  READING,
  REST,
  RUSH,
  SANITIZER,
  STAMP_OF_DATE,
  UNTIL,
} from '#lib/access/seen/food-fields.ts'
import { ACCEPTED, FINDING, NEED, TAKING } from '#lib/access/seen/order-fields.ts'
import { LABEL, PORTION, STATION } from '#lib/access/seen/station-fields.ts'
import type { ServiceEvent, Stamp } from '#lib/service/events/event.ts'

type EventType = ServiceEvent['type']

/** Of one type of event, all but the type itself. */
export type EventFields<Type extends EventType> = Fields<
  Omit<Extract<ServiceEvent, { readonly type: Type }>, 'type'>
>

export const STAMP: Fields<Stamp> = {
  position: 'always',
  at: 'always',
  command: 'always',
  due: 'always',
  adult: ['adult', AWAY],
}

const BUILD = { ticket: 'always', letter: 'always' } as const
const PLACE = { what: 'always', id: 'always' } as const
const DAY = { guestsExpected: 'always', closesAt: 'always', assemblers: 'always' } as const
const BROUGHT = { brought: list('always') } as const
const MEASURES = list({ id: 'always', count: 'always' } as const)

export const EVENTS: { readonly [Type in EventType]: EventFields<Type> } = {
  serviceOpened: {
    service: 'always',
    kind: 'always',
    revision: 'always',
    station: STATION,
    portions: each(PORTION),
    closesItselfAt: 'always',
    minuteOfDay: 'always',
    knownBias: each(BIAS),
    followsProbes: 'always',
    rushes: list(RUSH),
    ...DAY,
  },
  panLoaded: { pan: 'always', amount: 'always', washed: 'always', ...LOADED },
  panChanged: { pan: 'always', takenAway: 'always', amount: 'always', ...LOADED },
  countCorrected: {
    pan: 'always',
    from: 'always',
    to: 'always',
    kind: 'always',
    read: 'always',
    rest: REST,
    ends: 'always',
    was: 'always',
  },
  ticketSent: {
    ticket: 'always',
    named: ['name', false],
    paid: ['money', false],
    builds: list(ACCEPTED),
  },
  buildChanged: { ...BUILD, to: ACCEPTED },
  buildCancelled: BUILD,
  buildStopped: { ...BUILD, reason: 'needs', to: ACCEPTED },
  stopAcknowledged: {
    ...BUILD,
    foodInIt: 'always',
    wasted: list(TAKING),
    uncounted: each('always'),
    inIt: list('always'),
    mixedUpWith: list('always'),
  },
  buildStarted: { ...BUILD, behind: list('always'), screen: 'text', tookOver: 'always' },
  buildFinished: { ...BUILD, took: list(TAKING), uncounted: each('always'), until: UNTIL },
  finishTakenBack: BUILD,
  buildRemade: { ...BUILD, from: 'always', mixedUpWith: list('always') },
  buildHandedOver: BUILD,
  ticketPaid: { ticket: 'always', paid: ['money', false], writtenOff: ['money', AWAY] },
  sellingStopped: PLACE,
  sellingResumed: PLACE,
  inChargeSignedOn: {},
  inChargeSignedOff: {},
  cautionAccepted: {
    caution: 'needs',
    item: 'always',
    food: 'always',
    needs: list({ code: 'needs', handling: 'needs' }),
    findings: list(FINDING),
    reason: 'needs',
  },
  needTold: { ...BUILD, asked: 'needs', needs: list(NEED) },
  buildHeld: { ...BUILD, reason: 'needs', pan: 'always', dropsChange: 'always' },
  holdLifted: BUILD,
  labelChanged: {
    ingredient: 'always',
    label: LABEL,
    pans: list('always'),
    revision: 'always',
  },
  panSoiled: { pan: 'always', by: 'always' },
  backupSet: {
    component: 'always',
    ready: 'always',
    backup: 'always',
    amount: 'always',
    takenAway: 'always',
    soiledBy: 'always',
    ...LOADED,
    ...BROUGHT,
  },
  clockJumped: { byMs: 'always' },
  clockConfirmed: {},
  daySet: DAY,
  wasteRecorded: {
    component: 'always',
    amount: 'always',
    reason: 'always',
    took: list(TAKING),
    uncounted: each('always'),
  },
  portionsKept: { component: 'always', portions: 'always', for: list('needs') },
  keepEnded: { component: 'always' },
  wantedGone: { item: 'always', components: list('always') },
  scoopMissed: {
    component: 'always',
    measures: MEASURES,
    portion: PORTION,
    lentBy: list('always'),
  },
  scoopFound: { component: 'always', portion: PORTION, washed: 'always' },
  adviceTold: { key: 'always', kind: 'always', saves: ['cost', 0], reason: ADVICE_REASON },
  adviceAnswered: { key: 'always', answer: 'always' },
  adviceLapsed: { key: 'always' },
  buildWaits: { build: 'always', component: 'always' },
  batchStarted: { batch: 'always', component: 'always', loads: 'always', startedAt: 'always' },
  batchCooked: { batch: 'always', reading: HEAT_READING, met: 'always' },
  batchFinished: {
    batch: 'always',
    finishedAt: 'always',
    amount: 'always',
    dateMark: STAMP_OF_DATE,
    loads: 'always',
  },
  coolingRead: { batch: 'always', reading: READING, presentUntil: 'always' },
  coolingMissed: { batch: 'always', stage: 'always' },
  batchReheated: {
    batch: 'always',
    place: 'always',
    startedAt: 'always',
    reading: HEAT_READING,
    ok: 'always',
    why: 'always',
    coolAgain: 'always',
  },
  timeClockStarted: { ...PLACE, from: 'always', clock: CLOCK, reading: READING, ...BROUGHT },
  panToppedUp: {
    pan: 'always',
    amount: 'always',
    batch: 'always',
    from: 'always',
    food: HELD_FOOD,
    reading: READING,
    bought: 'always',
  },
  temperatureRead: {
    ...PLACE,
    reading: READING,
    inLimits: 'always',
    lifts: 'always',
    ...BROUGHT,
  },
  readingMissed: PLACE,
  takenOffSale: { ...PLACE, why: 'always', lastGoodAt: 'always' },
  offSaleResolved: {
    ...PLACE,
    way: 'always',
    reading: HEAT_READING,
    clock: CLOCK,
    madeUntil: 'always',
    presentUntil: 'always',
    ...BROUGHT,
  },
  shelfRead: { reading: READING, inLimits: 'always' },
  shelfReadingMissed: { lastGoodAt: 'always' },
  shelfResolved: { way: 'always' },
  sanitizerRead: { ...SANITIZER, problem: 'always' },
  throwOutPassed: { ...PLACE, because: 'always', keepsChange: 'always' },
  discardSignedOff: { ...PLACE, amount: 'always', reason: 'always' },
  handedOverFound: {
    ...PLACE,
    because: 'always',
    since: 'always',
    builds: list({ build: 'always', at: 'always' }),
  },
  handedOverAnswered: { ...PLACE, answer: 'always', builds: list('always') },
  serviceClosed: { why: 'always' },
}
