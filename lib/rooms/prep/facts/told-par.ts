/** Par with what it rests on: what is at hand of each component, and real days like the one ahead. */
import type { ComponentPar } from '#lib/estimate/par/par.ts'
import type { PastDay } from '#lib/estimate/par/past-day.ts'
import { type RealDays, realDays } from '#lib/estimate/par/real-days.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import { type AtHand, atHandFor } from '#lib/rooms/food/facts/larder/at-hand.ts'
import type { HereNow } from '#lib/rooms/food/facts/larder/from-larder.ts'
import type { Yields } from '#lib/rooms/prep/facts/load-size.ts'
import { carriedFor, parFor } from '#lib/rooms/prep/facts/par-for.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'

export interface ParTold extends ComponentPar {
  /** Ten real days like the one ahead; null: there aren't as many, and the dots are computed ones. */
  readonly real: RealDays | null
  readonly atHand: AtHand
  /** What is left over may serve another service, and so loses less than what is thrown out. */
  readonly isCarried: boolean
}

/** Builds an hour where neither guests expected nor a past service tells. Common practice, no source. */
const FIRST_AN_HOUR = 40
const HOUR_MS = 3_600_000

/** What par of a planned service is worked out of. */
export interface ParOfPlan {
  /** The planned service, whose station, portions and labels count. */
  readonly state: HereNow
  readonly plan: Pick<ServicePlan, 'on' | 'opensAt' | 'closesAt' | 'items'>
  readonly expected: number | null
  readonly past: readonly PastDay[]
  readonly yields: Yields
  readonly larder: LarderState
  /** Epoch milliseconds. */
  readonly now: number
}

export const toldPar = ({
  state,
  plan,
  expected,
  past,
  yields,
  larder,
  now,
}: ParOfPlan): Readonly<Record<string, ParTold>> => {
  const { station } = state
  const { on, opensAt, closesAt, items } = plan
  const firstBuilds = Math.max(1, (FIRST_AN_HOUR * (closesAt - opensAt)) / HOUR_MS)
  const ahead = { on, expected, firstBuilds }
  const atHand = Object.fromEntries(
    station.components.map(({ id }) => [
      id,
      atHandFor(state, larder, id, { now, on, until: closesAt }),
    ]),
  )
  const there = Object.fromEntries(
    Object.entries(atHand).map(([id, { portions }]) => [id, portions]),
  )
  const par = parFor(station, { ahead, past, items, there, yields })
  return Object.fromEntries(
    station.components.flatMap((component): [string, ParTold][] => {
      const { id } = component
      const [own, hand] = [par[id], atHand[id]]
      if (!own || !hand) return []
      return [
        [
          id,
          {
            ...own,
            real: realDays(station, past, ahead, items, id),
            atHand: hand,
            isCarried: carriedFor(component, station, { past, ahead }) > 0,
          },
        ],
      ]
    }),
  )
}
