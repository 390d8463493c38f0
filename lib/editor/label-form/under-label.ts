/** What would come under a label that was read of something else: a new ingredient, or another pack. */
import {
  type Draft,
  type Json,
  keyOf,
  type Row,
  recordsIn,
  rowsOf,
  textIn,
} from '#lib/editor/draft.ts'
import type { StepRefusal } from '#lib/editor/problem.ts'
import type { Step } from '#lib/editor/step.ts'
import type { Label } from '#lib/station/label.ts'

/** The house's newest label of an ingredient, or of one of its substitutes; null where it has none. */
export type HouseLabelOf = (ingredient: string, product: string | null) => Label | null

const PACK = ['maker', 'pack'] as const

/** Whether a field of what somebody makes says another maker or pack than it said. */
export const isOtherPack = (before: Row, after: Row): boolean =>
  PACK.some((field) => {
    const said = textIn(before, field)
    return said !== '' && textIn(after, field) !== said
  })

const isRead = (label: Label | null): boolean => label !== null && label.readOn !== null

const whyProduct = (
  ingredient: string,
  before: Row | undefined,
  after: Row,
  labelOf: HouseLabelOf,
): StepRefusal | null => {
  const id = textIn(after, 'id')
  const label = id === '' ? null : labelOf(ingredient, id)
  if (before === undefined) return label === null ? null : 'id-of-before'
  return isRead(label) && isOtherPack(before, after) ? 'other-pack' : null
}

const whyPut = (
  id: string,
  before: Row | undefined,
  after: Row,
  labelOf: HouseLabelOf,
): StepRefusal | null => {
  if (before === undefined && labelOf(id, null) !== null) return 'id-of-before'
  if (before !== undefined && isRead(labelOf(id, null)) && isOtherPack(before, after))
    return 'other-pack'
  const known = before === undefined ? [] : recordsIn(before, 'products')
  return (
    recordsIn(after, 'products')
      .map((product) => {
        const same = known.find((one) => textIn(one, 'id') === textIn(product, 'id'))
        return whyProduct(id, same, product, labelOf)
      })
      .find((why) => why !== null) ?? null
  )
}

/** The row after a step, as far as its names go. */
const putOn = (before: Row | undefined, { fields, clear = [] }: Step & { do: 'put' }): Row =>
  Object.fromEntries(
    Object.entries<Json>({ ...before, ...fields }).filter(([field]) => !clear.includes(field)),
  )

/**
 * The first of some steps by which food would come under a label that nobody read of it, and why;
 * null where none does. A label stays the house's when its ingredient is taken out, so that it counts
 * again where the ingredient itself comes back with a revision, and never by a name typed anew.
 */
export const underOthersLabel = (
  draft: Draft,
  steps: readonly Step[],
  labelOf: HouseLabelOf,
): { readonly step: number; readonly why: StepRefusal } | null => {
  const rows = new Map<string, Row | undefined>()
  for (const [step, one] of steps.entries()) {
    if (one.entity !== 'ingredient') continue
    const before = rows.has(one.id) ? rows.get(one.id) : draft.rows[keyOf('ingredient', one.id)]
    if (one.do === 'remove') rows.set(one.id, undefined)
    if (one.do !== 'put') continue
    const after = putOn(before, one)
    const why = whyPut(one.id, before, after, labelOf)
    if (why !== null) return { step, why }
    rows.set(one.id, after)
  }
  return null
}

/** Of ids that have a label in the house, those that nothing new may be called by. */
export const idsOfBefore = (draft: Draft, labelled: readonly string[]): readonly string[] => {
  const there = new Set(rowsOf(draft, 'ingredient').map(({ id }) => id))
  return labelled.filter((id) => !there.has(id))
}
