/** What scenes are made of: the same orders as at a counter, and what is done in a kitchen. */

import { EMPTY_DRAFT, settle, type Wish } from '#lib/rooms/orders/facts/draft.ts'
import { offerFor } from '#lib/rooms/orders/facts/offer.ts'
import { type BuildChoice, isKeptApart } from '#lib/service/events/build-choice.ts'
import type { RunningState } from '#lib/service/state.ts'
import { batchCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { Need, NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf } from '#lib/station/find.ts'

/** A command, told from the service as it stands then. */
export type Step = (state: RunningState) => Command

interface Asked {
  readonly base?: string
  readonly wishes?: Readonly<Record<string, Wish>>
  readonly needs?: readonly Need[]
}

export const NO: Wish = { placement: 'no', portions: 0 }
export const WITH: Wish = { placement: 'in', portions: 1 }
export const ON_THE_SIDE: Wish = { placement: 'side', portions: 1 }

export const apart = (...codes: readonly NeedCode[]): readonly Need[] =>
  codes.map((code) => ({ code, handling: 'keep-apart', reason: null }))
export const without = (...codes: readonly NeedCode[]): readonly Need[] =>
  codes.map((code) => ({ code, handling: 'leave-out', reason: null }))

/** What the counter would send for an item, as the pans and the guest's needs let it be made. */
export const build =
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

export const send =
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
export const work = (ticket: number, letter: string, until: Stage): readonly Step[] =>
  STAGES.slice(0, STAGES.indexOf(until) + 1).map((type) => () => {
    const at = { ticket, letter }
    return type === 'start' ? { type, ...at, read: true } : { type, ...at }
  })

export const portions = (pan: string, component: string, count: number): Step => {
  return (state) => ({
    type: 'correct',
    pan,
    amount: count * (state.portions[component]?.amount ?? Number.NaN),
  })
}

export const read = (tenths: number, at?: number) => ({
  tenths,
  scale: 'F' as const,
  probe: '1',
  where: 'middle-stirred' as const,
  ...(at === undefined ? {} : { at }),
})

export const reading = (id: string, tenths: number): Step => {
  return () => ({ type: 'readTemperature', what: 'pan', id, reading: read(tenths), initials: 'AB' })
}

export const MINUTE = 60_000

/** Of rice that was cooled before; `tenths` as read so many minutes ago. */
export const cooledTo =
  (tenths: number, minutesAgo: number): Step =>
  ({ at }) => ({
    type: 'recordCooling',
    batch: 'cold-rice',
    reading: read(tenths, at - minutesAgo * MINUTE),
    initials: 'AB',
    presentUntil: at,
  })

/** Told after sending, of the first build of a ticket. */
export const tellNeed =
  (ticket: number, needs: readonly Need[]): Step =>
  () => ({ type: 'tellNeed', ticket, letter: 'A', asked: 'needs', needs })

/** Read below the limit of a hot pan. */
export const tooCool =
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
export const leftLongAgo =
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

export const usualChicken = build('garden-chicken')
export const usualBeans = build('bean-and-pepper')

/** No cheddar, the sauce on the side. */
export const plainer = build('garden-chicken', {
  base: 'rice',
  wishes: { cheddar: NO, 'yogurt-sauce': ON_THE_SIDE },
})
export const milkApart = build('bean-and-pepper', { needs: apart('milk') })

/** Everything that an item of the demo station can have at once. */
export const fullest = build('garden-chicken', {
  base: 'rice',
  wishes: {
    peppers: { placement: 'side', portions: 2 },
    slaw: ON_THE_SIDE,
    cheddar: { placement: 'in', portions: 4 },
    almonds: ON_THE_SIDE,
    'yogurt-sauce': { placement: 'side', portions: 3 },
  },
})

/** The sanitizer as it should be, so that nothing is due of it. */
export const goodStrip: Step = () => ({
  type: 'readSanitizer',
  mgPerL: 100,
  water: { tenths: 750, scale: 'F' },
  ph: null,
  initials: 'AB',
})

export const closeAndOpen = (kind: 'demo'): readonly Step[] => [
  () => ({ type: 'close' }),
  (state) => ({ type: 'open', station: state.station.id, kind }),
]

/** A batch of 40 portions that was read, finished and waits to be loaded. */
export const standsReady = (component: string): readonly Step[] => {
  const told = (state: RunningState) =>
    batchCommands(
      state.station,
      componentOf(state.station, component),
      40 * (state.portions[component]?.amount ?? 1),
      { now: state.at, batch: `ready-${component}`, isDated: true },
    )
  const isCooked = HOT.has(component)
  return Array.from({ length: isCooked ? 3 : 2 }, (_, place) => (state) => {
    const command = told(state)[place]
    if (!command) throw new Error(`no step ${place} of ${component}`)
    return command
  })
}

const HOT: ReadonlySet<string> = new Set(['rice', 'chicken', 'beans', 'peppers'])
