/** Random histories of commands on a station with little in its pans, for fast-check. */
import fc from 'fast-check'
import { pansOf } from '#lib/menu/find.ts'
import type { StationDocument } from '#lib/menu/station-document.ts'
import { type BuildChoice, usualChoice } from '#lib/service/build-choice.ts'
import type { BuildState, ServiceState } from '#lib/service/state.ts'
import { demoStation, type Given, ofPortions } from '#tests/support/service.ts'

/** The demo station with a second pan of slaw and of tuna, so that a build takes out of two. */
export const stationWithSpares: StationDocument = {
  ...demoStation,
  line: {
    wells: [
      ...demoStation.line.wells,
      {
        id: 'spares',
        held: 'cold',
        pans: ['slaw', 'tuna'].map((component) => ({
          id: `pan-${component}-spare`,
          component,
          size: 'third',
          depthIn: 4,
          usualPortions: 20,
        })),
      },
    ],
  },
}

const pans = pansOf(stationWithSpares)
const items = stationWithSpares.items
const components = stationWithSpares.components.map((one) => one.id)

/** A step of a history: a command, once the service has come to where it is. */
export type Step = (state: ServiceState) => Given

const part = fc.oneof(
  {
    weight: 16,
    arbitrary: fc.constantFrom(
      { placement: 'in', portions: 1 } as const,
      { placement: 'no', portions: 0 } as const,
    ),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      placement: fc.constantFrom('in' as const, 'side' as const),
      portions: fc.integer({ min: 1, max: 4 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      placement: fc.constantFrom('in' as const, 'side' as const, 'no' as const),
      portions: fc.constantFrom(-1, 0, 1, 2.5, 5, -0),
    }),
  },
)

const need = fc.record({
  code: fc.constantFrom('milk' as const, 'sesame' as const, 'soy' as const, 'vegan' as const),
  handling: fc.constantFrom('keep-apart' as const, 'leave-out' as const),
  reason: fc.constantFrom(null, 'allergy' as const),
})

const choice: fc.Arbitrary<BuildChoice> = fc
  .record({
    item: fc.constantFrom(...items),
    base: fc.oneof(
      { weight: 29, arbitrary: fc.constantFrom('pita', 'rice') },
      { weight: 1, arbitrary: fc.constantFrom(null, 'slaw') },
    ),
    parts: fc.dictionary(fc.constantFrom(...components, 'kelp', 'constructor'), part, {
      maxKeys: 2,
    }),
    needs: fc.oneof(
      { weight: 19, arbitrary: fc.constant([]) },
      { weight: 2, arbitrary: fc.array(need, { maxLength: 2 }) },
    ),
    isSure: fc.integer({ min: 0, max: 40 }),
  })
  .map(({ item, base, parts, needs, isSure }) => {
    const usual = usualChoice(item)
    const own = Object.entries(parts).filter(([id]) => isSure < 2 || id in usual.parts)
    return {
      item: isSure === 1 ? 'kelp-roll' : item.id,
      base,
      parts: {
        ...usual.parts,
        ...Object.fromEntries(own.map(([id, one]) => [id, { ...one, because: 'asked' as const }])),
      },
      asked: isSure === 0 ? 'not-sure' : needs.length > 0 ? 'needs' : 'none',
      needs,
    }
  })

/** Which build is meant: mostly one that suits, now and then any number and letter. */
const meant = fc.record({
  suits: fc.integer({ min: 0, max: 9 }).map((one) => one > 0),
  index: fc.nat({ max: 11 }),
  letter: fc.constantFrom('A', 'B'),
})
type Meant = typeof meant extends fc.Arbitrary<infer One> ? One : never

interface BuildAt {
  readonly ticket: number
  readonly letter: string
}

const pick = (state: ServiceState, by: Meant, suiting: readonly BuildState[]): BuildAt => {
  const tickets = [...Object.values(state.past), state.tickets].flatMap((one) => Object.values(one))
  const suited = tickets.flatMap((ticket) =>
    ticket.builds
      .filter((build) => suiting.includes(build.state))
      .map(({ letter }) => ({ ticket: ticket.number, letter })),
  )
  const found = suited[by.index % Math.max(1, suited.length)]
  return by.suits && found ? found : { ticket: by.index, letter: by.letter }
}

const ofBuild = (
  suiting: readonly BuildState[],
  make: (at: BuildAt) => Given,
): fc.Arbitrary<Step> => meant.map((by) => (state) => make(pick(state, by, suiting)))

const amount = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: 0, max: 9 }).map((count) => ({ count, off: 0 })) },
  {
    weight: 2,
    arbitrary: fc.record({
      count: fc.integer({ min: 0, max: 4 }),
      off: fc.integer({ min: -3, max: 3 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      { count: 1e9, off: 0 },
      { count: -1, off: 0 },
      { count: 0, off: 0.5 },
      { count: -0, off: -0 },
    ),
  },
)

const ofPan: fc.Arbitrary<Step> = fc
  .record({
    pan: fc.constantFrom(...pans),
    type: fc.constantFrom('load' as const, 'changePan' as const, 'correct' as const),
    amount,
  })
  .map(({ pan, type, amount: { count, off } }) => () => ({
    type,
    pan: pan.id,
    amount: ofPortions(pan.component, count) + off,
  }))

const selling: fc.Arbitrary<Step> = fc
  .record({
    type: fc.constantFrom('stopSelling' as const, 'resumeSelling' as const),
    what: fc.constantFrom('component' as const, 'item' as const),
    index: fc.nat({ max: 11 }),
  })
  .map(({ type, what, index }) => ({ notSelling }) => {
    const all = what === 'item' ? items.map((item) => item.id) : components
    const stopped = Object.keys(notSelling[what])
    const ids = type === 'resumeSelling' && stopped.length > 0 ? stopped : all
    return { type, what, id: ids[index] ?? ids[0] ?? 'kelp' }
  })

const sending: fc.Arbitrary<Step> = fc
  .record({ builds: fc.array(choice, { maxLength: 3, size: 'max' }), paid: fc.boolean() })
  .map((sent) => () => ({ type: 'send', ...sent }))

const changing: fc.Arbitrary<Step> = fc
  .record({ by: meant, to: choice })
  .map(({ by, to }) => (state) => ({
    type: 'change',
    ...pick(state, by, ['waiting', 'making']),
    to,
  }))

export const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 10, arbitrary: sending },
  { weight: 8, arbitrary: ofPan },
  { weight: 9, arbitrary: changing },
  {
    weight: 9,
    arbitrary: fc
      .record({ read: fc.boolean(), seen: fc.constantFrom(undefined, undefined, undefined, 0) })
      .chain(({ read, seen }) =>
        ofBuild(['waiting'], (at) => ({ type: 'start', ...at, seen, read })),
      ),
  },
  { weight: 8, arbitrary: ofBuild(['making'], (at) => ({ type: 'finish', ...at })) },
  {
    weight: 4,
    arbitrary: ofBuild(['waiting', 'making', 'made'], (at) => ({ type: 'cancel', ...at })),
  },
  { weight: 3, arbitrary: ofBuild(['made'], (at) => ({ type: 'handOver', ...at })) },
  { weight: 2, arbitrary: ofBuild(['made', 'handed-over'], (at) => ({ type: 'remake', ...at })) },
  {
    weight: 4,
    arbitrary: fc
      .boolean()
      .chain((made) => ofBuild(['made'], (at) => ({ type: 'takeBack', ...at, made }))),
  },
  {
    weight: 8,
    arbitrary: fc
      .boolean()
      .chain((foodInIt) => ofBuild(['making'], (at) => ({ type: 'acknowledge', ...at, foodInIt }))),
  },
  {
    weight: 2,
    arbitrary: fc
      .boolean()
      .chain((paid) => ofBuild(['waiting'], ({ ticket }) => ({ type: 'pay', ticket, paid }))),
  },
  { weight: 4, arbitrary: selling },
  {
    weight: 1,
    arbitrary: fc.constantFrom<Step>(
      () => ({ type: 'confirmClock' }),
      () => ({ type: 'open', station: 'alder-hall', kind: 'demo' }),
    ),
  },
)

export const history = fc.array(step, { minLength: 10, maxLength: 80, size: 'max' })
