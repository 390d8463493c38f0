/** The recipe at any yield, in English: how much, whether it is enough, what it costs. */

import type { Density } from '#lib/recipes/amount.ts'
import type { ByTaste } from '#lib/recipes/by-itself.ts'
import type { WeighedCode, Weighing } from '#lib/recipes/density.ts'
import type { PortionTotal } from '#lib/recipes/portion-total.ts'
import { type Rational, toNumber } from '#lib/recipes/rational.ts'
import type { NotInStep } from '#lib/recipes/sheet/not-in-step.ts'
import type { WantedBy } from '#lib/recipes/sheet/recipe-sheet.ts'
import type { StepsProblem } from '#lib/recipes/sheet/typed-steps.ts'
import { counted } from '#lib/words/counted-en.ts'
import { quantityEn } from '#lib/words/quantity-en.ts'
import { costEn } from '#lib/words/recipe/cost-en.ts'
import { sayAmount, sayMeasure, sayTakenApart } from '#lib/words/recipe/measures-en.ts'
import { sayPacks } from '#lib/words/recipe/packs-en.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'
import { typedProblem } from '#lib/words/recipe/typed-problems-en.ts'
import { sayUnderstood } from '#lib/words/recipe/understood-en.ts'

const FACTOR = new Intl.NumberFormat(quantityEn.locale, { maximumFractionDigits: 3 })
const PERCENT = new Intl.NumberFormat(quantityEn.locale, { style: 'percent' })

const percent = (share: number): string => PERCENT.format(share)

const NUMBER = new Intl.NumberFormat(quantityEn.locale, { maximumFractionDigits: 1 })

const KNOWN_BY: Readonly<Record<Density['by'], string>> = {
  measured: 'By ten scoops that were weighed',
  pan: 'By a pan that was weighed',
  table: 'By a table',
  card: 'By the card',
}

const inches = (depth: number): string => `${depth === 2.5 ? '2 1/2' : depth} in`

const WEIGHED_BY = (weighing: Weighing): string =>
  weighing.by === 'measured'
    ? `weighed here: ten level measures, ${weighing.scoops.trim()}`
    : weighing.by === 'pan'
      ? `weighed here: one full pan, ${weighing.gross.trim()}`
      : `USDA SR28, ${weighing.food.replaceAll('-', ' ')}`

const BY_TASTE: Readonly<Record<ByTaste, string>> = {
  'to-taste': 'to taste',
  salt: 'put in part of it, taste, then the rest',
  spice: 'put in part of it, taste, then the rest',
  leavening: 'doesn’t go up in step: test a small batch first',
  thickener: 'less boils away from a large pot: add the last of it as needed',
  rough: 'no exact measure: taste',
}

export const recipeEn = {
  title: 'Recipe',
  of: (recipe: string, station: string) => `${recipe} · ${station}`,
  back: 'To the set-up',
  print: 'Print',
  onPaper: 'The card on paper',
  choose: 'Which recipe?',
  line: 'The line',
  inPan: (name: string, recipe: string) => `${name}: ${recipe}`,
  none: 'No recipe is set up yet: put one into a pan’s food on the set-up page.',
  noSuch: 'There is no such recipe here any more.',
  notLead: 'Recipes are shown to the lead and to the person in charge.',
  lost: 'No answer from the laptop. What is shown may be old.',
  connecting: 'Asking the laptop …',

  asCard: (yields: string) =>
    yields === '' ? 'The card doesn’t say what it makes.' : `The card: ${yields}`,
  make: 'Make',
  makeHint: '348 · 20 portions of 3 oz · 2 half pans, 4 in · 6 qt · x 2',
  atHand: 'Or by what is at hand of',
  nothing: 'nothing',
  handAmount: 'At hand',
  fits: 'Fits at once',
  fitsHint: '20 qt · 2 full pans, 4 in',
  factor: (factor: Rational) => `${FACTOR.format(toNumber(factor))} × the card`,
  problem: typedProblem,

  method: {
    title: 'Method',
    hint: 'One step a line. Limits of cooking, holding and cooling are on the card by themselves.',
    example: 'Drain the tuna.\nFold in the relish.\nChill.',
    problem: (problem: StepsProblem) =>
      problem.code === 'too-many'
        ? `A card has at most ${problem.most} steps. Join some, or make it two recipes.`
        : `Step ${problem.nth} is longer than ${problem.most} letters. Make it two.`,
    notSaved: 'Not saved. Tap into it and out once more.',
  },
  lines: 'Measure out',
  part: 'Ingredient',
  amount: 'Amount',
  alsoAs: 'Also',
  buy: 'Buy',
  tell: 'Mind',
  measure: sayMeasure,
  understood: sayUnderstood,
  amountOf: sayAmount,
  takenApart: sayTakenApart,
  exactly: (apart: string) => `exactly ${apart}`,
  opened: (count: number) => `open ${counted(count, 'can', 'cans')}`,
  asTyped: (typed: string) => (typed === '' ? 'no amount on the card' : `on the card: ${typed}`),
  toTaste: 'to taste',
  recipePart: 'recipe',
  byTaste: (kind: ByTaste) => BY_TASTE[kind],
  rounding:
    'Rounded: weights to 1/4 oz; volumes to a spoon or a quarter cup by their size; eggs, pieces and cans whole. Cook by temperature, not by the card’s time.',
  batches: (count: number, each: string) =>
    count === 1 ? 'It fits at once.' : `It doesn’t fit at once: ${count} even batches of ${each}.`,
  notInStep: (flag: NotInStep) =>
    flag.code === 'time'
      ? 'The card’s time isn’t for this much at once: probe the middle.'
      : flag.card === null
        ? `It lies ${inches(flag.made)} deep, the card doesn’t say how deep: the time is another.`
        : `It lies ${inches(flag.made)} deep, on the card ${inches(flag.card)}: the time is another.`,
  vessel: 'Made in',
  vesselWith: (name: string, holds: string) => `${name}, ${holds}`,
  noVessel: 'something else',
  toVessels: 'Pots and ovens are set up under House, Kitchen.',
  whole: (typed: string) => `Make it with ${typed}`,

  yield: 'Is it enough?',
  /** "level #16: 20 × 1/4 cup = 5 cups", the total as on every sheet. */
  portionTotal: (scoop: number | null, level: number, total: PortionTotal) =>
    `${scoop === null ? '' : `${level > 1 ? `${level} level` : 'level'} #${scoop}: `}${sayPortionTotal(total)}`,
  forHowMany: 'Enough for',
  forHint: (count: number) => String(count),
  wantedBy: {
    asked: '',
    make: 'as under Make',
    card: 'as the card says',
    usual: 'as its pans are usually loaded',
    made: 'as many as are made',
  } satisfies Record<WantedBy, string>,
  notCount: 'Type a whole number of portions, as 40.',
  makes: (amount: string, gives: number) =>
    `It makes ${amount}: ${counted(gives, 'portion', 'portions')}.`,
  offBy: (over: number, wanted: number) =>
    over > 0
      ? `${percent(over)} more than ${counted(wanted, 'portion takes', 'portions take')}.`
      : `${percent(-over)} less than ${counted(wanted, 'portion takes', 'portions take')}.`,
  fitsIt: 'Within a tenth of it.',
  way: {
    scoop: (number: number) => `Take a level #${number} scoop`,
    scoopSub: (portions: number) => counted(portions, 'portion', 'portions'),
    enough: (factor: Rational) => `Make ${FACTOR.format(toNumber(factor))} × the card`,
    enoughSub: 'just enough',
    batches: (count: number) => `Make the card ${count} times`,
    batchesSub: (count: number) => counted(count, 'batch', 'batches'),
  },
  scoopTaken: (number: number) =>
    `A portion is a level #${number} scoop from now on, in this draft.`,
  notServed: 'No pan holds this recipe by itself, so there is no portion to hold it against.',
  noPortion: 'Its pan has no portion yet.',
  noSize:
    'The card says portions and not of what size. Measure what one batch makes and type that on the card, as 4 qt.',
  underOne: 'Not even one portion is made.',
  noYieldYet: 'The card doesn’t say what it makes.',
  noDensity: 'The card is by weight and the portion by volume: weigh ten scoops on the pan’s page.',
  density: (by: Density['by'], offBy: number) => `${KNOWN_BY[by]}: up to ${percent(offBy)} off.`,

  weighs: (name: string) => `What ${name} weighs`,
  knownBy: 'Known by',
  weighing: {
    measured: 'ten level scoops, weighed together',
    pan: 'one full pan, weighed',
    table: 'a table (USDA household weights)',
  } satisfies Record<Weighing['by'], string>,
  tenWeigh: (scoop: number | null) =>
    scoop === null ? 'Ten level measures weigh' : `Ten level #${scoop} scoops weigh`,
  panGross: 'The full pan weighs',
  panTare: 'The empty pan weighs',
  panTareHint: 'empty: as it is set up',
  tableOf: 'Food',
  foodName: (id: string) => id.replaceAll('-', ' '),
  record: 'Record what it weighs',
  weighedBy: (weighing: Weighing) => WEIGHED_BY(weighing).slice(0, 120),
  weighedAs: (gPerCup: number, by: Density['by'], offBy: number) =>
    `A level cup weighs ${NUMBER.format(gPerCup)} g. ${KNOWN_BY[by]}: up to ${percent(offBy)} off.`,
  notWeighed: {
    'no-weight': 'Type a weight, as 1 lb 4 oz or 560 g.',
    'no-volume': 'What the pan holds isn’t known.',
    'below-tare': 'The empty pan weighs more than the full one.',
    unlikely: 'No food weighs that: check the scale and the scoop.',
    'not-in-the-table': 'Choose a food.',
    'no-measure': 'Its portion is no level measure, or no pan of known capacity holds it.',
  } satisfies Record<WeighedCode, string>,

  ...costEn,

  invoice: 'Add a line of an invoice',
  which: 'For',
  date: 'Date',
  packs: 'Packs',
  packHolds: 'A pack holds',
  packHint: '6 x #10 cans',
  paid: 'Paid for all',
  add: 'Add',
  edible: 'Eaten once trimmed, %',
  edibleWhy: '88.5, or 4.6 kg of 5.2 kg',
  newest: (date: string, packs: number, pack: string, paid: string) =>
    `${date}: ${sayPacks(packs, pack)}, ${paid}`,
  wrongMoney: 'Type money, as 36.00.',
  wrongDate: 'That day isn’t yet: type the day of the invoice.',
  wrongPacks: 'Type a whole number from 1.',
  wrongPercent: 'Type 1 to 100, or 4.6 kg of 5.2 kg.',
  kept: 'Recorded.',
  notKept: 'Not recorded: somebody else changed it, or the laptop didn’t answer. Try once more.',
} as const
