/** How small each text may be that somebody has to read on a screen of the crew, and from where. */
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'

export interface Bound {
  /** Also the value of `data-legible` on an element whose text it holds for, wherever it stands. */
  readonly what: string
  /** Of the screen's own elements, those whose text it holds for. */
  readonly within: string
  /** Which of that text; all where none is said. */
  readonly text?: RegExp
  readonly leastPx: number
  readonly distanceM: number
  /** Views that must have such a text: a check of nothing passes by itself. */
  readonly shownIn: RegExp
  /** Views in which it isn't held yet: printed by `npm run legible`, not demanded. To be emptied. */
  readonly later?: RegExp
}

const WIDE = 'li[data-stand]:not([data-stand="sliver"], [data-stand="slim"])'

/** How much tongs, a ladle or a cup takes, which has no number: its word is the pan's name. */
const NOT_A_SIZE = /^(?!about|lidded|spoodle|[\d /]+ (fl )?oz$)/

const MAKING = /^assembly, (making|waiting)/

export const BOUNDS: Readonly<Record<string, readonly Bound[]>> = {
  '/assembly': [
    { what: 'item', within: 'main h1', leastPx: 52, distanceM: 1, shownIn: MAKING },
    {
      what: 'need',
      within: '[data-needs] strong',
      leastPx: 52,
      distanceM: 1,
      shownIn: /^assembly, (making|waiting), .*(kept apart|leave out)/,
    },
    { what: 'pan name', within: 'main ol h2', leastPx: 30, distanceM: 0.7, shownIn: MAKING },
    {
      what: 'all of a pan',
      within: `main ol ${WIDE}:has(h2)`,
      text: NOT_A_SIZE,
      leastPx: 30,
      distanceM: 0.7,
      shownIn: MAKING,
    },
    {
      what: 'how much without a number',
      within: `main ol ${WIDE}:has(h2)`,
      leastPx: 25,
      distanceM: 0.7,
      shownIn: MAKING,
    },
    {
      what: 'stop',
      within: `section[role="alert"] ${WIDE}, section[role="alert"] h1`,
      leastPx: 30,
      distanceM: 0.7,
      shownIn: /^assembly, stop/,
    },
  ],
  '/hand-over': [
    {
      what: 'shelf',
      within: `[aria-label="${handOverEn.shelf}"] [data-legible="shelf"]`,
      leastPx: 24,
      distanceM: 0.7,
      shownIn: /^hand-over, (shelf|nine|fifteen)/,
    },
    {
      what: 'parcel number',
      within: `[aria-label="${handOverEn.shelf}"] [data-figures]`,
      leastPx: 60,
      distanceM: 1,
      shownIn: /^hand-over, (shelf|nine|fifteen|more)/,
      // Of three figures the letter is 30 px.
      later: /three figures/,
    },
  ],
  '/counter': [
    {
      what: 'read-back',
      within: '[data-legible="read-back"]',
      leastPx: 26,
      distanceM: 0.6,
      shownIn: /^counter, read-back/,
    },
  ],
  '/pans': [
    {
      what: 'left to sell',
      within: 'main ol li[data-pan] button[data-standing]',
      text: /^\d+$/,
      leastPx: 40,
      distanceM: 0.7,
      shownIn: /^pans, (calm|rush)$/,
    },
  ],
  '/pick-up': [
    {
      what: 'ready',
      within: '[data-ticket]',
      leastPx: 66,
      distanceM: 4,
      shownIn: /^pick-up, (one|rush|many|fifteen)/,
    },
    {
      what: 'being made',
      within: '[data-place="making"] li',
      leastPx: 64,
      distanceM: 4,
      shownIn: /^pick-up, (rush|many|fifteen)/,
    },
    {
      what: 'waiting',
      within: '[data-place="waiting"] li',
      leastPx: 40,
      distanceM: 4,
      shownIn: /^pick-up, (rush|many)/,
    },
    {
      what: 'called',
      within: '[data-place="called"] li',
      leastPx: 66,
      distanceM: 4,
      shownIn: /^pick-up, called/,
    },
  ],
}

/** The smallest of the nine sizes: nothing that somebody reads is under it. */
export const FLOOR_PX = 15

/** Screens that still have text under the floor, or that runs upward where no sliver is. */
export const FLOOR_LATER: readonly string[] = []
export const UPRIGHT_LATER: readonly string[] = []
