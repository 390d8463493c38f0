import type { HandedOverOf } from '#lib/service/handed-over-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { HandedOverList } from '#lib/views/handed-over-with.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { type HandedOverKind, handedOverWords } from '#lib/words/handed-over-en.ts'

/** For so many a card has room; the form that answers for them has all. */
const MOST_ON_A_CARD = 6

export const handedOverKind = (what: HandedOverOf): HandedOverKind =>
  what === 'shelf' || what === 'build' ? what : 'food'

/** Which builds were handed over with food that was found bad, each with the time at which it left. */
export const sayHandedOver = (
  { station }: RunningState,
  { what, since, builds }: Pick<HandedOverList, 'what' | 'since' | 'builds'>,
): string => {
  const time = (at: number) => sayTime(at, station.timeZone)
  const said = builds.slice(0, MOST_ON_A_CARD)
  return handedOverWords.list(
    time(since),
    said.map(({ build, at }) => ({ build, time: time(at) })),
    builds.length - said.length,
    handedOverKind(what),
  )
}
