import { describe, expect, it } from 'vitest'
import { ROLES } from '#lib/service/roles.ts'
import { COMMAND_TYPES, type CommandType, MAY, mayDo } from '#lib/spine/registry.ts'
import { samplesFor } from '#lib/spine/samples/samples.ts'
import { cooledBefore, read, readAll } from '#tests/support/food.ts'
import {
  at,
  choose,
  codeOf,
  type Given,
  given,
  happening,
  NOTHING,
  needs,
  onward,
  ready,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const of = (name: string, ...types: ('start' | 'finish' | 'handOver' | 'cancel')[]): Given[] =>
  types.map((type) => ({ type, ...at(name) }))

const samples = ({ state }: Told, role: (typeof ROLES)[number] = 'in-charge') =>
  samplesFor(state, role, 'alder-hall')
const names = (told: Told, role: (typeof ROLES)[number] = 'in-charge') =>
  Object.keys(samples(told, role)).sort()

/** What has a date isn't sold while the clock is in doubt. */
const NO_CHEDDAR = { cheddar: 'no' } as const

/** A batch that cooks and a cold one, a waiting, a stopped and two made builds, an empty pan, something not sold, and a clock that jumped. */
const jumped = happening(
  ready(
    { type: 'startBatch', batch: 'cooking', component: 'chicken', loads: 1 },
    ...cooledBefore('cooled', 'chicken'),
    send(choose('garden-chicken', NO_CHEDDAR)),
    send(choose('harbor-tuna'), choose('bean-and-pepper')),
    ...of('2A', 'start', 'cancel'),
    ...of('2B', 'start', 'finish'),
    send(choose('harbor-tuna', NO_CHEDDAR), choose('garden-chicken', NO_CHEDDAR)),
    ...of('3B', 'start', 'finish'),
    ...of('3A', 'start'),
    { type: 'correct', pan: 'pan-almonds', amount: 0 },
    { type: 'stopSelling', what: 'item', id: 'bean-and-pepper' },
    { type: 'keep', component: 'rice', portions: 1, for: ['harbor-tuna'] },
    { type: 'missScoop', component: 'rice' },
    { type: 'correct', pan: 'pan-tuna', amount: 0 },
    { type: 'readTemperature', what: 'backup', id: 'back-up-beans', ...read(120) },
  ),
  [
    {
      type: 'handedOverFound',
      what: 'pan',
      id: 'pan-tuna',
      because: 'out-of-limits',
      since: 0,
      builds: [{ build: '9A', at: 1 }],
    },
    {
      type: 'adviceTold',
      key: 'measure rice',
      kind: 'measure',
      saves: 50,
      reason: { why: 'measure', component: 'rice', chance: 0.5, left: 9, sd: 3, lookedAt: 0 },
    },
    { type: 'clockJumped', byMs: 90_000 },
  ],
  null,
)
/** What is hot or cold was read again since. */
const busy = onward(jumped, ...readAll(jumped))

const QUIET = [
  ...['changeLabel', 'changePan', 'correct', 'notSameProduct', 'send', 'setBackup', 'soilPan'],
  ...['startBatch', 'finishBatch', 'recordCooling'],
  ...['startTimeClock', 'topUp', 'readTemperature', 'throwOut'],
  ...['readSanitizer', 'endFood', 'throwOutHot'],
  ...['stopSelling', 'setDay', 'waste', 'keep', 'wantedGone', 'missScoop'],
]

/** For a service that is planned, before it opens. */
const OF_A_PLAN: readonly CommandType[] = ['planPrep', 'tickTask', 'takeBackTick', 'passTask']

describe('the samples', () => {
  it('[S62] are one of each command that is possible now', () => {
    expect(names(NOTHING)).toEqual(['open'])
    expect(names(given())).toEqual([...QUIET, 'close', 'signOn'].sort())
    expect(names(busy)).toEqual(
      COMMAND_TYPES.filter(
        (type) =>
          type !== 'open' &&
          type !== 'plan' &&
          type !== 'dropPlan' &&
          !OF_A_PLAN.includes(type) &&
          type !== 'close' &&
          type !== 'signOn' &&
          // Guests wait.
          type !== 'throwOutHot' &&
          // Which lots there are is the larder's to say.
          type !== 'takeFromLarder' &&
          // Its shelf is at room temperature.
          type !== 'readShelf' &&
          type !== 'resolveShelf',
      ).sort(),
    )
    const handed = given(send(choose('harbor-tuna')), ...of('1A', 'start', 'finish', 'handOver'))
    expect(names(handed)).toEqual([...QUIET, 'close', 'pay', 'remake', 'signOn', 'tellNeed'].sort())
    expect(names(onward(given(), { type: 'close' }))).toEqual(['open'])
  })

  it.each([
    ['a service with guests', busy],
    ['a quiet one', given()],
    [
      'one with an item that has nothing optional left',
      given({ type: 'correct', pan: 'pan-slaw', amount: 0 }),
    ],
  ])('[S62] are accepted in %s', (_, told) => {
    for (const sample of Object.values(samples(told)))
      expect(codeOf(when(told, sample, { by: 'in-charge' })), sample.type).toBeNull()
  })

  it('[S62] say of a kept-apart build that its handling order was read', () => {
    const milk = needs({ code: 'milk', handling: 'keep-apart', reason: null })
    const apart = choose(
      'bean-and-pepper',
      { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
      milk,
    )
    const told = ready(send(apart))
    const { start: sample } = samples(told)
    expect(sample).toEqual({ type: 'start', ...at('1A'), read: true })
    expect(sample && codeOf(when(told, sample))).toBeNull()
    expect(samples(given(send(choose('harbor-tuna')))).start).toEqual({
      type: 'start',
      ...at('1A'),
    })
  })

  it('[S62] leave out what is gone, and take another base', () => {
    const told = given(
      { type: 'correct', pan: 'pan-slaw', amount: 0 },
      { type: 'stopSelling', what: 'component', id: 'pita' },
    )
    const { send: sample } = samples(told)
    expect(sample?.type === 'send' && sample.builds[0]).toMatchObject({
      base: 'rice',
      parts: { slaw: { placement: 'no', portions: 0, because: 'gone' } },
    })
  })

  it('[S63] are only of what the role may do', () => {
    for (const role of ROLES)
      expect(names(busy, role)).toEqual(
        names(busy).filter((type) => COMMAND_TYPES.some((one) => one === type && mayDo(role, one))),
      )
    expect(names(busy, 'pick-up')).toEqual([])
  })
})

describe('a role', () => {
  it('[RO1] may do what the table says, and nothing else', () => {
    const TASKS = ['tickTask', 'takeBackTick', 'passTask'] as const
    const inOrder = (...types: readonly CommandType[]) =>
      COMMAND_TYPES.filter((type) => types.includes(type))
    expect(MAY).toEqual({
      counter: inOrder(
        ...(['send', 'change', 'cancel', 'wait', 'pay', 'tellNeed', 'soilPan'] as const),
        ...(['wantedGone', ...TASKS] as const),
      ),
      assembly: inOrder(
        ...(['start', 'finish', 'takeBack', 'remake', 'acknowledge', 'soilPan'] as const),
        ...(['notSameProduct', 'waste', 'readTemperature', 'throwOut'] as const),
        ...(['readSanitizer', ...TASKS] as const),
      ),
      'hand-over': inOrder(
        ...(['handOver', 'takeBack', 'remake', 'pay', 'tellNeed', 'acknowledge'] as const),
        ...(['readShelf', 'readSanitizer', 'throwOut', 'remakeMixedUp'] as const),
        ...TASKS,
      ),
      lead: COMMAND_TYPES.filter(
        (type) =>
          type !== 'signOn' &&
          type !== 'acceptCaution' &&
          type !== 'changeLabel' &&
          type !== 'resolveOffSale' &&
          type !== 'resolveShelf' &&
          type !== 'answerHandedOver',
      ),
      'in-charge': COMMAND_TYPES,
      'pick-up': [],
    })
    for (const role of ROLES)
      for (const type of COMMAND_TYPES) expect(mayDo(role, type)).toBe(MAY[role].includes(type))
  })

  it('[RO2] that reads may do nothing', () => {
    expect(COMMAND_TYPES.filter((type) => mayDo('pick-up', type))).toEqual([])
  })

  it('[RO3] exists for every command but those of the lead and the person in charge', () => {
    const ofCrew = (['counter', 'assembly', 'hand-over'] as const).flatMap((role) => MAY[role])
    expect(COMMAND_TYPES.filter((type) => !ofCrew.includes(type))).toEqual([
      ...[
        'plan',
        'dropPlan',
        'planPrep',
        'open',
        ...(['startBatch', 'recordCooking', 'finishBatch', 'takeFromLarder'] as const),
        'recordCooling',
        ...(['recordReheating', 'startTimeClock', 'load', 'changePan', 'topUp'] as const),
        'correct',
        'stopSelling',
        'resumeSelling',
        'signOn',
        'signOff',
        'acceptCaution',
        'changeLabel',
        'setBackup',
        'resolveOffSale',
        'resolveShelf',
        'answerHandedOver',
        ...(['setDay', 'keep', 'endKeep', 'missScoop', 'scoopBack', 'answerAdvice'] as const),
        ...(['confirmClock', 'endFood', 'throwOutHot'] as const),
        'close',
      ],
    ])
  })
})
