/** Random moves that lead somewhere: food found bad with what was made of it, and guests who tell late. */
import fc from 'fast-check'
import { everyTicket } from '#lib/service/every-ticket.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { findBuild, openBuilds } from '#lib/service/tickets.ts'
import type { Act } from '#tests/support/acts.ts'
import { fahrenheit, MINUTE } from '#tests/support/food.ts'
import type { Given } from '#tests/support/service.ts'
import { pans } from '#tests/support/spare-station.ts'

type Moves = (state: ServiceState) => readonly Act[]

const initials = 'KT'

const acts = (commands: readonly Given[], most: number, ms: number): readonly Act[] =>
  commands.slice(0, most).flatMap((command): readonly Act[] => [
    { do: 'command', command, by: 'in-charge' },
    { do: 'pass', ms },
  ])

const some = fc.record({
  index: fc.nat({ max: 20 }),
  most: fc.integer({ min: 1, max: 4 }),
  ms: fc.constantFrom(0, 10, 5_000),
  way: fc.constantFrom('discard' as const, 'discard' as const, 'time-only' as const),
  asked: fc.constantFrom('not-sure' as const, 'needs' as const),
  foodInIt: fc.constantFrom(true, false, false),
})

/** A pan out of which something stands made, or was handed over, is read out of its limits. */
const readBad: fc.Arbitrary<Moves> = some.map(({ index, most, ms, way }) => (state) => {
  const builds = [
    ...openBuilds(state).flatMap(({ build }) => (build.state === 'made' ? [build] : [])),
    ...everyTicket(state).flatMap((ticket) =>
      ticket.builds.filter((build) => build.state === 'handed-over'),
    ),
  ]
  const took = builds[index % Math.max(1, builds.length)]?.took ?? []
  const pan = took[index % Math.max(1, took.length)]?.pan
  const stock = pan === undefined ? undefined : (state.pans[pan] ?? state.backupPans[pan])
  if (pan === undefined || !stock?.food) return []
  const what = state.pans[pan] ? 'pan' : 'backup'
  const degrees = stock.food.heldBy === 'hot' ? 120 : 52
  return acts(
    [
      {
        type: 'readTemperature',
        what,
        id: pan,
        reading: fahrenheit(degrees, { scaleConfirmed: true }),
        initials,
      },
      { type: 'resolveOffSale', what, id: pan, way },
      { type: 'throwOut', what, id: pan, reason: 'out-of-limits', initials },
    ],
    most,
    ms,
  )
})

/** A batch, or a pan, is said never to have been good. */
const neverGood: fc.Arbitrary<Moves> = some.map(({ index, most, ms, asked }) => (state) => {
  const pans = [...Object.entries(state.pans), ...Object.entries(state.backupPans)].filter(
    ([, { amount, food }]) => amount > 0 && food !== null,
  )
  const found = pans[index % Math.max(1, pans.length)]
  if (!found) return []
  const [id, { batches }] = found
  const [batch] = batches
  const reason = asked === 'needs' ? 'not-cooked' : 'not-cooled'
  return acts(
    batch !== undefined && most < 4
      ? [{ type: 'throwOut', what: 'batch', id: batch, reason, initials }]
      : [{ type: 'throwOut', what: state.pans[id] ? 'pan' : 'backup', id, reason, initials }],
    1,
    ms,
  )
})

/** A guest who has their food tells a need, or that they aren't sure; then it is made again. */
const toldLate: fc.Arbitrary<Moves> = some.map(
  ({ index, most, ms, asked, foodInIt }) =>
    (state) => {
      const all = everyTicket(state).flatMap(({ number: ticket, builds }) =>
        builds.flatMap(({ letter, state: is }) =>
          is === 'handed-over' ? [{ ticket, letter }] : [],
        ),
      )
      const at = all[index % Math.max(1, all.length)]
      if (!at || findBuild(state, at.ticket, at.letter)?.hold) return []
      return acts(
        [
          {
            type: 'tellNeed',
            ...at,
            asked,
            needs:
              asked === 'needs' ? [{ code: 'soy', handling: 'keep-apart', reason: 'allergy' }] : [],
          },
          { type: 'acknowledge', ...at, foodInIt },
          { type: 'remake', ...at },
        ],
        most,
        ms,
      )
    },
)

/** The shelf is read out of its limits while something stands on it, and decided on. */
const shelfBad: fc.Arbitrary<Moves> = some.map(({ most, ms, way }) => (state) => {
  if (!openBuilds(state).some(({ build }) => build.state === 'made')) return []
  const reads = (degrees: number): Given => ({
    type: 'readShelf',
    reading: fahrenheit(degrees, { scaleConfirmed: true }),
    initials,
  })
  return acts([reads(120), { type: 'resolveShelf', way }, reads(150)], most, ms)
})

const SCOOPS = ['cheddar', 'tuna', 'slaw', 'almonds', 'yogurt-sauce', 'pita']

/** A foreign scoop is told of a pan out of which something for a guest with a need was made. */
const scoopedLate: fc.Arbitrary<Moves> = fc
  .record({ index: fc.nat({ max: 20 }), by: fc.constantFrom(...SCOOPS) })
  .map(({ index, by }) => (state) => {
    const took = everyTicket(state).flatMap(({ builds }) =>
      builds.flatMap((build) => (build.choice.needs.length > 0 ? build.took : [])),
    )
    const pan = took[index % Math.max(1, took.length)]?.pan
    const behind = pan === undefined ? undefined : state.backupPans[pan]
    const onLine = pans.find(({ component }) => component === behind?.component)?.id
    if (pan === undefined || (behind && onLine === undefined)) return []
    const soils: Given = { type: 'soilPan', pan: onLine ?? pan, by }
    return acts([behind ? { ...soils, backup: true } : soils], 1, 1_000)
  })

/** What was made for a guest with a need is made again. */
export const madeAgain: fc.Arbitrary<Moves> = some.map(({ index, ms }) => (state) => {
  const all = everyTicket(state).flatMap(({ number: ticket, builds }) =>
    builds.flatMap(({ letter, state: is, choice }) =>
      (is === 'made' || is === 'handed-over') && choice.needs.length > 0
        ? [{ ticket, letter }]
        : [],
    ),
  )
  const at = all[index % Math.max(1, all.length)]
  return at ? acts([{ type: 'remake', ...at }], 1, ms) : []
})

/** A batch is cooled in time, as far as it gets, and reheated. */
const cooled: fc.Arbitrary<Moves> = fc
  .record({ index: fc.nat({ max: 20 }), most: fc.integer({ min: 1, max: 4 }) })
  .map(({ index, most }) => (state) => {
    const hot = Object.entries(state.batches).filter(
      ([, one]) => one.finishedAt !== null && one.cooling.length === 0 && one.offSale === null,
    )
    const batch = hot[index % Math.max(1, hot.length)]?.[0]
    if (batch === undefined) return []
    const cools = (degrees: number): Given => ({
      type: 'recordCooling',
      batch,
      reading: fahrenheit(degrees, { scaleConfirmed: true }),
      initials,
      presentUntil: state.at + 480 * MINUTE,
    })
    // It leaves the cold when it is heated: once all of that has passed.
    const heats: Given = {
      type: 'recordReheating',
      batch,
      place: 'range',
      startedAt: state.at + 150 * MINUTE,
      reading: { ...fahrenheit(168), where: 'thickest-part', heldSeconds: 20 },
      initials,
    }
    const stages = [cools(140), cools(68), cools(39)]
      .slice(0, most)
      .flatMap((command): readonly Act[] => [
        { do: 'command', command, by: 'in-charge' },
        { do: 'pass', ms: 50 * MINUTE },
      ])
    return most < 4 ? stages : [...stages, { do: 'command', command: heats, by: 'in-charge' }]
  })

export const leadingSomewhere: fc.Arbitrary<Moves> = fc.oneof(
  { weight: 3, arbitrary: readBad },
  { weight: 1, arbitrary: neverGood },
  { weight: 4, arbitrary: toldLate },
  { weight: 2, arbitrary: shelfBad },
  { weight: 2, arbitrary: madeAgain },
  { weight: 3, arbitrary: scoopedLate },
  { weight: 1, arbitrary: cooled },
)
