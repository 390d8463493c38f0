import { describe, expect, it } from 'vitest'
import { allergenPaperEn } from '#lib/paper/words/allergen-paper-en.ts'
import { NOTHING_NAMED } from '#lib/paper/words/labels-en.ts'
import { type Sheet, type SheetWord, sheetOf } from '#lib/rooms/care/views/allergen-sheet.ts'
import { needName } from '#lib/words/service-en.ts'
import { demoStation } from '#tests/support/service.ts'

const sheetWith = (station: typeof demoStation): Sheet =>
  sheetOf({ station, revision: 3, soiled: [], lent: [], asOf: null })

/** Rows of food: what goes over all columns is said of the sheet. */
const foodRows = (sheet: Sheet) =>
  allergenPaperEn
    .sections(sheet)
    .flatMap(({ rows }) => rows.map(({ cells }) => cells))
    .filter((cells) => cells.length > 1)

const COLUMN: Readonly<Partial<Record<SheetWord, number>>> = {
  contains: 1,
  'may-contain': 2,
  shared: 3,
  unknown: 4,
}

describe('the allergen sheet on paper', () => {
  it('[PA42] names every allergen of every food in the column of its word, and in no other', () => {
    const sheet = sheetWith(demoStation)
    const rows = foodRows(sheet)
    const foods = [...sheet.items, ...sheet.components]
    expect(rows).toHaveLength(foods.length)
    let named = 0
    for (const [at, food] of foods.entries())
      for (const [place, cell] of food.cells.entries()) {
        const name = needName(sheet.codes[place] ?? 'milk')
        for (const column of [1, 2, 3, 4]) {
          const said = (rows[at]?.[column] ?? []).flatMap(({ text }) => text.split(', '))
          const isThere = said.some(
            (one) => one.replace(/ \(.*|\*$/g, '').replace(/\*$/, '') === name,
          )
          expect(isThere, `${food.name}, ${name}, column ${column}`).toBe(
            COLUMN[cell.word] === column,
          )
          if (isThere) named += 1
        }
      }
    expect(named).toBeGreaterThan(50)
  })

  it('[PA42] food of which no label names anything promises nothing, though it touches what has it', () => {
    const rice = foodRows(sheetWith(demoStation)).find(([food]) => food?.[0]?.text === 'Brown rice')
    expect(rice?.[1]?.map(({ text }) => text)).toEqual([NOTHING_NAMED])
    expect(rice?.[3]?.map(({ text }) => text)).toEqual(['wheat, sesame, gluten'])
  })

  it('[PA42] never reads as none: unread labels are loud, and unsaid contacts are told in each row', () => {
    const unread = sheetWith({
      ...demoStation,
      contacts: null,
      ingredients: demoStation.ingredients.map((one) => ({ ...one, readOn: null })),
    })
    const said = foodRows(unread).map((cells) =>
      cells
        .flat()
        .map(({ text }) => text)
        .join(' '),
    )
    expect(said.length).toBeGreaterThan(0)
    for (const row of said) {
      expect(row).toContain('NOT READ: ASK')
      expect(row).toContain('nobody has said')
      expect(row).not.toContain(NOTHING_NAMED)
    }
  })
})
