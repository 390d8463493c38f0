/** Which mutants the type check refuses: they never get to run, so that no test has to notice them. */
import { spawn } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from '#server/clone.mjs'
import type { Mutant } from '#tests/prove/mutants/operators.ts'

const COMPILER = join(root, 'node_modules', 'typescript', 'bin', 'tsc')
const FOLDER = join(root, '.build', 'mutants-types')

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

/**
 * Each mutant is a file of its own that imports what the one it was made of does, so that one run of
 * the compiler looks at all of them.
 * @throws where a file is refused as it is: then nothing is known of its mutants
 */
export const refusedByTypes = async (mutants: readonly Mutant[]): Promise<ReadonlySet<Mutant>> => {
  rmSync(FOLDER, { recursive: true, force: true })
  mkdirSync(FOLDER, { recursive: true })
  writeFileSync(join(FOLDER, 'tsconfig.json'), JSON.stringify(SETTING))
  const files = [...new Set(mutants.map(({ file }) => file))]
  for (const [at, file] of files.entries())
    writeFileSync(join(FOLDER, `as-is-${at}.ts`), readFileSync(join(root, file)))
  for (const [at, { text }] of mutants.entries()) writeFileSync(join(FOLDER, `${at}.ts`), text)
  const text = await said(['--noEmit', '--pretty', 'false', '-p', FOLDER])
  const isOther = /^(?!\.build\/mutants-types\/\d+\.ts)\S.*error TS.*$/m.exec(text)
  if (isOther) throw new Error(`the compiler refuses more than mutants: ${isOther[0]}`)
  rmSync(FOLDER, { recursive: true, force: true })
  const refused = [...text.matchAll(/^\.build\/mutants-types\/(\d+)\.ts\(/gm)]
  return new Set(refused.flatMap(([, at]) => mutants[Number(at)] ?? []))
}
