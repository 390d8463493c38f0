/** What the hand-over screen says, in English. */
import type { BuildState } from '#lib/service/state.ts'
import { sayLength } from '#lib/words/clock-en.ts'

const SIBLING: Readonly<Record<BuildState, string>> = {
  waiting: 'waits',
  making: 'being made',
  made: 'made too',
  'handed-over': 'handed over',
  cancelled: 'cancelled',
}

export const handOverEn = {
  title: 'Hand-over',
  shelf: 'On the shelf, oldest first',
  stood: (ms: number) => `stands ${sayLength(ms)}`,
  usual: 'nothing to write: the usual',
  handOver: (name: string) => `Hand over ${name}`,
  askFirst: (name: string) => `Ask, then hand over ${name}`,
  askFirstHint: 'Kept apart: hand it over alone, ask first',
  sibling: (name: string, state: BuildState) => `${name} ${SIBLING[state]}`,
  paid: 'paid',
  toPay: (amount: string) => `${amount} to pay`,
  pay: 'Paid now',
  payOf: (name: string) => `${name}: paid now`,
  unpay: 'Not paid after all',
  unpayOf: (name: string) => `${name}: not paid after all`,
  wrong: 'Wrong?',
  wrongOf: (name: string) => `Is something wrong with ${name}?`,

  alone: 'Call the number only. Take this one alone.',
  question: 'What did you ask us to leave out?',
  ask: 'Ask the guest',
  listen: 'Let the guest say it; don’t read it out. Compare with the mark:',
  same: (name: string) => `Same as the mark: hand over ${name}`,
  notSame: 'Not the same',
  notSameThen: 'Keep it here and call the person in charge.',
  back: 'Back to the shelf',

  whatIsWrong: (name: string) => `${name}: what is wrong?`,
  again: 'Make it again',
  againThen: 'This one is thrown out. Assembly makes a new one.',
  notMade: 'It isn’t made yet',
  notMadeThen: 'It goes back to assembly. Nothing is thrown out.',
  sure: (name: string) => `Throw ${name} out and make it again?`,
  sureNotMade: (name: string) => `${name} isn’t here: back to assembly?`,
  yesAgain: (name: string) => `Yes, make ${name} again`,
  yesNotMade: (name: string) => `Yes, ${name} isn’t made`,
  no: (name: string) => `No, keep ${name}`,
  keepGone: 'No, leave it',

  isHandedOver: (name: string) => `${name} is handed over`,
  isAgain: (name: string) => `${name} is thrown out and made again`,
  isBack: (name: string) => `${name} is back at assembly`,
  isPaid: (ticket: number, paid: boolean) =>
    paid ? `Ticket ${ticket} is paid` : `Ticket ${ticket} is not paid`,

  recent: 'Handed over',
  recentCount: (count: number) => `${count} so far`,
  ago: (ms: number) => `${sayLength(ms)} ago`,
  nothing: 'Nothing to hand over',
  coming: 'Coming',
  comingMaking: 'being made',
  comingWaiting: (count: number) => `${count} waiting`,
  nothingComing: 'nothing',
} as const
