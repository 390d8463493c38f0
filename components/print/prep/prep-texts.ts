import type { PaperWords } from '#components/print/words.tsx'
import { type Asked, unbroken } from '#lib/paper/page/fit-text.ts'
import type { AskedSection } from '#lib/paper/page/list-layout.ts'
import type { AskedBlank, AskedRow } from '#lib/paper/page/list-row.ts'
import type { PrepFacts, PrepRow } from '#lib/paper/prep/prep-facts.ts'
import { SMALL_STRIP } from '#lib/paper/prep/prep-layout.ts'
import type { Scale } from '#lib/safety/temperature.ts'

interface SaidOf {
  readonly words: PaperWords
  readonly timeZone: string
  readonly scale: Scale
  /** By the id of each of the crew, how they are called. */
  readonly names: Readonly<Record<string, string>>
}

/** So many lines of a card in one text: it can be cut between two of them. */
const LINES_A_TEXT = 6

const cardTexts = ({ words: { lists } }: SaidOf, { made }: PrepRow): readonly Asked[] => {
  if (made === null) return []
  const { why, lines } = made
  if (why !== null) return [{ text: lists.notReckoned(why), pt: 9, weight: 'bold' }]
  const said = lines.map((one) => unbroken(lists.line(one)))
  return Array.from({ length: Math.ceil(said.length / LINES_A_TEXT) }, (_, at) => ({
    text: said.slice(at * LINES_A_TEXT, (at + 1) * LINES_A_TEXT).join(' · '),
    pt: 10,
    lines: 20,
  }))
}

const what = (said: SaidOf, row: PrepRow): readonly Asked[] => {
  const { prep: words } = said.words
  const { task, name, made, isRaw, cooling, back } = row
  const inBatches = made === null ? '' : words.split(made.split, made.portions)
  const taste = made?.lines.flatMap(({ byTaste, name: of }) => (byTaste === null ? [] : [of])) ?? []
  return [
    { text: words.task(task, name), pt: 12, weight: 'bold', lines: 2 },
    ...(made === null
      ? []
      : [
          {
            text: words.amountAnd(
              words.amount(task),
              unbroken(words.total(made.portions, made.portion)),
            ),
            ...({ pt: 10, weight: 'bold', lines: 2 } as const),
          },
        ]),
    ...(isRaw ? [{ text: words.raw, pt: 9.5, weight: 'bold', lines: 2 } as const] : []),
    ...cardTexts(said, row),
    ...(back === null
      ? []
      : [
          {
            text: words.goesBack(back, said.scale),
            ...({ pt: 10, weight: 'bold', lines: 4 } as const),
          },
        ]),
    ...(taste.length > 0 ? [{ text: words.taste(taste), pt: 9, lines: 3 }] : []),
    ...(inBatches === '' ? [] : [{ text: inBatches, pt: 10, weight: 'bold', lines: 3 } as const]),
    ...(cooling === null ? [] : [{ text: words.cooling(cooling, said.scale), pt: 9.5, lines: 3 }]),
  ]
}

const where = (said: SaidOf, row: PrepRow): readonly Asked[] => {
  const { prep: words } = said.words
  const { read, named, discard } = row
  return [
    ...(named === null ? [] : words.named(named).map((text) => ({ text, pt: 8.5, lines: 4 }))),
    ...(discard === null
      ? []
      : [
          { text: words.discard(discard, said.timeZone), pt: 9, weight: 'bold', lines: 3 } as const,
        ]),
    ...(read === null ? [] : [{ text: words.limit(read, said.scale), pt: 9.5, lines: 3 }]),
  ]
}

/** What a hand needs in a kitchen, millimetres: common practice, no source. */
const TEMPERATURE = 14
const TIME = 15
const INITIALS = 13

const blanks = (said: SaidOf, { read, cooling }: PrepRow): readonly AskedBlank[] => {
  const { prep: words } = said.words
  return [
    ...(read === null
      ? []
      : [{ of: 'read', before: '', width: TEMPERATURE, behind: words.degrees(said.scale) }]),
    { of: 'time', before: words.blanks.time, width: TIME, behind: '' },
    { of: 'initials', before: words.blanks.initials, width: INITIALS, behind: '' },
    ...(cooling === null
      ? []
      : [{ of: 'cooling', before: words.blanks.cooling, width: TIME, behind: '' }]),
  ]
}

const askedRow = (said: SaidOf, row: PrepRow): AskedRow => {
  const { task, pans } = row
  const { from, to } = task
  const who = [...new Set(task.who.map((hand) => said.names[hand.who] ?? hand.who))]
  const clock = (at: number) => said.words.prep.clock(at, said.timeZone)
  return {
    id: task.id,
    isTicked: true,
    cells: [
      [
        { text: clock(from), pt: 12, weight: 'bold' },
        ...(from === to ? [] : [{ text: `– ${clock(to)}`, pt: 9 }]),
        {
          text: who.length > 0 ? said.words.prep.who(who) : said.words.prep.nobody,
          ...({ pt: 10, weight: 'bold', lines: 3 } as const),
        },
      ],
      what(said, row),
      where(said, row),
    ],
    drawing: pans.length > 0 ? SMALL_STRIP : 0,
    beside: task.kind === 'load' ? '' : said.words.prep.pans(pans),
    blanks: blanks(said, row),
  }
}

/** All that is said on the prep sheet, in its order. */
export const prepSections = (said: SaidOf, { sections }: PrepFacts): readonly AskedSection[] =>
  sections.map((section) => {
    const title = said.words.prep.section(section, said.timeZone)
    return {
      title,
      again: said.words.prep.again(title),
      note: said.words.prep.who(section.who.map((id) => said.names[id] ?? id)),
      rows: section.rows.map((row) => askedRow(said, row)),
    }
  })
