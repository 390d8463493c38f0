import { z } from 'zod'
import { civilDate } from '#lib/measure/civil.ts'
import { ownDocument, pansHolding } from '#lib/rooms/care/facts/mixing.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
} from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { LABEL } from '#lib/service/commands/example-parts.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import type { LabelChanged } from '#lib/service/events/line-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { declarable } from '#lib/station/codes/askable.ts'
import { type Label, labelOf } from '#lib/station/label.ts'
import { labelProblem } from '#lib/station/label-problem.ts'
import { relabelled } from '#lib/station/relabelled.ts'
import { newestStationSchema } from '#lib/station/schema.ts'
import { labelSchema } from '#lib/station/shapes/label-schema.ts'

/** The label as it is from now on, in the house: the station's own document is the same as before. */
const labelled = (
  state: RunningState,
  label: Pick<LabelChanged, 'ingredient' | 'label' | 'pans' | 'same'>,
  { nextLabel }: Circumstances,
): Decision =>
  happened({
    type: 'labelChanged',
    ...label,
    revision: state.revision,
    ...(nextLabel === undefined ? {} : { version: nextLabel }),
  })

const has = (state: RunningState, ingredient: string): boolean =>
  ownDocument(state).ingredients.some((one) => one.id === ingredient)

/** Until its label is read, nothing of another product counts as free. */
export const notSameProduct = defineCommand({
  type: 'notSameProduct',
  who: ['assembly'],
  stages: ['planned', 'open'],
  schema: { ingredient: idField },
  decide: (state, { ingredient }, circumstances) => {
    if (!has(state, ingredient))
      return refuse({ code: 'unknown', what: 'ingredient', id: ingredient })
    const newest = state.labelChanges.filter((one) => one.ingredient === ingredient).at(-1)
    if (newest && !newest.read) return refuse({ code: 'already-so' })
    const pans = pansHolding(state, ingredient)
    return labelled(state, { ingredient, label: null, pans }, circumstances)
  },
  sample: (state) => ownDocument(state).ingredients.map(({ id }) => ({ ingredient: id })),
  rules: ['N2', 'S79', 'S90'],
  example: { ingredient: 'pita' },
  tells: ': nobody has read its label yet',
})

/** A label that was read today: its document is checked as a station's document is on arrival. */
export const changeLabel = defineCommand({
  type: 'changeLabel',
  who: ['in-charge'],
  stages: ['planned', 'open'],
  schema: {
    ingredient: idField,
    /** Who read it isn't kept in the label: that is for `initials`. */
    /** Of the words on the pack and its picture a service keeps nothing: they are the house’s. */
    label: labelSchema.omit({ list: true, photo: true }),
    /** Whether it is another product than what the pans hold, or the same that was read wrong. */
    product: z.enum(['other', 'same']).default('other'),
    initials: initialsField,
  },
  decide: (state, { ingredient, label: told, product }, circumstances) => {
    if (!has(state, ingredient))
      return refuse({ code: 'unknown', what: 'ingredient', id: ingredient })
    const readOn = civilDate(circumstances.now, state.station.timeZone)
    const label: Label = { ...told, readOn, readBy: null }
    const known = declarable(state.station)
    const unknown = Object.keys(label.declarations).find((code) => !known.has(code))
    if (unknown !== undefined) return refuse({ code: 'unknown', what: 'need', id: unknown })
    const problem = labelProblem(state.station, label)
    if (problem) return refuse({ code: 'label-contradicts', ingredient, problem })
    if (!newestStationSchema.safeParse(relabelled(ownDocument(state), ingredient, label)).success)
      return refuse({ code: 'label-contradicts', ingredient })
    const pans = product === 'other' ? pansHolding(state, ingredient) : []
    const same = product === 'same' ? ({ same: true } as const) : {}
    return labelled(state, { ingredient, label, pans, ...same }, circumstances)
  },
  sample: (state) =>
    ownDocument(state).ingredients.map(
      (one) => ({ ingredient: one.id, label: labelOf(one), product: 'same' }) as const,
    ),
  rules: ['S70', 'S79', 'S80', 'S92', 'N32'],
  example: { ingredient: 'pita', label: LABEL, initials: 'KT' },
  tells: ': read anew',
})
