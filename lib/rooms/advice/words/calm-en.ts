/** What Pans says while nothing is asked of the lead, and of what was put off. */
import type { Calm, More, NotLasting, PutOff } from '#lib/rooms/advice/views/calm.ts'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { type Range, rangeOf } from '#lib/rooms/pans/facts/pan-outlook.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { list } from '#lib/words/counted-en.ts'
import { inSentence } from '#lib/words/findings-en.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

/** "Put off until 12:56: Start 1 load of herb chicken" */
const putOffSaid = ({ reason, until }: PutOff, here: SaidHere): string =>
  `${until === null ? 'You said no' : `Put off until ${here.time(until)}`}: ${doNextWords.shortly(reason, here)}`

const moreSaid = (more: More, { time }: SaidHere): string => {
  switch (more.can) {
    case 'underway':
      return `; more at ${time(more.at)}`
    case 'never':
      return '; it can’t be made again today'
    case 'too-late':
      return '; too late to start more'
    case 'only-waste':
      return '; another load would mostly be left over'
    case 'wait':
      return '; not yet time to start more'
    case 'start':
      return '; a load could be started now'
  }
}

const answered = ({ until }: PutOff, { time }: SaidHere): string =>
  until === null ? '; you said no' : `; put off until ${time(until)}`

/** "gone between 12:55 and 1:15" */
const goneBetween = ({ from, to }: Range, { time }: SaidHere): string =>
  to === null
    ? `gone from ${time(from)} on`
    : from === to
      ? `gone at ${time(from)}`
      : `gone between ${time(from)} and ${time(to)}`

/** "Herb chicken: gone between 12:55 and 1:15; too late to start more." */
const notLasting = (one: NotLasting, here: SaidHere): string => {
  const range = rangeOf(one.by, here.now)
  const when = range ? goneBetween(range, here) : 'won’t last'
  const then = one.putOff ? answered(one.putOff, here) : moreSaid(one.more, here)
  return `${here.name(one.component)}: ${one.lasting === 'tight' ? 'may be ' : ''}${when}${then}.`
}

/** How many are named before the others are counted. */
const MOST_SAID = 3

const goneSaid = (gone: readonly string[], { name }: SaidHere): readonly string[] =>
  gone.length === 0
    ? []
    : [
        `Sold out: ${list(
          gone.map((id) => inSentence(name(id))),
          'and',
        )}.`,
      ]

/** That nothing is to be done only where nothing is open. */
const title = ({ rushUntil, gone, notLasting: all, putOff }: Calm, { name }: SaidHere): string => {
  const [first] = all
  if (all.length > 1) return `${all.length} may not last`
  if (first)
    return `${name(first.component)} ${first.lasting === 'tight' ? 'is tight' : 'won’t last'}`
  if (gone.length > 0) return 'Nothing else to do now'
  if (putOff.length > 0) return 'The rest was put off'
  return rushUntil === null ? pansWords.nothingToDo : 'Nothing urgent'
}

/**
 * Why nothing is asked now: never that all is well beside what won't last or is gone; in a rush, until
 * when suggestions wait.
 */
const calm = (open: Calm, here: SaidHere): readonly string[] => {
  const { rushUntil, gone, notLasting: all, putOff, isForecast } = open
  const said = [
    ...all.slice(0, MOST_SAID).map((one) => notLasting(one, here)),
    ...(all.length > MOST_SAID ? [`${all.length - MOST_SAID} more may not last.`] : []),
    ...goneSaid(gone, here),
    ...putOff.slice(0, MOST_SAID).map((one) => `${putOffSaid(one, here)}.`),
  ]
  if (rushUntil !== null)
    return [
      ...said,
      `Rush until ${here.time(rushUntil)}: suggestions wait until then. What is sold out, to be read or to be thrown out still comes.`,
    ]
  if (said.length > 0) return said
  return [
    isForecast
      ? 'The pans fill every build, and each lasts until close.'
      : pansWords.nothingToDoWhy,
  ]
}

export const calmWords = {
  calm,
  title,
  putOffSaid,
  notLasting,
}
