import type { PansWords } from '#components/pans/words.tsx'
import type { HandedOverKind, HandedOverList } from '#lib/rooms/food/facts/handed-over-lists.ts'
import type { HandedOverOf } from '#lib/service/events/handed-over-event.ts'
import type { RunningState } from '#lib/service/state.ts'

/** For so many a card has room; the form that answers for them has all. */
const MOST_ON_A_CARD = 6

export const handedOverKind = (what: HandedOverOf): HandedOverKind =>
  what === 'shelf' || what === 'build' ? what : 'food'

/** Which builds were handed over with food that was found bad, each with the time at which it left. */
export const sayHandedOver = (
  words: PansWords,
  { station }: RunningState,
  { what, since, builds }: Pick<HandedOverList, 'what' | 'since' | 'builds'>,
): string => {
  const time = (at: number) => words.sayTime(at, station.timeZone)
  const said = builds.slice(0, MOST_ON_A_CARD)
  return words.givenOut.list(
    time(since),
    said.map(({ build, at }) => ({ build, time: time(at) })),
    builds.length - said.length,
    handedOverKind(what),
  )
}
