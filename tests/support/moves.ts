/**
 * Random histories of a whole service: before it opens, open and closed, with time that passes, clocks
 * that jump, and servers that start again. Each move says what is done once it is known where the
 * service stands; the acts that come of it are plain data.
 */
import fc from 'fast-check'
import { componentIn } from '#lib/service/held-stock.ts'
import type { Role } from '#lib/service/roles.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { openingCommands } from '#lib/spine/opening-commands.ts'
import type { Command } from '#lib/spine/registry.ts'
import { samplesFor } from '#lib/spine/samples/samples.ts'
import type { Act } from '#tests/support/acts.ts'
import { nextToClose } from '#tests/support/closing-steps.ts'
import { MINUTE } from '#tests/support/food.ts'
import { ofTheFood, readingRound } from '#tests/support/food-steps.ts'
import { step } from '#tests/support/histories.ts'
import { ofTheKitchen } from '#tests/support/kitchen-steps.ts'
import { NONSENSE, ONE_OF_EACH } from '#tests/support/one-of-each.ts'
import { ofOrders } from '#tests/support/order-steps.ts'
import { type Given, OPENED_AT, ofPortions } from '#tests/support/service.ts'
import { type Step, stationWithSpares } from '#tests/support/spare-station.ts'
import { ofTheStock } from '#tests/support/stock-steps.ts'
import { leadingSomewhere, madeAgain } from '#tests/support/told-late.ts'

export type Move = (state: ServiceState) => readonly Act[]

const command = (command: Given, by: Role = 'in-charge'): Act => ({ do: 'command', command, by })

const commanded = (steps: fc.Arbitrary<Step>): fc.Arbitrary<Move> =>
  fc
    .record({
      step: steps,
      by: fc.nat({ max: 11 }).map((one): Role => {
        if (one === 0) return 'lead'
        return one === 1 ? 'counter' : 'in-charge'
      }),
      ms: fc.oneof(
        { weight: 9, arbitrary: fc.integer({ min: 1, max: 40_000 }) },
        { weight: 1, arbitrary: fc.constant(0) },
      ),
    })
    .map(({ step, by, ms }) => (state) => [{ do: 'pass', ms }, command(step(state), by)])

const waiting: fc.Arbitrary<Move> = fc
  .oneof(
    { weight: 6, arbitrary: fc.integer({ min: 1, max: 10 }) },
    { weight: 3, arbitrary: fc.integer({ min: 10, max: 60 }) },
    { weight: 1, arbitrary: fc.integer({ min: 100, max: 300 }) },
  )
  .map((minutes) => () => [{ do: 'pass', ms: minutes * MINUTE }])

const jumping: fc.Arbitrary<Move> = fc
  .constantFrom(-180, -60, -5, 5, 60, 180)
  .map((minutes) => ({ clockJump, stage }) => [
    ...(stage === 'open' || clockJump ? [{ do: 'jump', byMs: minutes * MINUTE } as const] : []),
  ])

const restarting: fc.Arbitrary<Move> = fc
  .record({
    away: fc.constantFrom(0, 1, 15, 130),
    by: fc.constantFrom(0, 0, -0.5, -5, -90),
  })
  .map(({ away, by }) => () => [{ do: 'restart', awayMs: away * MINUTE, byMs: by * MINUTE }])

/** Somebody looks at a clock that jumped. */
const confirming: fc.Arbitrary<Move> = fc.constant(({ clockJump }) =>
  clockJump ? [command({ type: 'confirmClock' }, 'lead')] : [],
)

const round: fc.Arbitrary<Move> = fc.constant((state) =>
  readingRound(state).map((one) => command(one)),
)

const move: fc.Arbitrary<Move> = fc.oneof(
  { weight: 36, arbitrary: commanded(ofOrders) },
  { weight: 24, arbitrary: commanded(step) },
  { weight: 14, arbitrary: commanded(ofTheFood) },
  { weight: 6, arbitrary: commanded(ofTheKitchen) },
  { weight: 6, arbitrary: commanded(ofTheStock) },
  {
    weight: 4,
    arbitrary: commanded(fc.constantFrom(...Object.values(ONE_OF_EACH)).map((one) => () => one)),
  },
  { weight: 3, arbitrary: commanded(fc.constantFrom(...NONSENSE).map((one) => () => one)) },
  { weight: 4, arbitrary: waiting },
  { weight: 10, arbitrary: leadingSomewhere },
  { weight: 2, arbitrary: round },
  { weight: 2, arbitrary: jumping },
  { weight: 4, arbitrary: confirming },
  { weight: 1, arbitrary: restarting },
  { weight: 1, arbitrary: fc.constant<Move>(() => [{ do: 'advise' }]) },
)

/** Opens, and gets ready: pans and back-up pans with little in them, so that they run out. */
const opening = (kind: 'demo' | 'real', portions: number): readonly Act[] => {
  const little = (given: Command): Given => {
    if (given.type === 'load') {
      const component = componentIn(stationWithSpares, given.pan) ?? 'rice'
      return { ...given, amount: ofPortions(component, portions) }
    }
    return given.type === 'setBackup' && given.ready
      ? { ...given, amount: ofPortions(given.component, 1 + (portions % 3)) }
      : given
  }
  const commands = openingCommands(stationWithSpares, OPENED_AT, { spare: 200 })
    .filter((one) => one.type !== 'load' || !one.pan.endsWith('spare'))
    .map(little)
  return [
    command({ type: 'open', station: stationWithSpares.id, kind }),
    command({ type: 'signOn' }),
    ...commands.map((one) => command(one)),
  ]
}

/** Commands that one history closes with are no more than these. */
const MOST_TO_CLOSE = 80

const NONE_TAKEN = Object.values(ONE_OF_EACH).map((one) => command(one))

/** All day there is somebody certified, and a student: so that every task has hands. */
const ALL_DAY = { from: '00:00', to: '23:59' }
const staffed = {
  ...ONE_OF_EACH.plan,
  crew: [
    { initials: 'KT', adult: true, ...ALL_DAY },
    { initials: 'JR', adult: false, ...ALL_DAY },
  ],
} as Given

/** What is prepared of a plan as it stands: its tasks, ticked, taken back and passed on. */
const PREPARED = (['planPrep', 'tickTask', 'takeBackTick', 'passTask'] as const).flatMap(
  (type): readonly Move[] => [
    (state) => {
      const sample = samplesFor(state, 'in-charge', stationWithSpares.id)[type]
      return sample ? [command(sample)] : []
    },
  ],
)

/** One of each before it is opened: of a service that was planned, or of one that wasn't. */
const early = (planned: boolean): readonly Act[] => {
  const { plan: _, open: __, dropPlan, ...others } = ONE_OF_EACH
  return [planned ? staffed : dropPlan, ...Object.values(others)].map((one) => command(one))
}

/** A whole service. */
export const wholeService: fc.Arbitrary<readonly Move[]> = fc
  .record({
    kind: fc.constantFrom('demo' as const, 'real' as const),
    planned: fc.nat({ max: 15 }),
    portions: fc.integer({ min: 3, max: 12 }),
    moves: fc.array(move, { minLength: 50, maxLength: 100, size: 'max' }),
    newDocument: fc.nat({ max: 3 }).map((one) => one === 0),
    again: fc.array(madeAgain, { minLength: 1, maxLength: 3 }),
    closes: fc.nat({ max: 2 }).map((one) => one === 0),
  })
  .map(({ kind, planned, portions, moves, newDocument, again, closes }): readonly Move[] => {
    const late = Math.floor((moves.length * 2) / 3)
    const toClose: readonly Move[] = closes
      ? Array.from(
          { length: MOST_TO_CLOSE },
          () => (state) => (state.stage === 'closed' ? [] : [command(nextToClose(state))]),
        )
      : [() => [{ do: 'pass', ms: 15 * 60 * MINUTE }]]
    if (planned === 0) {
      const { plan, dropPlan } = ONE_OF_EACH
      return [() => [command(plan), command(dropPlan), ...NONE_TAKEN]]
    }
    const isPlanned = planned > 8
    return [
      () => early(isPlanned),
      ...PREPARED,
      () => opening(isPlanned ? 'real' : kind, portions),
      () => [command(ONE_OF_EACH.passTask)],
      ...moves.slice(0, late),
      ...(newDocument ? [(() => [{ do: 'newDocument' }]) satisfies Move, ...again] : []),
      ...moves.slice(late),
      ...toClose,
      (state) => (state.stage === 'closed' ? NONE_TAKEN : []),
    ]
  })
