/** What a round of readings says, place after place. */

import type { HowProbed } from '#lib/rooms/food/views/reading-entry.ts'
import { list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'

const how: Readonly<Record<HowProbed, string>> = {
  stir: 'Stir, then probe the middle of the pan.',
  piece: 'Probe the middle of the thickest piece.',
  cup: 'Open one cup, and probe its middle.',
}

const foods = (names: readonly string[]): string => list(names.map(inSentence), 'and')

const called = {
  pan: (name: string) => name,
  backup: (name: string) => `${name} back-up pan`,
  batch: (name: string) => `waiting ${name}`,
} as const

export const roundWords = {
  how,
  title: (place: number, count: number, name: string, what: 'pan' | 'backup' | 'batch') =>
    `Read ${place} of ${count}: ${called[what](inSentence(name))}`,
  /** From the reading before: where, with which probe, and by whom. */
  kept: (where: string, probe: string, initials: string) =>
    `${where} · probe ${probe} · ${initials}`,
  change: 'Change',
  /** Before the next one. */
  clean: 'Clean and sanitize the probe first.',
  keptApart: (what: 'backup' | 'batch') =>
    what === 'backup' ? 'Protected back-up pan' : 'May go into a protected back-up pan',
  /** Of a probe that was in other food. */
  wasIn: (names: readonly string[]) =>
    names.length > 0
      ? `This probe was in ${foods(names)}.`
      : 'This probe was in the same food on the line.',
  wasCleaned: 'Washed, rinsed and sanitized since?',
  cleaned: 'Yes, cleaned',
  notCleaned: 'No',
  lackClean: 'Say whether the probe was cleaned',
  ends: (names: readonly string[], what: 'backup' | 'batch') =>
    what === 'batch'
      ? `A back-up pan that it goes into isn’t protected${names.length > 0 ? `, and may contain ${foods(names)}` : ''}.`
      : names.length > 0
        ? `It isn’t protected after this reading, and may contain ${foods(names)}.`
        : 'It isn’t protected after this reading.',
  endsShort: (what: 'backup' | 'batch') =>
    what === 'backup' ? 'it isn’t protected any more' : 'no back-up pan of it is protected',
  /** Of a batch that is about to go into a back-up pan, protected where it is clean. */
  carries: (names: readonly string[]) =>
    names.length > 0
      ? `This batch was read with a probe that was in ${foods(names)}: the back-up pan isn’t protected.`
      : 'This batch was read with a probe that was on the line: the back-up pan isn’t protected.',
  next: (name: string, what: keyof typeof called) => `next: ${called[what](inSentence(name))}`,
  last: 'the last of this round',
  onward: (name: string | null) => (name === null ? 'End the round' : `Go on: ${inSentence(name)}`),
  notThis: 'Not this pan',
  whyNot: 'Why not?',
  notBecause: {
    later: 'Later in this round',
    empty: 'It is empty',
    changed: 'It is changed now',
    read: 'Read it after all',
  },
  gone: 'Nothing is read of it any more.',
} as const
