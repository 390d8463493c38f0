import { findComponent } from '#lib/menu/find.ts'
import { nameIn } from '#lib/menu/name-in.ts'
import type { RunningState } from '#lib/service/state.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import type { SaidHere } from '#lib/words/do-next-en.ts'

/** Names, times and makings of a station, as sentences about it need them. */
export const saidHere = (state: RunningState, now: number): SaidHere => ({
  name: nameIn(state.station),
  time: (at) => sayTime(at, state.station.timeZone),
  now,
  making: (component) => {
    const remake = findComponent(state.station, component)?.remake
    return remake ? { minutes: remake.minutes, where: remake.where, who: remake.by } : null
  },
})
