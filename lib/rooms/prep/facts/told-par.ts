/** Par with what it rests on: what is at hand of each component, and real days like the one ahead. */
import type { ComponentPar } from '#lib/estimate/par/par.ts'
import { type RealDays, realDays } from '#lib/estimate/par/real-days.ts'
import type { LarderState } from '#lib/larder/lot.ts'
import { type AtHand, atHandFor, takenFor } from '#lib/rooms/food/facts/larder/at-hand.ts'
import { aheadOf, countedOn, type PlannedDay } from '#lib/rooms/prep/facts/counted-on.ts'
import type { Yields } from '#lib/rooms/prep/facts/load-size.ts'
import { carriedFor, parFor } from '#lib/rooms/prep/facts/par-for.ts'

export interface ParTold extends ComponentPar {
  /** Ten real days like the one ahead; null: there aren't as many, and the dots are computed ones. */
  readonly real: RealDays | null
  readonly atHand: AtHand
  /** Portions that came out of the larder into it already. */
  readonly taken: number
  /** What is left over may serve another service, and so loses less than what is thrown out. */
  readonly isCarried: boolean
}

/** What par of a planned service is worked out of. */
export interface ParOfPlan extends PlannedDay {
  readonly yields: Yields
  readonly larder: LarderState
  /** Services of the house that are planned and open before it, the first first. */
  readonly before: readonly PlannedDay[]
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
  before,
  now,
}: ParOfPlan): Readonly<Record<string, ParTold>> => {
  const { station } = state
  const { on, closesAt, items } = plan
  const ahead = aheadOf({ plan, expected })
  const counted = countedOn(before, larder, now)
  const atHand = Object.fromEntries(
    station.components.map(({ id }) => [
      id,
      atHandFor(state, larder, id, { now, on, until: closesAt, counted }),
    ]),
  )
  const taken = (id: string) => takenFor(state, id, closesAt)
  const there = Object.fromEntries(
    Object.entries(atHand).map(([id, { portions }]) => [id, portions + taken(id)]),
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
            taken: taken(id),
            isCarried: carriedFor(component, station, { past, ahead }) > 0,
          },
        ],
      ]
    }),
  )
}
