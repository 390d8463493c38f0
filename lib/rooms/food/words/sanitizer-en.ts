/** What is said of the sanitizing solution. */
import { record } from '#lib/rooms/food/words/reading-en.ts'
import type { Sanitizer, SanitizerProblem, SanitizerReading } from '#lib/safety/sanitizer.ts'
import type { DutyWords } from '#lib/words/duty-words.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const DECIDES = 'The person in charge and local code decide.'
const MAKE_ANEW = `Make it anew, as its label directs, and read it again. ${DECIDES}`
const READ_WHOLE = `Until that is read nothing shows that it is enough. ${DECIDES}`

const UNREAD: ReadonlySet<SanitizerProblem> = new Set([
  'water-not-read',
  'ph-not-read',
  'label-not-read',
])

const duty: DutyWords = {
  title: {
    'reading-due': () => 'Read the sanitizer',
    'out-of-limits': () => 'The sanitizer is out of its limit',
  },
  why: {
    'reading-due': (at) => `Due ${at}: a strip, and the temperature of the water.`,
    'out-of-limits': () => MAKE_ANEW,
  },
  short: {
    'reading-due': (at) => `Read the sanitizer, due ${at}`,
    'out-of-limits': () => 'The sanitizer: make it anew, read it again',
  },
  button: { 'out-of-limits': 'Read it again' },
}

const kind: Readonly<Record<Sanitizer, string>> = {
  chlorine: 'Chlorine',
  iodine: 'Iodine',
  'quaternary-ammonium': 'Quaternary ammonium',
}

const problem: Readonly<Record<SanitizerProblem, string>> = {
  'water-not-read': 'Nobody read the water’s temperature: without it no strength passes.',
  'water-too-cold': 'The water is too cold for this strength.',
  'too-weak': 'It is too weak.',
  'too-strong': 'It is too strong.',
  'ph-not-read': 'Its limit goes by its pH, which nobody read.',
  'ph-too-high': 'Its pH is too high.',
  'label-not-read':
    'Quaternary ammonium passes by its label only, and the station’s document doesn’t say what that directs.',
}

const strength = (mgPerL: number): string => `${mgPerL} mg/L`
const ph = (value: number | null): string => (value === null ? 'pH not read' : `pH ${value}`)

export const sanitizerWords = {
  duty,
  title: 'The sanitizer',
  kind,
  problem,
  /** What can be done about it. */
  wayOut: (wrong: SanitizerProblem) => (UNREAD.has(wrong) ? READ_WHOLE : MAKE_ANEW),
  every: (minutes: number) => `It is read at opening, then every ${minutes} min.`,
  how: 'Dip the strip for this sanitizer, compare it with its card, and read the water.',
  never: 'Nobody has read it in this service.',
  newest: ({ mgPerL, water, ph: value }: Omit<SanitizerReading, 'kind'>, at: string) =>
    `Read ${at}: ${strength(mgPerL)}, ${water ? `water ${safetyWords.degrees(water)}` : 'water not read'}, ${ph(value)}.`,
  strip: 'Strip',
  water: 'Water',
  ph: 'pH',
  unit: 'mg/L',
  notRead: 'not read',
  wrongPh: 'A pH is 0 to 14.',
  wrongStrength: 'No strip shows so much.',
  lack: { strip: 'Type what the strip shows.', initials: 'Your initials are missing.' },
  send: (mgPerL: number | null) => record(mgPerL === null ? null : strength(mgPerL)),
  sendOut: (mgPerL: number | null) =>
    `${record(mgPerL === null ? null : strength(mgPerL))}: out of its limit`,
  done: (mgPerL: number, wrong: SanitizerProblem | null) =>
    wrong === null
      ? `The sanitizer: ${strength(mgPerL)}`
      : `The sanitizer: ${strength(mgPerL)}. ${problem[wrong]}`,
} as const
