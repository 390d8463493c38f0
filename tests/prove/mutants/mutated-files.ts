/** The files whose mutants the tests must notice. */
import { filesBelow } from '#tests/support/source-tree.ts'

/** What is said to a guest, and what follows from a fact: every mutant. */
const WHOLE: readonly string[] = [
  'lib/needs/contact.ts',
  'lib/needs/declared.ts',
  'lib/needs/judge.ts',
  'lib/needs/kitchen.ts',
  'lib/service/consequences/',
  'lib/service/kitchen-of.ts',
]

/** Some, drawn. */
const DRAWN: readonly string[] = ['lib/needs/', 'lib/safety/', 'lib/service/']

/** Neither a rule nor a fold: what commands ask, and made-up orders, food and stock. */
const NOT_DRAWN: readonly string[] = [
  'lib/service/commands/',
  'lib/service/invented-readings.ts',
  'lib/service/opening-commands.ts',
  'lib/service/sample-',
  'lib/service/samples.ts',
]

const among = (starts: readonly string[], path: string): boolean =>
  starts.some((start) => path.startsWith(start))

export interface MutatedFiles {
  readonly whole: readonly string[]
  readonly drawn: readonly string[]
}

export const mutatedFiles = (): MutatedFiles => {
  const files = ['lib/needs', 'lib/safety', 'lib/service']
    .flatMap(filesBelow)
    .filter((path) => path.endsWith('.ts'))
  const whole = files.filter((path) => among(WHOLE, path))
  return {
    whole,
    drawn: files.filter(
      (path) => among(DRAWN, path) && !among(NOT_DRAWN, path) && !whole.includes(path),
    ),
  }
}
