/** The chosen pan while it is set up, in English: what is in it, its portion, when it is made again. */

import type { PanDepthIn, PanSize } from '#lib/measure/pans.ts'
import type { ScoopColour } from '#lib/measure/scoops.ts'
import type { FoodKind } from '#lib/safety/cooking.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { needName } from '#lib/words/service-en.ts'

type Tool =
  | 'scoop'
  | 'ladle'
  | 'spoodle'
  | 'measure'
  | 'tongs'
  | 'tongs-pieces'
  | 'piece'
  | 'cup'
  | 'bottle'

const depth = (one: PanDepthIn): string => (one === 2.5 ? '2 1/2 in' : `${one} in`)

const kind: Readonly<Record<FoodKind | 'ready', string>> = {
  ready: 'Ready to eat as it comes',
  plant: 'Cooked plant food',
  'not-cooked': 'Mixed here, not cooked',
  'fish-or-meat': 'Fish or whole meat',
  'ground-meat': 'Ground meat or fish',
  'poultry-or-stuffed': 'Poultry, or stuffed',
  'eggs-batch': 'Eggs in a batch',
  'eggs-to-order': 'Eggs to order',
}

const names = (codes: readonly string[]): string =>
  list(
    codes.map((code) => needName(code as Parameters<typeof needName>[0])),
    'and',
  )

export const menuPanEn = {
  leaves: {
    made: 'What is in it',
    portion: 'A portion',
    again: 'Made again',
    guest: 'Guests and back-up',
  },
  noName: 'A pan without a name',
  next: (name: string | null) => (name === null ? 'Next: the items' : `next: ${name}`),
  keep: 'Done',
  toPortion: 'Next: a portion',

  name: 'Name',
  short: (line: 1 | 2) => `On the pan, line ${line}`,
  madeOf: 'What it is made of',
  straight: 'Straight from the pack',
  straightWhy: (name: string) => `one ingredient: ${name}`,
  putIn: 'Put an ingredient in',
  asRecipe: 'As a recipe of its own',
  add: 'Put in',
  amount: (name: string) => `How much ${name}`,
  amountHint: 'how much',
  takeOut: (name: string) => `Take ${name} out`,
  openRecipe: (name: string) => `Open the recipe ${name}`,
  recipe: 'recipe',
  backFromRecipe: (name: string) => `Back to ${name}`,
  yields: 'What the card says it makes',
  atAnyYield: 'At any yield, and its cost',
  read: (date: string) => `label read ${date}`,
  unread: 'label not read',
  unreadWhy: 'counts as not known',
  named: (contains: readonly string[], mayContain: readonly string[]) =>
    [
      ...(contains.length > 0 ? [`contains ${names(contains)}`] : []),
      ...(mayContain.length > 0 ? [`may contain ${names(mayContain)}`] : []),
    ].join('; ') || 'names none',
  readLabel: (name: string) => `Read the label of ${name}`,
  readShort: 'Read',
  stands: {
    head: 'As it is now:',
    contains: (codes: readonly string[]) => `contains ${names(codes)}.`,
    mayContain: (codes: readonly string[]) => `May contain ${names(codes)}.`,
    none: 'no allergen named on labels read.',
    nothing: 'it is made of nothing yet.',
    unread: (of: readonly string[]) =>
      `Everything else is not known until the ${of.length === 1 ? 'label' : 'labels'} of ${list(of, 'and')} ${of.length === 1 ? 'is' : 'are'} read.`,
  },

  kind: 'What kind of food is it here?',
  kinds: kind,
  kindUnsaid: 'Not said: the highest cooking limit holds',

  portion: 'A portion is',
  tool: 'Taken with',
  tools: {
    scoop: 'Scoop',
    ladle: 'Ladle',
    spoodle: 'Portion spoon',
    measure: 'Cup or spoon',
    tongs: 'Tongs, by weight',
    'tongs-pieces': 'Tongs, by pieces',
    piece: 'Pieces by hand',
    cup: 'Lidded cup',
    bottle: 'Squeeze bottle',
  } satisfies Record<Tool, string>,
  scoopSize: (number: number, colour: ScoopColour | null) => quantityEn.scoop(number, colour),
  size: 'Size',
  level: (count: number) => counted(count, 'level', 'levels'),
  fewer: 'One level fewer',
  more: 'One level more',
  pieces: 'Pieces',
  grams: 'A tong-full weighs',
  gramsUnit: 'g',
  weighedHere: 'weighed here',
  squeezes: 'Squeezes',
  weighedSqueezes: 'How many you weighed',
  weighedGrams: 'What they weighed together',
  density: {
    title: 'What it weighs',
    ten: (one: string) => `Ten level ${one} weigh`,
    tenHint: 'as “1 lb 4 oz” or “560 g”',
    scoops: 'scoops',
    ladles: 'ladles',
    cups: 'measures',
    table: 'From a table',
    tableOf: (food: string) => `${food}: USDA`,
    known: (cup: string, source: string) => `A level cup weighs ${cup}: ${source}.`,
    unknown: 'Not known yet. Weigh ten level ones, or portion it by weight or pieces.',
    measured: (typed: string) => `ten level ones weighed ${typed}`,
    wrong: 'Type it as a weight: “1 lb 4 oz” or “560 g”.',
    unlikely: 'No food is that light or heavy. Weigh it again, without the bowl.',
  },
  holds: (size: PanSize) => `A ${quantityEn.panSize(size)} holds, by its depth`,
  depth,
  notSold: 'not sold',
  holdsUnknown: '?',
  serves: (all: string, each: string, count: number) =>
    `${all} to serve from, ${each} a portion: ${counted(count, 'portion', 'portions')}.`,
  panSize: 'Pan',
  usual: 'Usual load, in portions',
  goesIn: 'Goes in',

  again: 'Made again during a service?',
  canBe: 'Yes',
  cannotBe: 'No',
  where: 'Where',
  by: 'By whom',
  minutes: 'Minutes until it is here',
  perLoad: 'Minutes for each further load',
  portionsPerLoad: 'Portions a load',
  mostLoads: 'Loads at once, at most',
  cookedIn: 'Cooked in a microwave',
  roast: 'A whole roast',
  dryHere: (well: 'hot' | 'cold') => `Dry: needs no temperature, though its well is ${well}`,
  reheatable: 'May be heated again',
  warm: 'Warmed before it goes in',
  warmSeconds: 'Seconds',
  warmOn: 'On',

  side: 'Lidded cups exist for it: on the side',
  extra: 'One more portion costs',
  cost: 'It costs you, a portion',
  mark: 'Written on a wrap as',
  plural: 'Many: “almonds are”',
  tare: 'The empty pan weighs, oz',
  capacity: 'Your pan holds, fl oz',
  backups: 'Back-up pans',
  addBackup: 'Put a back-up pan behind it',
  backup: (size: PanSize, one: PanDepthIn) => `${quantityEn.panSize(size)}, ${depth(one)}`,
  protected: 'Protected: lidded, own scoop, not reached over',
  kept: 'Kept',
  keptAs: { hot: 'hot', cold: 'cold', boxed: 'boxed' },
  takeBackup: 'Take it away',
  takePan: 'Take the pan out',
  takePanSure: 'Tap again to take it out',
  move: 'Take it in hand',
  also: (pans: number) => `In ${counted(pans, 'pan', 'pans')} of the line.`,
} as const
