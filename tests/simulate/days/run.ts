/** All weeks of one station, once under each way, and what its par said beforehand. */
import { loadSize } from '#lib/rooms/prep/facts/load-size.ts'
import { componentOf } from '#lib/station/find.ts'
import { type DayPlayed, nothingYet, playWeeks, type Way } from '#tests/simulate/days/play.ts'
import { daysStation, truthOf } from '#tests/simulate/days/truth.ts'
import {
  byFixed,
  byGuess,
  byKnowing,
  byLastWeek,
  byPar,
  parSaid,
} from '#tests/simulate/days/ways.ts'

/** The first weeks are the same for all: the plan's own guess, from which each way learns. */
export const FIRST_WEEKS = 3

/** That so many portions are enough on so many days of ten, and whether they were. */
export interface SaidEnough {
  readonly days: number
  /** Station and date: what is said of one day comes true or not together. */
  readonly of: string
  readonly came: boolean
}

/** What a day came to, without what was known before it. */
export type DayFigures = Omit<DayPlayed, 'known' | 'loads' | 'wanted'>

const figuresOf = ({ known: _, loads: __, wanted: ___, ...figures }: DayPlayed): DayFigures =>
  figures

export interface StationRun {
  readonly par: readonly DayFigures[]
  readonly lastWeek: readonly DayFigures[]
  readonly fixed: readonly DayFigures[]
  /** None where the planner wasn't asked: it takes as long as all others. */
  readonly planner: readonly DayFigures[]
  readonly said: readonly SaidEnough[]
}

/** What was said of the loads of par, of a load less and of one more. */
const saidOf = ({ known, loads, wanted }: DayPlayed): readonly SaidEnough[] =>
  Object.entries(parSaid(known)).flatMap(([id, { days }]) =>
    [-1, 0, 1].flatMap((more) => {
      const count = (loads[id] ?? 0) + more
      if (count < 0) return []
      const size = loadSize(daysStation, componentOf(daysStation, id))
      const portions = (known.there[id] ?? 0) + count * size
      return [
        {
          days: days.filter((one) => one <= portions).length,
          of: `${known.truth.seed} ${known.on}`,
          came: (wanted[id] ?? 0) <= portions,
        },
      ]
    }),
  )

/** Of the stations of a seed each has a seed of its own. */
export const stationSeed = (seed: number, station: number): number => seed * 1_000 + station

export const runStation = (
  seed: number,
  weeks: number,
  { planner }: { readonly planner: boolean },
): StationRun => {
  const truth = truthOf(seed)
  const first = playWeeks(truth, { from: 0, to: FIRST_WEEKS }, byGuess, nothingYet)
  const play = (way: Way) =>
    playWeeks(truth, { from: FIRST_WEEKS, to: FIRST_WEEKS + weeks }, way, first.standing).days
  const par = play(byPar)
  return {
    par: par.map(figuresOf),
    lastWeek: play(byLastWeek).map(figuresOf),
    fixed: play(byFixed(FIRST_WEEKS)).map(figuresOf),
    planner: planner ? play(byKnowing).map(figuresOf) : [],
    said: par.flatMap(saidOf),
  }
}
