/** What is missing, what changed, publishing and earlier revisions, in English. */

import { counted } from '#lib/words/counted-en.ts'
import { sayMoment } from '#lib/words/day-en.ts'

export const menuPublishEn = {
  wrong: 'What is wrong',
  missing: 'What is missing, and what it costs',
  nothingMissing: 'Nothing is missing.',
  mend: 'Go there',
  changes: 'What changes',
  first: 'It is published for the first time.',
  none: 'Nothing changed since the last revision.',
  passphrase: 'Passphrase of a lead or of somebody in charge',
  neverTouched:
    'What no longer touches never touched in the open service (only who is in charge says so)',
  show: 'Show',
  hide: 'Hide',
  publish: 'Publish it',
  publishing: 'Publishing …',
  lacksPassphrase: 'Passphrase is missing',
  lacksMended: (count: number) => `${counted(count, 'thing is', 'things are')} wrong still`,
  lacksClash: 'Two people changed the same: choose first',
  lacksChange: 'Nothing changed',
  published: (revision: number) => `Revision ${revision} is published.`,
  whatThen:
    'The next service opens on it. A service that is open stays on its own line, and takes labels and what touches what at once.',
  next: 'What is next',
  readLabels: (count: number) => `Read ${counted(count, 'label', 'labels')}`,
  readLabelsWhy: 'Until then their food counts as not known.',
  openService: 'Open a service on the first page',
  openServiceWhy: 'Then Pans loads the line, and the counter takes the first order.',
  revisions: 'Revisions',
  revision: (number: number) => `Revision ${number}`,
  newest: 'the newest',
  at: (at: number, timeZone: string) => sayMoment(at, timeZone),
  look: 'What differs from now',
  same: 'It is as it is now.',
  back: (number: number) => `Bring revision ${number} back`,
  backSure: 'Tap again: your draft becomes it',
  broughtBack: (number: number) =>
    `The draft is revision ${number} again, with the labels of today. Publish it to serve from it.`,
  sheet: 'Print the allergen sheet',
  sheetWhy: 'For guests and inspectors, one page.',
} as const

const REFUSED: Readonly<Record<string, string>> = {
  stale: 'Somebody changed it meanwhile: look at what changes once more.',
  'has-problems': 'Something is wrong with it still.',
  'not-it': 'That passphrase is nobody’s who leads or is in charge.',
  'too-many-tries': 'Too many wrong passphrases: wait a minute.',
}

/** Why it wasn’t published or brought back. */
export const sayPublishRefused = (code: string): string =>
  REFUSED[code] ?? 'The server didn’t take it. Nothing was published.'
