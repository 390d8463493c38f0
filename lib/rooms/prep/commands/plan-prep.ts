/** How each food of a planned service is made, from which its tasks are worked out. */
import { z } from 'zod'
import type { PrepChoice } from '#lib/prep/food-of.ts'
import { tasksOf } from '#lib/prep/tasks-of.ts'
import { prepPlanOf } from '#lib/rooms/prep/facts/prep-plan-of.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import { findComponent } from '#lib/station/find.ts'

const minutes = z.int().min(1).max(720)

const choice = z.strictObject({
  component: idField,
  loads: z.int().min(1).max(200),
  portions: z.int().min(1).max(20_000),
  /** Until all its loads are made; left away: as the document says of making it again. */
  minutes: minutes.optional(),
  ahead: z.literal(true).optional(),
  fromRoom: z.literal(true).optional(),
  frozen: z.literal(true).optional(),
  /** Measured here, or meant to be reached in ice: the readings decide. */
  coolsIn: z
    .strictObject({ first: minutes, total: minutes })
    .refine(({ first, total }) => first <= total, { error: '41 °F comes no sooner than 70 °F' })
    .optional(),
})

/** Without the keys that nobody said. */
const choiceOf = (said: z.output<typeof choice>): PrepChoice => {
  const { component, loads, portions, ahead, fromRoom, frozen, coolsIn } = said
  return {
    ...{ component, loads, portions },
    ...(said.minutes === undefined ? {} : { minutes: said.minutes }),
    ...(ahead ? { ahead } : {}),
    ...(fromRoom ? { fromRoom } : {}),
    ...(frozen ? { frozen } : {}),
    ...(coolsIn ? { coolsIn } : {}),
  }
}

/** Refused where a reading or a task falls to nobody, so that no plan is taken that can't be kept. */
export const planPrep = defineCommand({
  type: 'planPrep',
  who: [],
  stages: ['planned'],
  schema: {
    /** Each component once. */
    foods: z
      .array(choice)
      .max(60)
      .refine((all) => new Set(all.map(({ component }) => component)).size === all.length)
      .readonly(),
    ownTable: z.boolean().default(false),
  },
  decide: (state, { foods: said, ownTable }, { now }) => {
    const foods = said.map(choiceOf)
    const { station, plan, prep } = state
    if (!plan) return refuse({ code: 'service-not-open' })
    const unknown = foods.find(({ component }) => !findComponent(station, component))
    if (unknown) return refuse({ code: 'unknown', what: 'component', id: unknown.component })
    const [first] = tasksOf(prepPlanOf(station, plan, { foods, ownTable, from: now })).unready
    if (first) {
      const { task, component, at, why } = first
      return refuse({ code: 'prep-not-ready', task, component, at, why })
    }
    return prep && hashOf([prep.foods, prep.ownTable]) === hashOf([foods, ownTable])
      ? refuse({ code: 'already-so' })
      : happened({ type: 'prepPlanned', foods, ownTable })
  },
  sample: ({ station }) => [
    {
      foods: station.components
        .slice(0, 1)
        .map(({ id }) => ({ component: id, loads: 1, portions: 1 })),
    },
    { foods: [] },
  ],
  rules: ['PP11', 'PP12'],
  example: {
    foods: [{ component: 'chicken', loads: 2, portions: 24 }],
    ownTable: true,
  },
  tells:
    ' (`minutes` until all loads are made; `ahead`: cooked and cooled before, then reheated; `fromRoom`: of cans or dry stores; `frozen`; `coolsIn`: minutes to 70 °F and to 41 °F)',
})
