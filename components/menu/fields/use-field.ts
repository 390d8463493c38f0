import { fieldsWith, valueAt } from '#components/menu/fields/typed.ts'
import { useMenu } from '#components/menu/use-menu.tsx'
import { useMenuWords } from '#components/menu/words.tsx'
import { type Entity, type Json, rowOf } from '#lib/editor/draft.ts'

/** A field of a row: the row's entity and id, and the path within it. */
export interface FieldOf {
  readonly entity: Entity
  readonly id: string
  readonly field: string
}

export interface FieldNow {
  /** undefined: no answer yet. */
  readonly value: Json | undefined
  /** What is wrong with what was answered, in words; null where nothing is. */
  readonly problem: string | null
  readonly answer: (value: Json | undefined) => void
}

/** What a field holds, what is wrong with it, and how it is answered. */
export const useField = ({ entity, id, field }: FieldOf): FieldNow => {
  const { draft, problems, take } = useMenu()
  const words = useMenuWords()
  const row = rowOf(draft, entity, id)
  const value = valueAt(row, field)
  const found = problems.find(
    (one) => one.entity === entity && one.id === id && one.field === field,
  )
  return {
    value,
    // What isn't answered yet is said by what is missing: nobody has done anything wrong.
    problem: found && value !== undefined ? words.problem(draft, found) : null,
    answer: (to) => take({ do: 'put', entity, id, ...fieldsWith(row, field, to) }),
  }
}
