/** Items while they are set up, and what touches what, in English. */

import type { ContactKind } from '#lib/station/station-document.ts'
import { counted, list } from '#lib/words/counted-en.ts'

type Mark = 'heart' | 'in' | 'side' | 'no' | 'base' | 'not'

const contact: Readonly<Record<ContactKind, string>> = {
  scoop: 'One scoop for',
  board: 'On one board',
  griddle: 'On one griddle',
  press: 'In one press',
  toaster: 'In one toaster',
  fryer: 'In one fryer',
  warmer: 'In one warmer',
  beside: 'Side by side',
  'reached-over': 'Reached over',
}

export const menuItemEn = {
  items: 'Items, as rows over the line',
  none: 'Nothing is sold yet.',
  add: 'Add an item',
  name: 'Name',
  price: 'Price',
  noName: 'An item without a name',
  noPrice: 'no price',
  marks: {
    heart: 'named for it',
    in: 'in it',
    side: 'on the side',
    no: 'only if asked',
    base: 'base',
    not: 'not part of it',
  } satisfies Record<Mark, string>,
  short: { heart: 'heart', in: 'in', side: 'side', no: 'no', base: 'base', not: '' },
  tapItem: 'Tap an item to change it. What it takes is shown over its pans.',
  tapPans: 'Tap a pan: in it, on the side, only if asked, not part of it.',
  pan: (name: string, mark: Mark) => `${name}: ${menuMark[mark]}`,
  heart: 'Named for',
  base: 'Comes in, the guest chooses one',
  usualBase: 'Usually',
  required: 'Can’t be left out',
  more: (price: string) => `+${price}`,
  foodOf: 'Food',
  foodRows: {
    portion: 'A portion costs',
    no: 'Left without it',
    extra: 'Left with one more',
  },
  takeOut: 'Take the item off the menu',
  takeOutSure: 'Tap again to take it off',
  next: 'Next item',
  toTouch: 'Next: what touches what',
  nothing: 'Tap the pans that go into it.',

  touch: 'What touches what',
  touchWhat:
    'Proposed from the drawing. A guest who keeps apart is told of all of it. Take out only what really never touches.',
  touchNone: 'Nothing is proposed: the line has no two pans side by side.',
  contact: (kind: ContactKind, names: readonly string[]) =>
    `${contact[kind]}: ${list(names, 'and')}`,
  kinds: contact,
  touches: 'They touch',
  never: 'They never do',
  proposed: 'proposed',
  confirm: (count: number) =>
    count === 0 ? 'That is all that touches' : `Confirm all ${counted(count, 'touch', 'touches')}`,
  confirmed: 'Confirmed. What the line adds later is proposed again.',
  notConfirmed: 'Not confirmed yet: until then nothing can be kept apart.',
  addTouch: 'Something else touches',
  addTouchWhat: 'What do they share? Then tap the pans.',
  putTouch: 'They touch',
  lacksTwo: 'Tap at least two pans',
} as const

const menuMark: Readonly<Record<Mark, string>> = {
  heart: 'named for it',
  in: 'in it',
  side: 'on the side',
  no: 'only if asked',
  base: 'base',
  not: 'not part of it',
}
