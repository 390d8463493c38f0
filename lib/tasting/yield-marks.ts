/** A saved yield that is taken out again, or counted after all: marks beside its row, which stays. */
import type { YieldSaved } from '#lib/tasting/yields.ts'

export interface YieldMark {
  /** Id of the yield. */
  readonly yields: string
  readonly isOut: boolean
  /** Epoch milliseconds. */
  readonly at: number
  /** Id of the command. */
  readonly by: string
}

export interface MarkYield {
  readonly station: string
  readonly yields: string
  /** Taken out, or counted after all. */
  readonly isOut: boolean
  /** Of who says so; they lie in the second file. */
  readonly initials?: string | undefined
}

export type MarkRefusal =
  | 'no-such-yield'
  | 'already-so'
  | 'no-initials'
  | 'id-used-for-something-else'

/**
 * Saved yields with what the newest mark of each says.
 * @param marks the oldest first
 */
export const withMarks = (
  saved: readonly YieldSaved[],
  marks: readonly YieldMark[],
): readonly YieldSaved[] => {
  const newest = new Map(marks.map((one) => [one.yields, one]))
  return saved.map((one) => {
    const mark = newest.get(one.id)
    return mark ? { ...one, out: mark.isOut ? { at: mark.at, by: mark.by } : null } : one
  })
}

/** Why it isn't marked so; null where it is. `saved`: with their marks. */
export const markProblem = (
  saved: readonly YieldSaved[],
  { yields, isOut, initials }: MarkYield,
): MarkRefusal | null => {
  const found = saved.find(({ id }) => id === yields)
  if (!found) return 'no-such-yield'
  if ((found.out !== null) === isOut) return 'already-so'
  return (initials ?? '').trim() === '' ? 'no-initials' : null
}
