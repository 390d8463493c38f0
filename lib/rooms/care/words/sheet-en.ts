/** What the allergen sheet says to guests and inspectors. */

import type { SheetWord } from '#lib/rooms/care/views/allergen-sheet.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { sayDateOfYear, sayMoment } from '#lib/words/day-en.ts'
import { startingWith } from '#lib/words/findings-en.ts'
import { needName } from '#lib/words/service-en.ts'

const list = (names: readonly string[]): string => names.join(', ')

export const sheetWords = {
  title: 'Allergen sheet',
  demoTitle: 'DEMO: allergen sheet',
  /** Across each page of paper. */
  demoAcross: 'DEMO',
  of: (station: string) => `${station}: what our food contains`,
  letter: {
    contains: 'C',
    unknown: '?',
    'may-contain': 'M',
    shared: 'S',
    'not-listed': 'N',
    free: 'D',
  } satisfies Record<SheetWord, string>,
  word: {
    contains: 'contains it',
    unknown: 'not known',
    'may-contain': 'may contain it',
    shared: 'shared on the line',
    'not-listed': 'not listed',
    free: 'declared free',
  } satisfies Record<SheetWord, string>,
  meaning: {
    contains: 'It is in the food.',
    unknown: 'No label says. It counts as if it were in the food.',
    'may-contain': 'The label warns of it, or a wrong scoop went in.',
    shared: 'Not in the food, but the food can touch what has it, or what isn’t known.',
    'not-listed': 'No label lists it, and each has to. None says that it is free of it.',
    free: 'Every label declares that it isn’t in the food.',
  } satisfies Record<SheetWord, string>,
  legend: 'How to read it',
  canChange: '*',
  canChangeMeaning: 'less of it when something is left out or the base is changed: ask',
  food: 'Food',
  labelRead: 'Label read',
  items: 'What we serve, with everything that can go in it',
  components: 'What it is made of',
  column: (code: NeedCode) => startingWith(needName(code)),
  kinds: (codes: readonly NeedCode[]) => list(codes.map(needName)),
  /** A cell for people who don't see it drawn. */
  cell: (word: string, kinds: string, canChange: boolean) =>
    `${word}${kinds === '' ? '' : `: ${kinds}`}${canChange ? ', less of it when changed' : ''}`,
  date: sayDateOfYear,
  moment: sayMoment,
  readLabel: 'read the label',
  unreadOf: (names: readonly string[]) => `Read the label: ${list(names)}`,
  soiled: (names: readonly string[]) => `May contain ${list(names)} until emptied and washed`,
  stated: (name: string, readOn: string) =>
    `${name}: wheat processed to meet the FDA’s rule on gluten, says its label, read ${sayDateOfYear(readOn)}`,
  /** Pans change without any label: the time of the server's answer. */
  asOfLine: (at: number, timeZone: string) => `As the line is at ${sayMoment(at, timeZone)}`,
  asOf: (at: number | null, timeZone: string) =>
    at === null ? 'No service was opened yet' : `Labels as of ${sayMoment(at, timeZone)}`,
  revision: (revision: number) => `Station document ${revision}`,
  printed: (at: number, timeZone: string) => `Printed ${sayMoment(at, timeZone)}`,
  cautionsTitle: 'Before you eat or serve',
  cautions: [
    'Ask the person in charge. Tell them what you keep away from.',
    'What is shared on the line can touch.',
    'Nothing here is free of traces.',
    'Local rules and the certified person in charge decide.',
  ],
  contactUnknown:
    'Nobody has said what touches what on this line, so nothing here counts as declared free.',
  print: 'Print the sheet',
  inWords: 'In words, on paper',
  toStart: 'To the first page',
  loading: 'Loading the sheet …',
  lost: (since: string) =>
    `No connection since ${since}. This may not be so any more: ask the person in charge.`,
  never: 'No connection to the server, so there is no sheet. Ask the person in charge.',
  damaged: 'The sheet can’t be made from the station’s document. Ask the person in charge.',
  noStation: 'No station is set up on this server, so there is no sheet.',
} as const
