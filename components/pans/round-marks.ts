/** A round of readings on the line: what it opens, and what each pan and lid says while it is taken. */
import type { Chosen } from '#components/job/chosen.ts'
import type { PansWords } from '#components/pans/words.tsx'
import { missedFrom } from '#lib/rooms/food/facts/place-now.ts'
import type { Round } from '#lib/rooms/food/facts/round.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

type Taken = Extract<Chosen, { readonly task: 'round' }>

export const roundOpens = ({ places }: Round, now: number): Taken | null => {
  const of = places.map(({ place: { what, id } }) => ({ what, id }))
  const [at] = of
  return at ? { task: 'round', of, at, since: now } : null
}

/** By the id of a pan or a lid; nothing where no round is taken. */
export const roundMarks = (
  words: PansWords,
  state: RunningState,
  task: Chosen | null,
  now: number,
): Readonly<Record<string, string>> => {
  if (task?.task !== 'round') return {}
  const { read, by, now: due } = words.roundTask.mark
  return Object.fromEntries(
    task.of.flatMap((one): (readonly [string, string])[] => {
      const place = placeOf(state, one)
      if (!place || one.what === 'batch') return []
      const { newest, offSale } = place
      if (newest && newest.at >= task.since)
        return [[one.id, read(words.sayDegrees(newest.temperature), offSale === null)]]
      const dueBy = missedFrom(state, place, now)
      return [
        [
          one.id,
          dueBy === null || dueBy <= now ? due : by(words.sayTime(dueBy, state.station.timeZone)),
        ],
      ]
    }),
  )
}
