/** What is said of food that isn't served until the person in charge decided: what was read, and each way. */

import type { ProbeAt } from '#lib/safety/readings.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { counted, formOf, list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'

const portions = (count: number): string => counted(count, 'portion', 'portions')

const readAt: Readonly<Record<ProbeAt, string>> = {
  'middle-stirred': 'stirred, in the middle',
  'thickest-part': 'in the thickest part',
  surface: 'at the surface only',
}

/** "the tuna salad back-up pan" */
export const inPlace = {
  pan: (food: string) => `the ${food} pan`,
  backup: (food: string) => `the ${food} back-up pan`,
  batch: (food: string) => `the ${food} batch`,
} as const

export const resolveWords = {
  resolveTitle: (name: string, what: 'pan' | 'backup' | 'batch') =>
    `Don’t serve ${inPlace[what](inSentence(name))}`,
  resolveWhy: {
    'out-of-limits': 'A reading was out of its limits.',
    'reading-missed':
      'Its reading was missed. After a reading in its limits it may be served again.',
    'monitoring-missed': 'The reading that its time rule asks for was missed.',
    'cooling-missed': 'It isn’t shown to have cooled in time.',
  },
  /** "Read 47 °F at 2:01, in the middle. Limit: 41 °F or below." */
  resolveRead: (read: string, at: string, where: ProbeAt, limit: string | null) =>
    `Read ${read} at ${at}, ${readAt[where]}.${limit === null ? '' : ` Limit: ${limit}.`}`,
  resolveLastGood: (at: string) => `Last known in its limits at ${at}.`,
  resolveNoGood: 'It was never known to be in its limits.',
  /** What follows of each way, beside it. */
  resolveThen: {
    discard: (held: readonly string[], count: number) =>
      `${portions(count)} ${formOf(count, 'goes', 'go')} into the bin${held.length === 0 ? '' : `; ${list(held.map(sayBuild), 'and')} ${formOf(held.length, 'is', 'are')} made again`}`,
    reheat: (held: readonly string[]) =>
      `served again once it is read hot enough${held.length === 0 ? '' : `; then ${list(held.map(sayBuild), 'and')} ${formOf(held.length, 'goes', 'go')} on`}`,
    'time-only': (held: readonly string[]) =>
      `served again now, never back to heat or cold${held.length === 0 ? '' : `; ${list(held.map(sayBuild), 'and')} ${formOf(held.length, 'goes', 'go')} on`}`,
  },
  resolveCall: 'Don’t serve it: call the person in charge.',
  resolveWho: 'Only the person in charge decides.',
  passphrase: 'Passphrase of the person in charge',
  resolveSend: 'The person in charge decides this',
  resolved: (name: string) => `${name}: decided`,
  resolveNot: 'It may be served again.',
} as const
