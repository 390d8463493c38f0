/** What stands on, behind and below the pans of the lead's line, in two or three words. */

import { counted } from '#lib/words/counted-en.ts'

export const lineWords = {
  behindIs: 'Behind the pans: a lid is ready, a pot is under way, a tub is cold',
  more: (count: number) => `+${count}`,
  moreBehind: (name: string, count: number) => `${count} more behind ${name}`,
  cooked: 'cooked',
  /** Of a batch that nobody timed. */
  making: 'making',
  /** Before the time at which it is expected. */
  till: 'till',
  /** Before the end of its stage of cooling. */
  coolBy: 'cool by',
  isDone: 'done?',
  readHere: { shelf: 'Read the shelf', sanitizer: 'The sanitizer' },
  bad: { 'throw-out': ['throw', 'out'], 'off-sale': ['don’t', 'serve'] },
  read: 'read',
  countLack: 'Count what is in it',
  hang: {
    load: 'load',
    change: 'change',
    start: 'make more',
    open: 'open',
    short: 'short',
    /** Short, and its own pan waits for a decision. */
    waitFor: 'builds wait',
    decide: 'decide',
    label: 'read label',
    answer: 'answer',
    look: 'look',
    throwOut: 'throw out',
    readBy: (at: string) => `read by ${at}`,
    outAt: (at: string) => `out at ${at}`,
    startLoads: (count: number) => `start ${counted(count, 'load', 'loads')}`,
    save: (count: number) => (count === 0 ? 'won’t last' : `save ${count}`),
    later: (at: string) => `again ${at}`,
    declined: 'said no',
  },
  /** Tasks of no pan. */
  others: 'Also to do',
  left: 'left',
  tightFrom: (word: string, at: string) => `${word}\n${at}`,
  walk: { back: 'Pan before', on: 'Next pan', place: (at: number, of: number) => `${at} of ${of}` },
} as const
