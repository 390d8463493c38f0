/** The line's set-up sheet in English. */
import { menuToolEn } from '#lib/editor/words/tool-en.ts'
import type { PlannedFood, SetUpPan, SetUpWell, Touching } from '#lib/paper/set-up/set-up-facts.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import type { PortionRule, StationDocument } from '#lib/station/station-document.ts'
import { sayWeight } from '#lib/words/amounts-en.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { sayMoment } from '#lib/words/day-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { portionTotalLines } from '#lib/words/recipe/portion-total-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const HELD: Readonly<Record<SetUpWell['held'], string>> = {
  hot: 'hot',
  cold: 'cold',
  dry: 'dry',
  time: 'by time',
}

const TOUCHES: Readonly<Record<Touching['kinds'][number], string>> = {
  scoop: 'same scoop as',
  board: 'same board as',
  griddle: 'same griddle as',
  press: 'same press as',
  toaster: 'same toaster as',
  fryer: 'same fryer as',
  warmer: 'same warmer as',
  beside: 'beside',
  'reached-over': 'reached over with',
}

const KEPT: Readonly<Record<StationDocument['backups'][number]['kept'], string>> = {
  hot: 'hot',
  cold: 'cold',
  boxed: 'in its box',
}

/** Two lines: the tool as it is called by its handle, and how many of it are a portion. */
const tool = (rule: PortionRule): readonly [name: string, take: string] => {
  const { label } = menuToolEn.toolSize(rule.tool, rule)
  switch (rule.tool) {
    case 'scoop':
      return [`${label} scoop`, `${rule.level} level`]
    case 'ladle':
      return [`${label} ladle`, `${rule.level} level`]
    case 'spoodle':
      return [`${label} spoodle`, `${rule.level} level`]
    case 'measure':
      return [`${label} measure`, `${rule.level} level`]
    case 'tongs':
      return ['tongs', 'weighed']
    case 'tongs-pieces':
      return ['tongs', counted(rule.pieces, 'piece', 'pieces')]
    case 'piece':
      return ['gloved hand', counted(rule.pieces, 'piece', 'pieces')]
    case 'cup':
      return [`${label} cup, lidded`, '1 cup']
    case 'bottle':
      return ['squeeze bottle', counted(rule.squeezes, 'squeeze', 'squeezes')]
  }
}

const backup = ({ size, depthIn, kept, protected: own }: StationDocument['backups'][number]) =>
  [quantityEn.pan(size, depthIn), KEPT[kept], ...(own ? ['lidded, own scoop'] : [])].join(', ')

export const setUpSheetEn = {
  title: 'Set up the line',
  held: HELD,
  well: ({ number, held }: Pick<SetUpWell, 'number' | 'held'>) => `Well ${number}: ${HELD[held]}`,
  /** Drawn once more, for rows that didn’t fit on the page before. */
  continued: (well: string) => `… ${well}`,
  columns: {
    pan: 'Pan',
    tool: 'Take it with',
    load: 'Goes in',
    loaded: 'Loaded at',
    read: 'Reading',
    initials: 'Initials',
  },
  pan: ({ size, depthIn }: Pick<SetUpPan, 'size' | 'depthIn'>) => quantityEn.pan(size, depthIn),
  tool,
  /** “24 × 1/2 cup” and “= 3 qt”. */
  load: ({ load }: Pick<SetUpPan, 'load'>) => portionTotalLines(load),
  /** Of a plan: "2 loads of 24"; "nothing is planned". */
  loads: ({ loads, portions, inLarder }: PlannedFood): string => {
    if (loads === 0) return inLarder > 0 ? 'no load' : 'nothing planned'
    const said = tasksEn.loads(loads)
    return loads > 1 && portions % loads === 0 ? `${said} of ${portions / loads}` : said
  },
  inLarder: ({ inLarder }: PlannedFood): string =>
    inLarder === 0 ? '' : `${inLarder} in the larder`,
  shares: (numbers: readonly number[]) =>
    `Its loads are for pans ${list(numbers.map(String), 'and')} together.`,
  weighs: (mg: number) => sayWeight(mg),
  overfull: (most: number) => `More than it holds: ${counted(most, 'portion', 'portions')}`,
  limit: (pan: Pick<SetUpPan, 'limit'>, scale: Scale) =>
    pan.limit === null ? 'dry: none' : safetyWords.limit(pan.limit, scale),
  within: (ms: number) =>
    `By time alone, by the written procedure: its clock runs from the reading as it goes in, out after ${ms / 3_600_000} h at most.`,
  outBy: 'Out by',
  touches: (touches: readonly Touching[]) =>
    `Touches: ${touches
      .map(
        ({ kinds, names }) =>
          `${list(
            kinds.map((kind) => TOUCHES[kind]),
            'and',
          )} ${list(names.map(inSentence), 'and')}`,
      )
      .join('; ')}.`,
  touchesNone: 'Touches nothing that was named.',
  touchesUnsaid: 'What touches what: nobody has said yet, so nothing can be kept apart.',
  behind: (backups: StationDocument['backups']) => `Behind: ${backups.map(backup).join('; ')}.`,
  setUpBy: 'Set up by',
  date: 'Date',
  revision: (revision: number) => `Revision ${revision}`,
  draft: 'DRAFT, not published',
  printed: (at: number, timeZone: string) => `Printed ${sayMoment(at, timeZone)}`,
  demo: 'DEMO: invented, nobody is served by it',
  byPlan: 'Goes in: all loads of the plan; one load at a time.',
  scale: 'Wells and pans drawn 1 : 12, an inch for a foot. The crew’s side is the left.',
  decides: 'Local code and the certified person in charge decide.',
} as const
