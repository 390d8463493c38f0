import { z } from 'zod'
import type { Label } from '#lib/menu/label.ts'
import { labelProblem } from '#lib/menu/label-problem.ts'
import { relabelled } from '#lib/menu/relabelled.ts'
import { newestStationSchema } from '#lib/menu/schema.ts'
import { labelSchema } from '#lib/menu/station-parts-schema.ts'
import { declarable } from '#lib/needs/askable.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { whenInCharge } from '#lib/service/commands/when-in-charge.ts'
import { isStale } from '#lib/service/known.ts'
import type { LabelChanged } from '#lib/service/line-event.ts'
import { ownDocument, pansHolding } from '#lib/service/mixing.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { civilDate } from '#lib/time/civil.ts'

export const notSameProductSchema = z.strictObject({
  type: z.literal('notSameProduct'),
  ingredient: idField,
})
export const changeLabelSchema = z.strictObject({
  type: z.literal('changeLabel'),
  ingredient: idField,
  /** Who read it isn't kept in the label: that is for `initials`. */
  label: labelSchema,
  /** Whether it is another product than what the pans hold, or the same that was read wrong. */
  product: z.enum(['other', 'same']).default('other'),
  initials: initialsField,
})

/** A service behind its station's newest document stays behind: a label doesn't catch it up. */
const nextRevision = (state: RunningState, circumstances: Circumstances): number =>
  isStale(state, circumstances) ? state.revision : state.revision + 1

/** The label as it is from now on. */
const labelled = (
  state: RunningState,
  label: Pick<LabelChanged, 'ingredient' | 'label' | 'pans'>,
  circumstances: Circumstances,
): Decision =>
  happened({ type: 'labelChanged', ...label, revision: nextRevision(state, circumstances) })

const has = (state: RunningState, ingredient: string): boolean =>
  ownDocument(state).ingredients.some((one) => one.id === ingredient)

/** Until its label is read, nothing of another product counts as free. */
export const decideNotSameProduct = (
  state: ServiceState,
  { ingredient }: z.infer<typeof notSameProductSchema>,
  circumstances: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    if (!has(running, ingredient)) return refuse({ code: 'no-such-ingredient', id: ingredient })
    const newest = running.labelChanges.filter((one) => one.ingredient === ingredient).at(-1)
    if (newest && !newest.read) return refuse({ code: 'already-so' })
    const pans = pansHolding(running, ingredient)
    return labelled(running, { ingredient, label: null, pans }, circumstances)
  })

/** A label that was read today: its document is checked as a station's document is on arrival. */
export const decideChangeLabel = (
  state: ServiceState,
  { ingredient, label: told, product }: z.infer<typeof changeLabelSchema>,
  circumstances: Circumstances,
): Decision =>
  whenInCharge(state, circumstances, (running) => {
    if (!has(running, ingredient)) return refuse({ code: 'no-such-ingredient', id: ingredient })
    const readOn = civilDate(circumstances.now, running.station.timeZone)
    const label: Label = { ...told, readOn, readBy: null }
    const known = declarable(running.station)
    const unknown = Object.keys(label.declarations).find((code) => !known.has(code))
    if (unknown !== undefined) return refuse({ code: 'no-such-need', need: unknown })
    const problem = labelProblem(running.station, label)
    if (problem) return refuse({ code: 'label-contradicts', ingredient, problem })
    if (!newestStationSchema.safeParse(relabelled(ownDocument(running), ingredient, label)).success)
      return refuse({ code: 'label-contradicts', ingredient })
    const pans = product === 'other' ? pansHolding(running, ingredient) : []
    return labelled(running, { ingredient, label, pans }, circumstances)
  })
