/** What the lead is told first: guests to find, builds that are held, labels to read. */

import { sayNeed } from '#lib/rooms/care/words/held-en.ts'
import type { HoldReason } from '#lib/service/events/event.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { list } from '#lib/words/counted-en.ts'
import { inSentence, startingWith } from '#lib/words/findings-en.ts'

const holdWord: Readonly<Record<HoldReason, string>> = {
  need: 'a need was told',
  label: 'a label changed',
  contact: 'a wrong scoop or another pan can touch it',
  'off-sale': 'a pan it took from, or its shelf, is out of limits',
}

export const guests = (builds: readonly string[]): string =>
  builds.length === 1
    ? `the guest of ${sayBuild(builds[0] ?? '')}`
    : `the guests of ${list(builds.map(sayBuild), 'and')}`

export const firstWords = {
  ways: 'Allergies and labels',
  inCharge: 'Person in charge',
  inChargeSince: (since: string) => `in charge since ${since}`,
  noOneInCharge: 'no one in charge',
  labelChanged: 'A label changed',
  toSheet: 'Allergen sheet',
  toHandOver: 'To Hand-over',
  toCounter: 'To the counter',
  readNow: 'Read its label',

  findTitle: (builds: readonly string[]) => startingWith(`find ${guests(builds)}`),
  findWhy: (reason: HoldReason, needs: readonly Need[]) =>
    [
      `${startingWith(holdWord[reason])} after it was handed over${needs.length > 0 ? `: ${needs.map(sayNeed).join(' · ')}` : ''}.`,
      `Tell ${reason === 'need' ? '' : 'the guest and '}the person in charge, then answer it on Hand-over.`,
    ].join(' '),
  holdTitle: (builds: readonly string[]) => `Hold: ${list(builds.map(sayBuild), 'and')}`,
  holdWord: (reason: HoldReason) => `${startingWith(holdWord[reason])}.`,
  /** It has to come from a protected back-up pan. */
  holdUnready: (name: string) =>
    `Its guest keeps apart, and the ${inSentence(name)} back-up pan isn’t ready.`,
  holdThen: (reason: HoldReason | 'back-up') =>
    reason === 'back-up'
      ? 'Fill that first: then it goes on. Or the counter changes the build or cancels it.'
      : reason === 'off-sale'
        ? 'The person in charge decides at the pan: it goes on, or it is thrown out and made again.'
        : 'Assembly answers the stop; the counter changes the build or cancels it.',
  fillBackup: 'Fill the back-up pan',
  readTitle: (name: string) => `Read the label of ${name}`,
  readWhy: 'Until then nothing of it counts as free, and it isn’t served to who keeps apart.',
  find: (builds: readonly string[], reason: HoldReason) =>
    startingWith(`find ${guests(builds)}: ${holdWord[reason]}`),
  hold: (builds: readonly string[], reason: HoldReason) =>
    `Hold: ${list(builds.map(sayBuild), 'and')}, ${holdWord[reason]}`,
  read: (name: string) => `${name}: read the label`,
} as const
