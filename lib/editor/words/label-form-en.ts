/** What is said while a label is read, and why one can't be recorded yet. */

import type { AccessRefusal } from '#lib/access/http.ts'
import type { FormProblem } from '#lib/editor/label-form/problems.ts'
import type { LabelRefusal } from '#lib/editor/label-http.ts'
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import type { Proposal } from '#lib/station/label-words/read-list.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import { counted, formOf, list } from '#lib/words/counted-en.ts'
import { sayDateOfYear } from '#lib/words/day-en.ts'
import { startingWith } from '#lib/words/findings-en.ts'
import { sayLabelProblem, traitName } from '#lib/words/label-problems-en.ts'
import { needName } from '#lib/words/service-en.ts'

const names = (codes: readonly string[]): string => list(codes.map(needName), 'and')

const law: Readonly<Record<AllergenSetId, string>> = {
  'us-9': 'US law',
  'eu-14': 'EU law',
}

const word = {
  contains: 'contains',
  'may-contain': 'may contain',
  free: 'declared free',
  'not-listed': 'not listed',
  unknown: 'not said',
} satisfies Record<Declaration, string>

const proposed: Readonly<Record<Exclude<Proposal, 'ask'>, string>> = {
  contains: 'contains?',
  'may-contain': 'may contain?',
  free: 'declared free?',
}

const sayProblem = (problem: FormProblem): string => {
  switch (problem.why) {
    case 'too-long':
      return `Too long: ${counted(problem.most, 'letter', 'letters')} at most.`
    case 'no-list':
      return 'Something isn’t listed: type or paste the list that was read, or say that it is one plain food.'
    case 'not-read-whole':
      return 'Something isn’t listed: say that you read the whole list.'
    case 'no-law':
      return 'Something isn’t listed: say which law its pack is under.'
    case 'beyond-law':
      return `${startingWith(needName(problem.code))}: ${law[problem.law]} lets a label leave it out, so “not listed” says nothing. Take “not said”.`
    case 'kind-contained':
      return `${startingWith(needName(problem.kind))} is in it, so ${needName(problem.code)} is: take “contains”, or correct the kind.`
    case 'trait-denied':
      return `${startingWith(traitName(problem.trait))} is ticked, but ${needName(problem.code)} isn’t in it: one of them is wrong.`
    case 'source-unanswered':
      return `Tap what ${traitName(problem.trait)} comes from, or that the label doesn’t say it.`
    case 'free-by':
      return `What declares it free of ${names(problem.codes)}?`
    case 'label':
      return sayLabelProblem(problem.problem)
  }
}

/** Refusals that only a label has; the others are said as those of the house. */
type OwnRefusal = Exclude<LabelRefusal, { readonly code: AccessRefusal }>

const sayRefused = (refusal: OwnRefusal): string => {
  switch (refusal.code) {
    case 'no-such-station':
      return 'There is no such station.'
    case 'no-such-ingredient':
      return 'This ingredient isn’t there any more.'
    case 'no-such-product':
      return 'This product isn’t there any more.'
    case 'stale':
      return 'Somebody wrote this label down meanwhile. What you answered is still here: look at theirs, then write yours down again.'
    case 'label-problem':
      return sayLabelProblem(refusal.problem)
    case 'unknown-need':
      return `This station doesn’t know ${needName(refusal.need)}.`
    case 'free-and-contains':
      return `${startingWith(needName(refusal.kind))} is in it, so ${needName(refusal.need)} is.`
    case 'traits-contradict':
      return `What it is made of and its allergens contradict each other: ${refusal.trait.replaceAll('-', ' ')}, ${needName(refusal.need)}.`
    case 'not-listed-unread':
      return `${startingWith(needName(refusal.need))} isn’t listed: the list that was read is missing.`
    case 'no-such-photo':
      return 'The picture wasn’t saved: take it again, or record the label without.'
  }
}

export const labelFormWords = {
  heading: 'Read a label',
  title: (name: string) => `Read a label: ${name}`,
  goesInto: (components: readonly string[]) =>
    components.length === 0
      ? 'It goes into nothing here yet.'
      : `It goes into ${list(components, 'and')}.`,
  alsoAt: (stations: readonly string[]) =>
    `${list(stations, 'and')} ${formOf(stations.length, 'has', 'have')} it too: the label is the house’s.`,
  back: 'Back',
  choose: 'Whose label is read?',
  neverRead: 'nobody has read it',
  readOn: (date: string) => `read on ${sayDateOfYear(date)}`,
  again: (date: string) => `read on ${sayDateOfYear(date)}: read it again`,
  noIngredients: 'This station has no ingredient yet.',
  noStation: 'Open this page from a station’s set-up.',

  product: 'Product',
  inUse: 'in use',
  productName: (maker: string | null, pack: string | null, inUse: boolean) =>
    [maker, pack].filter((one) => one !== null).join(' · ') ||
    (inUse ? 'The product in use' : 'No name'),
  another: 'Another product',
  anotherWhy: 'One that comes instead. It has a label of its own, read before it is used.',
  maker: 'Maker',
  pack: 'Pack, as “5 lb bag”',
  addProduct: 'Read its label',
  noMakerOrPack: 'Type its maker or its pack',

  package: 'The words on the package',
  packageHint: 'Type or paste the list and what is printed beside it.',
  changeWords: 'Change the words',
  markWords: 'Mark the words',
  noMarks: 'No word here is known to name an allergen. Read on: the list of words isn’t complete.',
  marked: (count: number) =>
    `${counted(count, 'word is', 'words are')} marked. Marks only propose; other words may name allergens too.`,
  markOf: (about: readonly string[]) => `about ${names(about)}`,
  plain: 'One plain food: no list',
  plainWhy: 'As a pepper or an egg in its shell',
  law: 'Its pack is under',
  laws: law,
  lawWhy: 'A pack says where it was packed or for whom it was imported.',

  take: 'Take a word, then tap all that it is printed for',
  takeFirst: 'Take a word first',
  word,
  wordWhy: {
    contains: 'it is named',
    'may-contain': 'it warns of it',
    free: 'it is printed',
    'not-listed': 'I read it all',
    unknown: 'unknown then',
  } satisfies Record<Declaration, string>,
  noAnswer: 'no answer yet',
  proposed,
  ask: (words: readonly string[]) => `ask: ${words.slice(0, 2).join(', ')}`,
  because: (words: readonly string[]) => words.slice(0, 2).join(', '),
  kindsIn: (kinds: readonly string[]) => names(kinds),
  kindsOf: (code: string) => `Which of ${needName(code)}?`,
  tile: (code: string) => startingWith(needName(code)),
  against: (code: string, words: readonly string[]) =>
    `${startingWith(needName(code))}: look again at “${words.slice(0, 3).join('”, “')}”.`,

  confirm: (codes: readonly string[]) =>
    codes.length === 0 ? 'No word to confirm' : `Yes, as marked: ${names(codes)}`,
  confirmWhy: 'I read these words on the package',
  rest: (count: number) =>
    count === 0 ? 'Nothing left that isn’t listed' : `The other ${count} aren’t listed`,
  restOne: 'The other one isn’t listed',
  restWhy: 'I read the whole list',
  restPlainWhy: 'It is one plain food',
  restUnsaid: (codes: readonly string[]) =>
    codes.length === 0 ? '' : `${names(codes)}: not said, the law lets it out`,
  lacksLaw: 'Say which law its pack is under',
  lacksList: 'Type the list, or say that it is one plain food',
  leftUnsaid: (count: number) => `The ${count} left: not said`,

  freeBy: 'What declares it free?',
  freeStands: {
    printed: 'declared free by words of the package',
    letter: 'declared free by its maker’s letter',
  },
  freeByWays: { printed: 'Words on the package', letter: 'A letter of its maker' },
  readAll: 'I read the whole list',

  diets: 'What it comes from, for diets',
  claim: (name: string, isOpen: boolean) =>
    isOpen
      ? `${name}, by the label or a certificate: no answer`
      : `${name}, by the label or a certificate`,
  dietsUnsaid: 'Not answered: unknown for every diet.',

  photo: 'A picture of the label',
  takePhoto: 'Take a picture',
  otherPhoto: 'Another picture',
  removePhoto: 'Without a picture',
  photoAlt: (name: string) => `The label of ${name}`,
  photoSending: 'Saving it …',
  photoRefused: {
    'not-a-picture': 'That file is no picture.',
    'too-many-pixels': 'That picture is too large to open: take a smaller one.',
    'cannot-open': 'This computer can’t open such a picture: take it as JPEG or PNG.',
    'no-pictures-here': 'Pictures can’t be saved on this computer: record the label without.',
    'no-such-photo': 'That picture isn’t there.',
    'too-large': 'That file is over 12 MB: take a smaller picture.',
  },

  is: 'What is in the pans now',
  isWays: { same: 'This product', other: 'Another one' },
  before: 'What was recorded before',
  fromBefore: 'Start from what was recorded before',
  stillOpen: (count: number) => `${counted(count, 'tile has', 'tiles have')} no answer yet`,
  wrong: (count: number) => `${counted(count, 'thing doesn’t', 'things don’t')} fit together`,
  signs: 'The person in charge writes it down',
  today: (date: string) => `Read today, ${sayDateOfYear(date)}, with the package in hand.`,
  passphrase: 'Passphrase of the person in charge',
  noPassphrase: 'Type the passphrase',
  write: 'Record it',
  writing: 'Writing …',
  written: (name: string) => `${name}: the label is recorded.`,
  told: (count: number) => (count === 0 ? '' : `Each open service that has it was told: ${count}.`),
  sayProblem,
  sayRefused,
} as const
