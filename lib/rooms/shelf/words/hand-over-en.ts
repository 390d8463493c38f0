/** What the hand-over screen says, in English. */

import { loudNeed } from '#lib/rooms/care/words/held-en.ts'
import type { ToldCaution } from '#lib/rooms/shelf/views/hand-over.ts'
import type { Named } from '#lib/rooms/shelf/views/strip.ts'
import type { BuildState } from '#lib/service/state.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { isDiet } from '#lib/station/codes/codes.ts'
import { sayLength } from '#lib/words/clock-en.ts'
import { formOf } from '#lib/words/counted-en.ts'
import { AS_IT_COMES, needName } from '#lib/words/service-en.ts'

const SIBLING: Readonly<Record<BuildState, string>> = {
  waiting: 'waits',
  making: 'being made',
  made: 'on the shelf',
  'handed-over': 'handed over',
  cancelled: 'cancelled',
}

/** A caution as the guest was told it. */
const sayCaution = ({ component, need, why, touches }: ToldCaution): string => {
  if (why === 'contact') return `${component} touches ${touches ?? loudNeed(need)}`
  if (isDiet(need)) return `${component} may not be ${needName(need)}`
  return why === 'unknown'
    ? `${component}: ${needName(need)} not known`
    : `${component} may contain ${needName(need)}`
}

/** So many of what comes next are named; more are counted. */
const NEXT_NAMED = 3

export const handOverEn = {
  title: 'Hand-over',
  shelf: 'On the shelf',
  asItComes: AS_IT_COMES,
  handOver: (name: string) => `Hand over ${sayBuild(name)}`,
  askFirst: (name: string) => `Ask, then hand over ${sayBuild(name)}`,
  askFirstHint: 'Kept apart: hand it over alone, ask first',
  sibling: (name: string, state: BuildState) => `${sayBuild(name)} ${SIBLING[state]}`,
  paid: 'paid',
  toPay: (amount: string) => `${amount} to pay`,
  pay: 'Paid now',
  payOf: (name: string) => `${sayBuild(name)}: paid now`,
  unpay: 'Not paid after all',
  unpayThen: 'Its ticket is to be paid when it is handed over.',
  unpayOf: (name: string) => `${sayBuild(name)}: not paid after all`,
  wrong: 'Problem',
  wrongOf: (name: string) => `Problem with ${sayBuild(name)}`,

  alone: 'Call the number only. Take this one alone.',
  question: 'What did you ask us to leave out?',
  ask: 'Ask the guest',
  listen: 'Let the guest say it. Don’t read it out, don’t help.',
  answered: 'They answered: show the mark',
  compare: 'Did the guest say the same as this mark?',
  told: (cautions: readonly ToldCaution[]) =>
    `Told, and accepted: ${cautions.map(sayCaution).join('; ')}`,
  same: (name: string) => `Same as the mark: hand over ${sayBuild(name)}`,
  notSame: 'Not the same',
  notSameThen: 'It stays here. Call the person in charge.',
  back: 'Back to the shelf',
  toBefore: 'Back',

  alike: (names: readonly string[]) => {
    const [few, more] = names.length > 4 ? [names.slice(0, 3), names.length - 3] : [names, 0]
    return `Looks like ${few.map(sayBuild).join(', ')}${more > 0 ? `, + ${more}` : ''}.`
  },
  thisOne: 'This one:',
  alikeBeware: 'Another on the shelf looks the same: read the number on the wrap.',
  alikeApart: (name: string) => `KEPT APART: ${sayBuild(name)} is on its wrap`,
  /** It has nothing that the others lack: the whole of its mark, which may be empty. */
  alikeOwn: (mark: string) => (mark === '' ? AS_IT_COMES : `only ${mark}`),

  held: 'Don’t give these out',
  heldTitle: (name: string) => `${sayBuild(name)} stays here`,
  heldThen: 'Made food is waste. Throw it out, then tell us.',
  heldDecide: 'The person in charge decides on it. Or throw it out, and it is made again.',
  threwOut: (name: string) => `I threw ${sayBuild(name)} out`,
  isThrownOut: (name: string) => `${sayBuild(name)} is thrown out; it waits for the counter`,
  isOutAgain: (name: string) => `${sayBuild(name)} is thrown out and made again`,

  byThen: (at: string) => `by ${at}`,
  collectBy: (at: string) => `collect by ${at}`,
  until: (collect: string, throwOut: string | 0 | null) =>
    throwOut ? `collect by ${collect}, throw out ${throwOut}` : `collect by ${collect}`,
  past: 'To be thrown out',
  pastThen: 'Past its time or its limits. Never hand it over. It is made again.',
  pastSince: (at: string) => `past its time since ${at}`,
  outSince: (at: string) => `what it took is thrown out, since ${at}`,
  initials: 'Your initials',
  initialsWhy: 'Put your initials first.',
  threwPast: (name: string) => `I threw ${sayBuild(name)} out: make it again`,
  isPastOut: (name: string) => `${sayBuild(name)} is thrown out and made again`,

  toFind: 'FIND THE GUEST',
  toFindThen: 'Call the person in charge, and call the number.',
  handedOverAgo: (ms: number) => `known for ${sayLength(ms)}`,
  foundOf: (name: string) => `${sayBuild(name)} is found …`,
  findQuestion: (name: string) => `${sayBuild(name)}: did you find the guest?`,
  findInCharge: 'Call the person in charge now, whichever it is.',
  foundBack: 'Found: food taken back',
  foundBackThen: 'It’s thrown out. The counter makes the order again with the guest.',
  foundTold: 'Found: told, ate it or still has it',
  foundToldThen: 'The guest knows. The person in charge stays with them.',
  notYet: 'Not found yet',
  isFoundBack: (name: string) => `${sayBuild(name)} is found and its food is back`,
  isFoundTold: (name: string) => `${sayBuild(name)} is found and told`,

  whatIsWrong: (name: string) => `${sayBuild(name)}: what is the problem?`,
  again: 'Make it again',
  againThen: 'This one is thrown out. Assembly makes a new one.',
  notMade: 'It isn’t made yet',
  notMadeThen: 'It goes back to assembly. Nothing is thrown out.',
  sure: (name: string) => `Throw ${sayBuild(name)} out and make it again?`,
  sureNotMade: (name: string) => `${sayBuild(name)} isn’t here: back to assembly?`,
  yesAgain: (name: string) => `Yes, make ${sayBuild(name)} again`,
  yesNotMade: (name: string) => `Yes, ${sayBuild(name)} isn’t made`,
  no: (name: string) => `No, leave ${sayBuild(name)} as it is`,
  leaveGone: 'No, leave it',

  notSure: 'Not sure which is which',
  notSureThen: 'All that could be mixed up are thrown out. Assembly makes them again.',
  mixedUp: (name: string) => `Which of these could be ${sayBuild(name)}?`,
  mixedUpHint: 'Tap to add one, or to clear one. Not sure of it? Add it.',
  isHeld: 'held',
  isKeptApart: 'kept apart',
  goesOut: 'throw out',
  stays: 'stays',
  nameTwo: 'Light two or more',
  throwOutMixedUp: (names: readonly string[]) =>
    `Throw out ${names.length} and make again: ${names.map(sayBuild).join(', ')}`,
  areOut: (names: readonly string[]) =>
    `${names.map(sayBuild).join(', ')} are thrown out and made again`,
  pastAlike: (names: readonly string[]) =>
    `${names.map(sayBuild).join(', ')} ${formOf(names.length, 'looks', 'look')} the same, past ${formOf(names.length, 'its', 'their')} time: throw out too, with your initials.`,

  isHandedOver: (name: string) => `${sayBuild(name)} is handed over`,
  isAgain: (name: string) => `${sayBuild(name)} is thrown out and made again`,
  isBack: (name: string) => `${sayBuild(name)} is back at assembly`,
  isPaid: (ticket: number, paid: boolean) =>
    paid ? `Ticket ${ticket} is paid` : `Ticket ${ticket} is not paid`,

  /** One way in which a build differs, on its wrap, as short as the room for it. */
  sayDiffers: (
    { is, short, brief }: Pick<Named, 'is' | 'short' | 'brief'>,
    tight: 'no' | 'some' | 'most',
  ) => {
    const food = (tight === 'most' ? brief : short).toLowerCase()
    if (is === 'no') return `no ${food}`
    if (is === 'side') return tight !== 'no' ? `side ${food}` : `${food} on the side`
    if (is === 'extra') return `more ${food}`
    return tight === 'most' ? `+ ${food}` : `with ${food}`
  },
  /** `isMore`: beside some that are named. */
  moreDiffers: (count: number, isMore: boolean) =>
    isMore ? `+ ${count} more` : `${count} ${formOf(count, 'change', 'changes')}`,
  slides: (count: number) => `${count} on the shelf: slide to see all`,
  keptApart: 'kept apart',
  panelOf: (name: string) => `To hand over: ${sayBuild(name)}`,
  isGone: 'handed over',
  onListNow: 'to pay, on the list',
  isMissing: 'not made yet',
  beingMade: 'being made',
  alsoMade: (names: readonly string[]) => `and ${names.map(sayBuild).join(', ')}`,
  nextOnes: (names: readonly string[]) => {
    const more = names.length - NEXT_NAMED
    const named = names.slice(0, NEXT_NAMED).map(sayBuild).join(', ')
    return `then ${named}${more > 0 ? ` + ${more}` : ''}`
  },

  toPayFor: (names: readonly string[]) => `to pay for ${names.map(sayBuild).join(', ')}`,
  notPaid: (amount: string, names: readonly string[]) =>
    `${amount} for ${names.map(sayBuild).join(', ')} isn’t paid`,
  paidAndGive: 'Paid now',
  payLater: 'Hand over, pay later',
  laterThen: 'It stays on the list of what isn’t paid.',
  unpaidCount: (count: number) => `${count} not paid`,
  unpaidTitle: (amount: string) => `Given out, not paid: ${amount}`,
  writeOff: 'Write it off',
  writeOffOf: (ticket: number) => `Ticket ${ticket}: write it off`,
  yesWriteOff: (amount: string) => `Yes: ${amount} won’t come`,
  isWrittenOff: (ticket: number) => `Ticket ${ticket} is written off`,
  nothingUnpaid: 'All that was given out is paid',
  ticketPaid: (ticket: number) => `Ticket ${ticket}: paid now`,

  recent: 'Handed over',
  recentCount: (count: number) => `${count} so far`,
  ago: (ms: number) => `${sayLength(ms)} ago`,
  nothing: 'Nothing to hand over',
  coming: 'Coming',
} as const
