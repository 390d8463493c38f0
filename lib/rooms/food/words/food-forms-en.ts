/** What the lead's screen says where food is loaded, read, weighed, saved or thrown out. */

import { record } from '#lib/rooms/food/words/reading-en.ts'
import { inPlace, resolveWords } from '#lib/rooms/food/words/resolve-en.ts'
import type { DiscardReason } from '#lib/service/events/food-event.ts'
import type { WasteReason } from '#lib/service/events/stock-event.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { counted, formOf, list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const allOf = (names: readonly string[]): string => list(names, 'and')
const portions = (count: number): string => counted(count, 'portion', 'portions')

const goAway = (count: number): string => `${portions(count)} ${formOf(count, 'goes', 'go')} away`

const wasteReason: Readonly<Record<WasteReason, string>> = {
  spill: 'Spilled',
  dropped: 'Dropped',
  sample: 'Sample',
  'staff-meal': 'Staff meal',
  spoiled: 'Spoiled',
  other: 'Other',
}

const discardReason: Readonly<Record<DiscardReason, string>> = {
  'past-time': 'Its time is over',
  'past-date': 'Its date is over',
  'out-of-limits': 'Out of its limits',
  'not-cooled': 'Not cooled in time',
  'not-cooked': 'Not cooked enough',
  quality: 'Not good',
  'left-over': 'Left over',
  other: 'Other',
}

const startsClock = (hours: number) =>
  `Time alone: its ${hours} hours start with this reading. No later one is asked for.`

export const formWords = {
  back: 'Back to the line',
  working: 'Sending …',
  portions,

  putTitle: {
    load: (name: string) => `Load ${inSentence(name)}`,
    change: (name: string) => `Change the ${inSentence(name)} pan`,
    'top-up': (name: string) => `Top up ${inSentence(name)}`,
  },
  put: { load: 'Load the pan', change: 'Change the pan', 'top-up': 'Top it up' },
  /** What is in the pan now isn't sold any more: said where it is done. */
  changeSend: (count: number) => `Change the pan: ${goAway(count)}`,
  putBehind: 'Put it in as a back-up',
  putBehindWhy: 'A back-up place is free: then nothing goes away.',
  whatGoesIn: 'What goes in?',
  fromPackDryWhy: 'ready to eat, no batch',
  fromPack: 'Out of the pack',
  fromPackWhy: 'bought in, no batch',
  batchMade: (at: string) => `Batch, made ${at}`,
  backupPan: (kept: 'hot' | 'cold' | 'boxed', guarded: boolean) =>
    guarded ? `Back-up pan, covered (${kept})` : `Back-up pan (${kept})`,
  backupIs: (kept: 'hot' | 'cold' | 'boxed', guarded: boolean) =>
    guarded ? `covered, ${kept}` : kept,
  backupLeft: (count: number) => portions(count),
  firstOut: 'use first',
  olderStays: 'An older batch stays behind. Use it first, unless it can’t be.',
  needsBatch: 'No batch is finished. It isn’t loaded without one that shows how it was made.',
  startBatch: 'Start a batch',
  goesIn: 'Goes in',
  oldGoesAway: (count: number) =>
    `The ${portions(count)} in the old pan ${formOf(count, 'leaves', 'leave')} the line for good: nobody is sold them any more.`,
  oldEmpty: 'The old pan is empty.',
  washed: 'It was emptied and washed',
  byWeight: 'Weighed, with the pan',
  notWeighed: 'Not weighed: say portions',
  noTare: 'Nobody has said what this pan weighs empty.',
  unit: { kg: 'kg', lb: 'lb', oz: 'oz' },
  topUpWhy:
    'The older time and date and all the allergens govern both. Changing the pan is better.',
  isLoaded: (name: string) => `${name}: in the pan`,
  startsClock,
  /** @param hours of the clock that its reading starts; null: none does */
  putNote: (hours: number | null, isDry: boolean) =>
    hours !== null ? startsClock(hours) : isDry ? 'Dry: no reading is needed.' : undefined,

  fillTitle: (name: string) => `Fill the ${inSentence(name)} back-up pan`,
  fill: 'It is ready',
  isFilled: (name: string) => `${name}: back-up pan ready`,

  readTitle: (name: string) => `Read ${inSentence(name)}`,
  readHow: 'Stir it, and probe the middle of the food.',
  readPiece: 'Probe the middle of the thickest piece.',
  readDone: (name: string, read: string) => `${name}: ${read}`,
  readSend: record,
  readOut: (read: string | null) => `${record(read)}: don’t serve it`,
  newest: (read: string, at: string) => `Last read ${read} at ${at}.`,
  never: 'Not read yet.',
  nextBy: (at: string) => `Next by ${at}.`,

  weighTitle: (name: string) => `Weigh ${inSentence(name)}`,
  weighHow: 'Weigh it with its pan. The empty pan is taken off.',
  tare: (weight: string) => `Empty pan ${weight}`,
  net: (amount: string, count: number) => `Food ${amount}: about ${portions(count)}`,
  weighSend: 'That is the weight',
  weighed: (name: string) => `${name}: weighed`,

  wasteTitle: (name: string) => `Spill or waste: ${inSentence(name)}`,
  wasteHow: 'About how many portions?',
  wasteReason,
  wasteLack: 'Tap why.',
  wasteSpoiled: 'all of the pan',
  wasteSend: (count: number) => `Record ${portions(count)} wasted`,
  wasteDone: (name: string, count: number) => `${name}: ${portions(count)} wasted`,

  saveTitle: (name: string) => `Save some ${inSentence(name)}`,
  saveHow: 'How many, and for whom?',
  saveFor: 'For',
  saveSend: (count: number) => `Save ${count}`,
  saveWhy: 'Nobody else is sold them. “On tickets” is taken off already.',

  scoopTitle: (name: string) => `The ${inSentence(name)} scoop is missing`,
  scoopBackTitle: (name: string) => `The ${inSentence(name)} scoop is back`,
  scoopChoose: 'What is used for it',
  scoopOwn: (usual: string) => `One portion should be ${usual}.`,
  scoopFarOff: (percent: number) =>
    `Yes: each guest gets ${Math.abs(percent)} % ${percent > 0 ? 'more' : 'less'} until its own scoop is back`,
  scoopLackChoice: 'Tap what is used.',
  scoopLackYes: 'Tap yes to that portion, or take another.',
  scoopUse: 'Use it from now on',
  scoopUseWhy: 'Builds that aren’t started yet are made with it, and the assembly screen says so.',
  scoopNot: 'Not to be used',
  scoopNone: 'It isn’t portioned by a scoop.',
  scoopUsed: (name: string) => `${name}: stand-in scoop from now on`,
  scoopStandIn: (measures: string) => `Now: ${measures}`,
  scoopWashed: 'The stand-in scoop was washed',
  scoopBackSend: 'Its own scoop is back',

  shortTitle: (name: string) => `Not enough ${inSentence(name)}`,
  shortHow: 'Newest first: these go without unless more comes.',
  shortLeaveOut: 'leave it out',
  shortSwap: (names: readonly string[]) => `swap for ${allOf(names)}`,
  shortOther: 'another item',
  shortReady: 'wait: more is ready',
  shortWaitAny: 'wait',
  shortWait: (at: string) => `wait until about ${at}`,
  shortCancel: 'cancel',
  shortWaits: 'The guest waits',
  shortWaitSend: (build: string) => `${sayBuild(build)}: the guest waits`,
  shortToCounter: 'To the counter: change or cancel',
  shortNone: 'The pans fill every build again.',

  clockTitle: (name: string) => `Start a 4-hour clock: ${inSentence(name)}`,
  clockWhy:
    'The clock runs from the moment it left heat or cold, in the prep kitchen. It never goes back to heat or cold.',
  clockNoProcedure: safetyWords.clockProblem['no-procedure'],
  clockFrom: 'It left',
  clockFromIs: { hot: 'Heat', cold: 'Cold', room: 'Cut or opened at room temperature' },
  clockRuleIs: 'How long',
  clockRule: {
    '4h': '4 hours',
    '4h-cool': '4 hours, never above 70 °F',
    '6h': '6 hours, never above 70 °F',
  },
  clockLeft: 'When it left',
  clockNotSaid: 'not said yet',
  clockJustNow: 'Just now',
  clockLackFrom: 'Tap what it left: heat or cold.',
  clockLackRule: 'Tap how long.',
  clockLackLeft: 'Say when it left.',
  clockStart: 'Start the clock',
  clockAgo: (minutes: number) => (minutes === 0 ? 'just now' : `${minutes} min ago`),
  clockSend: (at: string) => `Start: throw out at ${at}`,
  clockDone: (name: string, at: string) => `${name}: throw out at ${at}`,

  ...resolveWords,

  throwTitle: 'To be thrown out',
  throwEarly: (name: string, what: keyof typeof inPlace) =>
    `Throw out ${inPlace[what](inSentence(name))}`,
  throwNone: 'Nothing is to be thrown out.',
  throwBecause: {
    time: 'its time is over',
    date: 'its date is over',
    'too-warm': 'it was read too warm',
    'out-of-limits': 'out of its limits',
    'taken-away': 'taken away on a running clock: it goes back to neither heat nor cold',
    'counted-empty': 'counted empty on a running clock: initial what was thrown out of it',
  },
  throwWhat: {
    pan: 'in the pan',
    backup: 'in the back-up pan',
    batch: 'batch',
    build: 'made',
    rest: 'taken off the line',
  },
  throwSince: (at: string) => `since ${at}`,
  throwWhy: 'It stays on this list until somebody initials that it is thrown out.',
  throwSend: 'Thrown out',
  throwDone: (name: string) => `${name}: thrown out, initialed`,
  reason: 'Why',
  discardReason,

  behindTitle: 'Back-ups and batches',
  behindBatches: 'Batches',
  behindPans: 'Back-up pans',
  behindEmpty: 'empty',
  behindFill: 'Fill it',
  behindAway: 'Take it away',
  behindAwayYes: (count: number) => `Yes, take ${portions(count)} away`,
  behindAwayNot: 'Leave it there',
  behindAwayDone: (name: string) => `${name}: back-up pan taken away`,
  behindRead: 'Read it',
  open: 'Open',
  behindNoBatch: 'No batch under way, and none ready.',

  startTitle: 'Start a batch',
  startOf: 'Of what?',
  startLoads: 'How many loads?',
  startMakes: (count: number, at: string) => `${portions(count)}, on the line about ${at}`,
  /** Of a service that isn’t open. */
  startMakesAhead: (count: number, at: string) => `${portions(count)}, ready about ${at}`,
  /** Loads of its plan that nobody has started; null where it has none planned. */
  startPlanned: (loads: number | null) =>
    loads === null
      ? 'none planned'
      : loads === 0
        ? 'all started'
        : `${counted(loads, 'load', 'loads')} to make`,
  startCan: (minutes: number, where: string, who: string) => `${minutes} min, ${where}, ${who}`,
  /** Where it is started on a day before: asked once, on the button that would start it. */
  plannedFor: (day: string, clock: string) => `Planned for ${day}, ${clock}`,
  startEarly: 'Start it now all the same',
  startSend: (count: number) => `Start ${counted(count, 'load', 'loads')}`,
  startDone: (name: string, count: number) => `${name}: ${counted(count, 'load', 'loads')} started`,
  startNone: 'Nothing can be made again here today.',

  /** `pot`: which of several of the same minute; null where it is the only one. */
  batchTitle: (name: string, started: string, pot: number | null) =>
    `${name}, batch of ${started}${pot === null ? '' : `, pot ${pot}`}`,
  batchNext: 'What comes next',
} as const
