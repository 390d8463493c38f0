import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { root } from '#server/clone.mjs'
import { keepNothing } from '#tests/prove/mutants/kept-results.ts'
import { readModules } from '#tests/prove/mutants/modules.ts'
import { drawn } from '#tests/prove/mutants/mutants.ts'
import { type Mutant, mutantsOf } from '#tests/prove/mutants/operators.ts'
import { bodyAround, probed } from '#tests/prove/mutants/probes.ts'
import { runMutants } from '#tests/prove/mutants/run-mutants.ts'
import { buildThread, createThread } from '#tests/prove/mutants/threads.ts'
import { refusedByTypes } from '#tests/prove/mutants/type-check.ts'

const LONG_MS = 120_000

const JUDGE = 'lib/needs/judge.ts'
const TESTS = ['tests/lib/needs/judge.test.ts', 'tests/lib/rooms/care/needs.test.ts']

const read = (file: string): string => readFileSync(join(root, file), 'utf8')

const endsOf = async (mutants: readonly Mutant[]) => {
  const { outcomes, broken } = await runMutants(
    readModules(TESTS),
    mutants,
    [JUDGE],
    keepNothing,
    Number.POSITIVE_INFINITY,
  )
  expect(broken).toEqual([])
  return outcomes.map(({ mutant, end }) => `${end}: ${mutant.before} > ${mutant.after}`)
}

describe('mutants of the judge', () => {
  test(
    '[E10] a few that are drawn are noticed, and a text that means the same isn’t',
    async () => {
      const text = read(JUDGE)
      const some = drawn(
        mutantsOf(JUDGE, text).filter(({ operator }) => operator === 'comparison'),
        1,
        6,
      )
      const same = some.slice(0, 1).map((one) => ({ ...one, text: `${text}\n// Nothing else.\n` }))
      const ends = await endsOf([...same, ...some])
      expect(ends.filter((one) => one.startsWith('survived'))).toHaveLength(1)
      expect(ends.filter((one) => one.startsWith('killed'))).toHaveLength(6)
    },
    LONG_MS,
  )
})

describe('the type check', () => {
  test(
    'refuses what doesn’t compile, also beside what can’t be read at all',
    async () => {
      const text = read(JUDGE)
      const [same] = mutantsOf(JUDGE, text)
      if (!same) throw new Error('the judge has no mutant')
      const [good, wrong, unreadable] = [
        { ...same, text },
        { ...same, text: `${text}\nexport const wrong: number = 'one'\n` },
        { ...same, text: `${text}\nexport const = 1\n` },
      ]
      expect(await refusedByTypes([good, wrong, unreadable])).toEqual(new Set([wrong, unreadable]))
    },
    LONG_MS,
  )
})

describe('the threads', () => {
  const wrap = (body: string) => `const { test, expect } = require('vitest')\n${body}`
  const modules = {
    'good.test.ts': wrap("test('good', async () => { await null; expect(1).toBe(1) })"),
    'bad.test.ts': wrap("test('first', () => {}); test('bad', () => expect(1).toBe(2))"),
    'endless.test.ts': wrap("test('endless', () => { for (;;); })"),
    'stray.test.ts': wrap(
      "test('stray', async () => { void Promise.reject(new Error('x')); await new Promise((so) => setTimeout(so, 5)) })",
    ),
  }

  test(
    'tell a test that fails, end one that hangs, and go on',
    async () => {
      await buildThread()
      const thread = await createThread({
        root,
        modules,
        probed: {},
        loads: {},
        packages: ['vitest'],
      })
      onTestFinished(() => thread.end())
      const run = (test: string, withinMs = 20_000) =>
        thread.run({ test, mutated: null, isProbed: false }, withinMs)
      expect(await run('good.test.ts')).toMatchObject({ failed: null, tests: 1 })
      expect(await run('bad.test.ts')).toMatchObject({ tests: 1 })
      expect(await run('bad.test.ts')).not.toMatchObject({ failed: null })
      expect(await run('stray.test.ts')).not.toMatchObject({ failed: null })
      expect(await run('endless.test.ts', 300)).toBe('hung')
      expect(await run('good.test.ts')).toMatchObject({ failed: null, tests: 1 })
    },
    LONG_MS,
  )
})

describe('the mutants of a text', () => {
  const changes = (text: string) =>
    mutantsOf('lib/a.ts', text).map(({ before, after }) => `${before} > ${after}`)

  test('swap what is compared, joined and listed', () => {
    expect(changes('const a = b < c')).toEqual([
      'const a = b < c > const a = b <= c',
      'const a = b < c > const a = b >= c',
    ])
    expect(changes('const a = b && c')).toContain('const a = b && c > const a = b || c')
    expect(changes('const a = [...b, c]')).toEqual([
      'const a = [...b, c] > const a = [c]',
      'const a = [...b, c] > const a = [...b]',
    ])
    expect(changes("const a = { b, c: 'd' }")).toContain(
      "const a = { b, c: 'd' } > const a = { b }",
    )
    expect(changes('const a = b.filter((c) => c.d)')).toContain(
      'const a = b.filter((c) => c.d) > const a = b.filter(() => true)',
    )
    expect(changes('if (a) b()')).toContain('if (a) b() > if (false) b()')
    expect(changes('const a = !b')).toEqual(['const a = !b > const a = b'])
  })

  test('leave types, imports and errors’ sentences as they are', () => {
    expect(changes("import a from 'b'\ntype C = 'd' | 'e'\nlet f: 1 | 2")).toEqual([])
    expect(changes("throw new Error('a')")).toEqual([])
  })

  test('lie in the innermost function, which tells when it is called', () => {
    const text = 'const a = (b: number) => {\n  return [b].map((c) => c + 1)\n}'
    const probe = probed('a.ts', text)
    expect(probe.text).toContain("{__hit('a.ts', 1);")
    expect(probe.text).toContain("(c) => (__hit('a.ts', 2), c + 1)")
    expect(bodyAround(probe, text.indexOf('c + 1'))).toBe(2)
    expect(bodyAround(probe, text.indexOf('[b]'))).toBe(1)
    expect(bodyAround(probe, 0)).toBe(0)
  })
})
