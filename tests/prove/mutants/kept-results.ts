/** What earlier runs found, so that a run goes on where one stopped, and after a change runs little. */
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { root, sha256 } from '#server/clone.mjs'
import type { Ran } from '#tests/prove/mutants/job.ts'
import type { Mutant } from '#tests/prove/mutants/operators.ts'

export interface End {
  readonly end: 'killed' | 'hung' | 'survived' | 'uncalled' | 'not run'
  /** The test file that noticed. */
  readonly by: string | null
}

interface Result {
  readonly end: 'killed' | 'hung' | 'survived'
  readonly by: string | null
  /** The digest of the test file that noticed, or of each that didn't. */
  readonly digests: readonly string[]
}

interface Kept {
  readonly results: Record<string, Result>
  /** What test files do without a mutant, by what stands in them and in all that they reach. */
  readonly unchanged: Record<string, Ran>
}

/** A digest for each test that could notice. */
export type Digests = ReadonlyMap<string, string>

export interface Keep {
  readonly unchanged: (digest: string) => Ran | undefined
  readonly addUnchanged: (digest: string, ran: Ran) => void
  /** What was found where the tests are as they were. */
  readonly find: (mutant: Mutant, digests: Digests) => End | null
  /** Whether a test, as it is, is known not to notice. */
  readonly isDeaf: (mutant: Mutant, digest: string) => boolean
  readonly add: (mutant: Mutant, end: End, digests: Digests) => void
  readonly write: () => void
}

const FILE = join(root, '.build', 'mutants.json')
const WRITTEN_EVERY = 10

const keyOf = ({ file, text }: Mutant): string => sha256(file, text)

const read = (): Kept => {
  try {
    return JSON.parse(readFileSync(FILE, 'utf8'))
  } catch {
    return { results: {}, unchanged: {} }
  }
}

export const keepNothing: Keep = {
  unchanged: () => undefined,
  addUnchanged: () => undefined,
  find: () => null,
  isDeaf: () => false,
  add: () => undefined,
  write: () => undefined,
}

export const keepInFile = (): Keep => {
  const kept = read()
  const { results, unchanged } = kept
  let unwritten = 0
  const write = (): void => {
    mkdirSync(dirname(FILE), { recursive: true })
    writeFileSync(`${FILE}.new`, JSON.stringify(kept))
    renameSync(`${FILE}.new`, FILE)
    unwritten = 0
  }
  const isDeaf = (mutant: Mutant, digest: string): boolean => {
    const known = results[keyOf(mutant)]
    return known?.end === 'survived' && known.digests.includes(digest)
  }
  return {
    unchanged: (digest) => unchanged[digest],
    addUnchanged: (digest, ran) => {
      unchanged[digest] = ran
    },
    find: (mutant, digests) => {
      const known = results[keyOf(mutant)]
      if (!known) return null
      const { end, by } = known
      const now = by === null ? [...digests.values()] : [digests.get(by) ?? '']
      return now.every((one) => known.digests.includes(one)) ? { end, by } : null
    },
    isDeaf,
    add: (mutant, { end, by }, digests) => {
      if (end === 'uncalled' || end === 'not run') return
      results[keyOf(mutant)] = {
        end,
        by,
        digests: by === null ? [...digests.values()] : [digests.get(by) ?? ''],
      }
      unwritten += 1
      if (unwritten >= WRITTEN_EVERY) write()
    },
    write,
  }
}
