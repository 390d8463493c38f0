/** The allergen sheet on paper, food by food in words. */
import type { Asked as Text } from '#lib/paper/page/fit-text.ts'
import type { AskedSection } from '#lib/paper/page/list-layout.ts'
import { type AskedRow, plainRow } from '#lib/paper/page/list-row.ts'
import { NOTHING_NAMED } from '#lib/paper/words/labels-en.ts'
import type { Sheet, SheetCell, SheetRow, SheetWord } from '#lib/rooms/care/views/allergen-sheet.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { needName } from '#lib/words/service-en.ts'

const SHARES = [0.24, 0.22, 0.17, 0.2, 0.17] as const
const HEADINGS = [
  sheetWords.food,
  'Contains',
  'May contain',
  'Touches on this line',
  'Not known: ask',
] as const

const named = (code: NeedCode, { kinds, canChange }: SheetCell): string =>
  `${needName(code)}${kinds.length === 0 ? '' : ` (${kinds.map(needName).join(', ')})`}${canChange ? sheetWords.canChange : ''}`

/** Lines of their own as its labels tell them: a long list breaks between them. */
const cellOf = (
  codes: readonly NeedCode[],
  { cells }: SheetRow,
  word: SheetWord,
  of: Pick<Text, 'weight'> = {},
): readonly Text[] => {
  const all = codes.flatMap((code, at) => {
    const cell = cells[at]
    return cell?.word === word ? [named(code, cell)] : []
  })
  return all.length === 0 ? [] : [{ text: all.join(', '), pt: 10, lines: 8, ...of }]
}

const BY_LABELS: readonly SheetWord[] = ['contains', 'may-contain', 'unknown']

const rowOf = ({ codes, contactKnown }: Sheet, row: SheetRow): AskedRow => {
  // By its own labels: what only touches it is no word of theirs.
  const isNamed = row.cells.some(({ word }) => BY_LABELS.includes(word))
  const of = (word: SheetWord, more: Pick<Text, 'weight'> = {}) => cellOf(codes, row, word, more)
  return plainRow(
    row.name,
    [
      { text: row.name, pt: 11, weight: 'bold', lines: 2 },
      ...(row.soiledBy.length > 0
        ? [{ text: sheetWords.soiled(row.soiledBy), pt: 8.5, lines: 3 }]
        : []),
      ...(row.unread.length > 0
        ? [
            {
              text: `NOT READ: ASK. Labels of ${row.unread.join(', ')}`,
              pt: 9,
              weight: 'bold' as const,
              lines: 6,
            },
          ]
        : []),
      ...row.stated.map(({ name, readOn }) => ({
        text: sheetWords.stated(name, readOn),
        pt: 8,
        lines: 6,
      })),
    ],
    isNamed ? of('contains', { weight: 'bold' }) : [{ text: NOTHING_NAMED, pt: 9, lines: 4 }],
    of('may-contain', { weight: 'bold' }),
    contactKnown ? of('shared') : [{ text: 'nobody has said: ask', pt: 9.5, lines: 2 }],
    of('unknown', { weight: 'bold' }),
  )
}

const section = (title: string, rows: readonly AskedRow[]): AskedSection => ({
  ...{ title, rows, again: title === '' ? '' : `… ${title}`, note: '' },
})

const sections = (sheet: Sheet): readonly AskedSection[] => [
  section('', [
    plainRow('cautions', [
      { text: sheetWords.cautions.join(' '), pt: 11, weight: 'bold', lines: 3 },
      ...(sheet.contactKnown ? [] : [{ text: sheetWords.contactUnknown, pt: 11, lines: 3 }]),
      ...(sheet.unread.length === 0
        ? []
        : [{ text: sheetWords.unreadOf(sheet.unread), pt: 11, weight: 'bold' as const, lines: 6 }]),
    ]),
  ]),
  section(
    sheetWords.items,
    sheet.items.map((row) => rowOf(sheet, row)),
  ),
  section(
    sheetWords.components,
    sheet.components.map((row) => rowOf(sheet, row)),
  ),
]

export const allergenPaperEn = {
  title: sheetWords.title,
  shares: SHARES,
  headings: HEADINGS,
  sections,
  facts: (sheet: Sheet, at: number): readonly string[] => [
    sheetWords.asOf(sheet.asOf, sheet.timeZone),
    ...(sheet.asOf === null ? [] : [sheetWords.asOfLine(at, sheet.timeZone)]),
    sheetWords.revision(sheet.revision),
    sheetWords.printed(at, sheet.timeZone),
  ],
  foot: `${sheetWords.canChange} ${sheetWords.canChangeMeaning}. What a row doesn’t name no label lists; none says that the food is free of it.`,
  demo: sheetWords.demoTitle,
  damaged: sheetWords.damaged,
  toSheet: 'To the sheet on the screen',
} as const
