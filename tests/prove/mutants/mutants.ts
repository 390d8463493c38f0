/** Small wrong changes of what people's safety hangs on: the tests notice nearly all of them. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { root, sha256 } from '#server/clone.mjs'
import { EXPLAINED, type Explained } from '#tests/prove/mutants/explained.ts'
import { keepInFile } from '#tests/prove/mutants/kept-results.ts'
import { readModules, testsBelow } from '#tests/prove/mutants/modules.ts'
import { type MutatedFiles, mutatedFiles } from '#tests/prove/mutants/mutated-files.ts'
import { type Mutant, mutantsOf } from '#tests/prove/mutants/operators.ts'
import { type Outcome, runMutants } from '#tests/prove/mutants/run-mutants.ts'
import { refusedByTypes } from '#tests/prove/mutants/type-check.ts'
import { createFindings, type Proof } from '#tests/prove/proof.ts'

/** Of the files of which not all are run. */
const DRAWN = 400
/** Drawn for each of them, since the type check refuses about half. */
const CANDIDATES = 4

const MOST_MINUTES = 60
const TOLD_EVERY = 100

/** Killed or explained, of all that were run. */
const LEAST_SHARE = 0.95

const TESTS = ['tests/lib', 'tests/reference']

export interface MutantsAsked {
  readonly seed: number
  /** All mutants of the files whose paths begin so, and no others; null for the usual. */
  readonly of: string | null
}

/** Some of the mutants: a seed draws nearly the same when the code changes a little. */
export const drawn = (mutants: readonly Mutant[], seed: number, count: number): readonly Mutant[] =>
  mutants
    .map((one) => ({ one, by: sha256(String(seed), one.file, one.before, one.after) }))
    .sort((one, other) => (one.by < other.by ? -1 : 1))
    .slice(0, count)
    .map(({ one }) => one)

const isOf = (mutant: Mutant, { file, before, after }: Explained): boolean =>
  mutant.file === file && mutant.before === before && mutant.after === after

const mutantsIn = (files: readonly string[]): readonly Mutant[] =>
  files.flatMap((file) => mutantsOf(file, readFileSync(join(root, file), 'utf8')))

interface Chosen {
  readonly mutants: readonly Mutant[]
  /** Of those that were asked for, as many as the type check refuses. */
  readonly refused: number
}

const chosen = async (
  { seed, of }: MutantsAsked,
  { whole, drawn: some }: MutatedFiles,
): Promise<Chosen> => {
  const all = mutantsIn(
    of === null ? whole : [...whole, ...some].filter((one) => one.startsWith(of)),
  )
  const candidates = of === null ? drawn(mutantsIn(some), seed, CANDIDATES * DRAWN) : []
  const refused = await refusedByTypes([...all, ...candidates])
  const isMutant = (one: Mutant): boolean => !refused.has(one)
  const kept = all.filter(isMutant)
  const others = candidates.filter(isMutant).slice(0, DRAWN)
  const last = others.at(-1)
  const tried = last ? candidates.indexOf(last) + 1 : 0
  return {
    mutants: [...kept, ...others],
    refused: all.length - kept.length + (tried - others.length),
  }
}

const told = ({ mutant: { file, line, operator, before, after }, end }: Outcome): string =>
  `${end}: ${file}:${line} (${operator})\n           ${before}\n         > ${after}`

const counted = (outcomes: readonly Outcome[]): string => {
  const files = [...new Set(outcomes.map(({ mutant }) => mutant.file))].sort()
  return files
    .map((file) => {
      const own = outcomes.filter(({ mutant }) => mutant.file === file)
      const noticed = own.filter(({ end }) => end === 'killed' || end === 'hung')
      return `${file} ${noticed.length}/${own.length}`
    })
    .join('; ')
}

export const proveMutants = async (asked: MutantsAsked): Promise<Proof> => {
  const begun = performance.now()
  const { failures, require } = createFindings()
  const files = mutatedFiles()
  const { mutants, refused } = await chosen(asked, files)
  const { outcomes, broken, tests, fromBefore } = await runMutants(
    readModules(testsBelow(TESTS)),
    mutants,
    [...files.whole, ...files.drawn],
    keepInFile(),
    begun + MOST_MINUTES * 60_000,
    (done) => {
      if (done.length % TOLD_EVERY === 0) console.error(`${done.length} of ${mutants.length}`)
    },
  )
  for (const one of broken) require(false, `fails without any mutant: ${one}`)
  const [noticed, unnoticed] = [
    outcomes.filter(({ end }) => end === 'killed' || end === 'hung'),
    outcomes.filter(({ end }) => end !== 'killed' && end !== 'hung'),
  ]
  const explained = unnoticed.filter(({ mutant }) => EXPLAINED.some((one) => isOf(mutant, one)))
  const rest = unnoticed.filter((one) => !explained.includes(one))
  const share = (noticed.length + explained.length) / mutants.length
  require(share >=
    LEAST_SHARE, `${(100 * share).toFixed(1)} % are killed or explained, less than ${100 * LEAST_SHARE} %`)
  const others = mutantsIn(files.drawn.filter((file) => EXPLAINED.some((one) => one.file === file)))
  for (const one of EXPLAINED) {
    const said = `${one.file}: ${one.before} > ${one.after}`
    const known = files.whole.includes(one.file) ? mutants : others
    require(known.some((mutant) => isOf(mutant, one)) ||
      !mutants.some(({ file }) => file === one.file), `explained, and no mutant any more: ${said}`)
    // Of mutants that read alike one may be killed, but not all.
    const alike = outcomes.filter(({ mutant }) => isOf(mutant, one))
    require(alike.length === 0 ||
      alike.some((outcome) => explained.includes(outcome)), `explained, and killed: ${said}`)
  }
  const hung = noticed.filter(({ end }) => end === 'hung').length
  return {
    title: `mutants: ${mutants.length}, seed ${asked.seed}: ${noticed.length} killed, ${explained.length} explained, ${rest.length} not`,
    figures: [
      `${refused} more don’t compile; ${tests} tests; ${hung} of the killed hung; ${fromBefore} found by an earlier run; ${Math.round((performance.now() - begun) / 1000)} s`,
      counted(outcomes),
      ...rest.map(told),
    ],
    failures,
  }
}
