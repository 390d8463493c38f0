import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { COMMAND_TYPES } from '#lib/spine/registry.ts'
import { commandLists, declaredCommands } from '#tests/support/declared-commands.ts'
import {
  barrels,
  classesThatAreNoErrors,
  defaultExports,
  impurities,
  misnamed,
  wordsImported,
  wrongImports,
} from '#tests/support/house-rules.ts'
import {
  filesBelow,
  importCycles,
  packagesReached,
  parseSource,
  readSources,
  root,
  type Source,
} from '#tests/support/source-tree.ts'

const folders = ['lib', 'server', 'components', 'app', 'fixtures', 'tests', 'e2e']
const sources = new Map(readSources(folders).map((source) => [source.path, source]))
const within = (...names: readonly string[]): readonly Source[] =>
  [...sources.values()].filter(({ path }) => names.some((name) => path.startsWith(`${name}/`)))

const hot = ['counter', 'assembly', 'hand-over', 'pans', 'pick-up']

describe('the house', () => {
  test('imports point one way: lib, then server or components, then app', () => {
    expect([...sources.values()].flatMap(wrongImports)).toEqual([])
  })

  test('every import of a file of ours names one that exists', () => {
    const missing = [...sources.values()].flatMap(({ path, imports }) =>
      imports
        .filter(({ file }) => file !== null && !existsSync(join(root, file)))
        .map(({ specifier }) => `${path} imports ${specifier}`),
    )
    expect(missing).toEqual([])
  })

  test('lib has no clock, chance, process, crypto, network or storage', () => {
    expect(within('lib').flatMap(impurities)).toEqual([])
  })

  test('in lib only schemas, commands and what gathers them parse', () => {
    const parsing = within('lib')
      .filter(({ imports }) => imports.some((each) => each.specifier === 'zod' && !each.typeOnly))
      .map(({ path }) => path)
      .filter((path) => !/(^|[/-])schema\.ts$|\/commands\/|^lib\/spine\/registry\.ts$/.test(path))
    expect(parsing).toEqual([])
  })

  test.each(hot)('the %s screen never reaches zod or react-aria-components', (screen) => {
    const page = `app/${screen}/page.tsx`
    expect(sources.has(page)).toBe(true)
    const reached = packagesReached(page, sources)
    const heavy = [...reached].filter(([name]) =>
      /^(zod|react-aria|@react-aria|react-stately)/.test(name),
    )
    expect(heavy.map(([name, chain]) => [...chain, name].join(' > '))).toEqual([])
  })

  test('commands state facts: they fold nothing, and attach nothing that follows', () => {
    const commands = within('lib').filter(({ path }) => path.includes('/commands/'))
    const reached = commands.flatMap(({ path, imports }) =>
      imports
        .filter(({ file, typeOnly }) =>
          typeOnly ? false : /^lib\/(spine\/|rooms\/[a-z]+\/folds\/)/.test(file ?? ''),
        )
        .map(({ specifier }) => `${path} imports ${specifier}`),
    )
    expect(reached).toEqual([])
    const asked = within('lib', 'server').filter(({ imports }) =>
      imports.some(({ file }) => file === 'lib/spine/consequences/consequences.ts'),
    )
    expect(asked.map(({ path }) => path)).toEqual(['lib/spine/happen.ts'])
  })

  test('a language is imported where its words are bound: screens’ words, routes, server and lib/words', () => {
    expect(within('lib', 'components').flatMap(wordsImported)).toEqual([])
  })

  test('every command is declared once, and nothing else lists them', () => {
    const ours = within('lib', 'server', 'components', 'app')
    expect(ours.flatMap(declaredCommands).sort()).toEqual([...COMMAND_TYPES].sort())
    expect(ours.flatMap((source) => commandLists(source, COMMAND_TYPES))).toEqual([])
  })

  test('no imports go in circles', () => {
    expect(importCycles(sources).map((cycle) => cycle.join(' > '))).toEqual([])
  })

  test('no file only hands on what others export', () => {
    expect([...sources.values()].filter(barrels).map(({ path }) => path)).toEqual([])
  })

  test('only routes export by default, and only errors are classes', () => {
    const ours = within('lib', 'server', 'components')
    expect(ours.filter(defaultExports).map(({ path }) => path)).toEqual([])
    expect(ours.flatMap(classesThatAreNoErrors)).toEqual([])
  })

  test('files are kebab-case and named for what they hold', () => {
    expect(folders.flatMap(filesBelow).filter(misnamed)).toEqual([])
  })

  test('code files have at most 250 lines, tests and data 400', () => {
    const long = [...sources.values()]
      .filter(({ path, lines }) => lines > (/^(tests|e2e|fixtures)\//.test(path) ? 400 : 250))
      .map(({ path, lines }) => `${path}: ${lines}`)
    expect(long).toEqual([])
  })

  test('the top level holds what is known to stand there', () => {
    const known = new Set([
      ...folders,
      ...['.ci', '.git', '.gitignore', '.npmrc', 'biome.json', 'pictures', 'public'],
      ...['knip.json', 'knip.production.json'],
      ...['package.json', 'package-lock.json', 'tsconfig.json', 'next.config.ts'],
      ...['playwright.config.ts', 'vitest.config.ts', 'README.md', 'DEVELOPERS.md'],
    ])
    const ignored = readFileSync(join(root, '.gitignore'), 'utf8')
      .split('\n')
      .map((line) => line.replaceAll('/', '').replace('*', ''))
      .filter((line) => line !== '')
    const strange = readdirSync(root)
      .filter((name) => !known.has(name))
      .filter((name) => !ignored.some((end) => name === end || name.endsWith(`${end}`)))
    expect(strange).toEqual([])
  })
})

describe('these checks themselves', () => {
  const at = (path: string, text: string): Source => parseSource(path, text)

  test('find an import against the direction, a parent import and a stranger in lib', () => {
    expect(wrongImports(at('lib/a.ts', "import '#server/b.ts'"))).toHaveLength(1)
    expect(wrongImports(at('components/a.tsx', "import '#server/b.ts'"))).toHaveLength(1)
    expect(wrongImports(at('components/a.tsx', "import 'node:fs'"))).toHaveLength(1)
    expect(wrongImports(at('lib/a/b.ts', "import type { C } from '../c.ts'"))).toHaveLength(1)
    expect(wrongImports(at('lib/a.ts', "import { nanoid } from 'nanoid'"))).toHaveLength(1)
    expect(wrongImports(at('lib/a.ts', "const a = await import('node:os')"))).toHaveLength(1)
    expect(wrongImports(at('lib/a.ts', "import { z } from 'zod'"))).toHaveLength(0)
  })

  test('find words of one language outside of what binds them', () => {
    const text = "import type { counter } from '#lib/rooms/orders/words/counter-en.ts'"
    expect(wordsImported(at('components/counter/ask-step.tsx', text))).toHaveLength(1)
    expect(wordsImported(at('lib/rooms/orders/views/counter.ts', text))).toHaveLength(1)
    expect(wordsImported(at('components/counter/words.tsx', text))).toEqual([])
    expect(wordsImported(at('components/counter/frame-words.tsx', text))).toEqual([])
    expect(wordsImported(at('lib/rooms/advice/words/calm-en.ts', text))).toEqual([])
    const set = "import { labelFormWords } from '#lib/editor/words/label-form-en.ts'"
    expect(wordsImported(at('components/menu/label/label-panel.tsx', set))).toHaveLength(1)
    expect(wordsImported(at('components/menu/label/words.tsx', set))).toEqual([])
    const other = "import type { SaidHere } from '#lib/words/said-here.ts'"
    expect(wordsImported(at('components/counter/ask-step.tsx', other))).toEqual([])
  })

  test('find what declares a command, and what lists them again', () => {
    const declared = at('lib/a.ts', "export const wave = defineCommand({ type: 'wave', who: [] })")
    expect(declaredCommands(declared)).toEqual(['wave'])
    const types = ['wave', 'nod', 'bow', 'wink']
    for (const list of [
      "const all = ['wave', 'nod', 'bow', 'wink']",
      "type All = 'wave' | 'nod' | 'bow' | 'wink'",
      'const by = { wave: 1, nod: 2, bow: 3, wink: 4 }',
      'interface By { wave: 1; nod: 2; bow: 3; wink: 4 }',
      "switch (a) { case 'wave': case 'nod': case 'bow': case 'wink': b() }",
    ])
      expect(commandLists(at('lib/a.ts', list), types), list).toHaveLength(1)
    const other = "const all = ['wave', 'nod', 'bow', 'shrug']"
    expect(commandLists(at('lib/a.ts', other), types)).toEqual([])
  })

  test('find what is impure, and only that', () => {
    const impure = ['Date.now()', 'new Date()', 'Math.random()', 'process.env', 'crypto.subtle']
    for (const text of impure) expect(impurities(at('lib/a.ts', text)), text).toHaveLength(1)
    const pure = ['new Date(5)', 'state.process', 'Math.round(2)', 'const a = { crypto: 1 }']
    for (const text of pure) expect(impurities(at('lib/a.ts', text)), text).toHaveLength(0)
  })

  test('find a heavy package behind a chain, and not behind a type', () => {
    const chain = new Map(
      [
        at('app/a.tsx', "import '#components/b.tsx'"),
        at('components/b.tsx', "import '#lib/c.ts'\nimport type { D } from '#lib/d.ts'"),
        at('lib/c.ts', "import { nanoid } from 'nanoid'"),
        at('lib/d.ts', "import { z } from 'zod'"),
      ].map((source) => [source.path, source]),
    )
    const chainToNanoid = ['app/a.tsx', 'components/b.tsx', 'lib/c.ts']
    expect(packagesReached('app/a.tsx', chain)).toEqual(new Map([['nanoid', chainToNanoid]]))
  })

  test('find a circle, a barrel, a class, a default export and a bad name', () => {
    const circle = [at('lib/a.ts', "import './b.ts'"), at('lib/b.ts', "import '#lib/a.ts'")]
    expect(importCycles(new Map(circle.map((each) => [each.path, each])))).toHaveLength(1)
    expect(barrels(at('lib/a.ts', "export { b } from './b.ts'\nexport * from './c.ts'"))).toBe(true)
    expect(barrels(at('lib/a.ts', "export { b } from './b.ts'\nexport const c = 1"))).toBe(false)
    expect(classesThatAreNoErrors(at('lib/a.ts', 'class A {}'))).toHaveLength(1)
    expect(classesThatAreNoErrors(at('lib/a.ts', 'class A extends Error {}'))).toHaveLength(0)
    expect(defaultExports(at('lib/a.ts', 'export default 1'))).toBe(true)
    expect(['lib/utils.ts', 'lib/index.ts', 'lib/aB.ts'].filter(misnamed)).toHaveLength(3)
    expect(['lib/RULES.md', 'lib/a-b.test.ts', 'app/not-found.tsx'].filter(misnamed)).toEqual([])
  })
})
