/** Labels of pans, batches, trays and cups in English. */
import type { NamedAllergen, SaidOf } from '#lib/paper/allergens/said-of.ts'
import { isNothingNamed } from '#lib/paper/allergens/said-of.ts'
import {
  type CoolingStage,
  type Discard,
  type LabelCooling,
  type LabelDates,
  lastMinute,
} from '#lib/paper/labels/label-dates.ts'
import type { LabelFacts } from '#lib/paper/labels/label-facts.ts'
import type { Cell, Drawn, LabelTexts, Part, Row, Said } from '#lib/paper/labels/label-texts.ts'
import { setUpSheetEn } from '#lib/paper/words/set-up-sheet-en.ts'
import { HOUR_MS } from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { counted } from '#lib/words/counted-en.ts'
import { sayDay } from '#lib/words/day-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'
import { needName } from '#lib/words/service-en.ts'

/** Where and by which scale a label is read. */
export interface SaidWhere {
  readonly timeZone: string
  readonly scale: Scale
  /** Food that is made or opened here lasts so many days, of which the first is day 1. */
  readonly days: number
  /** Nobody is served by it. */
  readonly isDemo: boolean
}

const moment = (at: number, timeZone: string): string =>
  `${sayDay(at, timeZone)}, ${sayClock(at, timeZone)}`

const cell = (label: string, of: Partial<Omit<Cell, 'label'>>): Cell => ({
  label,
  value: '',
  blank: null,
  isLoud: false,
  ...of,
})

const initials = cell('Initials', { blank: 'initials' })

const row = (...cells: readonly Cell[]): Row => ({ kind: 'row', cells })

const said = (
  lead: string,
  again: string,
  items: readonly string[],
  { weight = 'regular', pt = 10 }: Partial<Pick<Said, 'weight' | 'pt'>> = {},
): readonly Said[] => (items.length === 0 ? [] : [{ kind: 'said', lead, again, items, weight, pt }])

const sentence = (text: string, of: Partial<Pick<Said, 'weight' | 'pt'>> = {}): readonly Said[] =>
  said('', '', [text], of)

const allergen = ({ code, kinds }: NamedAllergen): string =>
  kinds.length === 0 ? needName(code) : `${needName(code)} (${kinds.map(needName).join(', ')})`

const codes = (all: readonly NeedCode[]): readonly string[] => all.map(needName)

const LOUD = { weight: 'bold', pt: 12 } as const

/** As every paper says it where no label names anything. */
export const NOTHING_NAMED = 'No allergen named on labels read. No promise: shared line, ask.'

/** What it contains, may contain, touches, and what nobody knows; the loudest first. */
export const sayAllergens = (of: SaidOf): readonly Said[] => [
  ...said(
    'CONTAINS',
    'CONTAINS ALSO',
    of.contains.map((one) => allergen(one).toUpperCase()),
    {
      weight: 'bold',
      pt: 13,
    },
  ),
  ...said('NOT READ: ASK. Labels of', 'NOT READ: ASK. Also labels of', of.unread, LOUD),
  ...(of.unread.length > 0
    ? []
    : said(
        'NOT KNOWN: ASK. Labels don’t say:',
        'NOT KNOWN: ASK. Labels don’t say either:',
        codes(of.notKnown),
        LOUD,
      )),
  ...said('MAY CONTAIN', 'MAY ALSO CONTAIN', of.mayContain.map(allergen), LOUD),
  ...(isNothingNamed(of) ? sentence(NOTHING_NAMED) : []),
  ...said('A wrong scoop went in, of:', 'A wrong scoop went in also of:', of.soiledBy, LOUD),
  ...(of.contactKnown
    ? said('Touches on this line:', 'Touches also:', codes(of.touches))
    : sentence('What it touches here: nobody has said. Ask.', { weight: 'bold' })),
  ...said(
    'Touches what isn’t known for:',
    'Touches what isn’t known also for:',
    codes(of.touchesUnknown),
  ),
  ...(of.unread.length > 0
    ? []
    : said('Labels don’t say:', 'Labels don’t say either:', codes(of.unsaid))),
]

const FIRST: Readonly<Record<LabelDates['first'], string>> = { made: 'Made', opened: 'Opened' }

const hours = (ms: number): string => `${ms / HOUR_MS} h`

/** Why a time of throwing out is what it is, or what is written there. */
const why = (discard: Discard, isPlanned: boolean, { days }: SaidWhere): string => {
  switch (discard.because) {
    case 'clock':
      return 'By its time clock.'
    case 'date':
      return isPlanned ? 'Planned day. Made on another? Write both.' : ''
    case 'day':
      return 'Nobody dated it: this day only.'
    case 'service-ends':
      return ''
    case 'not-planned':
      return 'Hot: write the day and hour at which its service ends.'
    case 'days':
      return `${days} days with day 1; never past the maker’s date.`
    case 'reading':
      return `${hours(discard.within.withinMs)} from the reading as it goes in, by the written procedure.`
    case 'makers-date':
      return 'Dry: the maker’s date.'
    case 'frozen':
      return 'Frozen: its day once thawed.'
  }
}

export const discardCell = (discard: Discard, timeZone: string): Cell =>
  discard.at === null
    ? cell('Discard by', { blank: 'moment', isLoud: true })
    : cell('Discard by', {
        value: moment(lastMinute(discard.at, timeZone), timeZone),
        isLoud: true,
      })

const madeCell = ({ first, made }: LabelDates, timeZone: string): Cell => {
  if (made === null) return cell(FIRST[first], { blank: 'moment' })
  return made.hour
    ? cell(FIRST[first], { value: moment(made.at, timeZone) })
    : cell(FIRST[first], { value: `${sayDay(made.at, timeZone)},`, blank: 'hour' })
}

const feet = (dates: LabelDates, { timeZone }: SaidWhere): readonly Row[] => [
  row(madeCell(dates, timeZone), initials),
  row(discardCell(dates.discard, timeZone)),
]

export const footAgain = ({ discard }: Pick<LabelDates, 'discard'>, timeZone: string): string =>
  discard.at === null ? '' : `Discard by ${moment(lastMinute(discard.at, timeZone), timeZone)}`

const reading = ({ temperature, at }: Reading, timeZone: string): string =>
  `${safetyWords.degrees(temperature)} at ${sayClock(at, timeZone)}`

const stageRow = ({ limit, by }: CoolingStage, { scale, timeZone }: SaidWhere): Row =>
  row(
    by === null
      ? cell(`${safetyWords.limit(limit, scale)} by`, { blank: 'hour' })
      : cell(`${safetyWords.limit(limit, scale)} by`, { value: moment(by, timeZone) }),
    cell('time', { blank: 'hour' }),
    cell('initials', { blank: 'initials' }),
  )

/** Blanks for each reading of food that cools, with the time by which it is taken. */
export const sayCooling = (
  { start, stages, read }: LabelCooling,
  where: SaidWhere,
): readonly Part[] => [
  ...said(
    'Cools. Read:',
    'Read also:',
    read.map((one) => reading(one, where.timeZone)),
  ),
  ...(start === null
    ? []
    : [
        row(
          cell(`${safetyWords.limit(start, where.scale)}: from`, { blank: 'hour' }),
          cell('initials', { blank: 'initials' }),
        ),
      ]),
  ...stages.map((one) => stageRow(one, where)),
  ...(stages.some(({ by }) => by === null)
    ? sentence(
        `By: ${stages.map(({ within }) => hours(within.withinMs)).join(' and ')} from ${start === null ? 'when it was made' : 'the first reading'}.`,
        { pt: 9 },
      )
    : []),
]

const about = ({ kind, cups, isProtected, load }: LabelFacts): string => {
  switch (kind) {
    case 'pan':
      return ''
    case 'tray':
      return `Tray of ${counted(cups ?? 0, 'lidded cup', 'lidded cups')}`
    case 'backup':
      return isProtected ? 'Back-up: lid on, own scoop' : 'Back-up'
    case 'batch':
      if (load === null || load.of < 2) return 'Batch'
      return load.nth === null
        ? `Batch of ${load.of} loads`
        : `Batch, load ${load.nth} of ${load.of}`
    case 'cup':
      return 'On the side, lidded cup'
  }
}

export const DEMO = 'DEMO, invented'

const drawn = ({ line, tool, kind }: LabelFacts): Drawn | null =>
  line === null
    ? null
    : {
        wells: line.wells.map((well) => well.map((pan) => line.own.includes(pan))),
        beside: [
          line.own.length > 1
            ? `pans ${line.number} … of ${line.of}`
            : `pan ${line.number} of ${line.of}`,
          ...(kind === 'pan' ? [setUpSheetEn.tool(tool).join(', ')] : []),
        ],
      }

const part = (nth: number, of: number): string => `${nth} of ${of}`

export const labelTexts = (facts: LabelFacts, where: SaidWhere): LabelTexts => ({
  id: facts.id,
  name: facts.name,
  about: [...(where.isDemo ? [DEMO] : []), about(facts)].filter((one) => one !== '').join(' · '),
  drawn: drawn(facts),
  parts: [
    ...sayAllergens(facts.said),
    ...said('Goes with', 'Goes also with', facts.goesWith, { pt: 9 }),
    ...(facts.cooling === null ? [] : sayCooling(facts.cooling, where)),
    ...[why(facts.dates.discard, facts.dates.isPlanned, where)]
      .filter((text) => text !== '')
      .flatMap((text) => sentence(text, { pt: 9 })),
  ],
  foot: feet(facts.dates, where),
  footAgain: footAgain(facts.dates, where.timeZone),
  part,
})

export const labelPieces = { moment, cell, row, said, sentence, initials, part, reading }
