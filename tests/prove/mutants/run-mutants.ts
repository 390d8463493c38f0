/** Runs the tests that could notice a mutant, the quickest first, until one fails. */

import { dirname } from 'node:path'
import { root, sha256 } from '#server/clone.mjs'
import type { Ran, WorkerSetting } from '#tests/prove/mutants/job.ts'
import type { End, Keep } from '#tests/prove/mutants/kept-results.ts'
import { type ModuleTree, runnable } from '#tests/prove/mutants/modules.ts'
import type { Mutant } from '#tests/prove/mutants/operators.ts'
import { bodyAround, type Probed, probed } from '#tests/prove/mutants/probes.ts'
import { buildThread, createThread, type TestThread } from '#tests/prove/mutants/threads.ts'

/** Two cores. */
const THREADS = 2

/** A test that takes so long, and so many times as long as it does, hangs. */
const LEAST_MS = 20_000
const TIMES = 10

/** And without a mutant. */
const MOST_MS = 600_000

export interface Outcome extends End {
  readonly mutant: Mutant
}

export interface Run {
  readonly outcomes: readonly Outcome[]
  /** Test files that fail without any mutant, and how. */
  readonly broken: readonly string[]
  readonly tests: number
  readonly fromBefore: number
}

interface Baseline extends Ran {
  readonly test: string
}

const settingFor = async (
  tree: ModuleTree,
  probes: ReadonlyMap<string, Probed>,
): Promise<WorkerSetting> => {
  const inCode = async (texts: Iterable<readonly [string, string]>) =>
    Object.fromEntries(
      await Promise.all(
        [...texts].map(async ([path, text]) => [path, await runnable(path, text)] as const),
      ),
    )
  return {
    root,
    modules: await inCode(tree.texts),
    probed: await inCode([...probes].map(([path, { text }]) => [path, text] as const)),
    loads: Object.fromEntries(tree.loads),
    packages: tree.packages,
  }
}

/** Gives each thread the next of a list when it has done one. */
const inTurn = async <T>(
  threads: readonly TestThread[],
  list: readonly T[],
  work: (thread: TestThread, one: T) => Promise<void>,
): Promise<void> => {
  const left = [...list]
  await Promise.all(
    threads.map(async (thread) => {
      for (let one = left.shift(); one !== undefined; one = left.shift()) await work(thread, one)
    }),
  )
}

/**
 * @param probedFiles all that have mutants, run now or another time
 * @param untilMs on the clock of `performance`: mutants whose turn hasn't come by then aren't run
 */
export const runMutants = async (
  tree: ModuleTree,
  mutants: readonly Mutant[],
  probedFiles: readonly string[],
  keep: Keep,
  untilMs: number,
  tell: (done: readonly Outcome[]) => void = () => undefined,
): Promise<Run> => {
  const probes = new Map(
    probedFiles
      .filter((file) => tree.texts.has(file))
      .map((file) => [file, probed(file, tree.texts.get(file) ?? '')]),
  )
  const ofProbes = sha256(...[...probes.values()].map(({ text }) => text))
  const setting = await settingFor(tree, probes)
  await buildThread()
  const threads = await Promise.all(Array.from({ length: THREADS }, () => createThread(setting)))

  const baselines: Baseline[] = []
  const broken: string[] = []
  await inTurn(threads, tree.tests, async (thread, test) => {
    const digest = sha256(tree.digestOf(test), ofProbes)
    const ran =
      keep.unchanged(digest) ?? (await thread.run({ test, mutated: null, isProbed: true }, MOST_MS))
    if (typeof ran !== 'string' && ran.failed === null) keep.addUnchanged(digest, ran)
    if (typeof ran === 'string') broken.push(`${test}: ${ran}`)
    else if (ran.failed !== null) broken.push(`${test}: ${ran.failed}`)
    else baselines.push({ ...ran, test })
  })

  keep.write()

  const callers = new Map<string, Baseline[]>()
  for (const baseline of baselines)
    for (const [file, called] of baseline.hits)
      for (const body of called) {
        const key = `${file} ${body}`
        callers.set(key, [...(callers.get(key) ?? []), baseline])
      }

  const kills = new Map<string, number>()
  const outcomes: Outcome[] = []
  let fromBefore = 0

  const endOf = async (thread: TestThread, mutant: Mutant): Promise<Outcome> => {
    const { file } = mutant
    const probe = probes.get(file)
    const body = `${file} ${probe ? bodyAround(probe, mutant.start) : 0}`
    const could = callers.get(body) ?? []
    if (could.length === 0) return { mutant, end: 'uncalled', by: null }
    const digests = new Map(could.map(({ test }) => [test, tree.digestOf(test)]))
    const before = keep.find(mutant, digests)
    if (before) {
      fromBefore += 1
      return { mutant, ...before }
    }
    // Tests of the same folder, and those that noticed others of this file, the more of this function,
    // are likely to notice.
    const folder = `tests/${dirname(file)}/`
    const weight = ({ test, ms }: Baseline): number =>
      (ms + 5) /
      (1 +
        (kills.get(`${file} ${test}`) ?? 0) +
        5 * (kills.get(`${body} ${test}`) ?? 0) +
        (test.startsWith(folder) ? 3 : 0))
    const code = await runnable(file, mutant.text)
    const ended = async (): Promise<Outcome> => {
      for (const { test, ms } of could.toSorted((one, other) => weight(one) - weight(other))) {
        if (keep.isDeaf(mutant, digests.get(test) ?? '')) continue
        if (performance.now() > untilMs) return { mutant, end: 'not run', by: null }
        const ran = await thread.run(
          { test, mutated: { path: file, code }, isProbed: false },
          Math.max(LEAST_MS, TIMES * ms),
        )
        if (typeof ran !== 'string' && ran.failed === null) continue
        for (const of of [file, body])
          kills.set(`${of} ${test}`, (kills.get(`${of} ${test}`) ?? 0) + 1)
        return { mutant, end: typeof ran === 'string' ? 'hung' : 'killed', by: test }
      }
      return { mutant, end: 'survived', by: null }
    }
    const outcome = await ended()
    keep.add(mutant, outcome, digests)
    return outcome
  }

  if (broken.length === 0)
    await inTurn(threads, mutants, async (thread, mutant) => {
      outcomes.push(await endOf(thread, mutant))
      tell(outcomes)
    })
  await Promise.all(threads.map((thread) => thread.end()))
  keep.write()
  return {
    outcomes,
    broken,
    tests: baselines.reduce((sum, one) => sum + one.tests, 0),
    fromBefore,
  }
}
