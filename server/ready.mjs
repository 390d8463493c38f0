/**
 * Makes a clone ready to run: packages installed, screens built, shells bundled, each only when
 * stale. Plain JavaScript without packages, since it runs before there are any.
 */
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { readyWords as words } from '#lib/words/house/ready-en.mjs'
import { bundleFolder, ensureBundle, ensureScreens } from './build.mjs'
import { NotReady } from './clone.mjs'
import { ensureInstalled, nodeProblem } from './install.mjs'
import { withLock } from './lock.mjs'

const lockFolder = join(bundleFolder, 'lock')

/**
 * Ensures what is asked for, one process at a time in this folder.
 * @param {{ screens?: boolean, bundles?: readonly string[], say?: (line: string) => void }} what
 * @throws {NotReady} with a sentence for people
 */
export const ensureReady = async ({ screens = false, bundles = [], say = console.error }) => {
  const problem = nodeProblem(process.versions.node)
  if (problem !== null) throw new NotReady(problem)
  mkdirSync(bundleFolder, { recursive: true })
  await withLock(
    lockFolder,
    async () => {
      await ensureInstalled(say)
      for (const name of bundles) await ensureBundle(name)
      if (screens) await ensureScreens(say)
    },
    (pid) => say(words.waiting(pid)),
  )
}

/** Ends this process with a sentence for a NotReady; anything else keeps its stack. */
export const endWith = (problem) => {
  console.error(problem instanceof NotReady ? problem.message : problem)
  process.exit(1)
}
