import type { CsvProblem, RowChange, RowNote, RowRefusal } from '#lib/carry/csv/planned.ts'
import type { ImportProblem } from '#lib/carry/http.ts'
import { list } from '#lib/words/counted-en.ts'

const megabytes = (bytes: number): string => `${Math.round(bytes / 1_048_576)} MB`

const SETS = { 'us-9': 'the nine of the United States', 'eu-14': 'the fourteen of the EU' } as const

/** Why a file can't be taken, and what to do about it. Nothing has changed by it. */
export const wrongFile = (problem: ImportProblem | CsvProblem): string => {
  switch (problem.why) {
    case 'empty':
      return 'This file is empty.'
    case 'too-large':
      return `This file is larger than ${megabytes(problem.mostBytes)}, which is as much as fits.`
    case 'cut-off':
      return 'This file breaks off in the middle: part of it is missing. Copy it again from where it came from.'
    case 'not-json':
    case 'other-file':
      return 'This is no file of a station.'
    case 'too-new':
      return `This file was written by a newer Level Scoop (version ${problem.version}; this one knows ${problem.known}). Bring this laptop up to date first.`
    case 'damaged':
      return `This file is damaged${problem.at === '' ? '' : ` at ${problem.at}`}. Copy it again from where it came from.`
    case 'altered':
      return 'This file isn’t as it was written: something in it was changed or lost on the way. Copy it again from where it came from.'
    case 'picture-altered':
      return 'A picture in this file isn’t as it was written. Copy the file again from where it came from.'
    case 'wrong-station':
      return `No service could open on this station: ${problem.messages.join('; ')}.`
    case 'other-allergen-set':
      return `This file is from a kitchen that reads labels for ${SETS[problem.there]}; this house reads for ${SETS[problem.here]}. Its labels would say too little here, so it isn’t taken.`
    case 'no-such-station':
      return 'The station that it should go into isn’t here any more.'
    case 'unknown-encoding':
      return 'This table isn’t UTF-8. If an older spreadsheet saved it, read it as Windows-1252 and look whether its letters are right.'
    case 'no-text':
      return 'This is no table as text. In the spreadsheet, save it as “CSV UTF-8”.'
    case 'no-column':
      return `This table has no column “${problem.column}” in its first row.`
    case 'column-twice':
      return `This table has the column “${problem.column}” twice.`
    case 'quotes':
      return `A quotation mark in row ${problem.row} is never closed.`
    case 'no-rows':
      return 'This table has no rows below its first.'
    case 'too-many-rows':
      return `This table has more than ${problem.most} rows: take it in parts.`
  }
}

/** Why a row stays out. */
export const rowRefused = (why: RowRefusal): string => {
  switch (why.code) {
    case 'too-long':
      return `“${why.column}” has ${why.letters} letters; ${why.most} fit`
    case 'formula':
      return `“${why.column}” begins as a formula does: type it as text`
    case 'control-sign':
      return `“${why.column}” has signs that can’t be typed`
    case 'too-many-cells':
      return 'it has more cells than there are columns: is a comma missing its quotation marks?'
    case 'nothing-said':
      return `“${why.column}” is empty`
    case 'said-before':
      return `row ${why.row} is called the same`
    case 'several-here':
      return `several here are called “${why.value}”`
    case 'name-taken':
      return `another here is called “${why.value}”`
    case 'unknown-allergen':
      return `“${why.value}” is no allergen of this house: correct it, or add it to the house’s own`
    case 'contradicts':
      return `“${why.value}” is in two columns`
    case 'unknown-word':
      return `“${why.value}” is neither recipe nor component`
    case 'no-such-component':
      return `no component here is called “${why.value}”: put it on the line first`
    case 'no-such-food':
      return `nothing here is called “${why.value}”: bring in the ingredients first`
    case 'contains-itself':
      return 'a recipe can’t go into itself'
    case 'yields-of-component':
      return 'only a recipe yields: how much a component gives, its pan says'
    case 'read-of-another':
      return `its label was read with another “${why.column}”, and would count for “${why.value}”: add it as a product, and read its label`
    case 'too-large':
      return 'the draft is full'
  }
}

export const rowChange = ({ field, from, to }: RowChange): string =>
  from === '' ? `${field}: ${to}` : `${field}: ${from} → ${to}`

export const rowNote = (note: RowNote): string =>
  note.code === 'arrives-unread'
    ? `${note.answers} ${note.answers === 1 ? 'answer' : 'answers'} of its label count as unread`
    : `this house’s label stays: the table says ${list(note.allergens, 'and')} otherwise`
