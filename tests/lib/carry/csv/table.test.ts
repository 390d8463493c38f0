import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, test } from 'vitest'
import { textOf } from '#lib/carry/csv/bytes-to-text.ts'
import { defused, RUNNABLE, withoutApostrophe } from '#lib/carry/csv/defused.ts'
import { type Column, MOST_TABLE_ROWS, readTable, writtenTable } from '#lib/carry/csv/table.ts'

const COLUMNS = [
  { name: 'name', most: 10 },
  { name: 'made with', most: 10 },
] as const satisfies readonly Column<string>[]

const read = (text: string) => readTable(text, COLUMNS, ['name'])

const rowsOf = (text: string) => {
  const told = read(text)
  if ('problem' in told) throw new Error(JSON.stringify(told.problem))
  return told.table.rows
}

const bytes = (...list: number[]) => Uint8Array.from(list)
const utf8 = (text: string) => new TextEncoder().encode(text)

const utf16 = (text: string, isLittle: boolean) =>
  Uint8Array.from(
    [...`\ufeff${text}`].flatMap((sign) => {
      const code = sign.charCodeAt(0)
      return isLittle ? [code & 255, code >> 8] : [code >> 8, code & 255]
    }),
  )

describe('the bytes of a table', () => {
  test.each([
    ['UTF-8', utf8('name\nčaj'), 'utf-8'],
    ['UTF-8 with a mark', bytes(0xef, 0xbb, 0xbf, ...utf8('name\nčaj')), 'utf-8'],
    ['UTF-16 from its low end', utf16('name\nčaj', true), 'utf-16le'],
    ['UTF-16 from its high end', utf16('name\nčaj', false), 'utf-16be'],
  ])('[CA6] are read as %s', (_, given, encoding) => {
    expect(textOf(given, null)).toEqual({ text: 'name\nčaj', encoding })
  })

  test('[CA6] in another encoding are told, and read once somebody says which', () => {
    const cafe = bytes(...utf8('name\ncaf'), 0xe9, 0x80)
    expect(textOf(cafe, null)).toEqual({ why: 'unknown-encoding' })
    expect(textOf(cafe, 'windows-1252')).toEqual({ text: 'name\ncafé€', encoding: 'windows-1252' })
  })

  test('[CA6] that mark themselves are read by their mark, whatever is said', () => {
    expect(textOf(utf16('name\nčaj', true), 'windows-1252')).toMatchObject({ text: 'name\nčaj' })
  })

  test.each([
    ['nothing', bytes(), 'empty'],
    ['spaces', utf8(' \r\n'), 'empty'],
    ['a workbook', bytes(0x50, 0x4b, 3, 4, 0, 0, 0xff), 'no-text'],
    ['UTF-16 without a mark', bytes(0x6e, 0, 0x61, 0), 'no-text'],
    ['half a sign under a mark', bytes(0xff, 0xfe, 0x6e), 'no-text'],
  ])('[CA6] of %s are refused', (_, given, why) => {
    expect(textOf(given, null)).toEqual({ why })
  })
})

describe('a table', () => {
  test.each([
    ['commas', 'name,made with\nslaw,"cabbage, red"\n', 'cabbage, r'],
    ['semicolons', 'Name;Made_With\nslaw;cab;age\n', null],
    ['tabs', 'NAME\tmade-with\nslaw\tcabbage\n', 'cabbage'],
  ])('[CA7] is read with %s between its cells', (_, text, made) => {
    const [row] = rowsOf(text)
    expect(row?.cells.name).toBe('slaw')
    if (made === null) expect(row?.problem).toEqual({ code: 'too-many-cells' })
    else expect(row?.cells['made with'].slice(0, 10)).toBe(made)
  })

  test('[CA7] is numbered as a spreadsheet numbers it, also past empty rows', () => {
    expect(
      rowsOf('name\nrice\n\n"a\nb"\nbeans\n').map(({ row, cells }) => [row, cells.name]),
    ).toEqual([
      [2, 'rice'],
      [4, 'a\nb'],
      [5, 'beans'],
    ])
  })

  test('[CA7] tells a cell that is too long by its row and column', () => {
    expect(rowsOf(`name,made with\nrice,${'x'.repeat(11)}`)[0]).toMatchObject({
      row: 2,
      problem: { code: 'too-long', column: 'made with', most: 10, letters: 11 },
    })
    expect(rowsOf(`name\n${'é'.repeat(10)}`)[0]?.problem).toBeNull()
  })

  test('[CA7] with signs that nobody types is told', () => {
    expect(rowsOf('name\nri\u0007ce')[0]?.problem).toEqual({ code: 'control-sign', column: 'name' })
  })

  test.each([
    ['no column that is needed', 'made with\nrice', { why: 'no-column', column: 'name' }],
    ['a column twice', 'name,Name\nrice,x', { why: 'column-twice', column: 'name' }],
    ['no rows', 'name\n\n', { why: 'no-rows' }],
    ['quotation marks that stay open', 'name\n"rice\nbeans', { why: 'quotes', row: 2 }],
    [
      'too many rows',
      `name\n${'rice\n'.repeat(MOST_TABLE_ROWS + 1)}`,
      { why: 'too-many-rows', most: MOST_TABLE_ROWS },
    ],
  ])('[CA7] with %s is refused whole', (_, text, problem) => {
    expect(read(text)).toEqual({ problem })
  })

  test('[CA7] tells the columns that nothing is taken from', () => {
    const told = read('name,price,made with\nrice,3,x')
    expect('table' in told && told.table.ignored).toEqual(['price'])
  })
})

describe('what a spreadsheet could run', () => {
  /** OWASP, CSV Injection: the signs that it names, and its full-width ones. */
  const SIGNS = ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']

  test.each(SIGNS)('[CA8] begins with %j: read, it is refused', (sign) => {
    const text = `name\n"${sign}SUM(1)"`
    expect(rowsOf(text)[0]?.problem).toEqual({ code: 'formula', column: 'name' })
  })

  test('[CA8] is written so that no cell begins with one, and read again as it was', () => {
    const wide = [{ name: 'name', most: 200 }] as const
    const name = fc
      .tuple(fc.constantFrom('', "'", "''", ' '), fc.constantFrom('', ...SIGNS), fc.string())
      .map((parts) => parts.join('').trim())
      .filter((one) => one !== '')
    fc.assert(
      fc.property(name, (one) => {
        const text = writtenTable(wide, [{ name: one }])
        const [, ...cells] = Papa.parse<string[]>(text.slice(1), { delimiter: ',' }).data.flat()
        expect(cells.filter((cell) => RUNNABLE.test(cell))).toEqual([])
        expect(withoutApostrophe(defused(one))).toBe(one)
      }),
    )
  })

  test('[CA8] stays as it is in the middle of a cell, and an apostrophe of a name does too', () => {
    expect(defused('half-and-half')).toBe('half-and-half')
    expect(withoutApostrophe("'nduja")).toBe("'nduja")
    expect(rowsOf("name\n'=1+1")[0]).toMatchObject({ cells: { name: '=1+1' }, problem: null })
  })
})
