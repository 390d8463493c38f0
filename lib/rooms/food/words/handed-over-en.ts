/** What is said of builds that were handed over with food which was found bad later. */

import type { HandedOverKind } from '#lib/rooms/food/facts/handed-over-lists.ts'
import type { FoundBecause } from '#lib/service/events/handed-over-event.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { counted, formOf } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'

const because: Readonly<Record<FoundBecause, string>> = {
  'out-of-limits': 'It was found out of its limits.',
  'reading-missed': 'Its reading was missed, so nobody knows how it was held since.',
  'monitoring-missed': 'The reading that its time rule asks for was missed.',
  'too-warm': 'It was read too warm.',
  time: 'Its time was over.',
  date: 'Its date was over.',
  'not-cooked': 'It was found not cooked enough.',
  'not-cooled': 'It was found not cooled in time.',
  label: 'A label was read since: it may not fit its guest.',
  contact: 'Something that its guest keeps from was in a pan that it may have come from.',
}

/** "herb chicken out of its limits" */
const foodThat: Readonly<Record<FoundBecause, string>> = {
  'out-of-limits': 'out of its limits',
  'reading-missed': 'that wasn’t read',
  'monitoring-missed': 'that wasn’t read',
  'too-warm': 'that was too warm',
  time: 'past its time',
  date: 'past its date',
  'not-cooked': 'not cooked enough',
  'not-cooled': 'not cooled in time',
  label: 'that may not fit them',
  contact: 'that may not fit them',
}

const builds = (count: number): string => counted(count, 'build', 'builds')
const were = (count: number): string => formOf(count, 'was', 'were')

interface BuildSaid {
  readonly build: string
  readonly time: string
}

const TITLES: Readonly<Record<HandedOverKind, (since: string, count: number) => string>> = {
  food: (since, count) =>
    `${builds(count)} with this food ${were(count)} handed over since ${since}`,
  shelf: (since, count) =>
    `${builds(count)} ${were(count)} handed over from the shelf since ${since}`,
  build: (since) => `Handed over since ${since}, and made again later`,
}

export const handedOverWords = {
  /** `name` of the food, or of the build. */
  title: (name: string, kind: HandedOverKind = 'food', found: FoundBecause | null = null) =>
    kind === 'shelf'
      ? 'Handed over from the shelf of made food'
      : kind === 'build'
        ? `Find the guest of ${sayBuild(name)}: what they had before`
        : `Guests had ${inSentence(name)}${found === null ? '' : ` ${foodThat[found]}`}`,
  /** "2 builds with this food were handed over since 11:20: 3A at 11:31, 4B at 11:40." */
  list: (since: string, each: readonly BuildSaid[], more: number, kind: HandedOverKind = 'food') =>
    `${TITLES[kind](since, each.length + more)}: ${each.map(({ build, time }) => `${sayBuild(build)} at ${time}`).join(', ')}${more > 0 ? ` and ${more} more` : ''}.`,
  howMany: (since: string, count: number, kind: HandedOverKind = 'food') =>
    `${TITLES[kind](since, count)}.`,
  because,
  who: 'The person in charge decides, by local code, what their guests are told.',
  taskWhy: 'The person in charge says what their guests are told, or that nothing has to be done.',
  short: (name: string, count: number, kind: HandedOverKind = 'food') =>
    kind === 'build'
      ? `What the guest of ${sayBuild(name)} had before: to be answered for`
      : `${builds(count)} handed over ${kind === 'shelf' ? 'from the shelf' : `with ${inSentence(name)}`}: to be answered for`,
  open: 'Say what was decided',
  answers: 'What was decided?',
  answer: {
    told: 'Their guests were told',
    nothing: 'Nothing has to be done',
  },
  answerMeans: {
    told: 'all of them: it leaves this list',
    nothing: 'local code allows it: it leaves this list',
  },
  notYet: 'Not all found yet? Go back: it stays here until it is answered.',
  lackAnswer: 'Tap what was decided.',
  lackPassphrase: 'The passphrase of the person in charge is missing.',
  send: 'The person in charge initials this',
  done: (name: string) => `${name}: answered for, initialed`,
  none: 'Nothing is left to answer for here.',
} as const
