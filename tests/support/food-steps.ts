/** Random steps of batches, readings, clocks, and of what is off sale or thrown out. */
import fc from 'fast-check'
import { batchesInOrder } from '#lib/rooms/food/facts/food-now.ts'
import { DISCARD_REASONS } from '#lib/service/events/food-event.ts'
import { type BackupPan, EMPTY_STOCK, type HeldStock } from '#lib/service/food-state.ts'
import { allStock } from '#lib/service/held-stock.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { loadFields } from '#lib/spine/opening-commands.ts'
import { fahrenheit, MINUTE } from '#tests/support/food.ts'
import { type Given, ofPortions } from '#tests/support/service.ts'
import { mostly, pans, type Step, stationWithSpares } from '#tests/support/spare-station.ts'

const initials = 'KT'
const place = fc.nat({ max: 40 })
/** One in four. */
const seldom = fc.nat({ max: 3 }).map((one) => one === 0)

interface Standing {
  readonly what: 'pan' | 'backup' | 'batch'
  readonly id: string
  readonly heldBy: string | undefined
  readonly isOff: boolean
}

const heldIn = ({ food }: HeldStock | BackupPan): string | undefined => food?.heldBy

/** Pans and batches with food in them. */
const standing = (state: ServiceState): readonly Standing[] => {
  if (!isRunning(state)) return []
  return [
    ...allStock(state)
      .filter(({ stock }) => stock.amount > 0)
      .map(({ what, id, stock }) => ({
        what,
        id,
        heldBy: heldIn(stock),
        isOff: stock.offSale !== null,
      })),
    ...Object.entries(state.batches)
      .filter(([, { finishedAt, thrownOutAt }]) => finishedAt !== null && thrownOutAt === null)
      .map(([id, { clock, offSale, cooling }]) => ({
        what: 'batch' as const,
        id,
        heldBy: clock ? 'time' : cooling.length > 0 ? 'cold' : 'hot',
        isOff: offSale !== null,
      })),
  ]
}

const one = <Value>(of: readonly Value[], index: number): Value | undefined =>
  of[index % Math.max(1, of.length)]

const NOWHERE: Standing = { what: 'pan', id: 'pan-nowhere', heldBy: 'hot', isOff: false }

const degrees = (heldBy: string | undefined, isGood: boolean): number => {
  if (heldBy === 'hot') return isGood ? 150 : 120
  return isGood ? 38 : heldBy === 'time' ? 75 : 52
}

const reads = ({ what, id, heldBy }: Standing, isGood: boolean, cleaned?: boolean): Given => ({
  type: 'readTemperature',
  what,
  id,
  reading: fahrenheit(degrees(heldBy, isGood), {
    scaleConfirmed: true,
    ...(cleaned === undefined ? {} : { cleaned }),
  }),
  initials,
})

/** One reading, of what is off sale where `off` says so and something is. */
const reading: fc.Arbitrary<Step> = fc
  .record({
    index: place,
    isGood: fc.nat({ max: 2 }).map((one) => one > 0),
    off: seldom,
    cleaned: fc.constantFrom(true, true, false, undefined),
  })
  .map(({ index, isGood, off, cleaned }) => (state) => {
    const all = standing(state)
    const isOff = all.filter((one) => one.isOff)
    return reads(one(off && isOff.length > 0 ? isOff : all, index) ?? NOWHERE, isGood, cleaned)
  })

/** Every hot or cold pan and batch read in its limits, as the round of every two hours does. */
export const readingRound = (state: ServiceState): readonly Given[] =>
  standing(state)
    .filter(({ heldBy }) => heldBy === 'hot' || heldBy === 'cold')
    .map((one) => reads(one, true, true))

/** What is put into a pan: of the batch that goes first, where there is one. */
const foodOf = (state: ServiceState, component: string, cleaned?: boolean) => {
  const made = stationWithSpares.components.find(({ id }) => id === component)
  if (!isRunning(state) || !made) return {}
  const [batch] = batchesInOrder(state, component)
  return loadFields(stationWithSpares, made, {
    now: state.at,
    cleaned,
    ...(batch === undefined ? {} : { batch }),
  })
}

const filling: fc.Arbitrary<Step> = fc
  .record({
    pan: fc.constantFrom(...pans),
    type: fc.constantFrom('load' as const, 'changePan' as const, 'topUp' as const),
    portions: fc.integer({ min: 1, max: 8 }),
    timed: fc.nat({ max: 5 }).map((one) => one === 0),
    dated: fc.nat({ max: 3 }).map((one) => one === 0),
  })
  .map(({ pan, type, portions, timed, dated }) => (state): Given => {
    const held = state.pans[pan.id] ?? EMPTY_STOCK
    return {
      type: type === 'load' && held.amount > 0 ? 'changePan' : type,
      pan: pan.id,
      amount: ofPortions(pan.component, portions),
      ...foodOf(state, pan.component),
      ...(timed && type !== 'topUp' ? { heldBy: 'time' as const } : {}),
      ...(dated ? { preparedOn: '2026-11-24' } : {}),
      ...(type === 'load' && held.amount === 0 ? { washed: true } : {}),
    }
  })

const backingUp: fc.Arbitrary<Step> = fc
  .record({
    backup: fc.constantFrom(...stationWithSpares.backups),
    ready: mostly,
    portions: fc.integer({ min: 1, max: 3 }),
    cleaned: fc.constantFrom(true, true, true, false, undefined),
  })
  .map(({ backup: { id: backup, component }, ready, portions, cleaned }) => (state): Given => {
    const stands = (state.backupPans[backup]?.amount ?? 0) > 0
    return ready && !stands
      ? {
          type: 'setBackup',
          component,
          backup,
          ready,
          amount: ofPortions(component, portions),
          ...foodOf(state, component, cleaned),
        }
      : { type: 'setBackup', component, backup, ready: ready && portions === 3 }
  })

const COOKED = ['rice', 'chicken', 'beans', 'peppers']

const batching: fc.Arbitrary<Step> = fc
  .record({
    index: place,
    component: fc.constantFrom(...COOKED, 'tuna'),
    isGood: mostly,
    loads: fc.constantFrom(1, 1, 2),
    act: fc.constantFrom('start' as const, 'cook' as const, 'cook' as const, 'finish' as const),
  })
  .map(({ index, component, isGood, loads, act }) => (state): Given => {
    const open = Object.entries(state.batches).filter(([, { finishedAt }]) => finishedAt === null)
    const found = one(open, index)
    if (act === 'start' || !found) return { type: 'startBatch', component, loads }
    const [batch, { cooking }] = found
    if (act === 'cook' || (isGood && cooking.length === 0))
      return {
        type: 'recordCooking',
        batch,
        reading: {
          ...fahrenheit(isGood ? 168 : 120, { scaleConfirmed: true }),
          where: 'thickest-part',
          heldSeconds: 20,
        },
        initials,
      }
    return { type: 'finishBatch', batch, amount: ofPortions(found[1].component, 20 + index) }
  })

const COOLING = [140, 68, 39, 55]

/** A batch cools in steps of its readings; now and then one is out of them. */
const cooling: fc.Arbitrary<Step> = fc
  .record({ index: place, slip: fc.nat({ max: 4 }).map((one) => (one === 0 ? 1 : 0)) })
  .map(({ index, slip }) => (state): Given => {
    const done = Object.entries(state.batches).filter(([, one]) => one.finishedAt !== null)
    const [batch, { cooling }] = one(done, index) ?? ['b99', { cooling: [] }]
    return {
      type: 'recordCooling',
      batch,
      reading: fahrenheit(COOLING[cooling.length + slip] ?? 55, { scaleConfirmed: true }),
      initials,
      presentUntil: state.at + 480 * MINUTE,
    }
  })

const reheating: fc.Arbitrary<Step> = fc
  .record({ index: place, isHot: mostly })
  .map(({ index, isHot }) => (state): Given => {
    const cooled = Object.entries(state.batches).filter(([, one]) => one.cooling.length > 0)
    return {
      type: 'recordReheating',
      batch: one(cooled, index)?.[0] ?? 'b99',
      place: 'range',
      startedAt: state.at,
      reading: {
        ...fahrenheit(isHot ? 168 : 130, { scaleConfirmed: true }),
        where: 'thickest-part',
        heldSeconds: 20,
      },
      initials,
    }
  })

const timing: fc.Arbitrary<Step> = fc
  .record({
    index: place,
    isGood: mostly,
    rule: fc.constantFrom('4h' as const, '4h' as const, '6h' as const),
  })
  .map(({ index, isGood, rule }) => (state): Given => {
    const all = standing(state)
    const batches = all.filter(({ what }) => what === 'batch')
    const found = one(index % 2 === 0 ? batches : all, index) ?? NOWHERE
    const from = found.heldBy === 'hot' ? 'hot' : 'cold'
    return {
      type: 'startTimeClock',
      what: found.what,
      id: found.id,
      leftAt: state.at,
      from,
      rule: from === 'hot' ? '4h' : rule,
      reading: fahrenheit(degrees(from, isGood), { scaleConfirmed: true }),
      initials,
    }
  })

const resolving: fc.Arbitrary<Step> = fc
  .record({
    index: place,
    way: fc.constantFrom('discard' as const, 'time-only' as const, 'reheat' as const),
  })
  .map(({ index, way }) => (state): Given => {
    const { what, id } =
      one(
        standing(state).filter(({ isOff }) => isOff),
        index,
      ) ?? NOWHERE
    if (way !== 'reheat') return { type: 'resolveOffSale', what, id, way }
    return {
      type: 'resolveOffSale',
      what,
      id,
      way,
      place: 'range',
      startedAt: state.at,
      reading: { ...fahrenheit(168, { scaleConfirmed: true }), heldSeconds: 20 },
      initials,
      presentUntil: state.at + 480 * MINUTE,
    }
  })

/** What is to be thrown out is, and now and then what nobody had said anything of. */
const throwingOut: fc.Arbitrary<Step> = fc
  .record({ index: place, due: mostly, reason: fc.constantFrom(...DISCARD_REASONS), named: mostly })
  .map(({ index, due, reason, named }) => (state): Given => {
    const bound = one(Object.values(state.toThrowOut), index)
    const found = due && bound ? bound : (one(standing(state), index) ?? NOWHERE)
    return {
      type: 'throwOut',
      what: found.what,
      id: found.id,
      reason: due && bound ? 'past-time' : reason,
      ...(named ? { initials } : {}),
    }
  })

const answering: fc.Arbitrary<Step> = fc
  .record({
    index: place,
    answer: fc.constantFrom('told' as const, 'nothing' as const),
    sees: mostly,
  })
  .map(({ index, answer, sees }) => ({ toTell }): Given => {
    const entry = one(Object.values(toTell), index)
    return {
      type: 'answerHandedOver',
      what: entry?.what ?? 'pan',
      id: entry?.id ?? 'pan-rice',
      answer,
      seen: sees ? (entry?.builds.length ?? 0) : 0,
      initials,
    }
  })

/** The hot shelf of made food is read, and what stands there decided on. */
const shelf: fc.Arbitrary<Step> = fc
  .record({ isGood: mostly, resolves: fc.boolean(), way: fc.constantFrom('discard', 'time-only') })
  .map(({ isGood, resolves, way }) => (state): Given => {
    if (resolves && state.shelf?.offSale)
      return { type: 'resolveShelf', way: way as 'discard' | 'time-only' }
    return {
      type: 'readShelf',
      reading: fahrenheit(isGood ? 150 : 120, { scaleConfirmed: true }),
      initials,
    }
  })

/** A strip of the sanitizer, at times of nobody, or without its water. */
const strip: fc.Arbitrary<Step> = fc
  .record({ mgPerL: fc.constantFrom(10, 50, 100, 250), isRead: mostly, isInitialed: mostly })
  .map(({ mgPerL, isRead, isInitialed }) => () => ({
    type: 'readSanitizer',
    mgPerL,
    water: isRead ? { tenths: 750, scale: 'F' } : null,
    ph: null,
    ...(isInitialed ? { initials } : {}),
  }))

export const ofTheFood: fc.Arbitrary<Step> = fc.oneof(
  { weight: 10, arbitrary: reading },
  { weight: 7, arbitrary: filling },
  { weight: 7, arbitrary: backingUp },
  { weight: 6, arbitrary: batching },
  { weight: 4, arbitrary: cooling },
  { weight: 1, arbitrary: reheating },
  { weight: 4, arbitrary: timing },
  { weight: 6, arbitrary: resolving },
  { weight: 6, arbitrary: throwingOut },
  { weight: 2, arbitrary: answering },
  { weight: 4, arbitrary: shelf },
  { weight: 2, arbitrary: strip },
)
