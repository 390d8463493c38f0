/** Random steps of labels, scoops, back-up pans and the person in charge. */

import fc from 'fast-check'
import { labelOf } from '#lib/station/label.ts'
import { backupReady, type Given, load } from '#tests/support/service.ts'
import {
  components,
  mostly,
  pans,
  type Step,
  stationWithSpares,
} from '#tests/support/spare-station.ts'

const ingredients = stationWithSpares.ingredients
const protectedOnes = stationWithSpares.backups
  .filter((one) => one.protected)
  .map((one) => one.component)

/** Counts a pan; of one that was counted to nothing before sometimes that this was a slip. */
export const counting = (
  { pans: held }: Parameters<Step>[0],
  pan: string,
  amount: number,
  isSlip: boolean,
): Given => ({
  type: 'correct',
  pan,
  amount,
  ...(isSlip && amount > 0 && held[pan]?.ended ? { was: 'slip' } : {}),
})

/** Empties a soiled pan, then loads it, washed or not. */
export const emptying: fc.Arbitrary<Step> = fc
  .record({ index: fc.nat({ max: 9 }), washed: fc.boolean() })
  .map(({ index, washed }) => (state) => {
    const soiled = pans.filter((pan) => (state.pans[pan.id]?.soiledBy.length ?? 0) > 0)
    const pan = soiled[index % Math.max(1, soiled.length)]?.id ?? pans[0]?.id ?? ''
    return (state.pans[pan]?.amount ?? 0) > 0
      ? { type: 'correct', pan, amount: 0 }
      : { ...load(pan, 100_000), washed }
  })

/** A scoop is missing: the nearest stands in, or one that belongs to another component. */
const lending: fc.Arbitrary<Step> = fc
  .record({
    component: fc.constantFrom('rice', 'beans', 'peppers', 'tuna'),
    tool: fc.constantFrom(
      null,
      ...stationWithSpares.tools.flatMap(({ id, usualFor }) => (usualFor === null ? [] : [id])),
    ),
    isBack: fc.nat({ max: 3 }).map((one) => one > 0),
    washed: fc.boolean(),
    isSure: mostly,
  })
  .map(({ component, tool, isBack, washed, isSure }) => (state) => {
    const missing = Object.keys(state.standIns)
    if (isBack && missing.length > 0)
      return { type: 'scoopBack', component: missing[0] ?? component, washed }
    return {
      type: 'missScoop',
      component,
      ...(tool === null ? {} : { measures: [{ id: tool, count: 1 }] }),
      ...(isSure ? { yes: true } : {}),
    }
  })

export const ofTheKitchen: fc.Arbitrary<Step> = fc.oneof(
  { weight: 8, arbitrary: lending },
  {
    weight: 3,
    arbitrary: fc.constantFrom(...ingredients).map(({ id }) => () => ({
      type: 'notSameProduct' as const,
      ingredient: id,
    })),
  },
  {
    weight: 5,
    arbitrary: fc
      .record({
        one: fc.constantFrom(...ingredients),
        says: fc.constantFrom('free' as const, 'may-contain' as const, 'not-listed' as const),
        law: fc.constantFrom('us-9' as const, undefined),
      })
      .map(({ one, says, law }) => () => ({
        type: 'changeLabel' as const,
        ingredient: one.id,
        label: {
          ...labelOf(one),
          declarations: { ...one.declarations, peanut: says },
          ...(law === undefined ? {} : { law }),
        },
      })),
  },
  {
    weight: 3,
    arbitrary: fc
      .record({
        pan: fc.constantFrom(...pans),
        by: fc.constantFrom(...components),
        backup: fc.constantFrom(undefined, undefined, true),
      })
      .map(({ pan, by, backup }) => () => ({ type: 'soilPan' as const, pan: pan.id, by, backup })),
  },
  {
    weight: 6,
    arbitrary: fc.record({ component: fc.constantFrom(...protectedOnes), ready: mostly }).map(
      ({ component, ready }) =>
        () =>
          ready ? backupReady(component, 3) : { type: 'setBackup' as const, component, ready },
    ),
  },
  {
    weight: 8,
    arbitrary: fc.constantFrom<Step>(
      () => ({ type: 'signOn' }),
      () => ({ type: 'signOff' }),
    ),
  },
)
