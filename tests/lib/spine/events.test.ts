import { describe, expect, it } from 'vitest'
import type { Recorded, ServiceEvent } from '#lib/service/events/event.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { hashOf, stateHash } from '#lib/service/state-hash.ts'
import { findTicket } from '#lib/service/tickets.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { cooledBefore, fahrenheit, read } from '#tests/support/food.ts'
import { coldRice } from '#tests/support/larder.ts'
import { planStories } from '#tests/support/plans.ts'
import { prepStories } from '#tests/support/prep-stories.ts'
import {
  at,
  backupReady,
  changePan,
  choose,
  foodOf,
  type Given,
  given,
  happening,
  NOTHING,
  needs,
  OPENED_AT,
  onward,
  openedService,
  ready,
  send,
  type Told,
} from '#tests/support/service.ts'

const of1A = (type: 'start' | 'finish' | 'handOver' | 'cancel' | 'remake'): Given => ({
  type,
  ...at('1A'),
})
const sent = given(send(choose('garden-chicken')))
const making = onward(sent, of1A('start'))
const made = onward(making, of1A('finish'))
const jumped: ServiceEvent = { type: 'clockJumped', byMs: 90_000 }

const soy = needs({ code: 'soy', handling: 'leave-out', reason: null })
const soyOut = choose('harbor-tuna', { slaw: 'no' }, soy)
const chickenWithoutSoy = choose('garden-chicken', { slaw: 'no' }, soy)

const keepRice: Given = { type: 'keep', component: 'rice', portions: 4, for: ['harbor-tuna'] }
const advised = happening(
  given(),
  [
    {
      type: 'adviceTold',
      key: 'measure rice',
      kind: 'measure',
      saves: 50,
      reason: { why: 'measure', component: 'rice', chance: 0.5, left: 9, sd: 3, lookedAt: 0 },
    },
  ],
  null,
)

const newBatch: Given = { type: 'startBatch', batch: 'b1', component: 'rice', loads: 1 }
const heated = {
  reading: { ...fahrenheit(166), heldSeconds: 15 },
  initials: 'KT',
}
const cookedBatch: Given = { type: 'recordCooking', batch: 'b1', ...heated }
const finishedBatch: Given = { type: 'finishBatch', batch: 'b1', amount: 900_000 }
const cooling: Given = {
  type: 'recordCooling',
  batch: 'b1',
  ...read(150),
  presentUntil: OPENED_AT + 8 * 3_600_000,
}
const timeClock: Given = {
  type: 'startTimeClock',
  what: 'pan',
  id: 'pan-tuna',
  leftAt: OPENED_AT,
  from: 'cold',
  rule: '4h',
  ...read(38, { at: OPENED_AT }),
}
const outOfLimits = given({ type: 'readTemperature', id: 'pan-rice', ...read(120) })

/** As on a shelf that the document calls hot: the events are of any station. */
const onShelf = happening(
  given(),
  [
    {
      type: 'shelfRead',
      reading: {
        temperature: { tenths: 1200, scale: 'F' },
        at: OPENED_AT,
        probe: 'probe 1',
        where: 'middle-stirred',
        initialled: true,
      },
      inLimits: false,
    },
  ],
  null,
)

const handedOut = onward(made, of1A('handOver'), {
  type: 'readTemperature',
  id: 'pan-chicken',
  ...read(120),
})

/** Nothing of a larder is known to the commands of a story. */
const fromLarder = happening(
  given(),
  [{ type: 'foodTaken', batch: 'b9', lot: 'lot-a', amount: 900_000, food: coldRice() }],
  null,
)

/** A story in which each event happens. */
const stories: Readonly<Record<ServiceEvent['type'], Told>> = {
  serviceOpened: openedService(),
  ...planStories,
  ...prepStories,
  panLoaded: given(),
  panChanged: given(changePan('pan-pita', 30)),
  countCorrected: given({ type: 'correct', pan: 'pan-pita', amount: 3 }),
  ticketSent: sent,
  buildChanged: onward(sent, {
    type: 'change',
    readBack: true,
    ...at('1A'),
    to: choose('harbor-tuna'),
  }),
  buildCancelled: onward(sent, of1A('cancel')),
  buildStopped: onward(making, of1A('cancel')),
  stopAcknowledged: onward(making, of1A('cancel'), {
    type: 'acknowledge',
    ...at('1A'),
    foodInIt: true,
  }),
  buildStarted: making,
  buildFinished: made,
  finishTakenBack: onward(made, { type: 'takeBack', ...at('1A'), made: false }),
  buildRemade: onward(made, of1A('remake')),
  buildHandedOver: onward(made, of1A('handOver')),
  ticketPaid: onward(sent, { type: 'pay', ticket: 1, paid: true }),
  sellingStopped: given({ type: 'stopSelling', what: 'item', id: 'harbor-tuna' }),
  sellingResumed: given(
    { type: 'stopSelling', what: 'item', id: 'harbor-tuna' },
    { type: 'resumeSelling', what: 'item', id: 'harbor-tuna' },
  ),
  inChargeSignedOn: given({ type: 'signOn' }),
  inChargeSignedOff: given(
    { type: 'signOn' },
    { type: 'signOff' },
    { type: 'correct', pan: 'pan-pita', amount: 7 },
  ),
  cautionAccepted: given(
    { type: 'signOn' },
    { type: 'acceptCaution', build: soyOut, reason: 'supplier-asked' },
    send({ ...soyOut, caution: 1 }),
  ),
  needTold: onward(sent, {
    type: 'tellNeed',
    ...at('1A'),
    asked: 'needs',
    needs: [{ code: 'milk', handling: 'leave-out', reason: null }],
  }),
  holdLifted: ready(
    send(
      choose(
        'garden-chicken',
        { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
        needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }),
      ),
    ),
    { type: 'setBackup', component: 'slaw', ready: false },
    backupReady('slaw'),
  ),
  buildHeld: given(send(chickenWithoutSoy), {
    type: 'notSameProduct',
    ingredient: 'chicken-breast',
  }),
  labelChanged: given({ type: 'notSameProduct', ingredient: 'pita' }),
  contactsChanged: happening(
    given(),
    [{ type: 'contactsChanged', contacts: null, revision: 2 }],
    null,
  ),
  panSoiled: given({ type: 'soilPan', pan: 'pan-pita', by: 'cheddar' }),
  backupSet: given(backupReady('rice')),
  batchStarted: given(newBatch),
  batchCooked: given(newBatch, cookedBatch),
  batchFinished: given(newBatch, cookedBatch, finishedBatch),
  foodTaken: fromLarder,
  coolingRead: given(newBatch, cookedBatch, finishedBatch, cooling),
  coolingMissed: happening(
    given(newBatch, cookedBatch, finishedBatch, cooling),
    [{ type: 'coolingMissed', batch: 'b1', stage: 1 }],
    null,
  ),
  batchReheated: given(...cooledBefore('b1', 'rice'), {
    type: 'recordReheating',
    batch: 'b1',
    place: 'range',
    startedAt: OPENED_AT,
    ...heated,
  }),
  timeClockStarted: given(timeClock),
  panToppedUp: given(
    { type: 'correct', pan: 'pan-tuna', amount: 200_000 },
    { type: 'topUp', pan: 'pan-tuna', amount: 100_000, ...foodOf('tuna') },
  ),
  temperatureRead: given({ type: 'readTemperature', id: 'pan-rice', ...read(150) }),
  readingMissed: happening(given(), [{ type: 'readingMissed', what: 'pan', id: 'pan-rice' }], null),
  takenOffSale: outOfLimits,
  offSaleResolved: onward(outOfLimits, {
    type: 'resolveOffSale',
    what: 'pan',
    id: 'pan-rice',
    way: 'time-only',
  }),
  shelfRead: onShelf,
  shelfReadingMissed: happening(onShelf, [{ type: 'shelfReadingMissed' }], null),
  shelfResolved: happening(onShelf, [{ type: 'shelfResolved', way: 'discard' }], null),
  sanitizerRead: given({
    type: 'readSanitizer',
    mgPerL: 50,
    water: { tenths: 720, scale: 'F' },
    ph: null,
    initials: 'KT',
  }),
  throwOutPassed: happening(
    given(timeClock),
    [{ type: 'throwOutPassed', what: 'pan', id: 'pan-tuna', because: 'time' }],
    null,
  ),
  discardSignedOff: given({
    type: 'throwOut',
    what: 'pan',
    id: 'pan-tuna',
    reason: 'quality',
    initials: 'KT',
  }),
  foodEnded: given({
    type: 'endFood',
    what: 'pan',
    id: 'pan-slaw',
    end: 'cold',
    how: 'eye',
    initials: 'KT',
  }),
  handedOverFound: handedOut,
  handedOverAnswered: onward(handedOut, {
    type: 'answerHandedOver',
    what: 'pan',
    id: 'pan-chicken',
    answer: 'told',
    seen: 1,
    initials: 'KT',
  }),
  daySet: given({ type: 'setDay', guestsExpected: 90 }),
  wasteRecorded: given({ type: 'waste', pan: 'pan-pita', amount: 2, reason: 'dropped' }),
  portionsKept: given(keepRice),
  keepEnded: given(keepRice, { type: 'endKeep', component: 'rice' }, send(choose('harbor-tuna'))),
  wantedGone: given({ type: 'wantedGone', component: 'slaw' }),
  scoopMissed: given({ type: 'missScoop', component: 'rice' }),
  scoopFound: given(
    { type: 'missScoop', component: 'beans' },
    { type: 'scoopBack', component: 'beans' },
  ),
  adviceTold: advised,
  adviceAnswered: onward(advised, {
    type: 'answerAdvice',
    key: 'measure rice',
    answer: 'put-off',
  }),
  adviceLapsed: happening(advised, [{ type: 'adviceLapsed', key: 'measure rice' }], null),
  buildWaits: onward(
    sent,
    { type: 'correct', pan: 'pan-chicken', amount: 0 },
    { type: 'wait', ...at('1A') },
  ),
  clockJumped: happening(given(), [jumped], null),
  clockConfirmed: onward(happening(given(), [jumped], null), { type: 'confirmClock' }),
  serviceClosed: given({ type: 'close' }),
}

const replay = (events: readonly Recorded[]): ServiceState => events.reduce(evolve, NOT_OPENED)

describe('what happened', () => {
  it.each(Object.entries(stories))(
    '[S55] with %s in it gives the same state and hash when it is read back',
    (type, told) => {
      expect(
        told.events.at(-1)?.type === type || told.events.some((event) => event.type === type),
      ).toBe(true)
      const readBack = replay(JSON.parse(JSON.stringify(told.events)))
      expect(readBack).toEqual(told.state)
      expect(stateHash(readBack)).toBe(stateHash(told.state))
    },
  )

  it.each(Object.entries(stories))(
    '[S56] with %s in it leaves a state that is plain JSON',
    (_, { state }) => {
      expect(JSON.parse(JSON.stringify(state))).toEqual(state)
    },
  )

  it('[S57] is folded only where it can have happened', () => {
    const last = (told: Told): Recorded => {
      const event = told.events.at(-1)
      if (!event) throw new Error('nothing happened')
      return event
    }
    expect(() => evolve(NOT_OPENED, last(given()))).toThrow('before the service opened')
    expect(() => evolve(given().state, last(openedService()))).toThrow('opened once')
    expect(() => evolve(openedService().state, last(making))).toThrow('no build 1A')
    expect(() => happening(sent, [{ type: 'buildStarted', ...at('1B') }])).toThrow('no build 1B')
    expect(() => happening(given(), [{ type: 'panLoaded', pan: 'pan-kale', amount: 1 }])).toThrow(
      'no pan pan-kale',
    )
    expect(() => happening(given(), [{ type: 'ticketPaid', ticket: 1, paid: true }])).toThrow(
      'no ticket 1',
    )
  })

  it('is stamped on the state', () => {
    expect(making.state.at).toBe(making.events.at(-1)?.at)
    expect(NOTHING.state.at).toBe(0)
  })
})

describe('the hash of a state', () => {
  it('[S58] does not depend on the order in which it was written, and tells any difference', () => {
    expect(hashOf({ a: 1, b: [1, { c: 2, d: 3 }] })).toBe(hashOf({ b: [1, { d: 3, c: 2 }], a: 1 }))
    expect(hashOf({ a: [1, 2] })).not.toBe(hashOf({ a: [2, 1] }))
    // After a confirmed clock all is as after resumed selling, two events later in both.
    const { clockConfirmed, ...others } = stories
    const hashes = new Set(Object.values(others).map((told) => stateHash(told.state)))
    expect(hashes.size).toBe(Object.keys(others).length)
    expect(hashes.has(stateHash(clockConfirmed.state))).toBe(true)
  })

  it('[S58] is SHA-256 in hex', () => {
    // FIPS 180-4 example of one block, "abc", as JSON: with its quotation marks.
    expect(hashOf('abc')).toBe('6cc43f858fbb763301637b5af970e2a46b46f461f27e5a0f41e009c59b827b25')
  })
})

describe('a long service', () => {
  const cycle = (number: number): Given[] => [
    send(choose('harbor-tuna', { slaw: 'no', cheddar: 'no' })),
    { type: 'cancel', ticket: number, letter: 'A' },
  ]
  const long = given(...Array.from({ length: 200 }, (_, index) => cycle(index + 1)).flat())

  it('[S59] keeps its past tickets in chunks of 64, so that no copy grows with its length', () => {
    expect(
      Object.entries(long.state.past).map(([chunk, tickets]) => [
        chunk,
        Object.keys(tickets).length,
      ]),
    ).toEqual([
      ['0', 63],
      ['1', 64],
      ['2', 64],
      ['3', 9],
    ])
    expect(long.state.tickets).toEqual({})
    for (const ticket of [1, 63, 64, 128, 200])
      expect(findTicket(long.state, ticket)?.number).toBe(ticket)
    expect(findTicket(long.state, 201)).toBeUndefined()
  })

  it('[S59] copies only what a command changes', () => {
    const next = onward(long, { type: 'pay', ticket: 3, paid: true })
    expect(next.state.past[0]).not.toBe(long.state.past[0])
    for (const chunk of ['1', '2', '3']) expect(next.state.past[chunk]).toBe(long.state.past[chunk])
    expect(next.state.pans).toBe(long.state.pans)
    expect(next.state.accounts).toBe(long.state.accounts)
  })
})
