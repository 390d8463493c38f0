/** What the lead is told of a round of readings. */

import type { Round } from '#lib/rooms/food/facts/round.ts'
import { counted, list } from '#lib/words/counted-en.ts'
import { inSentence, startingWith } from '#lib/words/findings-en.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

const MOST_NAMED = 2

const unread = ({ places }: Round, { name }: SaidHere): string => {
  const missed = [
    ...new Set(places.flatMap(({ why, place }) => (why === 'missed' ? [place.component] : []))),
  ]
  if (missed.length === 0) return ''
  const named = missed.slice(0, MOST_NAMED).map((id) => inSentence(name(id)))
  const more = missed.length - named.length
  const all = list([...named, ...(more > 0 ? [counted(more, 'other', 'others')] : [])], 'and')
  return `${startingWith(all)} ${missed.length > 1 ? 'weren’t' : 'wasn’t'} read: don’t serve before that. A missing reading never passes.`
}

const isLate = ({ places }: Round): boolean => places.some(({ why }) => why === 'missed')

const title = (round: Round, { time }: SaidHere): string => {
  const count = counted(round.places.length, 'reading', 'readings')
  return isLate(round) ? `Take ${count} now` : `Take ${count} by ${time(round.dueBy)}`
}

const why = (round: Round, here: SaidHere): readonly string[] => {
  const kept = round.places.filter(({ isProtected }) => isProtected).length
  const missed = unread(round, here)
  return [
    ...(missed === '' ? [] : [missed]),
    ...(round.rushFrom === null ? [] : [`Before the rush at ${here.time(round.rushFrom)}.`]),
    kept > 0
      ? 'Protected back-up pans first, then down the line.'
      : 'Down the line, pan after pan.',
  ]
}

export const roundTaskWords = {
  title,
  why,
  short: (round: Round, { time }: SaidHere): string => {
    const count = counted(round.places.length, 'reading', 'readings')
    return isLate(round) ? `${count} now` : `${count} by ${time(round.dueBy)}`
  },
  button: 'Start the round',
  take: 'Take readings',
  mark: {
    read: (degrees: string) => `✓ ${degrees}`,
    by: (at: string) => `by ${at}`,
    now: 'due',
    /** On a lid, where there is less room. */
    lid: (degrees: number) => `${degrees}°`,
    /** Of the place whose end is asked. */
    asked: 'this',
    /** Of what goes into the bin with it. */
    out: 'out',
  },
} as const
