/** What is said where a station is carried out and in. */

import type { LabelDiffers, MetIngredient } from '#lib/carry/met.ts'
import { rowChange, rowNote, rowRefused, wrongFile } from '#lib/carry/words/problems-en.ts'
import type { Change } from '#lib/editor/change.ts'
import { type Entity, KINDS } from '#lib/editor/draft.ts'
import { sayChange } from '#lib/editor/words/changes-en.ts'
import { counted, list } from '#lib/words/counted-en.ts'

const COUNTED: Readonly<Partial<Record<Entity, readonly [string, string]>>> = {
  well: ['well', 'wells'],
  pan: ['pan', 'pans'],
  backup: ['back-up pan', 'back-up pans'],
  tool: ['tool', 'tools'],
  component: ['component', 'components'],
  recipe: ['recipe', 'recipes'],
  ingredient: ['ingredient', 'ingredients'],
  item: ['item', 'items'],
  contact: ['contact', 'contacts'],
}

const differs = ({ allergen, there, here }: LabelDiffers): string => {
  const said = here === null || here === 'unknown' ? 'not said' : here.replace('-', ' ')
  return `${there.replace('-', ' ')} ${allergen.replaceAll('-', ' ')} (this house’s says: ${said})`
}

const metSaid = ({ name, does, other, differs: all }: MetIngredient): string => {
  if (does !== 'apart') return `${name}: the file’s label says ${list(all.map(differs), 'and')}`
  return other === null
    ? `${name}: this house had one before; it comes as a new one, unread`
    : `${name}: this house calls another “${other}”; it comes as one of its own, unread`
}

export const carryWords = {
  title: 'Carry a station',
  lead: 'Out of this laptop as a file, and into it from one.',
  back: 'To the station',
  toMenu: 'To the line',
  noStation: 'A table goes into a station: choose it first.',
  notLead: 'This page is for a lead’s device.',
  lost: 'The server isn’t answering. Nothing was taken; try again.',
  looking: 'Looking at the file …',
  out: 'Out',
  file: 'The station in one file',
  fileHint: 'Line, cards, items, labels and their pictures. Nothing of guests or services.',
  ingredients: 'Ingredients as a table',
  recipes: 'Recipes as a table',
  tableHint: 'CSV, for a spreadsheet',
  into: 'In',
  choose: 'Choose a file',
  chooseHint: 'A station’s file, or a table as CSV. You see what it does before anything is done.',
  another: 'Another file',
  leave: 'Leave it',
  whereTo: 'Where it goes',
  asNew: 'A new station',
  intoThis: (name: string) => `Into ${name}`,
  brings: (name: string) => `From: ${name}`,
  becomes: (name: string) => `Becomes the draft of ${name}`,
  isOpen: 'A service is open on it: nothing of that changes. What you take here waits as a draft.',
  counts: (pictures: number) =>
    pictures === 0 ? 'no pictures' : counted(pictures, 'picture', 'pictures'),
  unread: (answers: number) =>
    answers === 0
      ? 'No answer of its labels lets a guest have anything here.'
      : `${counted(answers, 'answer', 'answers')} that let a guest have something arrive unread: read each pack here.`,
  changes: (count: number) =>
    count === 0 ? 'It says the same as what is here.' : counted(count, 'difference', 'differences'),
  change: sayChange,
  added: (changes: readonly Change[]) =>
    list(
      KINDS.flatMap((entity) => {
        const count = changes.filter((one) => one.entity === entity && one.what === 'added').length
        const said = COUNTED[entity]
        return count === 0 || said === undefined ? [] : [counted(count, ...said)]
      }),
      'and',
    ),
  labels: 'Labels',
  ownStay: (count: number) =>
    `${counted(count, 'ingredient', 'ingredients')} that this house has too: its own labels stay.`,
  arrive: (count: number) => `${counted(count, 'new ingredient', 'new ingredients')}, unread.`,
  met: metSaid,
  take: 'Make it a draft',
  taken: (name: string) => `${name} is a draft now. Nothing is published yet.`,
  takenWith: (problems: number) =>
    `${counted(problems, 'thing', 'things')} to put right before it can be published.`,
  stale: 'Somebody changed the station meanwhile. Here is what it would do now.',
  tableOf: 'What the table holds',
  ofIngredients: 'ingredients',
  ofRecipes: 'recipes',
  asWindows: 'Read as Windows-1252',
  ignored: (columns: readonly string[]) =>
    `Nothing is taken from ${list(
      columns.map((one) => `“${one}”`),
      'and',
    )}.`,
  row: 'Row',
  name: 'Name',
  does: 'Does',
  why: 'What',
  doing: { new: 'new', changes: 'changes', same: 'the same', refused: 'stays out' },
  with: (name: string, made: string) => `${name} with ${made}`,
  takeRows: (count: number) => `Take ${counted(count, 'row', 'rows')}`,
  takesNone: 'No row does anything',
  staysOut: (count: number) => `${counted(count, 'row stays', 'rows stay')} out`,
  rowsTaken: (taken: number, refused: number) =>
    `${counted(taken, 'row is', 'rows are')} in the draft${
      refused === 0 ? '' : `; ${counted(refused, 'row', 'rows')} stayed out`
    }.`,
  wrongFile,
  rowRefused,
  rowChange,
  rowNote,
  nothingChanged: 'Nothing has changed.',
} as const
