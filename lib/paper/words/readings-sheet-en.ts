/** The log of readings on paper, in English. */
import type { ReadingRow } from '#lib/paper/readings/readings-facts.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { sayClock } from '#lib/words/clock-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const name = (row: ReadingRow): string => {
  switch (row.what) {
    case 'pan':
    case 'time':
      return `${row.number} ${row.name}`
    case 'backup':
      return `Back-up: ${row.name}`
    case 'sanitizer':
      return 'Sanitizer'
    case 'other':
      return ''
  }
}

const limit = (row: ReadingRow, scale: Scale): string => {
  switch (row.what) {
    case 'pan':
    case 'backup':
      return safetyWords.limit(row.limit, scale)
    case 'time':
      return 'By time alone: when it is thrown out'
    case 'sanitizer':
      return 'By strip: as its label says'
    case 'other':
      return ''
  }
}

export const readingsSheetEn = {
  title: 'Readings',
  name,
  limit,
  unit: (row: ReadingRow, scale: Scale): string | null =>
    row.what === 'time' ? null : row.what === 'sanitizer' ? 'ppm' : `°${scale}`,
  round: (nth: number, by: number | null, timeZone: string) =>
    by === null ? `Round ${nth}` : `Round ${nth}, by ${sayClock(by, timeZone)}`,
  heads: { what: 'What is read', time: 'time', read: 'reads', initials: 'initials' },
  foot: 'Stir, probe the middle, clean the probe between pans. Out of its limit, or not read in time: don’t serve it, tell the person in charge. Type these in when the laptop is there again.',
  readBy: 'In charge',
} as const
