/** What is wrong with a station, at its field, in English: what it is and how to mend it. */

import { type Draft, type Kind, rowOf, textIn } from '#lib/editor/draft.ts'
import type { Other, Problem, StepRefusal } from '#lib/editor/problem.ts'
import { fieldName, rowNamed } from '#lib/editor/words/fields-en.ts'
import { sayCents } from '#lib/words/amounts-en.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { needName } from '#lib/words/service-en.ts'

type Say = (told: {
  readonly field: string
  readonly other: string
  readonly value: string
}) => string

const isMoney = (field: string | null): boolean => /Cents$/.test(field ?? '')

const startingWith = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const SAID: Readonly<Record<string, Say>> = {
  // what the shape of a field asks
  missing: ({ field }) => `${startingWith(field)} is missing.`,
  empty: ({ field }) => `${startingWith(field)} is empty.`,
  'no-density': () =>
    'Its weight isn’t known: weigh ten level ones, or portion it by weight or pieces.',
  'wrong-form': ({ field }) => `${startingWith(field)} can’t be read so.`,
  'no-such-choice': ({ field }) => `${startingWith(field)} can’t be that.`,
  'no-such-field': ({ field }) => `${startingWith(field)} can’t be said of it.`,
  'too-long': ({ value }) => `Too long: ${counted(Number(value), 'letter', 'letters')} at most.`,
  'too-many': ({ value }) => `Too many: ${value} at most.`,
  'too-few': ({ field }) => `${startingWith(field)}: at least one.`,
  'too-much': ({ value }) => `Too much: ${value} at most.`,
  'too-little': ({ value }) => `Too little: ${value} at least.`,
  // names
  'twice-the-id': () => 'Two have one id: take one away and add it anew.',
  'same-id': () => 'Its id is taken: add it anew under another name.',
  'named-twice': ({ other }) => `${startingWith(other)} is named twice.`,
  'no-such-ingredient': ({ other }) => `${startingWith(other)} isn’t an ingredient any more.`,
  'no-such-recipe': ({ other }) => `${startingWith(other)} isn’t a recipe any more.`,
  'no-such-component': ({ other }) => `${startingWith(other)} isn’t on the line any more.`,
  // the line and what is sold
  'pans-dont-fit': () => 'Its pans don’t fit: move one into another well, or take a smaller one.',
  'no-well': () => 'It is in no well: move it into one.',
  'no-pan': ({ other }) => `It takes ${other}, which has no pan: put one in.`,
  'usual-overfull': ({ value }) =>
    `It holds ${counted(Number(value), 'portion', 'portions')} at most: say less, or take a deeper pan.`,
  'no-heart': () => 'It doesn’t take what it is named for: tap that pan, or name it for another.',
  'base-not-a-choice': () => 'Its usual base can’t be chosen: choose one that can.',
  'required-not-usual': ({ other }) =>
    `${startingWith(other)} can’t be left out, but isn’t usually in it.`,
  'no-cups': ({ other }) =>
    `${startingWith(other)} is put on the side, but there are no cups for it: say so at its pan.`,
  // what is made
  'made-of-nothing': () => 'It is made of nothing: put in what it is made of.',
  'yield-zero': () => 'It makes nothing: say what the recipe makes, as “serves 24”.',
  'contains-itself': () => 'This recipe contains itself: take itself out of it.',
  'line-of-another': () => 'An amount is of something that isn’t in it.',
  'no-source': () => 'Say where that comes from: the table, or what was weighed.',
  // labels
  'no-such-allergen': ({ value }) =>
    `Its label names ${value}, which nobody is asked about here: add it in the house.`,
  'own-twice': ({ value }) => `${value} is there twice.`,
  'own-is-known': ({ value }) => `${value} is asked about already: take it out.`,
  // food, limits and the day
  'dry-and-cooked': () =>
    'It is held dry, so it is nothing that is cooked or mixed here: say ready to eat, or move it.',
  'cooked-to-order': () => 'What is in a pan is cooked as a batch, not to order.',
  'reheats-in-hot-well': () => 'A hot well holds food and never heats it.',
  'asks-too-early': () =>
    'Readings are asked for before the one before them is due: ask later, or read less often.',
  'looser-than-model': () =>
    'That asks less than the model code: read it in the local code, and say where.',
  'held-otherwise': () =>
    'Its well holds otherwise than it is held: move its pan, or change how the well holds.',
  'time-without-procedure': () =>
    'Time alone needs a written procedure on site: say so in the house, under the day.',
  'no-such-time-zone': () => 'There is no such time zone: take one of the list.',
  'rush-backwards': () => 'The rush ends before it begins.',
  'doors-backwards': () => 'The doors close before they open.',
  'period-backwards': () => 'A period ends before it begins.',
  'periods-overlap': () => 'Two periods overlap.',
  'no-such-bell': () => 'The crew is there on a schedule that isn’t there any more.',
  'no-such-period': () => 'The crew is there in a period that isn’t there any more.',
  'initials-twice': ({ value }) => `${value} is there twice in one period: add a letter.`,
}

const LABEL = 'Its label says two things that can’t both be: read it again.'

const NAMED: readonly Kind[] = ['component', 'ingredient', 'recipe', 'item']

/** What an id, an allergen or a time is called. */
const nameOf = (draft: Draft, id: string): string => {
  const kind = NAMED.find((one) => rowOf(draft, one, id) !== undefined)
  return kind === undefined
    ? needName(id as Parameters<typeof needName>[0])
    : textIn(rowOf(draft, kind, id), 'name') || id
}

/** One problem as a sentence. */
export const sayProblem = (draft: Draft, problem: Problem): string => {
  const { code, field, named = [] } = problem
  const said = SAID[code]
  if (!said) return problem.entity === 'ingredient' ? LABEL : `That isn’t right: ${code}.`
  const limit = problem.most ?? problem.least
  const names = list(
    named.map((id) => nameOf(draft, id)),
    'and',
  )
  return said({
    field: fieldName(field),
    other: names === '' ? fieldName(field) : names,
    value: limit === undefined ? names : isMoney(field) ? sayCents(limit) : String(limit),
  })
}

const REFUSED: Readonly<Record<StepRefusal, (other: string) => string>> = {
  'no-such-row': () => 'Somebody took it away meanwhile.',
  'no-such-field': () => 'That can’t be said of it.',
  'no-id': () => 'It has no name that can be kept.',
  'in-use': (other) => `${startingWith(other)} uses it: take it out there first.`,
  'id-of-before': () =>
    'The house has a label under this name of what is gone: call it something else.',
  'other-pack': () =>
    'Its label was read of another pack: add this one as a product, and read its label.',
  'too-large': () => 'That is more than a station can hold.',
}

/** Why a step wasn’t taken. */
export const sayRefusedStep = (
  draft: Draft,
  { why, other }: { readonly why: StepRefusal; readonly other?: Other },
): string => REFUSED[why](other ? rowNamed(draft, other.entity, other.id) : 'something')
