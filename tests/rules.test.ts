import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { COMMANDS } from '#lib/spine/registry.ts'
import { parseSource, readSources, root, type Source, walk } from '#tests/support/source-tree.ts'

const ruleIds = (text: string): readonly string[] =>
  [...text.matchAll(/^- \*\*([A-Z]+\d+)\*\* \S/gm)].map(([, id = '']) => id)

const testCall = /^(test|it|describe)$/

/** Ids in brackets at the head of a test's title. */
const titleIds = (source: Source): readonly string[] => {
  const found: string[] = []
  walk(source.program, (node) => {
    if (node.type !== 'CallExpression') return
    const [title] = node.arguments
    let callee = node.callee
    while (callee.type === 'MemberExpression' || callee.type === 'CallExpression') {
      callee = callee.type === 'MemberExpression' ? callee.object : callee.callee
    }
    if (callee.type !== 'Identifier' || !testCall.test(callee.name)) return
    const text =
      title?.type === 'Literal'
        ? String(title.value)
        : title?.type === 'TemplateLiteral'
          ? (title.quasis[0]?.value.raw ?? '')
          : ''
    const head = /^(\s*\[[A-Z]+\d+\])+/.exec(text)?.[0] ?? ''
    for (const [, id = ''] of head.matchAll(/\[([A-Z]+\d+)\]/g)) found.push(id)
  })
  return found
}

const written = ruleIds(readFileSync(join(root, 'lib', 'RULES.md'), 'utf8'))
const tested = new Set(readSources(['tests', 'e2e']).flatMap(titleIds))

describe('the rules of the trade', () => {
  test('each has a number of its own', () => {
    expect(written.length).toBeGreaterThan(0)
    expect(written.filter((id, place) => written.indexOf(id) !== place)).toEqual([])
  })

  test('each has a test that carries its number', () => {
    expect(written.filter((id) => !tested.has(id))).toEqual([])
  })

  test('each number that a command names is a rule', () => {
    const named = COMMANDS.flatMap(({ type, rules }) => rules.map((id) => `${type}: ${id}`))
    expect(named.filter((one) => !written.includes(one.replace(/^.*: /, '')))).toEqual([])
  })

  test('each number that a test carries is a rule', () => {
    expect([...tested].filter((id) => !written.includes(id))).toEqual([])
  })
})

describe('this check itself', () => {
  test('reads rules and titles as they are written', () => {
    expect(ruleIds('# Rules\n\n- **Q1** One.\n- **ST12** Two.\n- Three **Q3** four')).toEqual([
      'Q1',
      'ST12',
    ])
    const titles = "test('[Q1] a', f)\ntest.each([1])('[Q2][Q3] b', f)\nit(`[Q4] c`, f)"
    expect(titleIds(parseSource('tests/a.test.ts', titles))).toEqual(['Q1', 'Q2', 'Q3', 'Q4'])
    expect(titleIds(parseSource('tests/a.test.ts', "expect('[Q1] a', f)"))).toEqual([])
  })
})
