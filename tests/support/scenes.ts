/** Services in the states that a screen must look right in, made of the same orders as at a counter. */
import type { Need, NeedCode } from '#lib/needs/codes.ts'
import { type BuildChoice, isKeptApart } from '#lib/service/build-choice.ts'
import type { Command } from '#lib/service/decide.ts'
import type { RunningState } from '#lib/service/state.ts'
import { EMPTY_DRAFT, settle, type Wish } from '#lib/views/draft.ts'
import { offerFor } from '#lib/views/offer.ts'

/** A command, told from the service as it stands then. */
export type Step = (state: RunningState) => Command

interface Asked {
  readonly base?: string
  readonly wishes?: Readonly<Record<string, Wish>>
  readonly needs?: readonly Need[]
}

const NO: Wish = { placement: 'no', portions: 0 }
const WITH: Wish = { placement: 'in', portions: 1 }
const ON_THE_SIDE: Wish = { placement: 'side', portions: 1 }

const apart = (...codes: readonly NeedCode[]): readonly Need[] =>
  codes.map((code) => ({ code, handling: 'keep-apart', reason: null }))
const without = (...codes: readonly NeedCode[]): readonly Need[] =>
  codes.map((code) => ({ code, handling: 'leave-out', reason: null }))

/** What the counter would send for an item, as the pans and the guest's needs let it be made. */
const build =
  (item: string, { base, wishes = {}, needs = [] }: Asked = {}) =>
  (state: RunningState): BuildChoice => {
    const asked = needs.length > 0 ? 'needs' : 'none'
    const draft = { ...EMPTY_DRAFT, asked, needs, item, base: base ?? null, wishes } as const
    const settled = settle(offerFor(state, needs), draft)
    if (!settled || settled.blocked)
      throw new Error(`${item} can't be ordered: ${JSON.stringify(settled?.blocked)}`)
    return isKeptApart(settled.choice) ? { ...settled.choice, agreed: true } : settled.choice
  }

type Ordered = ReturnType<typeof build>

const send =
  (ordered: readonly Ordered[], more: { paid?: boolean; name?: string } = {}): Step =>
  (state) => ({
    type: 'send',
    readBack: true,
    builds: ordered.map((one) => one(state)),
    paid: more.paid ?? false,
    ...(more.name === undefined ? {} : { name: more.name }),
  })

type Stage = 'start' | 'finish' | 'handOver'
const STAGES: readonly Stage[] = ['start', 'finish', 'handOver']

/** Takes a build as far as `until`. */
const work = (ticket: number, letter: string, until: Stage): readonly Step[] =>
  STAGES.slice(0, STAGES.indexOf(until) + 1).map((type) => () => {
    const at = { ticket, letter }
    return type === 'start' ? { type, ...at, read: true } : { type, ...at }
  })

const portions = (pan: string, component: string, count: number): Step => {
  return (state) => ({
    type: 'correct',
    pan,
    amount: count * (state.portions[component]?.amount ?? Number.NaN),
  })
}

const read = (tenths: number, at?: number) => ({
  tenths,
  scale: 'F' as const,
  probe: '1',
  where: 'middle-stirred' as const,
  ...(at === undefined ? {} : { at }),
})

const reading = (id: string, tenths: number): Step => {
  return () => ({ type: 'readTemperature', what: 'pan', id, reading: read(tenths), initials: 'AB' })
}

const MINUTE = 60_000

/** Of rice that was cooled before; `tenths` as read so many minutes ago. */
const cooledTo =
  (tenths: number, minutesAgo: number): Step =>
  ({ at }) => ({
    type: 'recordCooling',
    batch: 'cold-rice',
    reading: read(tenths, at - minutesAgo * MINUTE),
    initials: 'AB',
    presentUntil: at,
  })

/** Told after sending, of the first build of a ticket. */
const tellNeed =
  (ticket: number, needs: readonly Need[]): Step =>
  () => ({ type: 'tellNeed', ticket, letter: 'A', asked: 'needs', needs })

/** Read below the limit of a hot pan. */
const tooCool =
  (pan: string): Step =>
  ({ station: { safety } }) => ({
    type: 'readTemperature',
    what: 'pan',
    id: pan,
    reading: {
      tenths: safety.scale === 'F' ? 1210 : 490,
      scale: safety.scale,
      probe: 'probe 1',
      where: 'middle-stirred',
    },
    initials: 'DEMO',
  })

/** Its time out of the heat is over within a moment. */
const leftLongAgo =
  (pan: string): Step =>
  ({ station: { safety }, at }) => ({
    type: 'startTimeClock',
    what: 'pan',
    id: pan,
    leftAt: at - 4 * 60 * 60_000 + 6_000,
    from: 'hot',
    rule: '4h',
    reading: {
      tenths: safety.scale === 'F' ? 1400 : 600,
      scale: safety.scale,
      probe: 'probe 1',
      where: 'middle-stirred',
    },
    initials: 'DEMO',
  })

const usualChicken = build('garden-chicken')
const usualBeans = build('bean-and-pepper')

/** No cheddar, the sauce on the side. */
const plainer = build('garden-chicken', {
  base: 'rice',
  wishes: { cheddar: NO, 'yogurt-sauce': ON_THE_SIDE },
})
const milkApart = build('bean-and-pepper', { needs: apart('milk') })

/** Everything that an item of the demo station can have at once. */
const fullest = build('garden-chicken', {
  base: 'rice',
  wishes: {
    peppers: { placement: 'side', portions: 2 },
    slaw: ON_THE_SIDE,
    cheddar: { placement: 'in', portions: 4 },
    almonds: ON_THE_SIDE,
    'yogurt-sauce': { placement: 'side', portions: 3 },
  },
})

const closeAndOpen = (kind: 'real'): readonly Step[] => [
  () => ({ type: 'close' }),
  (state) => ({ type: 'open', station: state.station.id, kind }),
]

/**
 * By name. A new server has a demo service open and its pans loaded: `quiet` leaves it so.
 * `rush` has builds in every state, one without cheddar and with the sauce on the side being made,
 * cheddar nearly gone and almonds sold out.
 */
export const scenes = {
  quiet: [],
  waiting: [send([usualChicken, usualBeans], { name: 'Robin' }), send([build('harbor-tuna')])],
  fullest: [send([fullest]), ...work(1, 'A', 'start')],
  reading: [send([milkApart]), send([usualChicken])],
  unread: [
    () => ({ type: 'notSameProduct', ingredient: 'pita' }),
    send([milkApart]),
    send([usualChicken]),
  ],
  apart: [
    send([
      build('bean-and-pepper', {
        needs: apart('milk', 'tree-nuts'),
        wishes: { slaw: { placement: 'side', portions: 2 } },
      }),
    ]),
    send([usualBeans]),
    ...work(1, 'A', 'start'),
  ],
  'all-apart': [
    send([
      build('bean-and-pepper', {
        needs: [...apart('milk', 'egg', 'fish', 'tree-nuts', 'wheat', 'peanut', 'sesame')],
      }),
    ]),
    ...work(1, 'A', 'start'),
  ],
  diet: [send([build('bean-and-pepper', { needs: without('vegan', 'sesame') })])],
  rush: [
    send([usualBeans, usualChicken], { paid: true }),
    ...work(1, 'A', 'handOver'),
    ...work(1, 'B', 'handOver'),
    send([usualChicken, usualBeans], { paid: true, name: 'Robin' }),
    ...work(2, 'A', 'finish'),
    ...work(2, 'B', 'finish'),
    send([milkApart]),
    ...work(3, 'A', 'finish'),
    portions('pan-cheddar', 'cheddar', 8),
    portions('pan-almonds', 'almonds', 0),
    send([plainer, build('harbor-tuna', { wishes: { peppers: WITH } })]),
    ...work(4, 'A', 'start'),
    send([build('bean-and-pepper', { needs: without('vegan') })], { paid: true }),
    send([build('garden-chicken', { needs: apart('milk') })]),
    send([usualChicken], { name: 'Alex' }),
  ],
  stopped: [
    send([usualChicken]),
    send([usualBeans]),
    ...work(1, 'A', 'start'),
    (state) => ({
      type: 'change',
      readBack: true,
      ticket: 1,
      letter: 'A',
      to: build('garden-chicken', {
        base: 'rice',
        wishes: { cheddar: NO, 'yogurt-sauce': NO, peppers: NO },
        needs: apart('peanut'),
      })(state),
    }),
  ],
  cancelled: [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    () => ({ type: 'cancel', ticket: 1, letter: 'A' }),
  ],
  'told-late': [
    send([usualChicken]),
    send([usualBeans]),
    ...work(1, 'A', 'start'),
    tellNeed(1, apart('milk', 'tree-nuts')),
  ],
  held: [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    tellNeed(1, apart('milk')),
    () => ({ type: 'acknowledge', ticket: 1, letter: 'A', foodInIt: true }),
  ],
  'to-find': [
    send([usualChicken]),
    send([usualBeans]),
    send([usualChicken]),
    send([plainer]),
    ...work(1, 'A', 'handOver'),
    ...work(2, 'A', 'finish'),
    ...work(3, 'A', 'finish'),
    ...work(4, 'A', 'finish'),
    tellNeed(1, apart('milk')),
    tellNeed(2, without('sesame')),
  ],
  soiled: [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    () => ({ type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' }),
    () => ({ type: 'soilPan', pan: 'pan-rice', by: 'chicken' }),
  ],
  short: [
    send([usualChicken, usualChicken]),
    send([usualBeans]),
    portions('pan-chicken', 'chicken', 0),
  ],
  'off-sale': [
    send([build('harbor-tuna')]),
    reading('pan-tuna', 500),
    () => ({ type: 'missScoop', component: 'chicken' }),
    () => ({ type: 'keep', component: 'beans', portions: 4, for: ['kept-apart'] }),
  ],
  'to-throw-out': [
    ({ at }) => ({
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-slaw',
      leftAt: at,
      from: 'cold',
      rule: '6h',
      reading: read(390, at),
      initials: 'AB',
    }),
    reading('pan-slaw', 760),
  ],
  batches: [
    () => ({ type: 'startBatch', batch: 'more-chicken', component: 'chicken', loads: 2 }),
    () => ({ type: 'startBatch', batch: 'more-rice', component: 'rice', loads: 1 }),
    () => ({ type: 'recordCooking', batch: 'more-rice', reading: read(1500), initials: 'AB' }),
    (state) => ({
      type: 'finishBatch',
      batch: 'more-rice',
      amount: 12 * (state.portions.rice?.amount ?? Number.NaN),
    }),
    ({ at }) => ({
      type: 'recordCooling',
      batch: 'more-rice',
      reading: read(1450),
      initials: 'AB',
      presentUntil: at + 7 * 3_600_000,
    }),
    () => ({ type: 'startBatch', batch: 'more-beans', component: 'beans', loads: 1 }),
    () => ({ type: 'recordCooking', batch: 'more-beans', reading: read(1500), initials: 'AB' }),
  ],
  cooled: [
    ({ at }) => ({
      type: 'startBatch',
      batch: 'cold-rice',
      component: 'rice',
      loads: 1,
      startedAt: at - 420 * MINUTE,
    }),
    ({ at }) => ({
      type: 'recordCooking',
      batch: 'cold-rice',
      reading: read(1500, at - 390 * MINUTE),
      initials: 'AB',
    }),
    ({ at, portions: each }) => ({
      type: 'finishBatch',
      batch: 'cold-rice',
      amount: 12 * (each.rice?.amount ?? Number.NaN),
      finishedAt: at - 385 * MINUTE,
    }),
    cooledTo(1400, 380),
    cooledTo(680, 280),
    cooledTo(400, 100),
  ],
  gone: [
    portions('pan-chicken', 'chicken', 0),
    portions('pan-almonds', 'almonds', 0),
    send([usualBeans]),
    send([usualBeans, usualBeans, usualBeans, usualBeans]),
  ],
  kept: [
    portions('pan-cheddar', 'cheddar', 4),
    () => ({ type: 'keep', component: 'cheddar', portions: 4, for: ['garden-chicken'] }),
    portions('pan-beans', 'beans', 3),
    () => ({ type: 'keep', component: 'beans', portions: 3, for: ['vegetarian'] }),
  ],
  'short-ways': [
    send([usualChicken]),
    send([usualChicken, build('garden-chicken', { base: 'rice' })]),
    send([build('bean-and-pepper', { base: 'rice' })]),
    portions('pan-chicken', 'chicken', 2),
    portions('pan-cheddar', 'cheddar', 0),
    portions('pan-rice', 'rice', 0),
  ],
  'chicken-off-sale': [send([usualChicken]), send([usualBeans]), tooCool('pan-chicken')],
  'chicken-off-sale, making': [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    send([usualBeans]),
    tooCool('pan-chicken'),
  ],
  'thrown-out': [
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    () => ({
      type: 'throwOut',
      what: 'pan',
      id: 'pan-chicken',
      reason: 'out-of-limits',
      initials: 'DEMO',
    }),
  ],
  'other-scoop': [
    () => ({ type: 'missScoop', component: 'chicken' }),
    () => ({ type: 'missScoop', component: 'peppers' }),
    send([usualChicken]),
    ...work(1, 'A', 'start'),
  ],
  past: [
    send([usualChicken]),
    send([usualBeans]),
    send([usualChicken]),
    ...work(1, 'A', 'start'),
    ...work(2, 'A', 'finish'),
    leftLongAgo('pan-chicken'),
    () => ({ type: 'finish', ticket: 1, letter: 'A' }),
  ],
  unloaded: closeAndOpen('real'),
  closed: [() => ({ type: 'close' })],
} as const satisfies Readonly<Record<string, readonly Step[]>>

export type Scene = keyof typeof scenes
