/** What is said when a label changes: choosing it, reading it, and what came of it. */

import type { Contradiction } from '#lib/rooms/care/views/label-draft.ts'
import type { GroundsProblem } from '#lib/rooms/care/views/label-grounds.ts'
import { guests } from '#lib/rooms/care/words/first-of-all-en.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import type { Claim, Sourced, Trait } from '#lib/station/codes/diets.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import { formOf, list } from '#lib/words/counted-en.ts'
import { inSentence, startingWith } from '#lib/words/findings-en.ts'
import { traitName } from '#lib/words/label-problems-en.ts'
import { needName } from '#lib/words/service-en.ts'

export const labelWords = {
  title: 'A label changed',
  back: 'Back to the line',
  findTitle: 'Which food is it?',
  search: 'First letters of the food or of what it goes into',
  nothingFound: 'Nothing on this line begins so.',
  lastRead: (date: string | null) =>
    date === null ? 'read the label' : `read ${sheetWords.date(date)}`,
  lastReadFact: (date: string | null) =>
    date === null
      ? 'Nobody has read its label: read the label.'
      : `Its label was last read on ${sheetWords.date(date)}.`,
  through: (recipes: readonly string[]) => `in ${list(recipes, 'and')}`,
  goesInto: (components: readonly string[]) => `It goes into ${list(components, 'and')}.`,
  otherFood: 'Another food',
  ways: 'What happened?',
  notSame: 'Not the same product as last time',
  notSameWhy:
    'Nothing of it counts as free until its label is read. Every build is checked again at once.',
  notSameSure: (name: string) => `Yes, ${name} isn’t the same`,
  notSameAlready: 'Said already: its label isn’t read yet.',
  sure: 'Tap again to say it for every screen.',
  read: 'I read the label',
  readWhy: 'For the person in charge, with the passphrase. Have the package in your hand.',

  product: 'Which product is it?',
  products: {
    other: 'Another product than what is in the pans',
    same: 'The same product: it was read wrong',
  } satisfies Record<'other' | 'same', string>,
  productFixed: 'It was said not to be the same product.',
  both: (pans: readonly string[]) =>
    pans.length === 0
      ? 'No pan holds any of it now.'
      : `${list(pans, 'and')}: counts as both products until each pan is changed, or emptied and washed.`,
  corrected: 'What is in the pans counts as read now.',
  changePans: (pans: readonly string[]) =>
    `Change ${list(
      pans.map((pan) => `the ${inSentence(pan)} pan`),
      'and',
    )}: ${formOf(pans.length, 'it holds', 'they hold')} the product before, and count${formOf(pans.length, 's', '')} as both.`,
  noPansBefore: 'No pan holds the product before.',

  formTitle: (name: string) => `What does the label of ${name} say?`,
  formWhy: 'What you leave at “not said” counts as unknown: never as free.',
  fromBefore: 'Start from what was read before',
  restNotListed: (count: number) =>
    count === 0
      ? 'Something is said of all that its law names'
      : `The whole list names none of the other ${count}: not listed`,
  law: 'Its pack is under',
  laws: { 'us-9': 'US law', 'eu-14': 'EU law' } satisfies Record<AllergenSetId, string>,
  readAll: 'I read the whole ingredient list',
  freeBy: 'What declares it free?',
  freeByWays: { printed: 'Words on the package', letter: 'A letter of its maker' },
  groundsProblem: (problem: GroundsProblem): string => {
    switch (problem.why) {
      case 'free-by':
        return `What declares it free of ${list(problem.codes.map(needName), 'and')}?`
      case 'no-law':
        return 'Something isn’t listed: say which law its pack is under.'
      case 'not-read-whole':
        return 'Something isn’t listed: say that the whole list was read.'
      case 'beyond-law':
        return `Its law lets a label leave out ${list(problem.codes.map(needName), 'and')}: take “not said”.`
    }
  },
  allergens: 'Allergens',
  word: {
    contains: 'contains',
    'may-contain': 'may contain',
    free: 'declared free',
    'not-listed': 'not listed',
    unknown: 'not known',
  } satisfies Record<Declaration, string>,
  notSaid: 'not said',
  kinds: (code: string, count: number) =>
    count === 0 ? `Kinds of ${needName(code)}` : `Kinds of ${needName(code)} (${count} said)`,
  asGroup: 'as the group',
  traits: 'What it is made of, for diets',
  trait: (trait: Trait) => startingWith(traitName(trait)),
  implied: 'by what else is said',
  source: (trait: Sourced) => `${startingWith(traitName(trait))} from`,
  sourceUnanswered: (trait: Sourced) =>
    `Tap what ${traitName(trait)} comes from, or that the label doesn’t say it: “not said” counts as unknown.`,
  statement: 'What the label says beside “wheat”',
  traitsWhy: 'Nothing tapped counts as unknown for every diet.',
  noTraits: 'None of these',
  noOtherTraits: 'None of the others',
  traitsUnsaid: 'What it is made of: not said, so unknown for every diet.',
  claims: 'Declared by the label or a certificate',
  claim: { halal: 'Halal', kosher: 'Kosher' } satisfies Record<Claim, string>,
  claimWord: { declared: 'declared', not: 'declared not' },
  readBy: 'Read by (initials)',
  passphrase: 'Passphrase of the person in charge',
  readOn: (date: string) => `Read on ${sheetWords.date(date)}`,
  send: 'This is what the label says',
  missingReadBy: 'Say who read it.',
  missingPassphrase: 'Type the passphrase.',
  contradiction: ({ trait, code }: Contradiction) =>
    `${startingWith(needName(code))} is declared free or not listed, but ${traitName(trait)} is ticked: one of them is wrong.`,
  unsaid: (codes: readonly string[]) =>
    codes.length === 0
      ? 'Something is said of every allergen.'
      : `Not said, so unknown: ${list(codes.map(needName), 'and')}.`,

  historyTitle: 'Labels that changed in this service',
  noHistory: 'None yet.',
  change: (name: string, read: boolean) =>
    read ? `${name}: the new label was read` : `${name}: not the same product, not read yet`,
  outcomeTitle: (name: string) => `${name}: what comes of it`,
  find: (builds: readonly string[]) => `Find ${guests(builds)}, now.`,
  findNone: 'For it, no guest who was handed something has to be found.',
  hold: (builds: readonly string[]) =>
    `Held: ${list(builds.map(sayBuild), 'and')}. Assembly answers the stop, the counter changes or cancels.`,
  holdNone: 'For it, no open build is held.',
  beside: (find: readonly string[], held: readonly string[]) =>
    `Still open for something else: ${[
      ...(find.length > 0 ? [`find ${guests(find)}`] : []),
      ...(held.length > 0 ? [`held ${list(held.map(sayBuild), 'and')}`] : []),
    ].join('; ')}.`,
  reprint: (components: readonly string[]) => `Print the labels anew: ${list(components, 'and')}.`,
  sheet: (date: string) => `The allergen sheet now has the date ${date}.`,
  working: 'Sending …',
  done: {
    notSame: (name: string) => `${name}: not the same product`,
    read: (name: string) => `${name}: the label is read`,
  },
} as const
