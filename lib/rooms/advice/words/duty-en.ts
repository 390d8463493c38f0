/** What the lead has to do about food: each sentence names the place that it means. */

import type { SafetyReason } from '#lib/estimate/advice-reason.ts'
import { readHereWords } from '#lib/rooms/shelf/words/read-here-en.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import { isReadHere } from '#lib/station/read-here.ts'
import type { DutyWords } from '#lib/words/duty-words.ts'
import { inSentence, startingWith } from '#lib/words/findings-en.ts'
import type { NameOf, SaidHere } from '#lib/words/said-here.ts'

type What = SafetyReason['what']

/** "the herb chicken back-up pan", "the waiting herb chicken" */
const placeOf = ({ of, id, component, what }: SafetyReason, name: NameOf): string => {
  if (component === null) return sayBuild(id)
  const food = inSentence(name(component))
  switch (of) {
    case 'pan':
      return `the ${food} pan`
    case 'backup':
      return `the ${food} back-up pan`
    case 'batch':
      return what === 'cooling-due' ? `the cooling ${food}` : `the waiting ${food}`
    case 'rest':
      return `the ${food} that was taken off the line`
    default:
      return name(component)
  }
}

const title: Readonly<Record<What, (place: string, at: string) => string>> = {
  'reading-due': (place) => `Read ${place}`,
  'reading-missed': (place) => `${startingWith(place)} wasn’t read`,
  'out-of-limits': (place) => `${startingWith(place)} is out of its limits`,
  'throw-out': (place) => `Throw out ${place}`,
  'throw-out-soon': (place, at) => `${startingWith(place)}: throw out at ${at}`,
  'cooling-due': (place) => `Read ${place}`,
  collect: (build) => `${build} isn’t collected yet`,
}

const short: Readonly<Record<What, (place: string, at: string) => string>> = {
  'reading-due': (place, at) => `Read ${place} by ${at}`,
  'reading-missed': (place) => `${startingWith(place)}: not read, don’t serve`,
  'out-of-limits': (place) => `${startingWith(place)}: out of limits, don’t serve`,
  'throw-out': (place) => `Throw out ${place}`,
  'throw-out-soon': (place, at) => `${startingWith(place)}: throw out at ${at}`,
  'cooling-due': (place, at) => `Read ${place} by ${at}`,
  collect: (build, at) => `${build}: collect by ${at}`,
}

const because: Readonly<Record<NonNullable<SafetyReason['because']>, string>> = {
  time: 'Its time is over.',
  date: 'Its date is over.',
  'too-warm': 'It was read warmer than it may be on time alone.',
  'out-of-limits': 'It was out of its limits.',
  'taken-away': 'It was taken off the line while its clock ran.',
  'counted-empty': 'It was counted as gone while its clock ran, and some of it is left.',
  'not-cooled': 'A stage of its cooling wasn’t read in time.',
}

const UNREAD = 'Without a reading it isn’t shown to have cooled.'

/** Of what cools while nobody said to be there: when its reading falls, and what can be done. */
const alone = ({ awayFrom = 0, dueAt }: SafetyReason, { time, now }: SaidHere): string =>
  awayFrom > now
    ? `Its stage ends at ${time(dueAt ?? now)}, and nobody said to be there after ${time(awayFrom)}. Read it before, or say who stays. ${UNREAD}`
    : `By ${time(dueAt ?? now)}, and nobody has said to be there since ${time(awayFrom)}. ${UNREAD}`

const why: Readonly<Record<What, (reason: SafetyReason, at: string) => string>> = {
  'reading-due': ({ of }, at) =>
    of === 'batch'
      ? `By ${at}. A batch whose reading is missed isn’t loaded.`
      : `By ${at}. After a missed reading it isn’t served.`,
  'reading-missed': ({ of }) =>
    `${of === 'batch' ? 'It isn’t loaded before' : 'Don’t serve it until'} somebody reads it. A missing reading never passes.`,
  'out-of-limits': ({ of }) =>
    `${of === 'batch' ? 'It isn’t loaded.' : 'Don’t serve it.'} Call the person in charge: local code and they decide.`,
  'throw-out': (reason) =>
    `${because[reason.because ?? 'time']} It isn’t served, and stays on this list until it is initialed.`,
  'throw-out-soon': ({ of }, at) =>
    `From ${at} on it is never served. ${of === 'pan' ? 'Change the pan before.' : 'Use it before.'}`,
  'cooling-due': (_, at) => `By ${at}. ${UNREAD}`,
  collect: (_, at) => `Its time on the shelf is over at ${at}.`,
}

const button: Readonly<Record<What, string>> = {
  'reading-due': 'Read it now',
  'reading-missed': 'Read it now',
  'out-of-limits': 'What may be done',
  'throw-out': 'To be thrown out',
  'throw-out-soon': 'Open the pan',
  'cooling-due': 'Read it now',
  collect: 'To Hand-over',
}

/** What is read beside food says its duties in words of its own. */
const ownWords = ({ of }: SafetyReason): DutyWords | null =>
  isReadHere(of) ? readHereWords[of].duty : null

/** By when it is said: of what cools, while somebody is there. */
const at = ({ dueAt, awayFrom }: SafetyReason, { time, now }: SaidHere): string =>
  time(awayFrom !== undefined && awayFrom > now ? awayFrom : (dueAt ?? now))

const isUncooled = ({ what, because }: SafetyReason): boolean =>
  what === 'out-of-limits' && because === 'not-cooled'

const uncooled = (place: string): string => `${startingWith(place)} isn’t shown to have cooled`

export const dutyWords = {
  title: (reason: SafetyReason, here: SaidHere): string => {
    const own = ownWords(reason)?.title[reason.what]
    if (own) return own(at(reason, here))
    const place = placeOf(reason, here.name)
    return isUncooled(reason) ? uncooled(place) : title[reason.what](place, at(reason, here))
  },
  why: (reason: SafetyReason, here: SaidHere): string => {
    const own = ownWords(reason)?.why[reason.what]
    if (own) return own(at(reason, here))
    if (reason.awayFrom !== undefined) return alone(reason, here)
    const said = why[reason.what](reason, at(reason, here))
    return isUncooled(reason) ? `${because['not-cooled']} ${said}` : said
  },
  short: (reason: SafetyReason, here: SaidHere): string => {
    const own = ownWords(reason)?.short[reason.what]
    if (own) return own(at(reason, here))
    const place = placeOf(reason, here.name)
    return isUncooled(reason) ? uncooled(place) : short[reason.what](place, at(reason, here))
  },
  button: (reason: SafetyReason): string =>
    ownWords(reason)?.button[reason.what] ?? button[reason.what],
} as const
