/** What the Pans screen says to the lead. */

import type { Level } from '#lib/rooms/pans/facts/levels.ts'
import { itemWords } from '#lib/rooms/pans/words/items-en.ts'
import { pansFrame } from '#lib/rooms/pans/words/pans-frame-en.ts'
import type { End } from '#lib/safety/ends.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { sayPieces, sayWeight } from '#lib/words/amounts-en.ts'
import { counted, formOf, list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'

const portions = (count: number): string => counted(count, 'portion', 'portions')
const builds = (count: number): string => counted(count, 'build', 'builds')

const allOf = (names: readonly string[]): string => list(names, 'and')

/** What is in a pan as a kitchen says it: "3 lb 8 oz · 1.6 kg", "24 pieces". */
const sayAmount = (amount: number, unit: Level['unit']): string =>
  unit === 'piece'
    ? `${sayPieces(amount)} ${formOf(amount, 'piece', 'pieces')}`
    : `${sayWeight(amount)} · ${sayWeight(amount, 'metric')}`

const minutes = (ms: number): string => {
  const whole = Math.round(Math.abs(ms) / 60_000)
  if (whole === 0) return `${Math.max(1, Math.round(Math.abs(ms) / 1000))} s`
  return whole < 120 ? `${whole} min` : `${Math.round(whole / 60)} h`
}

export const pansWords = {
  ...pansFrame,
  ...itemWords,
  line: 'The line, left to right',
  openSince: (clock: string, since: string) => `${clock} · open since ${since}`,
  demo: 'demo',
  /** Tickets of which something was given out and nothing was paid. */
  notPaid: (count: number) => `${count} not paid`,
  closeService: 'Close the service',
  queue: 'Builds',
  waiting: 'waiting',
  making: 'making',
  onShelf: 'on the shelf',
  handedOver: 'handed over',
  longest: (age: string) => `longest ${age}`,

  left: 'left',
  notLoaded: 'not loaded',
  short: (lacking: number) => `short ${lacking}`,
  soldOut: 'sold out',
  /** Its food came to an end at the close. */
  endedAs: {
    cold: 'set aside',
    dry: 'set aside',
    cool: 'cooling, set aside',
    freeze: 'frozen',
    crew: 'crew meal',
    'throw-out': 'thrown out',
  } satisfies Readonly<Record<End, string>>,
  empty: 'empty',
  nearlyEmpty: 'nearly empty',
  notSelling: 'not selling',
  dontServe: 'don’t serve',
  dontServeWhy: {
    'out-of-limits': 'out of limits',
    'reading-missed': 'not read',
    'monitoring-missed': 'not read',
    'cooling-missed': 'not cooled',
  },
  throwOut: 'throw out',
  notKnown: 'not known',
  heavy: (percent: number) => `${Math.abs(percent)} % ${percent > 0 ? 'heavy' : 'light'}`,
  notKnownWhy: 'nothing recorded',
  clockJumped: 'clock jumped',
  clockHelps: { unread: 'read it again', timed: 'confirm the clock' },
  throwOutAt: (time: string) => `throw out ${time}`,
  readBy: (time: string) => `read by ${time}`,
  saved: (count: number) => `${count} saved`,
  standIn: 'stand-in scoop',
  standInFrom: (names: readonly string[]) => `stand-in scoop from ${allOf(names.map(inSentence))}`,
  lentTo: (names: readonly string[]) => `scoop lent to ${allOf(names.map(inSentence))}`,
  onTickets: (count: number) => `${count} on tickets`,
  noneOnTickets: 'none on tickets',
  mayContain: (names: readonly string[]) => `may contain ${allOf(names.map(inSentence))}`,
  backupReady: 'back-up ready',
  startBatch: 'Make more of it',
  doubted: (kind: 'weighing' | 'count' | 'eye-check', read: number, counted: number) =>
    kind === 'eye-check'
      ? `Seen as about ${read}, far from the ${counted} we count on: look again; twice the same counts.`
      : `Weighed as about ${read}, far from the ${counted} we count on: weigh it again; twice the same counts.`,
  /** The whole state of a pan for people who don't see it drawn. */
  pan: (
    name: string,
    left: number,
    state: string,
    onTickets: number,
    more: readonly string[] = [],
  ) =>
    [
      `${name}: ${portions(left)} left`,
      ...(state === '' ? [] : [state]),
      `${onTickets} on tickets`,
      ...more,
    ].join(', '),

  doNext: 'Do next',
  afterThat: 'Then',
  more: (count: number) => `and ${count} more`,
  nothingToDo: 'Nothing to do',
  nothingToDoWhy: 'Every pan holds a quarter or more, and the pans fill every build.',
  clockTitle: 'The clock jumped',
  clockWhy: (byMs: number) =>
    `The server’s clock went ${byMs < 0 ? 'back' : 'forward'} by ${minutes(byMs)}. Nothing falls due by it until you say that it is right, what has a time isn’t sold, and what is hot or cold only where it was read again.`,
  clockConfirm: 'The clock is right',
  beforeTitle: (name: string) => `Change the ${inSentence(name)} pan`,
  beforeWhy: (ingredients: readonly string[]) =>
    `It holds the product before: ${allOf(ingredients.map(inSentence))}. It counts as both products until it is changed, or emptied and washed.`,
  loadTitle: (count: number) => (count === 1 ? 'Load the pan that is empty' : `Load ${count} pans`),
  loadWhy: 'Nothing was put in yet, so nothing of it can be sold.',
  loadBatches: (count: number) =>
    `${counted(count, 'food waits', 'foods wait')} for a first batch: start ${formOf(count, 'it', 'them')} before you load.`,
  loadLine: 'Load the line',
  loadFirst: (name: string) => `Load ${inSentence(name)}`,
  shortTitle: (name: string) => `Short of ${inSentence(name)}`,
  shortWhy: (lacking: number, names: readonly string[]) =>
    names.length === 0
      ? `${portions(lacking)} more on tickets than in the pans. Change the pan, or ask the counter to change or cancel.`
      : `The pans can’t fill ${allOf([...names].reverse().map(sayBuild))}. Change the pan, or ask the counter to change or cancel.`,
  shortOpen: 'What can be done',
  soldOutTitle: (name: string) => `Sold out: ${inSentence(name)}`,
  nearlyTitle: (name: string) => `${name} is nearly empty`,
  nearlyWhy: (left: number) => `${portions(left)} left to sell, under a quarter of the pan.`,
  todo: {
    clock: 'Clock jumped',
    before: (name: string) => `Change the ${inSentence(name)} pan: it holds the product before`,
    load: (count: number) => `Load ${counted(count, 'pan', 'pans')}`,
    short: (name: string, names: readonly string[]) =>
      `${name}: short${names.length > 0 ? ` for ${allOf(names.map(sayBuild))}` : ''}`,
    soldOut: (name: string) => `${name}: sold out`,
    nearly: (name: string, left: number) => `${name}: nearly empty, ${left} left`,
  },
  nothingElse: 'Nothing else',

  canSell: 'Can still sell',
  ticketsOff: 'what is on tickets is taken off already',

  wrongScoop: 'A wrong scoop went in',
  whoseScoop: 'Whose scoop was it?',
  whoseScoopWhy: (name: string) =>
    `${name} then may contain it, until the pan is emptied and washed, or changed. Builds that no longer fit are held.`,
  soiledFact: (names: readonly string[]) =>
    `May contain ${allOf(names.map(inSentence))} until emptied and washed.`,
  standInFact: (names: readonly string[]) =>
    `A stand-in scoop from ${allOf(names.map(inSentence))}: they touch until its own is back and both pans are changed.`,
  lentFact: (names: readonly string[]) =>
    `Its scoop is lent to ${allOf(names.map(inSentence))}: they touch until it is back and both pans are changed.`,
  beforeFact: 'Holds the product before: counts as both until changed or washed.',
  notThis: 'It was none of them',
  back: 'Back',
  whichPan: (name: string, by: string) =>
    `A ${inSentence(by)} scoop was in the ${inSentence(name)}: in which pan?`,
  onTheLine: 'The pan on the line',
  coveredBackup: 'The covered back-up pan',
  bothPans: 'Both, or not sure',
  washed: 'It was emptied and washed',

  look: 'What do you see in it?',
  looks: { 4: 'full', 3: '3/4', 2: 'half', 1: '1/4', 0: 'a scrape' },
  weigh: 'Weigh it',
  readTemperature: 'Read the temperature',
  topUp: 'Top up',
  waste: 'Spill or waste',
  saveSome: 'Save some',
  endSaving: (count: number) => `Stop saving ${count}`,
  scoopMissing: 'The scoop is missing',
  scoopBack: 'The scoop is back',
  behindIt: 'Back-up pans',
  whatMayBeDone: 'What may be done',
  toThrowOut: 'To be thrown out',
  startClock: 'Start a 4-hour clock, then throw out',
  read: (degrees: string, time: string) => `read ${degrees} at ${time}`,
  readNext: (time: string) => `next by ${time}`,
  savedFact: (count: number, whom: readonly string[]) => `${count} saved for ${allOf(whom)}`,
  bias: (name: string, percent: number, fewer: number) =>
    percent === 0
      ? `${name} scoops run true.`
      : `${name} scoops run ${Math.abs(percent)} % ${percent > 0 ? 'heavy' : 'light'}: ${portions(Math.abs(fewer))} ${percent > 0 ? 'fewer' : 'more'}.`,
  close: 'Back to the line',
  holds: (count: number, amount: string) => `In pan ${count} (${amount})`,
  holdsNothing: 'Nothing in pan',
  onTicketsFact: (count: number) => `on tickets ${count}`,
  leftFact: (count: number) => `left to sell ${count}`,
  loadedFact: (clock: string) => `loaded ${clock}`,
  amount: sayAmount,
  portions,
  reallyHolds: 'It really holds',
  portionsUnit: (count: number) => formOf(count, 'portion', 'portions'),
  changePan: 'Change the pan',
  loadPan: 'Load the pan',
  correct: 'Correct the count',
  countIs: (count: number) => `The count is ${count}`,
  countWas: (count: number) => `Counted so far: ${portions(count)}.`,
  countedToNothing:
    'It was counted to nothing. If that was a mistake, it holds what it held before. If something was put in since, load it.',
  wasSlip: (count: number) => `The 0 was a mistake: it holds ${count}`,
  loadIt: 'Load it',
  wouldBeShort: (count: number) =>
    `${portions(count)} are on tickets: with fewer, builds are short.`,
  less: (step: number) => `${step} fewer`,
  moreBy: (step: number) => `${step} more`,
  stopSelling: 'Stop selling',
  resumeSelling: 'Sell again',
  stopTitle: (name: string) => `Stop selling ${name}?`,
  resumeTitle: (name: string) => `Sell ${name} again?`,
  stopStays: 'What is on tickets already is still made.',
  resumeWhy: (left: number) => `${left} left to sell.`,
  resumeItemWhy: 'The counter can take orders for it again.',
  goOnSelling: 'Go on selling',
  leaveStopped: 'Leave it stopped',
  closeTitle: 'Close the service?',
  closeWhy: 'No more orders are taken after this, and this service can’t be opened again.',
  closeNow: 'Close the service',
  closeNot: 'Leave it open',
  notYetTitle: 'It can’t be closed yet',
  notYetWhy: (count: number) =>
    `${builds(count)} still to hand over or cancel. Hand-over hands over what is made; the counter cancels what isn’t wanted.`,

  waitingToSend: 'Waiting to send …',
  done: {
    load: (name: string, count: number) => `${name}: loaded, ${portions(count)}`,
    changePan: (name: string, count: number) => `${name}: pan changed, ${portions(count)}`,
    correct: (name: string, count: number) => `${name}: the count is ${count}`,
    soiled: (name: string, by: string) => `${name}: may contain ${inSentence(by)}`,
    soiledBackup: (name: string, by: string) =>
      `${name}: the back-up pan isn’t ready any more, since a scoop of ${inSentence(by)} went in`,
    backup: (name: string, isReady: boolean) =>
      `${name}: back-up pan ${isReady ? 'ready' : 'not ready'}`,
    looked: (name: string, look: string) => `${name}: seen ${look}`,
    savingEnded: (name: string) => `${name}: nothing is saved any more`,
    scoopBack: (name: string) => `${name}: its own scoop is back`,
    stopped: (name: string) => `${name}: not selling`,
    resumed: (name: string) => `${name}: selling again`,
    loadedAll: (count: number) => `${counted(count, 'pan', 'pans')} loaded as usual`,
    clock: 'The clock is confirmed',
    closed: 'The service is closed',
  },
} as const
