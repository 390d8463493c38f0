/** The files whose mutants the tests must notice. */
import { filesBelow } from '#tests/support/source-tree.ts'

/** What is said to a guest, and what follows from a fact: every mutant. */
const WHOLE: readonly string[] = [
  'lib/needs/contact.ts',
  'lib/needs/declared.ts',
  'lib/needs/judge.ts',
  'lib/needs/kitchen.ts',
  'lib/spine/consequences/',
  'lib/rooms/care/facts/kitchen-of.ts',
]

/** Some, drawn. */
const DRAWN: readonly string[] = [
  'lib/needs/',
  'lib/safety/',
  'lib/service/',
  'lib/rooms/',
  'lib/spine/',
]

/** Neither a rule of safety nor a fold: what commands ask, stock and advice, and made-up food and orders. */
const NOT_DRAWN: readonly string[] = [
  'lib/service/commands/',
  'lib/service/mark.ts',
  'lib/rooms/food/facts/invented-readings.ts',
  'lib/rooms/food/facts/invented-readings.ts',
  'lib/rooms/pans/facts/',
  'lib/rooms/orders/facts/',
  'lib/rooms/advice/facts/',
  'lib/rooms/day/facts/',
  'lib/spine/opening-commands.ts',
  'lib/spine/samples/',
]

const among = (starts: readonly string[], path: string): boolean =>
  starts.some((start) => path.startsWith(start))

/** Of a room, what is drawn: its facts and folds. */
const isAsked = (path: string): boolean =>
  /^lib\/rooms\/[a-z]+\/(commands|views|words)\//.test(path)

export interface MutatedFiles {
  readonly whole: readonly string[]
  readonly drawn: readonly string[]
}

export const mutatedFiles = (): MutatedFiles => {
  const files = ['lib/needs', 'lib/safety', 'lib/service', 'lib/rooms', 'lib/spine']
    .flatMap(filesBelow)
    .filter((path) => path.endsWith('.ts'))
  const whole = files.filter((path) => among(WHOLE, path))
  return {
    whole,
    drawn: files.filter(
      (path) =>
        among(DRAWN, path) && !among(NOT_DRAWN, path) && !isAsked(path) && !whole.includes(path),
    ),
  }
}
