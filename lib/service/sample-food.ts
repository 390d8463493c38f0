/** Commands about batches, pans and readings that are worth trying as samples. */
import { componentOf, pansOf } from '#lib/menu/find.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import type { Command } from '#lib/service/decide.ts'
import { batchesInOrder, needsBatch } from '#lib/service/food-now.ts'
import { allStock, componentIn } from '#lib/service/held-stock.ts'
import {
  cookedReading,
  INVENTED_INITIALS as initials,
  readingInLimits,
} from '#lib/service/opening-commands.ts'
import { shelfHeldBy } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { waysFor } from '#lib/service/ways-out.ts'
import { civilDate } from '#lib/time/civil.ts'

/** What is put into a pan: of its batch, where it needs one, as much as is left up to `amount`. */
const foodFor = (state: RunningState, id: string, amount: number) => {
  const component = componentOf(state.station, componentIn(state.station, id) ?? '')
  const reading = readingInLimits(state.station, component)
  const read = reading ? { reading, initials } : {}
  if (!needsBatch(component)) {
    const preparedOn = civilDate(state.at, state.station.timeZone)
    return { amount, ...(reading ? ({ bought: true, preparedOn } as const) : {}), ...read }
  }
  const [batch] = batchesInOrder(state, component.id)
  const of = batch === undefined ? undefined : state.batches[batch]
  return {
    amount: Math.min(amount, of ? leftOfBatch(of) : amount),
    ...(batch === undefined ? {} : { batch }),
    ...read,
  }
}

const ofPans = (state: RunningState): readonly Command[] =>
  pansOf(state.station).flatMap((pan): Command[] => {
    const portion = state.portions[pan.component]?.amount ?? 0
    const full = foodFor(state, pan.id, pan.usualPortions * portion)
    const isSoiled = (state.pans[pan.id]?.soiledBy ?? []).length > 0
    return [
      { type: 'load', pan: pan.id, ...full, ...(isSoiled ? { washed: true } : {}) },
      { type: 'changePan', pan: pan.id, ...full },
      { type: 'topUp', pan: pan.id, ...foodFor(state, pan.id, portion) },
    ]
  })

const ofBackups = (state: RunningState): readonly Command[] =>
  state.station.backups.flatMap(({ id: backup, component }): Command[] => {
    const portion = state.portions[component]?.amount ?? 0
    const food = foodFor(state, backup, 6 * portion)
    return [
      { type: 'setBackup', component, backup, ready: true, ...food },
      { type: 'setBackup', component, backup, ready: false },
    ]
  })

const ofBatches = (state: RunningState): readonly Command[] => [
  ...state.station.components
    .filter(needsBatch)
    .map(({ id }): Command => ({ type: 'startBatch', component: id, loads: 1 })),
  ...Object.entries(state.batches).flatMap(([batch, { component: id, amount }]): Command[] => {
    const component = componentOf(state.station, id)
    const portion = state.portions[id]?.amount ?? 1
    const heat = cookedReading(state.station, component)
    const hot = readingInLimits(state.station, { held: 'hot' })
    return [
      { type: 'finishBatch', batch, amount: amount + portion },
      ...(heat
        ? [
            { type: 'recordCooking', batch, reading: heat, initials } as const,
            {
              type: 'recordReheating',
              batch,
              place: 'range',
              startedAt: state.at,
              reading: heat,
              initials,
            } as const,
          ]
        : []),
      ...(hot
        ? [
            {
              type: 'recordCooling',
              batch,
              reading: hot,
              initials,
              presentUntil: state.at + 8 * HOUR_MS,
            } as const,
          ]
        : []),
    ]
  }),
]

const ofReadings = (state: RunningState): readonly Command[] =>
  allStock(state).flatMap(({ what, id, stock }): Command[] => {
    const heldBy = stock.food?.heldBy
    const reading =
      heldBy === 'hot' || heldBy === 'cold'
        ? readingInLimits(state.station, { held: heldBy })
        : undefined
    return [
      ...(reading && heldBy !== 'dry' && heldBy !== 'time' && heldBy !== undefined
        ? [
            { type: 'readTemperature', what, id, reading, initials } as const,
            {
              type: 'startTimeClock',
              what,
              id,
              leftAt: state.at,
              from: heldBy,
              rule: '4h',
              reading,
              initials,
            } as const,
          ]
        : []),
      ...waysFor(state, what, id, state.at).map(
        ({ way }): Command => ({ type: 'resolveOffSale', what, id, way }),
      ),
      { type: 'throwOut', what, id, reason: 'quality', initials },
    ]
  })

const ofShelf = (state: RunningState): readonly Command[] => {
  const held = shelfHeldBy(state)
  const reading = held && readingInLimits(state.station, { held })
  return [
    ...(reading ? [{ type: 'readShelf', reading, initials } as const] : []),
    { type: 'resolveShelf', way: 'discard' },
  ]
}

const ofHandedOver = ({ toTell }: RunningState): readonly Command[] =>
  Object.values(toTell).map(
    ({ what, id, builds }): Command => ({
      type: 'answerHandedOver',
      what,
      id,
      answer: 'told',
      seen: builds.length,
      initials,
    }),
  )

export const ofTheFood = (state: RunningState): readonly Command[] => [
  ...ofPans(state),
  ...ofBackups(state),
  ...ofBatches(state),
  ...ofReadings(state),
  ...ofShelf(state),
  ...ofHandedOver(state),
]
