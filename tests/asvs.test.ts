/** lib/access/ASVS.md: each row names tests that there are, or says what is otherwise. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { parseSource, root, walk } from '#tests/support/source-tree.ts'

interface Row {
  readonly number: string
  readonly level: string
  readonly here: readonly string[]
}

const rowsOf = (text: string): readonly Row[] =>
  [...text.matchAll(/^\| (\d+\.\d+\.\d+) +\| (\d) +\| .*? +\| (.*?) +\|$/gm)].map(
    ([, number = '', level = '', here = '']) => ({
      number,
      level,
      here: here.split(/ · |; (?=otherwise: )/),
    }),
  )

/** The titles of a file's tests, without the ids of their rules. */
const titlesIn = (file: string): ReadonlySet<string> => {
  const titles = new Set<string>()
  walk(parseSource(file, readFileSync(join(root, file), 'utf8')).program, (node) => {
    if (node.type !== 'CallExpression') return
    const [title] = node.arguments
    if (title?.type === 'Literal' && typeof title.value === 'string')
      titles.add(title.value.replace(/^(\[[A-Z]+\d+\])+ /, ''))
  })
  return titles
}

/** Why a row's part won't do; null where it will. */
const wrongIn = (part: string): string | null => {
  if (/^otherwise: \S.{20,}/.test(part)) return null
  const [, file = '', title = ''] = /^((?:tests|e2e)\/[\w./-]+\.ts): (.+)$/.exec(part) ?? []
  if (file === '') return `neither a test nor “otherwise”: ${part}`
  if (!existsSync(join(root, file))) return `no such file: ${file}`
  return titlesIn(file).has(title) ? null : `no such test in ${file}: ${title}`
}

const rows = rowsOf(readFileSync(join(root, 'lib', 'access', 'ASVS.md'), 'utf8'))

test('[EG11] each requirement names a test that there is, or says what is otherwise', () => {
  expect(rows.length).toBeGreaterThan(90)
  expect(
    rows.flatMap(({ number, here }) =>
      here.flatMap((part) => {
        const wrong = wrongIn(part)
        return wrong === null ? [] : [`${number}: ${wrong}`]
      }),
    ),
  ).toEqual([])
  const numbers = rows.map(({ number }) => number)
  expect(numbers.filter((one, place) => numbers.indexOf(one) !== place)).toEqual([])
  expect(rows.filter(({ level }) => level !== '1' && level !== '2')).toEqual([])
  const otherwise = rows.filter(({ here }) => here.some((part) => part.startsWith('otherwise')))
  console.log(
    `${rows.length} requirements (level 1: ${rows.filter(({ level }) => level === '1').length}): ${rows.length - otherwise.length} met by a test, ${otherwise.length} otherwise`,
  )
})

test('[EG11] this check finds a file and a title that there aren’t, and a row that says nothing', () => {
  expect(wrongIn('tests/none.test.ts: a')).toContain('no such file')
  expect(wrongIn('tests/asvs.test.ts: a test that isn’t there')).toContain('no such test')
  expect(wrongIn('awaits')).toContain('neither')
  expect(wrongIn('otherwise: no')).toContain('neither')
  expect(
    wrongIn(
      'tests/asvs.test.ts: each requirement names a test that there is, or says what is otherwise',
    ),
  ).toBeNull()
  expect(rowsOf('| 1.2.3 | 1 | asks | tests/a.ts: b |')).toHaveLength(1)
})
