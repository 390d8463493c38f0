/** The repository's modules as threads run them, and what each test file reaches of them. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { transform } from 'esbuild'
import { root, sha256 } from '#server/clone.mjs'
import { filesBelow, parseSource } from '#tests/support/source-tree.ts'

export interface ModuleTree {
  readonly tests: readonly string[]
  /** Texts as written, by path from the root. */
  readonly texts: ReadonlyMap<string, string>
  /** What stands in a test file and in all that it reaches. */
  readonly digestOf: (test: string) => string
  /** What each file imports at run time, of the repository's. */
  readonly loads: ReadonlyMap<string, readonly string[]>
  readonly packages: readonly string[]
}

/** Every test file below the folders. */
export const testsBelow = (folders: readonly string[]): readonly string[] =>
  folders.flatMap(filesBelow).filter((path) => path.endsWith('.test.ts'))

/** Test files with what they reach. */
export const readModules = (tests: readonly string[]): ModuleTree => {
  const texts = new Map<string, string>()
  const loads = new Map<string, readonly string[]>()
  const packages = new Set<string>()
  const read = (path: string): void => {
    if (texts.has(path)) return
    const text = readFileSync(join(root, path), 'utf8')
    texts.set(path, text)
    if (path.endsWith('.json')) return
    const imports = parseSource(path, text).imports.filter((one) => !one.typeOnly)
    const files = imports.flatMap(({ file }) => file ?? [])
    loads.set(path, files)
    for (const { specifier, file } of imports) if (file === null) packages.add(specifier)
    files.forEach(read)
  }
  tests.forEach(read)
  const hashes = new Map([...texts].map(([path, text]) => [path, sha256(text)]))
  const lock = sha256(readFileSync(join(root, 'package-lock.json')))
  const digests = new Map<string, string>()
  const digestOf = (test: string): string => {
    const known = digests.get(test)
    if (known !== undefined) return known
    const seen = new Set<string>([test])
    for (const path of seen) for (const next of loads.get(path) ?? []) seen.add(next)
    const digest = sha256(
      lock,
      ...[...seen].sort().flatMap((path) => [path, hashes.get(path) ?? '']),
    )
    digests.set(test, digest)
    return digest
  }
  return { tests, texts, digestOf, loads, packages: [...packages].sort() }
}

/** A module's text as Node runs it; data stay as they are. */
export const runnable = async (path: string, text: string): Promise<string> => {
  if (path.endsWith('.json')) return text
  const { code } = await transform(text, {
    loader: path.endsWith('.tsx') ? 'tsx' : path.endsWith('.ts') ? 'ts' : 'js',
    format: 'cjs',
    target: 'node20',
    define: { 'import.meta.url': '__url' },
    sourcefile: path,
  })
  return code
}
