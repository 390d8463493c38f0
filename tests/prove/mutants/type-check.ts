/** Which mutants the type check refuses: they never get to run, so that no test has to notice them. */
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { root } from '#server/clone.mjs'
import type { Mutant } from '#tests/prove/mutants/operators.ts'

const COMPILER = join(root, 'node_modules', 'typescript', 'bin', 'tsc')
const BUILT = join(root, '.build')

/** What is left unused by a mutant may be just what should be noticed. */
const SETTING = {
  extends: '../../tsconfig.json',
  compilerOptions: { noUnusedLocals: false, noUnusedParameters: false, incremental: false },
  include: ['*.ts'],
  exclude: [],
}

const said = (args: readonly string[]): Promise<string> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [COMPILER, ...args], { cwd: root })
    let text = ''
    child.stdout.setEncoding('utf8').on('data', (more: string) => {
      text += more
    })
    child.once('error', reject)
    child.once('close', () => resolve(text))
  })

/** Refused by its types and not by its syntax. */
const CANARY = "export const count: number = 'none'\n"

/**
 * Each mutant is a file of its own that imports what the one it was made of does, so that one run of
 * the compiler looks at all of them. Where any can't be read at all the compiler looks at nothing else:
 * then it looks at the others once more.
 * @throws where a file is refused as it is, or the compiler doesn't look: then nothing is known
 */
export const refusedByTypes = async (mutants: readonly Mutant[]): Promise<ReadonlySet<Mutant>> => {
  mkdirSync(BUILT, { recursive: true })
  const folder = mkdtempSync(join(BUILT, 'mutants-types-'))
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(SETTING))
  writeFileSync(join(folder, 'canary.ts'), CANARY)
  const files = [...new Set(mutants.map(({ file }) => file))]
  for (const [at, file] of files.entries())
    writeFileSync(join(folder, `as-is-${at}.ts`), readFileSync(join(root, file)))
  for (const [at, { text }] of mutants.entries()) writeFileSync(join(folder, `${at}.ts`), text)
  const refused = new Set<Mutant>()
  for (let isWhole = false; !isWhole; ) {
    const text = await said(['--noEmit', '--pretty', 'false', '-p', folder])
    const names = [...text.matchAll(/^(\S+?)\(.*error TS/gm)].map(([, path = '']) => basename(path))
    isWhole = names.includes('canary.ts')
    const known = refused.size
    for (const name of new Set(names)) {
      const mutant = mutants[Number.parseInt(name, 10)]
      if (mutant) refused.add(mutant)
      else if (name !== 'canary.ts') throw new Error(`the compiler refuses ${name}: ${text}`)
      rmSync(join(folder, name), { force: true })
    }
    if (!isWhole && refused.size === known) throw new Error(`the compiler found nothing: ${text}`)
  }
  rmSync(folder, { recursive: true, force: true })
  return refused
}
