/** What the pad says on which a reading is typed. */

import type { EntryLack, EntryLimit, EntryVerdict } from '#lib/rooms/food/views/reading-entry.ts'
import type { Scale } from '#lib/safety/temperature.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const sayLimit = (limit: EntryLimit, scale: Scale): string =>
  limit.kind === 'heat'
    ? safetyWords.heat(limit.limit, scale)
    : safetyWords.limit(limit.limit, scale)

const lack: Readonly<Record<EntryLack, string>> = {
  temperature: 'Type the temperature.',
  where: 'Tap where it was read.',
  probe: 'Say which probe.',
  surface: safetyWords.lack['surface-only'],
  initials: 'Your initials are missing.',
}

const verdict: Readonly<Record<EntryVerdict, string>> = {
  met: 'in its limit',
  'not-met': 'out of its limit',
  'not-long-enough': 'hot enough: how long was it held?',
  'not-stood': 'hot enough: how long did it wait, covered?',
}

export const readingWords = {
  pad: 'Number pad',
  temperature: 'Temperature',
  takeBack: 'take the last figure back',
  minus: 'minus',
  point: 'point',
  scale: (scale: Scale) => `°${scale}`,
  probe: 'Probe',
  initials: 'Initials',
  types: 'What the pad types',
  typesTemperature: 'Type the temperature',
  typesWeight: 'Type the weight',
  offered: (text: string) => `Use ${text}`,
  where: 'Where it was read',
  whereIs: {
    'middle-stirred': 'Middle, stirred',
    'thickest-part': 'Thickest piece',
    surface: 'Only the surface',
  },
  held: 'Held, seconds',
  stood: 'Covered after, seconds',
  limit: sayLimit,
  limitIs: 'Limit',
  verdict,
  lack,
  yesMeant: (scale: Scale) => `Yes, °${scale}`,
  noMeant: (scale: Scale) => `No, °${scale}`,
  readAgain: 'Read it again',
  decides: safetyWords.decides,
} as const
