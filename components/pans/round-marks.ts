/** A round on the line: what it opens, and what each pan and lid says while it is taken, or is asked its end. */
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
  if (task?.task === 'end') {
    const { asked, out } = words.roundTask.mark
    const said = task.hot ? out : asked
    return Object.fromEntries((task.hot ?? [task.at]).map(({ id }) => [id, said]))
  }
  if (task?.task !== 'round') return {}
  const { read, by, now: due, lid } = words.roundTask.mark
  return Object.fromEntries(
    task.of.flatMap((one): (readonly [string, string])[] => {
      const place = placeOf(state, one)
      // What is out of its limits says so itself.
      if (!place || one.what === 'batch' || (place.offSale && place.newest)) return []
      const { newest } = place
      const isLid = one.what === 'backup'
      if (newest && newest.at >= task.since) {
        const { tenths } = newest.temperature
        const said = isLid
          ? lid(Math.round(tenths / 10))
          : read(words.sayDegrees(newest.temperature))
        return [[one.id, said]]
      }
      const dueBy = missedFrom(state, place, now)
      const isNow = isLid || dueBy === null || dueBy <= now
      return [[one.id, isNow ? due : by(words.sayTime(dueBy, state.station.timeZone))]]
    }),
  )
}
