/** Food is conserved over services and larder, whatever is done, fails and starts again. */
import fc from 'fast-check'
import { createFindings, type Proof } from '#tests/prove/proof.ts'
import { DOES, liveDays, type Move } from '#tests/support/house-days.ts'
import { judgeHouse, readHouse } from '#tests/support/house-laws.ts'

/** Of what lies between services most; of the rest as much as brings it about. */
const OFTEN: Readonly<Partial<Record<Move['does'], number>>> = {
  ...{
    opens: 2,
    sells: 3,
    prepares: 2,
    ends: 6,
    takes: 5,
    loads: 4,
    ofLarder: 4,
    passes: 3,
    bothTake: 2,
  },
}

const move: fc.Arbitrary<Move> = fc.record({
  does: fc.oneof(...DOES.map((one) => ({ weight: OFTEN[one] ?? 1, arbitrary: fc.constant(one) }))),
  pick: fc.nat({ max: 1_000 }),
  which: fc.nat({ max: 1_000 }),
  share: fc.nat({ max: 100 }),
  server: fc.constantFrom(0, 1),
  failsAfter: fc.oneof(
    { weight: 11, arbitrary: fc.constant(null) },
    { weight: 1, arbitrary: fc.nat({ max: 3 }) },
  ),
})

const MOVES = { minLength: 30, maxLength: 60, size: 'max' } as const

/** What a run has to hold something of, or its laws are about nothing. */
const MUST_BE = [
  'lots set aside',
  'lots taken of',
  'loads of lots',
  'builds begun',
  'lots past their date',
  'coolings missed',
  'started again',
  'fell over',
]

/** Random days of a house from a seed on; the fewest moves that break a law are told. */
export const proveHouseDays = async (histories: number, seed: number): Promise<Proof> => {
  const { failures, require } = createFindings()
  const all: Record<string, number> = {}
  const add = (counts: Readonly<Record<string, number>>) => {
    for (const [name, count] of Object.entries(counts)) all[name] = (all[name] ?? 0) + count
  }
  const checked = await fc.check(
    fc.asyncProperty(fc.array(move, MOVES), async (moves) => {
      const house = await liveDays(moves)
      const { problems, seen } = judgeHouse(await readHouse(house))
      add(house.counts)
      add(seen)
      if (problems.length > 0) throw new Error(problems.slice(0, 5).join('\n'))
    }),
    { numRuns: histories, seed, endOnFailure: false },
  )
  require(!checked.failed, `${String(checked.errorInstance)}\n${fc.defaultReportMessage(checked) ?? ''}`)
  for (const name of MUST_BE) require((all[name] ?? 0) > 0, `none of these days has ${name}`)
  const said = Object.keys(all).sort()
  const line = (names: readonly string[]) => names.map((name) => `${name} ${all[name]}`).join(', ')
  const isCommand = (name: string) => / (accepted|refused|unanswered|not taken)$/.test(name)
  return {
    title: `days of a house: ${histories} histories of services and larder from seed ${seed}`,
    figures: [line(said.filter((name) => !isCommand(name))), line(said.filter(isCommand))],
    failures,
  }
}
