import { applyStep } from '#lib/editor/apply-step.ts'
import { type Draft, type EntityKey, keyOf, type Rows } from '#lib/editor/draft.ts'
import type { ChangedRows } from '#lib/editor/http.ts'
import type { Step } from '#lib/editor/step.ts'

/** Rows as they are once what changed is written into them. */
export const withChanged = (rows: Rows, changed: ChangedRows): Rows =>
  Object.fromEntries(
    Object.entries({ ...rows, ...changed }).filter(([, row]) => row !== null),
  ) as Rows

/** A draft with what was typed here and isn't saved yet; a step that can't be taken changes nothing. */
export const withSteps = (draft: Draft, steps: readonly Step[]): Draft =>
  steps.reduce((now, step) => {
    const after = applyStep(now, step)
    return after.ok ? after.draft : now
  }, draft)

const isOfOne = (one: Step, other: Step): boolean =>
  one.entity === other.entity && one.id === other.id

/** Steps with one more; what is typed into one row, letter by letter, is one step. */
export const followedBy = (steps: readonly Step[], step: Step): readonly Step[] => {
  const last = steps.at(-1)
  if (step.do === 'rename' && last?.do === 'rename' && isOfOne(last, step))
    return [...steps.slice(0, -1), step]
  if (step.do !== 'put') return [...steps, step]
  const before = last?.do === 'put' && isOfOne(last, step) ? last : null
  if (!before) return [...steps, step]
  const clear = [
    ...(before.clear ?? []).filter((field) => !(field in step.fields)),
    ...(step.clear ?? []),
  ]
  const fields = Object.fromEntries(
    Object.entries({ ...before.fields, ...step.fields }).filter(
      ([field]) => !step.clear?.includes(field),
    ),
  )
  const { entity, id } = step
  const both = { do: 'put', entity, id, fields, ...(clear.length > 0 ? { clear } : {}) } as const
  return [...steps.slice(0, -1), both]
}

/** Steps that write into none of these rows. */
export const without = (steps: readonly Step[], keys: readonly EntityKey[]): readonly Step[] =>
  steps.filter((step) => !keys.includes(keyOf(step.entity, step.id)))
