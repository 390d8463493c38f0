import { z } from 'zod'
import type { Label } from '#lib/menu/label.ts'
import { componentsWith } from '#lib/menu/made-with.ts'
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
import type { BackupSet, LabelChanged } from '#lib/service/event.ts'
import { mixedBy, ownDocument, pansHolding } from '#lib/service/mixing.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { backupsOf } from '#lib/stock/behind.ts'
import { civilDate } from '#lib/time/civil.ts'

export const notSameProductSchema = z.strictObject({
  type: z.literal('notSameProduct'),
  ingredient: idField,
})
export const changeLabelSchema = z.strictObject({
  type: z.literal('changeLabel'),
  ingredient: idField,
  label: labelSchema,
  /** Whether it is another product than what the pans hold, or the same that was read wrong. */
  product: z.enum(['other', 'same']).default('other'),
})

/** A service behind its station's newest document stays behind: a label doesn't catch it up. */
const nextRevision = (state: RunningState, circumstances: Circumstances): number =>
  isStale(state, circumstances) ? state.revision : state.revision + 1

/** Back-up pans of the product of before: no longer said to stand ready. */
const backupsWith = (state: RunningState, ingredient: string): readonly BackupSet[] =>
  componentsWith(state.station, ingredient)
    .filter((component) => state.backups[component] !== undefined)
    .flatMap((component): BackupSet[] => {
      const gone = { type: 'backupSet', component, ready: false } as const
      const standing = backupsOf(state, component)
      return standing.length === 0 ? [gone] : standing.map((backup) => ({ ...gone, backup }))
    })

/** The label as it is from now on, and every build that it no longer fits. */
const labelled = (
  before: RunningState,
  { ingredient, label, pans }: Pick<LabelChanged, 'ingredient' | 'label' | 'pans'>,
  circumstances: Circumstances,
): Decision => {
  const { checker } = circumstances
  const revision = nextRevision(before, circumstances)
  const gone = pans.length === 0 ? [] : backupsWith(before, ingredient)
  const after = {
    ...before,
    ...mixedBy(before, { ingredient, label, pans }),
    backups: Object.fromEntries(
      Object.entries(before.backups).filter(([id]) => !gone.some((one) => one.component === id)),
    ),
  }
  return happened(
    { type: 'labelChanged', ingredient, label, pans, revision },
    ...gone,
    ...allHolds({ before, after, reason: 'label', checker }),
  )
}

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
    const label: Label = { ...told, readOn }
    const known = declarable(running.station)
    const unknown = Object.keys(label.declarations).find((code) => !known.has(code))
    if (unknown !== undefined) return refuse({ code: 'no-such-need', need: unknown })
    if (!newestStationSchema.safeParse(relabelled(ownDocument(running), ingredient, label)).success)
      return refuse({ code: 'label-contradicts', ingredient })
    const pans = product === 'other' ? pansHolding(running, ingredient) : []
    return labelled(running, { ingredient, label, pans }, circumstances)
  })
