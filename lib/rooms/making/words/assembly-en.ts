/** What the assembly screen says, in English. */

import { cautionReason, loudNeed as loud, sayNeed } from '#lib/rooms/care/words/held-en.ts'
import type { Hazard, WhyWithout } from '#lib/rooms/making/views/assembly-pan.ts'
import type { PartAs } from '#lib/rooms/making/views/stop-line.ts'
import type { CautionReason } from '#lib/service/events/caution-reasons.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { isDiet, type NeedCode } from '#lib/station/codes/codes.ts'
import { sayLength } from '#lib/words/clock-en.ts'
import { formOf } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import { AS_IT_COMES, needName } from '#lib/words/service-en.ts'

/** A long word may break on a narrow pan. */
const breakable = (code: NeedCode): string =>
  needName(code).replace('vegetarian', 'vege\u00adtarian')

const HAZARD: Readonly<Record<Hazard['why'], (hazard: Hazard) => string>> = {
  contains: ({ code }) => (isDiet(code) ? `not ${breakable(code)}` : loud(code)),
  'may-contain': ({ code }) =>
    isDiet(code) ? `may not be ${breakable(code)}` : `may\u00a0have ${loud(code)}`,
  unknown: ({ code }) => `${loud(code)}: not\u00a0known`,
  'not-listed': ({ code }) => `${loud(code)}: not\u00a0listed`,
  soiled: ({ code, touches }) => (touches === null ? loud(code) : `${touches} went in`),
  contact: ({ code, touches }) => (touches === null ? loud(code) : `touches ${touches}`),
  'contact-unknown': () => 'what touches it: not\u00a0known',
}

const BECAUSE: Readonly<Record<WhyWithout, string>> = {
  asked: 'guest asked',
  gone: 'sold out',
  'not-selling': 'not selling',
  need: 'guest’s need',
}

/**
 * The handling order of a keep-apart build, from the reading to the guest's hand. The person in
 * charge's own rules go before it.
 */
const stepsFor = (backups: readonly string[]): readonly string[] => [
  'Read all of this aloud',
  'Last touch of this screen: Start',
  'Wash your hands',
  'Put on new gloves',
  'Lay a fresh liner',
  'Take a clean scoop',
  ...(backups.length > 0 ? [`Back-up pan: ${backups.join(', ')}`] : []),
  'Wrap it alone, write its mark',
  'Carry it apart from others',
]

const MEASURES: Readonly<Record<number, string>> = {
  0.125: '1/8',
  0.25: '1/4',
  0.5: '1/2',
  0.75: '3/4',
}

const sayMeasure = (size: number): string => MEASURES[size] ?? String(size)

export const assemblyEn = {
  line: 'The line, left to right',
  of: (index: number, of: number) => `${index} of ${of}`,
  waiting: (ms: number) => `waiting ${sayLength(ms)}`,
  madeAgain: (times: number) => (times === 1 ? 'made again' : `made again, ${times} times`),

  keepApart: (codes: readonly NeedCode[]) => {
    const apart = codes.filter((code) => !isDiet(code)).map(loud)
    return [
      ...(apart.length > 0 ? [`${apart.join(', ')}: keep apart`] : []),
      ...codes.filter(isDiet).map((code) => sayNeed({ code, handling: 'keep-apart' })),
    ].join(' · ')
  },
  leaveOut: (codes: readonly NeedCode[]) =>
    codes.map((code) => (isDiet(code) ? loud(code) : `no ${loud(code)}`)).join(' · '),
  stepsShort: 'washed hands · fresh gloves, liner, scoop · own wrap, apart',
  accepted: (reason: CautionReason) =>
    `Caution accepted by the person in charge, with the guest: ${cautionReason[reason]}.`,
  cleanGloves: 'No tap with clean gloves: pedal, or someone else.',

  readAloud: 'Read this aloud, before you wash your hands',
  stepsFor,
  wasRead: 'I read it aloud',

  level: 'level',
  tongs: (count: number) => formOf(count, 'tongful', 'tongfuls'),
  piece: (count: number) => formOf(count, 'piece', 'pieces'),
  cup: (count: number) => formOf(count, 'cup', 'cups'),
  squeeze: (count: number) => formOf(count, 'squeeze', 'squeezes'),
  ladle: 'ladle',
  spoodle: 'spoodle',
  measure: 'measure',
  measureSize: (size: number, unit: 'cup' | 'tbsp' | 'tsp') => `${sayMeasure(size)} ${unit}`,
  bottle: 'bottle',
  withTongs: 'with tongs',
  scoop: (number: number) => `#${number}`,
  about: 'about',
  lidded: 'lidded',
  warm: 'warm',
  seconds: (seconds: number) => `${seconds} s`,
  onTheSide: 'on the side',
  no: 'no',
  because: (because: WhyWithout, codes: readonly NeedCode[]) =>
    because === 'need' && codes.length > 0
      ? codes.map((code) => (isDiet(code) ? needName(code) : `no ${loud(code)}`)).join(', ')
      : BECAUSE[because],
  lidOn: 'lid\u00a0on, keep away',
  hazard: (hazard: Hazard) => HAZARD[hazard.why](hazard),
  hazardAccepted: (hazard: Hazard) =>
    `${hazard.why === 'may-contain' && !isDiet(hazard.code) ? `may contain ${needName(hazard.code)}` : HAZARD[hazard.why](hazard)}: accepted`,
  backUp: 'BACK-UP',
  notThisPan: 'line pan: lid on',
  soiledShort: (by: readonly string[]) => `may contain ${by.join(', ')}`,
  notChecked: (name: string) =>
    `The needs of ${sayBuild(name)} can’t be checked. Don’t make it. Call the person in charge.`,
  askInCharge: 'ask the person in charge',
  lacking: 'too little in pan',

  wrap: 'Write on the wrap',
  asItComes: AS_IT_COMES,
  warmNext: 'Warm next',
  warmThing: (component: string, seconds: number, on: string) => `${component} ${seconds} s, ${on}`,

  start: (name: string) => `Start ${sayBuild(name)}`,
  started: (name: string) => `${sayBuild(name)} started`,
  finish: 'Made and marked',
  finishOf: (name: string) => `${sayBuild(name)} is made and marked`,
  sending: 'Sending …',
  skipTo: (name: string) => `Make ${sayBuild(name)} first`,
  cannotStart: (name: string) => `${sayBuild(name)} can’t be started`,
  short: (name: string, component: string) =>
    `Not enough ${component} in the pan for ${sayBuild(name)}. Tell the lead.`,

  dontServe: (name: string, component: string, state: 'waiting' | 'making') =>
    state === 'making'
      ? `Don’t serve the ${inSentence(component)}: wait with ${sayBuild(name)}. The person in charge decides.`
      : `Don’t serve the ${inSentence(component)}: ${sayBuild(name)} can’t be started. Tell the lead.`,
  pastTime: (name: string, component: string) =>
    `${component} is past its time: throw it out. ${sayBuild(name)} waits for a fresh pan. Tell the lead.`,
  clock: (name: string, component: string, state: 'waiting' | 'making') =>
    state === 'making'
      ? `The clock jumped: wait with ${sayBuild(name)}. The lead confirms the clock, or reads ${inSentence(component)}.`
      : `The clock jumped: ${sayBuild(name)} can’t be started. The lead confirms the clock, or reads ${inSentence(component)}.`,
  panIs: { 'off-sale': 'don’t serve', 'throw-out': 'throw out', clock: 'clock jumped' },
  standIn: 'stand-in scoop',
  andAlso: (count: number, tool: string) => `+ ${count} × ${tool}`,
  pastItsTime: (components: readonly string[]) =>
    components.length === 0
      ? 'Food in it is thrown out'
      : `${components.join(', ')}: past its time or its limit`,
  thenThrowOut: 'Never go on with it. It is made again, from a fresh pan.',

  queue: 'Next',
  queueNone: 'no more waiting',
  queueMore: (count: number) => `+${count}`,
  beingMade: 'being made',
  keptApart: 'keep apart',
  isShort: 'short',
  isHeld: 'held',
  heldWord: 'HELD',
  held: (name: string) => `${sayBuild(name)} waits for the counter`,
  heldNotServed: 'Don’t go on with it. The person in charge decides.',
  heldThen: 'Don’t make it. The counter changes it with the guest; then it starts fresh.',
  look: (name: string) => `Show ${sayBuild(name)}`,

  idle: 'No builds waiting',
  idleMade: (count: number) => `${count} made so far`,

  stop: 'STOP',
  cancelled: 'Cancelled. Don’t make it.',
  changed: 'The guest’s order changed.',
  sameAsBefore: 'Sent again with nothing changed.',
  becomes: 'becomes',
  part: ({ placement, portions }: PartAs): string =>
    placement === 'no'
      ? 'no'
      : `${portions > 1 ? `${portions}× ` : ''}${placement === 'side' ? 'on the side' : 'with'}`,
  need: sayNeed,
  foodInIt: (name: string) => `Was food in ${sayBuild(name)}?`,
  notBeingMade: (name: string) => `${sayBuild(name)} isn’t being made`,
  stopSeen: 'Seen',
  stopSeenThen: 'Nothing is in it, and nothing is thrown out.',
  foodYes: 'Yes',
  foodYesThen: 'Throw it out. It never goes back to a pan.',
  foodYesSome: (count: number, of: number) =>
    `Throw out what is lit: ${count} of ${of}. The rest can be sold again.`,
  foodYesNone: 'Nothing is lit.',
  tapWhatWasnt: (hasCups: boolean) =>
    hasCups
      ? 'Tap what wasn’t in it, and a lidded cup to put back.'
      : 'Tap what wasn’t in it: it can be sold again.',
  goesWhole: 'Kept apart, and a wrong scoop was in a pan: all of it is thrown out.',
  wasIn: (isCup: boolean) => (isCup ? 'cup' : 'in it'),
  wasntIn: (isCup: boolean) => (isCup ? 'put back' : 'not in'),
  cupStaysOut: 'no way back',
  foodNo: 'No',
  foodNoThen: 'Nothing was in it.',
  thenHeld: 'Don’t go on with it: answer below.',
  thenDecided: 'Call the person in charge, or throw it out now.',
  thenFresh: 'Never go on with it. Then it starts fresh, with a new mark.',
  madeIsWaste: (name: string) => `${sayBuild(name)} is on the shelf: it can’t be given out`,
  throwOut: (name: string) => `${sayBuild(name)} is thrown out`,
  throwOutThen: 'Made food is waste. Nothing of it goes back to a pan.',

  acknowledged: (name: string) => `${sayBuild(name)}: answered`,

  takeBack: 'Take back',
  takenBack: (name: string) => `${sayBuild(name)} taken back`,
  takeBackOne: (name: string) => `Take back ${sayBuild(name)}`,
  takeBackWhich: 'Which one was a mistake?',
  nothingMade: 'Nothing made is still here.',
  wasMade: (name: string) => `Was ${sayBuild(name)} made?`,
  wasMadeYes: 'Yes, it was made',
  wasMadeYesThen: 'It’s thrown out and made again.',
  wasMadeNo: 'No, not made',
  wasMadeNoThen: 'Back to making. Its portions are still in the pans.',

  wrongScoop: 'Wrong scoop',
  wrongScoopIn: 'Which pan did a wrong scoop go into?',
  wrongScoopOf: (pan: string) => `${pan}: which scoop went in?`,
  wrongScoopWhich: (pan: string) => `Which ${pan} pan?`,
  wrongScoopLine: 'The pan on the line',
  wrongScoopBackup: 'The covered back-up pan',
  wrongScoopThen: 'The pan may contain it until it is emptied and washed.',
  wrongScoopGloves: 'Clean gloves on? Don’t tap: call someone.',
  soiledBy: (pan: string, by: string) => `${pan} is marked: may contain ${by}`,
  backupSoiledBy: (pan: string, by: string) =>
    `The back-up pan of ${pan} isn’t ready any more: a scoop of ${by} went in`,
  close: 'Close',
} as const
