import type { Missing, MissingFor, Problem } from '#lib/editor/problem.ts'

/** What isn't there yet rather than wrong: nobody has done anything that could be. */
const NOT_YET: readonly string[] = [
  'missing',
  'empty',
  'too-few',
  'no-density',
  'made-of-nothing',
  'no-heart',
]

export const isNotYet = ({ code }: Problem): boolean => NOT_YET.includes(code)

/** Lists that the schema asks for, told by what is missing for a first order. */
const isList = ({ entity, field }: Problem): boolean =>
  entity === 'house' && (field === null || /^(line|items|components|ingredients)/.test(field))

const isSame = (one: Missing | Problem, other: Missing | Problem): boolean =>
  one.entity === other.entity && one.id === other.id && one.field === other.field

/** Problems that are mended by putting something in, and that no list of what is missing names. */
const alsoMissing = (
  problems: readonly Problem[],
  { firstOrder }: MissingFor,
): readonly Missing[] =>
  problems
    .filter((one) => isNotYet(one) && !isList(one))
    .filter((one) => !firstOrder.some((missing) => isSame(one, missing)))
    .map(({ code, entity, id, field }) => ({ code, entity, id, field, costs: 'not-published' }))

/** What is missing for each purpose, and what is really wrong. */
export const openIn = (
  problems: readonly Problem[],
  missing: MissingFor,
): { readonly wrong: readonly Problem[]; readonly missing: MissingFor } => ({
  wrong: problems.filter((one) => !isNotYet(one) && !isList(one)),
  missing: { ...missing, firstOrder: [...missing.firstOrder, ...alsoMissing(problems, missing)] },
})
