import { z } from 'zod'
import type { Label } from '#lib/menu/label.ts'
import { relabelled } from '#lib/menu/relabelled.ts'
import { newestStationSchema } from '#lib/menu/schema.ts'
import { labelSchema } from '#lib/menu/station-parts-schema.ts'
import { declarable } from '#lib/needs/askable.ts'
import { isStale } from '#lib/service/commands/check-needs.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { whenInCharge } from '#lib/service/commands/in-charge.ts'
import { allHolds } from '#lib/service/commands/recheck.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'

export const notSameProductSchema = z.strictObject({
  type: z.literal('notSameProduct'),
  ingredient: idField,
})
export const changeLabelSchema = z.strictObject({
  type: z.literal('changeLabel'),
  ingredient: idField,
  label: labelSchema,
})

/** A service behind its station's newest document stays behind: a label doesn't catch it up. */
const nextRevision = (state: RunningState, circumstances: Circumstances): number =>
  isStale(state, circumstances) ? state.revision : state.revision + 1

/** The label as it is from now on, and every build that it no longer fits. */
const labelled = (
  before: RunningState,
  ingredient: string,
  label: Label | null,
  circumstances: Circumstances,
): Decision => {
  const after = { ...before, station: relabelled(before.station, ingredient, label) }
  const { checker } = circumstances
  return happened(
    { type: 'labelChanged', ingredient, label, revision: nextRevision(before, circumstances) },
    ...allHolds({ before, after, reason: 'label', checker }),
  )
}

const has = (state: RunningState, ingredient: string): boolean =>
  state.station.ingredients.some((one) => one.id === ingredient)

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
    return labelled(running, ingredient, null, circumstances)
  })

/** A label that was read: its document is checked as a station's document is on arrival. */
export const decideChangeLabel = (
  state: ServiceState,
  { ingredient, label }: z.infer<typeof changeLabelSchema>,
  circumstances: Circumstances,
): Decision =>
  whenInCharge(state, circumstances, (running) => {
    if (!has(running, ingredient)) return refuse({ code: 'no-such-ingredient', id: ingredient })
    const known = declarable(running.station)
    const unknown = Object.keys(label.declarations).find((code) => !known.has(code))
    if (unknown !== undefined) return refuse({ code: 'no-such-need', need: unknown })
    if (!newestStationSchema.safeParse(relabelled(running.station, ingredient, label)).success)
      return refuse({ code: 'label-contradicts', ingredient })
    return labelled(running, ingredient, label, circumstances)
  })
