/** The line from above, in English: wells, pans, what fits. */

import type { PanSize } from '#lib/measure/pans.ts'
import { counted } from '#lib/words/counted-en.ts'

type Held = 'hot' | 'cold' | 'dry' | 'time'

const size: Readonly<Record<PanSize, string>> = {
  full: 'full',
  half: 'half',
  third: 'third',
  quarter: 'quarter',
  sixth: 'sixth',
  ninth: 'ninth',
}

const heldShort: Readonly<Record<Held, string>> = {
  hot: 'hot',
  cold: 'cold',
  dry: 'dry',
  time: 'by the clock',
}

const a = (one: PanSize): string => `a ${size[one]}`

export const menuLineEn = {
  line: 'The line from above, to scale',
  size,
  aSize: a,
  held: heldShort,
  heldWhy: {
    hot: 'held at 135 °F or above, read with a probe',
    cold: 'held at 41 °F or below, read with a probe',
    dry: 'needs no temperature',
    time: 'by a written procedure. Its clock starts with the reading as it is loaded, and no later reading is asked for',
  } satisfies Record<Held, string>,
  /** What a screen reader hears of a pan. */
  pan: (name: string, one: PanSize, well: number) => `${name}, ${size[one]} pan, well ${well}`,
  /** Its pan was set into a well of another kind. */
  follows: (name: string, held: 'hot' | 'cold' | 'dry') =>
    held === 'dry'
      ? `${name || 'It'}: dry now, as its well. Nobody is asked to read it.`
      : `${name || 'It'}: held ${held} now, by its place. It is read with a probe.`,
  noName: 'no name yet',
  noHeld: 'hot or cold?',
  well: (number: number, held: Held | null) =>
    held === null ? `Well ${number}` : `Well ${number}, ${heldShort[held]}`,
  full: 'full',
  bare: 'empty',
  free: (largest: PanSize) => `${a(largest)} free`,
  putIn: (well: number) => `Put a pan into well ${well}`,
  addWell: 'Add a well',
  tooLarge: 'no room',
  deep: 'Depth, inside',
  whatGoesIn: 'What goes into it?',
  orOneOf: 'Or one that has no pan yet',
  putItIn: 'Put it in',
  lacksName: 'Name is missing',
  noRoomAtAll: 'The well is full',
  howHeld: 'How it holds its food',
  wellLeft: 'Further left',
  wellRight: 'Further right',
  takeWell: 'Take the well away',
  wellNotBare: 'Take its pans out first',
  firstWells: 'Which wells does your line have?',
  firstWellsWhat:
    'A well is an opening that takes one full-size pan, or the fractions of it that fit. Count them from the left; they can be moved later.',
  fewerWells: (held: Held) => `One ${heldShort[held]} well fewer`,
  moreWells: (held: Held) => `One ${heldShort[held]} well more`,
  putWells: (count: number) => `Put ${counted(count, 'well', 'wells')} in`,
  lacksWells: 'Count at least one well',
  fits: 'it fits',
  noRoom: (one: PanSize, largest: PanSize | null) =>
    largest === null
      ? `No room: it is full, and ${a(one)} is too large`
      : `No room: ${a(largest)} is free, and ${a(one)} is too large`,
  inHand: (name: string) => `${name} in hand:`,
  keys: '← → moves it, Enter sets it down, Esc puts it back',
  taps: 'tap where it goes',
  setHere: (well: number, at: number) => `Set it into well ${well}, as number ${at + 1}`,
  setDown: 'Set it down',
  putBack: 'Put it back',
} as const
