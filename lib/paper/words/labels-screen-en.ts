/** The screens that print labels, in English. */
import type { LabelKind } from '#lib/paper/labels/label-facts.ts'
import type { StockId } from '#lib/paper/labels/label-stock.ts'
import { labelTexts } from '#lib/paper/words/labels-en.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { counted } from '#lib/words/counted-en.ts'
import { sayDate, sayDay } from '#lib/words/day-en.ts'

const KIND: Readonly<Record<LabelKind, string>> = {
  pan: 'Pans',
  tray: 'Trays of cups',
  backup: 'Back-up pans',
  batch: 'Batches',
  cup: 'Cups on the side',
}

export const labelsEn = {
  title: 'Labels',
  stock: {
    'cut-letter': { name: 'Plain Letter, cut', size: '10 a sheet' },
    'letter-10': { name: '2 × 4 in', size: '10 a sheet' },
    'letter-6': { name: '3 1/3 × 4 in', size: '6 a sheet' },
    'letter-30': { name: '1 × 2 5/8 in', size: '30 a sheet' },
    'cut-a4': { name: 'Plain A4, cut', size: '10 a sheet' },
    'a4-8': { name: '99.1 × 67.7 mm', size: '8 a sheet' },
    'a4-21': { name: '63.5 × 38.1 mm', size: '21 a sheet' },
    'roll-2x2': { name: '2 × 2 in', size: 'roll' },
    'roll-2x3': { name: '2 × 3 in', size: 'roll' },
    'roll-62': { name: '62 mm', size: 'roll, cut by length' },
  } satisfies Record<StockId, { name: string; size: string }>,
  stockIs: 'Label paper',
  first: 'First free label',
  firstOf: (first: number, of: number) => `${first} of ${of}`,
  offset: 'Printer is off by',
  right: (mm: number) => `${mm} mm right`,
  down: (mm: number) => `${mm} mm down`,
  lefter: 'Move left',
  righter: 'Move right',
  higher: 'Move up',
  lower: 'Move down',
  fewer: 'One less',
  more: 'One more',
  kinds: KIND,
  what: 'What gets a label',
  forDay: (on: string) => `for ${sayDate(on)}`,
  all: 'All',
  none: 'None',
  copies: (count: number) => `${count} ×`,
  labels: (count: number) => counted(count, 'label', 'labels'),
  fewerOf: (name: string) => `One less: ${name}`,
  moreOf: (name: string) => `One more: ${name}`,
  mark: (revision: number | null, at: number, timeZone: string) =>
    `${revision === null ? '' : `rev. ${revision}, `}printed ${sayDay(at, timeZone)}, ${sayClock(at, timeZone)}`,
  noMark: (count: number) =>
    `${counted(count, 'label has', 'labels have')} no room for the time of printing: write it on, or take larger labels.`,
  nothingChosen: 'No label is chosen.',
  noService: 'No service is planned or open here, so there is nothing to label.',
  connecting: 'Asking the laptop …',
  notLead:
    'Labels of the larder are printed by a device that leads. The lead lets one in on Devices.',
  toPlan: 'To the plan',
  toLarder: 'To the larder',
  toStart: 'First page',
  measure: 'Print one sheet on plain paper, hold it over the labels, and move it until it fits.',
  texts: labelTexts,
} as const
