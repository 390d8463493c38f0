/** What the assembly screen says, in English. */
import { isDiet, type NeedCode } from '#lib/needs/codes.ts'
import type { Because } from '#lib/service/build-choice.ts'
import type { Hazard } from '#lib/views/assembly-pan.ts'
import type { PartAs } from '#lib/views/assembly-stop.ts'
import { sayLength } from '#lib/words/clock-en.ts'
import { needName } from '#lib/words/service-en.ts'

const loud = (code: NeedCode): string => needName[code].toUpperCase()

/** A long word may break on a narrow pan. */
const breakable = (code: NeedCode): string =>
  needName[code].replace('vegetarian', 'vege\u00adtarian')

const HAZARD: Readonly<Record<Hazard['declared'], (code: NeedCode) => string>> = {
  contains: (code) => (isDiet(code) ? `not ${breakable(code)}` : loud(code)),
  'may-contain': (code) => `may\u00a0have ${loud(code)}`,
  unknown: (code) => `${loud(code)}: not\u00a0known`,
}

const BECAUSE: Readonly<Record<Because, string>> = {
  asked: 'guest asked',
  gone: 'not today',
  need: 'guest’s need',
}

/** The handling order of a keep-apart build (full handling by the person in charge's own rules). */
const STEPS = [
  'Last touch of this screen: Start',
  'Wash hands',
  'New gloves',
  'Fresh liner',
  'Clean scoop, back-up pan',
  'Own marked wrap',
] as const

export const assemblyEn = {
  line: 'The line, left to right',
  of: (index: number, of: number) => `${index} of ${of}`,
  waiting: (ms: number) => `waiting ${sayLength(ms)}`,
  madeAgain: (times: number) => (times === 1 ? 'made again' : `made again, ${times} times`),

  keepApart: (codes: readonly NeedCode[]) => `${codes.map(loud).join(', ')}: keep apart`,
  leaveOut: (codes: readonly NeedCode[]) =>
    codes.map((code) => (isDiet(code) ? loud(code) : `no ${loud(code)}`)).join(' · '),
  stepsShort: 'washed hands · new gloves · fresh liner · clean scoop · own wrap',
  cleanGloves: 'No tap with clean gloves: pedal, or someone else.',

  readAloud: 'Read this aloud, before you wash your hands',
  steps: STEPS,
  wasRead: 'I read it aloud',

  level: 'level',
  tongs: 'tongs',
  piece: (count: number) => (count === 1 ? 'piece' : 'pieces'),
  cup: (count: number) => (count === 1 ? 'cup' : 'cups'),
  scoop: (number: number) => `#${number}`,
  about: 'about',
  lidded: 'lidded',
  warm: 'warm',
  seconds: (seconds: number) => `${seconds} s`,
  onTheSide: 'on the side',
  no: 'no',
  because: (because: Because, codes: readonly NeedCode[]) =>
    because === 'need' && codes.length > 0
      ? codes.map((code) => (isDiet(code) ? needName[code] : `no ${loud(code)}`)).join(', ')
      : BECAUSE[because],
  lidOn: 'lid\u00a0on, keep away',
  hazard: ({ code, declared }: Hazard) => HAZARD[declared](code),
  askInCharge: 'ask the person in charge',
  lacking: 'too little in pan',

  wrap: 'Write on the wrap',
  warmNext: 'Warm next',
  warmThing: (component: string, seconds: number, on: string) => `${component} ${seconds} s, ${on}`,

  start: (name: string) => `Start ${name}`,
  started: (name: string) => `${name} started`,
  finish: 'Made and marked',
  finishOf: (name: string) => `${name} is made and marked`,
  sending: 'Sending …',
  skipTo: (name: string) => `Make ${name} first`,
  cannotStart: (name: string) => `${name} can’t be started`,
  short: (name: string, component: string) =>
    `Not enough ${component} in the pan for ${name}. Tell the lead.`,

  queue: 'Next',
  queueNone: 'no more waiting',
  queueMore: (count: number) => `+${count}`,
  beingMade: 'being made',
  keptApart: 'keep apart',
  isShort: 'short',
  look: (name: string) => `Show ${name}`,

  idle: 'No builds waiting',
  idleMade: (count: number) => (count === 1 ? '1 made so far' : `${count} made so far`),

  stop: 'STOP',
  cancelled: 'Cancelled. Don’t make it.',
  changed: 'The guest’s order changed:',
  sameAsBefore: 'Sent again with nothing changed.',
  becomes: 'becomes',
  item: 'Item',
  baseWord: 'Base',
  noBase: 'none',
  part: ({ placement, portions }: PartAs): string =>
    placement === 'no'
      ? 'no'
      : `${placement === 'side' ? 'on the side' : 'with'}${portions > 1 ? ` × ${portions}` : ''}`,
  need: (code: NeedCode, handling: 'keep-apart' | 'leave-out') =>
    handling === 'keep-apart' ? `${loud(code)}: keep apart` : `${loud(code)}: leave out`,
  needNew: 'NEW',
  needGone: 'not asked any more',
  foodInIt: (name: string) => `Was food in ${name}?`,
  foodYes: 'Yes',
  foodYesThen: 'Throw it out. It never goes back to a pan.',
  foodNo: 'No',
  foodNoThen: 'Nothing was in it.',

  acknowledged: (name: string) => `${name}: answered`,

  takeBack: 'Take back',
  takenBack: (name: string) => `${name} taken back`,
  takeBackOne: (name: string) => `Take back ${name}`,
  takeBackWhich: 'Which one was a mistake?',
  nothingMade: 'Nothing made is still here.',
  wasMade: (name: string) => `Was ${name} made?`,
  wasMadeYes: 'Yes, it was made',
  wasMadeYesThen: 'It’s thrown out and made again.',
  wasMadeNo: 'No, not made',
  wasMadeNoThen: 'Back to making. Its portions are still in the pans.',
  close: 'Close',
} as const
