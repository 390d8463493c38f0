import { describe, expect, it } from 'vitest'
import type { Circumstances, Decision } from '#lib/service/commands/decision.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { endsRefused } from '#tests/support/ends-refused.ts'
import { fahrenheit, read } from '#tests/support/food.ts'
import { onlyOpen } from '#tests/support/open-lot.ts'
import type { OfPlans } from '#tests/support/prep-stories.ts'
import { type ToldCode, UNLISTED } from '#tests/support/refusal-code.ts'
import {
  at,
  changePan,
  choose,
  codeOf,
  demoStation,
  type Given,
  given,
  happening,
  NOTHING,
  needs,
  OPENED_AT,
  ofPortions,
  onward,
  openedService,
  ready,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'
import { inIt, stopped } from '#tests/support/stopped.ts'

const sent = given(send(choose('garden-chicken')))
const allergy = (code: 'milk' | 'peanut' | 'sesame' | 'soy') =>
  needs({ code, handling: 'keep-apart', reason: 'allergy' })
const on1A = (type: 'start' | 'finish' | 'cancel'): Given => ({ type, ...at('1A') })
const WITHOUT_MILK = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' } as const
const milkApart = choose('bean-and-pepper', WITHOUT_MILK, allergy('milk'))
const slawAndMilk = choose('garden-chicken', WITHOUT_MILK, allergy('milk'))
const soyOut = choose(
  'harbor-tuna',
  { slaw: 'no' },
  needs({ code: 'soy', handling: 'leave-out', reason: null }),
)
const signedOn = given({ type: 'signOn' })
const held = ready(send(choose('harbor-tuna')), {
  type: 'tellNeed',
  ...at('1A'),
  asked: 'needs',
  needs: [{ code: 'egg', handling: 'keep-apart', reason: null }],
})
const accept = (build: BuildChoice): Given => ({
  type: 'acceptCaution',
  build,
  reason: 'guest-accepts',
})
const soiled = given(
  { type: 'soilPan', pan: 'pan-almonds', by: 'cheddar' },
  { type: 'correct', pan: 'pan-almonds', amount: 0 },
)
/** A service whose station says otherwise. */
const atStation = (over: Partial<StationDocument>, ...commands: Given[]): Told => {
  const told = ready(...commands)
  return { ...told, state: { ...told.state, station: { ...demoStation, ...over } } }
}

const SPARE = {
  id: 'spare-20',
  name: 'spare #20',
  tool: { tool: 'scoop', number: 20 },
  usualFor: null,
} as const

/** The line with pans that nobody weighed empty. */
const withoutTare = ({ line }: StationDocument): StationDocument['line'] => ({
  wells: line.wells.map((well) => ({
    ...well,
    pans: well.pans.map((pan) => ({ ...pan, tareMg: null })),
  })),
})

const timeClock = {
  leftAt: OPENED_AT,
  from: 'cold',
  rule: '4h',
  ...read(38, { at: OPENED_AT }),
} as const

/** Over four hours after it left the cold, but for a minute. */
const LEFT_AT = OPENED_AT - 4 * 3_600_000 + 6 * 60_000
const nearlyOver = { ...timeClock, leftAt: LEFT_AT, ...read(38, { at: LEFT_AT }) }

const handedOver = onward(given(send(choose('harbor-tuna'))), on1A('start'), on1A('finish'), {
  type: 'handOver',
  ...at('1A'),
})
const gone = { type: 'throwOut', what: 'pan', initials: 'KT' } as const
const tunaOut: Given = { type: 'readTemperature', id: 'pan-tuna', ...read(50) }

/** Of the rail; of who gives it, told with paying; of plans and their preparation. */
type Elsewhere = 'id-used-for-something-else' | 'could-not-decide' | 'not-lead' | OfPlans

/** A command that is refused with each code, and where. */
const refused: Readonly<Record<Exclude<ToldCode, Elsewhere>, readonly [Told, Given]>> = {
  'service-not-open': [NOTHING, { type: 'close' }],
  'service-already-open': [given(), { type: 'open', station: 'alder-hall', kind: 'demo' }],
  'service-closed': [given({ type: 'close' }), { type: 'close' }],
  'unknown station': [NOTHING, { type: 'open', station: 'birch-hall', kind: 'demo' }],
  'unknown item': [given(), { type: 'stopSelling', what: 'item', id: 'kelp-roll' }],
  'unknown component': [given(), send(choose('harbor-tuna', { kelp: 'in' }))],
  'unknown pan': [given(), { type: 'load', pan: 'pan-kelp', amount: 1 }],
  'unknown ticket': [given(), on1A('start')],
  'unknown build': [sent, { type: 'start', ...at('1B') }],
  'not-of-this-item': [given(), send(choose('harbor-tuna', { chicken: 'in' }))],
  'base-missing': [given(), send(choose('harbor-tuna', {}, { base: null }))],
  'no-cups': [given(), send(choose('harbor-tuna', { tuna: 'side' }))],
  'cannot-leave-out': [given(), send(choose('harbor-tuna', { tuna: 'no' }))],
  'nothing-in-it': [given(), send()],
  'too-many-builds': [given(), send(...Array.from({ length: 9 }, () => choose('harbor-tuna')))],
  'absurd-portions': [given(), send(choose('harbor-tuna', { slaw: 99 }))],
  'absurd-amount': [given(), { type: 'correct', pan: 'pan-pita', amount: 501 }],
  'sold-out': [given({ type: 'correct', pan: 'pan-tuna', amount: 0 }), send(choose('harbor-tuna'))],
  lacks: [openedService(), send(choose('harbor-tuna'))],
  'not-selling': [
    given({ type: 'stopSelling', what: 'component', id: 'slaw' }),
    send(choose('harbor-tuna')),
  ],
  'not-asked': [given(), send(choose('harbor-tuna', {}, { asked: 'needs' }))],
  'not-sure': [given(), send(choose('harbor-tuna', {}, { asked: 'not-sure' }))],
  'need-dropped': [
    ready(send(milkApart)),
    { type: 'change', ...at('1A'), to: choose('bean-and-pepper'), readBack: true },
  ],
  contains: [given(), send(choose('harbor-tuna', {}, allergy('milk')))],
  'may-contain': [
    atStation({ cautions: 'block' }),
    send(choose('harbor-tuna', { slaw: 'no' }, allergy('sesame'))),
  ],
  'not-listed': [atStation(UNLISTED), send(choose('harbor-tuna', {}, allergy('peanut')))],
  'unknown-declaration': [given(), send(choose('harbor-tuna', { slaw: 'no' }, allergy('soy')))],
  'unknown need': [
    given(),
    send(
      choose('harbor-tuna', {}, needs({ code: 'mustard', handling: 'leave-out', reason: null })),
    ),
  ],
  'unknown ingredient': [given(), { type: 'notSameProduct', ingredient: 'kelp' }],
  'unknown protected-backup': [given(), { type: 'setBackup', component: 'pita', ready: true }],
  'cannot-take-lot': [given(), { type: 'takeFromLarder', lot: 'lot-a', amount: 1 }],
  'stood-open': onlyOpen,
  'contact-not-known': [atStation({ contacts: null }), send(milkApart)],
  'shared-contact': [
    onward(atStation({ cautions: 'block' }), {
      type: 'setBackup',
      component: 'slaw',
      ready: false,
    }),
    send(slawAndMilk),
  ],
  caution: [given(), send(slawAndMilk)],
  'unknown caution': [given(), send({ ...slawAndMilk, caution: 7 })],
  'nothing-to-accept': [ready(), accept(milkApart)],
  'no-one-in-charge': [onward(ready(), { type: 'signOff' }), send(milkApart)],
  'not-in-charge': [signedOn, accept(soyOut)],
  'label-contradicts': [
    given(),
    {
      type: 'changeLabel',
      ingredient: 'cheddar',
      label: {
        declarations: { milk: 'contains' },
        traits: [],
        claims: {},
        readOn: '2026-11-25',
        readBy: 'AB',
      },
    },
  ],
  'needs-not-checked': [ready(), send(milkApart)],
  'not-read-back': [given(), { type: 'send', builds: [choose('harbor-tuna')] }],
  'said-changed': [ready(), { type: 'send', builds: [milkApart], readBack: true, said: [['x']] }],
  'not-agreed': [ready(), send({ ...milkApart, agreed: false })],
  'fits-no-more': [
    atStation({ contacts: null }, send(milkApart)),
    { type: 'start', ...at('1A'), read: true },
  ],
  'build-held': [held, on1A('start')],
  'pan-soiled': [soiled, { type: 'load', pan: 'pan-almonds', amount: ofPortions('almonds', 3) }],
  'made-food-is-waste': [
    onward(
      ready(
        send(choose('harbor-tuna')),
        ...(['start', 'finish'] as const).map((type): Given => ({ type, ...at('1A') })),
      ),
      {
        type: 'tellNeed',
        ...at('1A'),
        asked: 'not-sure',
        needs: [],
      },
    ),
    { type: 'acknowledge', ...at('1A'), foodInIt: false },
  ],
  'thrown-out-whole': [stopped.apart, inIt('beans')],
  'not-in-build': [stopped.onTheSide, inIt('tuna')],
  'food-in-it-unclear': [stopped.onTheSide, inIt()],
  'cup-stays-out': [onward(stopped.onTheSide, changePan('pan-yogurt-sauce', 40)), inIt('slaw')],
  'mixed-up-with-nothing': [sent, { type: 'remakeMixedUp', builds: [at('1A')] }],
  'wrong-state': [sent, on1A('finish')],
  'made-elsewhere': [
    onward(sent, { type: 'start', ...at('1A'), screen: 'left' }),
    { type: 'start', ...at('1A'), screen: 'right' },
  ],
  'build-stopped': [onward(sent, on1A('start'), on1A('cancel')), on1A('finish')],
  'nothing-to-acknowledge': [sent, { type: 'acknowledge', ...at('1A'), foodInIt: false }],
  'changed-since': [
    onward(sent, {
      type: 'change',
      readBack: true,
      ...at('1A'),
      to: choose('garden-chicken', { slaw: 'no' }),
    }),
    { type: 'start', ...at('1A'), seen: 0 },
  ],
  'handling-not-read': [ready(send(milkApart)), on1A('start')],
  short: [onward(sent, { type: 'correct', pan: 'pan-slaw', amount: 0 }), on1A('start')],
  'pan-not-empty': [given(), { type: 'load', pan: 'pan-pita', amount: 1 }],
  'say-what-was-put-in': [soiled, { type: 'correct', pan: 'pan-almonds', amount: 1 }],
  'already-so': [given(), { type: 'correct', pan: 'pan-pita', amount: ofPortions('pita', 24) }],
  kept: [
    given(
      { type: 'correct', pan: 'pan-slaw', amount: ofPortions('slaw', 1) },
      { type: 'keep', component: 'slaw', portions: 1, for: ['garden-chicken'] },
    ),
    send(choose('harbor-tuna')),
  ],
  'closes-before-now': [given(), { type: 'setDay', closesAt: '09:00' }],
  'reading-unclear': [given(), { type: 'correct', pan: 'pan-pita' }],
  'no-tare': [
    atStation({ line: withoutTare(demoStation) }),
    { type: 'correct', pan: 'pan-rice', weighedMg: 5_000_000 },
  ],
  'not-by-weight': [given(), { type: 'correct', pan: 'pan-pita', weighedMg: 5_000_000 }],
  'unknown order': [given(), { type: 'keep', component: 'rice', portions: 4, for: ['kelp-roll'] }],
  'no-scoop': [given(), { type: 'missScoop', component: 'pita' }],
  'unknown tool': [
    given(),
    { type: 'missScoop', component: 'rice', measures: [{ id: 'scoop-99', count: 1 }] },
  ],
  'scoop-carries': [
    atStation({ tools: [{ ...SPARE, usualFor: 'tuna' }] }),
    { type: 'missScoop', component: 'chicken', measures: [{ id: SPARE.id, count: 1 }] },
  ],
  'too-many-measures': [
    atStation({ tools: [SPARE] }),
    { type: 'missScoop', component: 'rice', measures: [{ id: SPARE.id, count: 5 }] },
  ],
  'scoop-far-off': [atStation({ tools: [SPARE] }), { type: 'missScoop', component: 'cheddar' }],
  'no-scoop-fits': [atStation({ tools: [] }), { type: 'missScoop', component: 'rice' }],
  'unknown advice': [given(), { type: 'answerAdvice', key: 'measure rice', answer: 'done' }],
  'not-short': [sent, { type: 'wait', ...at('1A') }],
  'unknown batch': [given(), { type: 'finishBatch', batch: 'b7', amount: 1 }],
  'unknown backup': [
    given(),
    { type: 'changePan', pan: 'pan-rice', from: 'back-up-kelp', ...read(150) },
  ],
  'other-component': [
    given(),
    { ...changePan('pan-rice', 100_000), batch: 'opening-beans' } as Given,
  ],
  'not-said-bought': [
    given(),
    { type: 'changePan', pan: 'pan-cheddar', amount: 100_000, ...read(38) },
  ],
  'no-batch': [given(), { type: 'changePan', pan: 'pan-rice', amount: 100_000, ...read(150) }],
  'older-batch-first': [
    given(
      { type: 'startBatch', batch: 'b1', component: 'rice', loads: 1 },
      { type: 'finishBatch', batch: 'b1', amount: 900_000 },
    ),
    { ...changePan('pan-rice', 100_000), batch: 'b1' } as Given,
  ],
  'more-than-batch': [
    given(
      { type: 'startBatch', batch: 'b1', component: 'rice', loads: 1 },
      { type: 'finishBatch', batch: 'b1', amount: 900_000 },
    ),
    { ...changePan('pan-rice', 900_001), batch: 'b1' } as Given,
  ],
  'not-read-here': [given(), { type: 'readShelf', ...read(150) }],
  'nothing-there': [given(), { type: 'changePan', pan: 'pan-rice', from: 'back-up-rice' }],
  'not-initialled': [given(), { type: 'throwOut', what: 'pan', id: 'pan-rice', reason: 'quality' }],
  'reading-lacks': [given(), { type: 'readTemperature', id: 'pan-rice', reading: fahrenheit(150) }],
  'reading-asked': [
    given(),
    {
      type: 'readTemperature',
      id: 'pan-rice',
      reading: { ...fahrenheit(165), scale: 'C' },
      initials: 'KT',
    },
  ],
  'wrong-moment': [
    given(),
    { type: 'startBatch', component: 'rice', loads: 1, startedAt: OPENED_AT * 2 },
  ],
  'wrong-date': [
    given(),
    { ...changePan('pan-slaw', 100_000), ...read(38), preparedOn: '2099-01-01' } as Given,
  ],
  'wrong-amount': [given(), changePan('pan-rice', 6_000_000)],
  'wrong-place': [
    atStation({
      backups: demoStation.backups.map((one) => ({ ...one, size: 'full' as const })),
    }),
    { type: 'changePan', pan: 'pan-slaw', from: 'back-up-slaw', ...read(38) },
  ],
  'cannot-load': [
    given(),
    { ...changePan('pan-rice', 100_000), reading: undefined, initials: undefined } as Given,
  ],
  'cannot-top-up': [
    ready({ type: 'startTimeClock', what: 'pan', id: 'pan-slaw', ...timeClock }),
    { type: 'topUp', pan: 'pan-slaw', from: 'back-up-slaw', ...read(38) },
  ],
  'cannot-start-clock': [
    given(),
    { type: 'startTimeClock', what: 'pan', id: 'pan-tuna', ...timeClock, from: 'room' },
  ],
  'cannot-cool': [given(), { type: 'recordCooling', batch: 'opening-rice', ...read(150) }],
  'cannot-reheat': [
    given(),
    {
      type: 'recordReheating',
      batch: 'opening-rice',
      place: 'oven',
      startedAt: OPENED_AT,
      ...read(166),
    },
  ],
  'way-not-allowed': [
    given(tunaOut),
    { type: 'resolveOffSale', what: 'pan', id: 'pan-tuna', way: 'reheat' },
  ],
  'off-sale': [given(tunaOut), send(choose('harbor-tuna'))],
  'clock-unsure': [happening(sent, [{ type: 'clockJumped', byMs: 90_000 }], null), on1A('start')],
  'past-throw-out-by-then': [
    given({ type: 'startTimeClock', what: 'pan', id: 'pan-tuna', ...nearlyOver }),
    send(choose('harbor-tuna')),
  ],
  'past-throw-out': [
    happening(given(), [{ type: 'throwOutPassed', what: 'pan', id: 'pan-tuna', because: 'time' }]),
    { type: 'readTemperature', id: 'pan-tuna', ...read(38) },
  ],
  'throw-out-first': [given(tunaOut), { type: 'close' }],
  'handed-over-first': [
    onward(handedOver, tunaOut, { ...gone, id: 'pan-tuna', reason: 'out-of-limits' }),
    { type: 'close' },
  ],
  'more-handed-over': [
    onward(handedOver, tunaOut),
    {
      type: 'answerHandedOver',
      what: 'pan',
      id: 'pan-tuna',
      answer: 'nothing',
      seen: 0,
      initials: 'KT',
    },
  ],
  ...endsRefused,
  'builds-open': [sent, { type: 'close' }],
  'guests-to-find': [
    onward(handedOver, { type: 'tellNeed', ...at('1A'), asked: 'not-sure', needs: [] }),
    { type: 'close' },
  ],
}

/** Where they come about by what is around the state. */
const around: Readonly<Partial<Record<string, Partial<Circumstances>>>> = {
  'needs-not-checked': { newestLabels: null },
  'nothing-to-accept': { by: 'in-charge' },
  'way-not-allowed': { by: 'in-charge' },
  'more-handed-over': { by: 'in-charge' },
  'label-contradicts': { by: 'in-charge' },
}

describe('a refusal', () => {
  it.each(Object.entries(refused))(
    '[S60] %s is data with a code, and nothing happens',
    (code, [told, command]) => {
      const decision: Decision = when(told, command, around[code] ?? {})
      expect(codeOf(decision)).toBe(code)
      expect(Object.keys(decision)).toEqual(['refusal'])
      expect(JSON.parse(JSON.stringify(decision))).toEqual(decision)
    },
  )
})
