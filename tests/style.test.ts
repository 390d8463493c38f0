import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { filesBelow } from '#tests/support/source-tree.ts'

/** Rooms whose screens were made of the kit. */
const OF_THE_KIT: readonly string[] = [
  'ui',
  'live',
  'device',
  'pick-up',
  'assembly',
  'counter',
  'line',
  'hand-over',
  'pans',
  'job',
  'food',
  'care',
  'access',
  'start',
]

/** A size of the nine, or one that is worked out of its own box between two bounds. */
const SIZE =
  /^(var\(--t[1-9]\)|inherit|(clamp|min|max)\(.*(var\(--|cq|dvh|vw|vh).*\)|calc\(.*var\(--.*\))$/

/** The tablet is what is written plain; a phone and a wide screen differ from it. */
const WIDTHS = ['(max-width: 700px)', '(min-width: 1200px)']

interface Rule {
  readonly file: string
  readonly what: string
  readonly value: string
}

const rulesOf = (file: string, css: string): readonly Rule[] =>
  [...css.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/^\s*([a-z-]+):\s*([^;]+);/gm)].map(
    ([, what = '', value = '']) => ({ file, what, value: value.replace(/\s+/g, ' ').trim() }),
  )

const mediaOf = (css: string): readonly string[] =>
  [...css.matchAll(/@media ([^{]+)\{/g)].map(([, condition = '']) => condition.trim())

const wrongSizes = (rules: readonly Rule[]): readonly Rule[] =>
  rules.filter(({ what, value }) => what === 'font-size' && !SIZE.test(value))

const wrongWidths = (conditions: readonly string[]): readonly string[] =>
  conditions.filter((one) => one.includes('width') && !WIDTHS.includes(one))

/** A line of its own colour, where a token names the kind that it is. */
const wrongBorders = (rules: readonly Rule[]): readonly Rule[] =>
  rules.filter(
    ({ what, value }) =>
      /^border(-(top|right|bottom|left|block|inline))?$/.test(what) &&
      /^\d+px solid var\(--(edge|edge-strong|watch)\)$/.test(value),
  )

const sheets = filesBelow('components')
  .filter((path) => path.endsWith('.css') && !path.endsWith('tokens.css'))
  .map((path) => ({ path, room: path.split('/')[1] ?? '', css: readFileSync(path, 'utf8') }))
  .filter(({ room }) => OF_THE_KIT.includes(room))

const rules = sheets.flatMap(({ path, css }) => rulesOf(path, css))

describe('what is drawn with the kit', () => {
  test('has one of nine sizes of type', () => {
    expect(rules.length).toBeGreaterThan(0)
    expect(wrongSizes(rules)).toEqual([])
  })

  test('knows three widths: a tablet, a phone and a wide screen', () => {
    expect(sheets.flatMap(({ css }) => wrongWidths(mediaOf(css)))).toEqual([])
  })

  test('takes its borders from the tokens', () => {
    expect(wrongBorders(rules)).toEqual([])
  })
})

describe('these checks themselves', () => {
  const of = (css: string) => rulesOf('a.css', css)

  test('find a size of its own', () => {
    expect(wrongSizes(of('a {\n  font-size: 19px;\n  color: red;\n}'))).toHaveLength(1)
    expect(wrongSizes(of('a {\n  font-size: var(--t3);\n}'))).toEqual([])
    expect(wrongSizes(of('a {\n  font-size: clamp(15px, 19px, 20px);\n}'))).toHaveLength(1)
  })

  test('find a fourth width', () => {
    expect(wrongWidths(mediaOf('@media (max-width: 900px) { a { color: red } }'))).toHaveLength(1)
    expect(wrongWidths(mediaOf('@media (prefers-reduced-motion: reduce) { }'))).toEqual([])
  })

  test('find a border that has a token', () => {
    expect(wrongBorders(of('a {\n  border: 2px solid var(--edge);\n}'))).toHaveLength(1)
    expect(wrongBorders(of('a {\n  border: var(--b-soft);\n}'))).toEqual([])
  })
})
