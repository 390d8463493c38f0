/** What Pans says while nothing is to be done, and of what was put off. */
import type { NotLasting, PutOff } from '#lib/rooms/advice/views/do-next.ts'
import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { rangeOf } from '#lib/rooms/pans/facts/pan-outlook.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

/** "Put off until 12:56: Start 1 load of herb chicken" */
const putOffSaid = ({ reason, until }: PutOff, here: SaidHere): string =>
  `${until === null ? 'You said no' : `Put off until ${here.time(until)}`}: ${doNextWords.shortly(reason, here)}`

/** "Herb chicken won’t last 12:55–1:15; put off until 12:56." */
const notLasting = ({ component, lasting, by, putOff }: NotLasting, here: SaidHere): string => {
  const range = rangeOf(by, here.now)
  const when = range ? ` ${doNextWords.range(range, here.time)}` : ''
  const answered =
    putOff === null
      ? ''
      : putOff.until === null
        ? '; you said no'
        : `; put off until ${here.time(putOff.until)}`
  return `${here.name(component)} ${lasting === 'tight' ? 'is tight' : 'won’t last'}${when}${answered}.`
}

interface Calm {
  /** When the rush that is going on ends, epoch milliseconds; null where there is none. */
  readonly rushUntil: number | null
  readonly notLasting: readonly NotLasting[]
}

/**
 * Why there is nothing to do now: never that all is well beside what won't last; in a rush, until when
 * suggestions wait.
 */
const calm = ({ rushUntil, notLasting: gone }: Calm, here: SaidHere): readonly string[] => {
  const said = gone.slice(0, 3).map((one) => notLasting(one, here))
  if (rushUntil !== null)
    return [
      ...said,
      `Rush until ${here.time(rushUntil)}: suggestions wait until then. What is sold out, to be read or to be thrown out still comes.`,
    ]
  return said.length > 0 ? said : [pansWords.nothingToDoWhy]
}

export const calmWords = {
  calm,
  putOffSaid,
  notLasting,
  nothingNow: 'Nothing else to do now',
}
