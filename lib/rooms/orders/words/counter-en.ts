/** What the counter says and has said, in English. */

import { counterFrame } from '#lib/rooms/orders/words/counter-frame-en.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { type Handling, isDiet, type Need, type NeedCode } from '#lib/station/codes/codes.ts'
import { sayAbout } from '#lib/words/clock-en.ts'
import { list } from '#lib/words/counted-en.ts'
import { inSentence, startingWith } from '#lib/words/findings-en.ts'
import { needName, savedForName } from '#lib/words/service-en.ts'

export const counter = {
  ...counterFrame,
  oneMoment: 'One moment …',
  question: '“Do you have any allergies, or anything you don’t eat?”',
  askedNone: 'They said: none',
  clearNeeds: 'None after all: clear',
  notSure: 'Not sure',
  notSureHint: 'call the person in charge',
  needTile: (code: NeedCode) => startingWith(needName(code)),
  more: 'More …',
  asked: (code: NeedCode, handling: Handling, stays = false) => {
    const how = handling === 'keep-apart' ? 'keep apart' : isDiet(code) ? 'asked' : 'leave out only'
    return stays ? `${how}: stays` : how
  },
  stays: 'stays',
  staysWhy:
    'What was told stays. To drop it: cancel and take a new order, or call the person in charge.',
  nothingMore: 'Nothing more',
  changeHandling: (code: NeedCode, handling: Handling) =>
    handling === 'leave-out'
      ? `${counter.needTile(code)}: change to keep apart`
      : isDiet(code)
        ? `${counter.needTile(code)}: change to not kept apart`
        : `${counter.needTile(code)}: change to leave out only`,
  tapFor: (code: NeedCode, handling: Handling) =>
    handling === 'leave-out'
      ? 'Tap: keep apart'
      : isDiet(code)
        ? 'Tap: not kept apart'
        : 'Tap: leave out only',
  detail: 'One kind only? Reason?',
  detailReason: 'Reason?',
  noOneInCharge: 'Nobody is: nothing can be kept apart now.',
  signOn: 'Sign on the person in charge',
  sameGuest: (letter: string) => `Same guest as ${letter}`,
  otherNeeds: 'Anything that isn’t here: call the person in charge.',
  caution:
    'This screen shows what labels declare; it proves nothing. Local code and the person in charge decide.',
  cautionShort:
    'Shows what labels declare; proves nothing. Local code and the person in charge decide.',
  saySharedLine: '“It’s a shared line. We take care, but can’t promise that none gets in.”',
  saidNeeds: 'I said it: choose food',
  askLeftOut: (codes: readonly NeedCode[]) =>
    `“${startingWith(list(codes.map(needName), 'and'))}: only left out, not kept apart. Is that what you said?”`,
  leftOutSaid: 'Yes: only left out',
  leftOutApart: 'No: keep apart',
  askFirst: 'Ask every guest, and tap the answer.',
  stopTitle: 'Stop. Call the person in charge.',
  stopWhy:
    'The guest isn’t sure what they can eat. That counts as unknown, so this order can’t be taken here.',
  stopSay: 'Say: “I’ll get the person in charge, so that we don’t guess.”',
  askAgain: 'Ask again',
  startOver: 'Start over',
  leaveUnchanged: 'Leave it as it was',
  leaveStopped: (build: string) => `Leave ${sayBuild(build)} stopped`,
  leaveToFind: (build: string) => `Leave ${sayBuild(build)}: its guest is still to be found`,

  needsOf: (none: boolean, words: readonly string[]) =>
    none ? 'They said: none' : words.join(' · '),
  need: (code: NeedCode, handling: Handling) => {
    const name = counter.needTile(code)
    if (handling === 'keep-apart') return `${name}, keep apart`
    return isDiet(code) ? name : `${name}, leave out`
  },
  /** Those that are handled the same together, so that several are read at a glance. */
  needsTold: (needs: readonly Pick<Need, 'code' | 'handling'>[]): readonly string[] => {
    if (needs.length < 2) return needs.map(({ code, handling }) => counter.need(code, handling))
    const isApart = (one: Pick<Need, 'handling'>) => one.handling === 'keep-apart'
    const apart = needs.filter(isApart).map(({ code }) => needName(code))
    const others = needs.filter((one) => !isApart(one)).map(({ code }) => code)
    const out = others.filter((code) => !isDiet(code)).map(needName)
    return [
      ...(apart.length > 0 ? [`Keep apart: ${apart.join(', ')}`] : []),
      ...(out.length > 0 ? [`Leave out: ${out.join(', ')}`] : []),
      ...others.filter(isDiet).map(counter.needTile),
    ]
  },
  changeNeeds: 'Change',
  menu: 'Menu',
  line: 'The line: tap a pan to change it',
  left: (count: number) => `${count} left`,
  noneLeft: 'sold out',
  itemNotSold: 'not selling',
  rowNotLoaded: (name: string) => `not loaded yet: ${inSentence(name)}`,
  rowNo: (name: string) => `sold out: ${inSentence(name)}`,
  rowWithout: (names: readonly string[]) => `no ${list(names.map(inSentence), 'or')}`,
  rowBase: (name: string) => `with ${inSentence(name)}`,
  mark: {
    notLoaded: 'not loaded',
    side: 'on the side',
    saved: 'saved',
    unknown: (word: string) => `${word} ?`,
  },
  ask: 'ask',
  rowFits: 'fits',
  rowFitsWith: (changes: string) => `fits, ${changes}`,
  rowDoesNot: (why: string) => `doesn’t fit: ${inSentence(why)}`,
  rowAsk: (why: string) => `ask the person in charge: ${inSentence(why)}`,
  rowAskShort: (why: string) => `ask: ${inSentence(why)}`,
  rowBases: (names: readonly string[]) => `with ${list(names.map(inSentence), 'or')}`,
  fits: 'What fits',

  pan: {
    with: 'with',
    no: 'no',
    could: 'add',
    choose: 'choose',
    unchecked: 'not checked',
    otherBase: 'or this',
    gone: 'sold out',
    notLoaded: 'not loaded yet',
    notSelling: 'not selling',
    saved: 'saved for',
    taken: (placement: 'in' | 'side', portions: number) =>
      portions > 1
        ? `${portions}× ${placement === 'in' ? 'with' : 'on the side'}`
        : placement === 'in'
          ? 'with'
          : 'on the side',
  },
  moreLabel: (name: string, price: string) => `One more portion of ${inSentence(name)}, ${price}`,
  chooseFirst: 'Choose what the guest wants.',
  sayWait: (minutes: readonly [number, number]) => `Then: “Ready in ${sayAbout(minutes)}.”`,
  waitIsNow: (minutes: readonly [number, number]) => `The wait now: ${sayAbout(minutes)}.`,
  tellGuestWait: (minutes: readonly [number, number]) => `tell the guest: ${sayAbout(minutes)}`,
  wanted: 'Wanted it',
  wantedOf: (name: string) => `${name}: sold out, a guest wanted it`,
  wantedCounted: 'counted',
  wantedCountedOf: (name: string) => `${name}: counted as wanted`,
  savedFor: (whom: readonly string[], name: (id: string) => string) =>
    list(
      whom.map((one) => inSentence(savedForName(one, name))),
      'and',
    ),
  rowSaved: (component: string, whom: string) => `saved for ${whom}: ${inSentence(component)}`,
  send: 'I said it: send',
  sendLater: 'I said it: send when connected',
  sendChange: 'I said it: change it',
  turn: 'I said it: turn to the guest',
  turnTo: (letter: string) => `Turn to the guest of ${letter}`,
  turnWhy: 'The guest reads it and taps “I agree”.',
  show: 'Show the guest',
  callInCharge: 'Call the person in charge',
  callInChargeFor: (letter: string) => `Wrap ${letter} has to be accepted with the guest.`,
  signOnWhy: 'Nothing is kept apart without one.',
  chooseBase: 'Which base?',
  chooseBaseWhy: (names: readonly string[]) => `Tap ${list(names.map(inSentence), 'or')}.`,
  sayAgain: (letter: string) => `Say ${letter} again`,
  sayAgainWhy: (letter: string) => `${letter} is no longer as you said it.`,
  readAgain: 'Read it again',
  readAgainWhy: 'It is no longer as you said it: what changed is underlined.',
  sending: 'Sending …',
  another: 'Another for this ticket',
  anotherShort: 'Another',
  askAgainHint: (letter: string) => `${letter}: ask again, for this guest.`,
  drop: (letter: string) => `Remove ${letter}`,
  build: (letter: string, item: string | null) => (item === null ? letter : `${letter}: ${item}`),
  builds: 'Builds of this ticket',
  order: 'This order',
  tabSayAgain: 'say again',
  addName: 'Add a name',
  nameIs: (name: string) => `Name: ${name}`,
  nameLabel: 'Name to call (the number is enough)',
  nameUse: 'Use this name',
  nameNone: 'Number only',
  unpaid: 'Unpaid',
  paid: 'Paid',
  changing: (build: string) => `Changing ${sayBuild(build)}`,
  changingMaking: (build: string) =>
    `${sayBuild(build)} is being made. Assembly must answer first, then it changes.`,

  waitTitle: 'Waiting to send. Not sold yet.',
  waitWhy:
    'No connection. It is sent by itself when the connection is back. Don’t close this page.',
  nextGuest: 'Take the next guest',
  waiting: (count: number) =>
    count === 1
      ? '1 order waits to be sent. Not sold yet.'
      : `${count} orders wait to be sent. Not sold yet.`,
  waitingFor: (what: 'change' | 'cancel', build: string) =>
    `${what === 'change' ? 'Change' : 'Cancel'} of ${sayBuild(build)}: waiting to send.`,
  waitingToTell: (build: string) =>
    `No connection: ${sayBuild(build)} isn’t stopped yet. Go and tell assembly: stop ${sayBuild(build)}.`,
  notTaken: (what: 'change' | 'cancel', build: string, sentence: string) =>
    `The ${what} of ${sayBuild(build)} was not taken: ${sentence}`,
  ticket: (numbers: readonly number[]) =>
    `${numbers.length > 1 ? 'Tickets' : 'Ticket'} ${numbers.join(', ')}`,
  tellGuestNumber: 'tell the guest the number',
  tellGuestThis: 'tell the guest this',
  spokenSent: (what: string) => `Sent. ${what}`,
  changedSent: (builds: readonly string[]) => `${builds.map(sayBuild).join(', ')} changed`,
  cancelledSent: (builds: readonly string[]) => `${builds.map(sayBuild).join(', ')} cancelled`,
  stopSent: (builds: readonly string[]) =>
    `${builds.map(sayBuild).join(', ')}: assembly is told to stop`,
  cameBack: (items: string) => `An order that waited was not taken: ${items}.`,
  openAgain: 'Open it again',
  forget: 'Guest has left',

  cannot: {
    gone: (name: string) => `${name}: sold out.`,
    notLoaded: (name: string) => `${name}: not loaded yet.`,
    notSelling: (name: string) => `We aren’t selling ${inSentence(name)} now.`,
    saved: (name: string, whom: string) =>
      `What is left of ${inSentence(name)} is saved for ${whom}.`,
    need: (why: string) => `${why}.`,
    unchecked:
      'The needs can’t be checked, so nothing can be sold to this guest here. Call the person in charge.',
  },
  offerAnother: 'Offer another item.',
  needsIt: (item: string, component: string) =>
    `${item} is made with ${inSentence(component)}. Offer another item.`,
  isBase: (names: readonly string[]) =>
    names.length > 1
      ? `It comes with ${list(names.map(inSentence), 'or')}. Tap the other to switch.`
      : 'It comes with that.',
  notOfItem: (item: string, component: string) =>
    `${component} doesn’t go with ${inSentence(item)}.`,

  tickets: 'Tickets',
  ticketsOpen: (count: number) => `Tickets (${count})`,
  noTickets: 'No open tickets.',
  toOrder: 'Back to the order',
  change: 'Change',
  cancel: 'Cancel',
  cancelAsk: (build: string) => `Cancel ${sayBuild(build)}?`,
  cancelYes: (build: string) => `Yes, cancel ${sayBuild(build)}`,
  cancelNo: 'Don’t cancel it',
  cancelMaking: 'It is being made. Assembly must answer first, then it is cancelled.',
  cancelMade: 'It is on the shelf: it can’t be sold again.',
  stopped: 'stopped: assembly must answer it first',
  held: 'held: change it or cancel it',
  payOf: (ticket: number, paid: boolean) =>
    paid ? `Ticket ${ticket} paid: change to unpaid` : `Ticket ${ticket} unpaid: change to paid`,
  paidSaid: (ticket: number, paid: boolean) =>
    `Ticket ${ticket} is ${paid ? 'paid' : 'unpaid'} now.`,
  changeOf: (build: string) => `Change ${sayBuild(build)}`,
  cancelled: (build: string) => `${sayBuild(build)} cancelled.`,
  toldAssembly: (build: string) => `Assembly is told to stop ${sayBuild(build)}.`,
} as const
