import type { PansWords } from '#components/pans/words.tsx'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

/** Names, times and makings of a station, as sentences about it need them. */
export const saidHere = (words: PansWords, state: RunningState, now: number): SaidHere => ({
  name: nameIn(state.station),
  time: (at) => words.sayTime(at, state.station.timeZone),
  now,
  making: (component) => {
    const remake = findComponent(state.station, component)?.remake
    return remake ? { minutes: remake.minutes, where: remake.where, who: remake.by } : null
  },
})
