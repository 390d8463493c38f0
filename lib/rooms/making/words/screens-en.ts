/** What an assembly screen says of itself and of the others, and of the line of a stopped build, in English. */
import { loudNeed } from '#lib/rooms/care/words/held-en.ts'
import type { Marked } from '#lib/rooms/making/views/stop-line.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { screenName } from '#lib/words/service-en.ts'

const MARKED: Readonly<Record<Marked, string>> = {
  'off-sale': 'don’t serve',
  'throw-out': 'throw out',
  clock: 'clock jumped',
  'not-for-guest': 'not for this guest',
}

export const screensEn = {
  lid: 'LID ON',
  wentIn: (by: readonly string[]) => [
    ...by.map((name, at) => (at === 0 ? name : `and ${name}`)),
    'went in',
  ],

  asBefore: 'as before',
  marked: (why: Marked) => MARKED[why],
  itemBecomes: (from: string, to: string) => `${from} becomes ${to}`,
  needGone: (need: string) => `${need}: not asked any more`,
  keepApartList: (codes: readonly NeedCode[]) => codes.map(loudNeed).join(', '),
  keepApartWord: ['keep', 'apart'],
  isNew: 'new:',
  justTold: 'The guest just told us:',

  atScreen: (screen: string) => `at ${screenName(screen)}`,
  thisIs: (screen: string) => `This screen is ${screenName(screen)}: change`,
  whichScreen: 'Where is this screen?',
  whichScreenThen: 'Others see what is made here. This tablet remembers it.',
  screen: (screen: string) => screenName(screen),
  madeAt: (screen: string) => `being made at ${screenName(screen)}`,
  wasMadeAt: (screen: string) => `made at ${screenName(screen)}`,
  takeOverAsk: (name: string, screen: string) =>
    `Take over ${sayBuild(name)} from ${screenName(screen)}?`,
  takeOverYes: 'Yes, make it here',
  takeOverYesThen: 'It was begun there: ask what is in it.',
  takeOverNo: (screen: string) => `No, leave it at ${screenName(screen)}`,
  tookOver: (name: string, screen: string) =>
    `${sayBuild(name)} taken over from ${screenName(screen)}`,
  takenOverFrom: (screen: string) => `taken over from ${screenName(screen)}`,
  takenAway: (name: string, screen: string) =>
    `${sayBuild(name)} is made at ${screenName(screen)} now: leave it.`,
  seen: 'Seen',
  stopElsewhere: (name: string, screen: string) =>
    `STOP ${sayBuild(name)}: ${screenName(screen)} answers it.`,
  answerHere: 'Answer it here',
  leaveTo: (screen: string) => `Back: ${screenName(screen)} answers it`,
} as const
