/** What the sheet says on which the whole line is loaded at once. */

import type { SetUpWait } from '#lib/rooms/pans/views/set-up-row.ts'
import { counted, formOf, list } from '#lib/words/counted-en.ts'
import { sayDateOver, sayDateProblem } from '#lib/words/date-problems-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'
import type { SayTime } from '#lib/words/said-here.ts'

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']
const small = (count: number): string => SMALL[count] ?? String(count)

/** What a pan says below itself, in two or three words. */
const shortly = (wait: SetUpWait, isCup: boolean): string => {
  switch (wait.why) {
    case 'left':
      return 'left for now'
    case 'throw-out':
      return 'throw out first'
    case 'no-batch':
      return wait.isMaking ? 'still being made' : isCup ? 'cups not filled' : 'no batch'
    case 'barred':
      return 'can’t go in'
    case 'washed':
      return 'washed?'
    case 'opened-on':
      return 'opened when?'
    case 'date':
      return 'which date?'
    case 'past-date':
      return 'date is over'
    case 'label':
      return 'new label?'
    case 'reading':
      return 'read it'
    case 'read-again':
      return 'read again'
    case 'out-of-limits':
      return 'out of limits'
  }
}

/** The same in a sentence, where there is room. */
const inFull = (wait: SetUpWait, isCup: boolean, time: SayTime): string => {
  switch (wait.why) {
    case 'left':
      return 'It stays empty for now.'
    case 'throw-out':
      return 'What came out of it is thrown out and initialled first.'
    case 'no-batch':
      return wait.isMaking
        ? 'Its batch is still being made.'
        : isCup
          ? 'The cups aren’t filled: no batch of it is finished.'
          : 'No batch of it is finished.'
    case 'barred':
      return safetyWords.load(wait.problem, time)
    case 'washed':
      return 'Say that it was emptied and washed.'
    case 'opened-on':
      return 'Say when its pack was opened.'
    case 'date':
      return sayDateProblem(wait.problem)
    case 'past-date':
      return sayDateOver(wait.lastDay)
    case 'label':
      return 'Two packs are in it: make its label anew.'
    case 'reading':
      return 'Nobody has read it in the pan.'
    case 'read-again':
      return `Read at ${time(wait.at)}: too long ago for a load. Read it again.`
    case 'out-of-limits':
      return 'Its reading is out of its limit: it isn’t loaded.'
  }
}

export const setUpWords = {
  title: 'Load the line',
  loaded: 'in the pan',
  onPaper: 'On paper',
  total: sayPortionTotal,
  none: 'none yet',
  notTaken: 'not taken',
  full: (count: number) => `full at ${counted(count, 'portion', 'portions')}`,
  shortly,
  inFull,
  /** Where it comes from, on two lines below its pan. */
  from: {
    batch: (at: string) => ['batch of', at] as const,
    backup: ['the lid', 'behind it'] as const,
    dry: ['as it', 'came'] as const,
    pack: ['from', 'the pack'] as const,
    opened: (day: string) => ['opened', day] as const,
  },
  dry: 'dry: no reading',
  onClock: 'on its clock',
  batchOf: (at: string) => `Batch of ${at}`,
  making: 'still being made',
  leave: 'Leave it empty',
  leaveWhy: 'for now',
  /** A reading of the pot proves nothing of the pan. */
  pot: (read: string, at: string) => `Pot read ${read} at ${at}. Read the pan now.`,
  openedOn: 'Pack opened',
  secondPack: 'Second pack opened',
  otherDay: 'Other day, use-by, frozen',
  addPack: 'A second pack goes in',
  noSecondPack: 'Only one pack',
  earliest: (day: string) => `Two packs, one pan: ${sayDate(day)} holds for both.`,
  labelled: 'Its label is made anew.',
  next: (name: string) => `Next: ${inSentence(name)}`,
  later: 'Later',
  send: (count: number) => `Load ${counted(count, 'pan', 'pans')}`,
  rest: (count: number) =>
    count === 0
      ? 'the whole line'
      : count === 1
        ? 'the other one stays as it is'
        : `the other ${small(count)} stay as they are`,
  sendNone: 'Nothing is ready to be loaded',
  waits: (name: string, why: string) => `${name}: ${why}`,
  done: (count: number) => `${counted(count, 'pan', 'pans')} loaded`,
  refused: (names: readonly string[]) =>
    `Not loaded: ${list(names.map(inSentence), 'and')}. ${formOf(names.length, 'It stays', 'They stay')} on this sheet, with why.`,
  /** For ears. */
  pan: (name: string, said: readonly string[]) => `${name}: ${said.join(', ')}`,
  holds: (count: number) => `${counted(count, 'portion', 'portions')} in the pan`,
  goesIn: (count: number) => `${counted(count, 'portion', 'portions')} to go in`,
} as const
