/** What the simulation of days shows, against what was asked of it. */
import type { DayFigures, SaidEnough, StationRun } from '#tests/simulate/days/run.ts'

const HALF_WAY = 0.5
const WORST_ERROR = 0.05
/** Under so many cases a count of days says too little to be judged. */
const CASES = 300

const rounded = (value: number, digits = 3): number =>
  Math.round(value * 10 ** digits) / 10 ** digits

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)

/** Means of a day. */
const wayOf = (days: readonly DayFigures[]) => {
  const each = (of: (day: DayFigures) => number) => sum(days.map(of)) / Math.max(1, days.length)
  return {
    days: days.length,
    costCents: rounded(
      each((day) => day.lostCents + day.thrownOutCents),
      0,
    ),
    lostBuilds: rounded(each((day) => day.lostBuilds)),
    daysWithGap: days.filter(({ lostBuilds }) => lostBuilds > 0).length,
    thrownOut: rounded(
      each((day) => day.thrownOut),
      1,
    ),
    thrownOutCents: rounded(
      each((day) => day.thrownOutCents),
      0,
    ),
    carried: rounded(
      each((day) => day.carried),
      1,
    ),
  }
}

export interface EnoughBin {
  readonly days: number
  readonly cases: number
  readonly came: number
  readonly error: number
  /** Standard error of that, days being what strays: K.-Y. Liang and S. L. Zeger, 1986; from memory. */
  readonly standardError: number
}

/** Of cases that come true or not together where they are of one day. */
const standardErrorOf = (said: readonly SaidEnough[], came: number): number => {
  const off = new Map<string, number>()
  for (const one of said) off.set(one.of, (off.get(one.of) ?? 0) + (one.came ? 1 : 0) - came)
  return Math.sqrt(sum([...off.values()].map((value) => value * value))) / Math.max(1, said.length)
}

/** Of the times at which so many days of ten were said, how often it was enough. */
export const enoughBins = (said: readonly SaidEnough[]): readonly EnoughBin[] =>
  Array.from({ length: 11 }, (_, days) => {
    const own = said.filter((one) => one.days === days)
    const came = own.filter((one) => one.came).length / Math.max(1, own.length)
    return {
      ...{ days, cases: own.length, came: rounded(came), error: rounded(came - days / 10) },
      standardError: rounded(standardErrorOf(own, came)),
    }
  })

export const daysReport = (seed: number, weeks: number, runs: readonly StationRun[]) => {
  const par = wayOf(runs.flatMap((run) => run.par))
  const lastWeek = wayOf(runs.flatMap((run) => run.lastWeek))
  const fixed = wayOf(runs.flatMap((run) => run.fixed))
  const planner = wayOf(runs.flatMap((run) => run.planner))
  const better = Math.min(lastWeek.costCents, fixed.costCents)
  const wayToPlanner = (better - par.costCents) / (better - planner.costCents)
  const bins = enoughBins(runs.flatMap((run) => run.said))
  const judged = bins.filter(({ cases, days }) => cases >= CASES && days > 0 && days < 10)
  const eight = bins[8]
  const checks = {
    halfWayToPlanner: wayToPlanner >= HALF_WAY,
    eightOfTen: eight !== undefined && eight.cases >= CASES && Math.abs(eight.error) <= WORST_ERROR,
    calibration: judged.every(({ error }) => Math.abs(error) <= WORST_ERROR),
    cheaperThanBothRules: par.costCents < better,
  }
  return {
    seed,
    weeks,
    stations: runs.length,
    ways: { par, lastWeekSales: lastWeek, fixedPar: fixed, planner },
    wayToPlanner: rounded(wayToPlanner),
    enough: bins,
    /** Bins that miss the bound, by how much, and how much of that chance alone may be; none is let through for it. */
    missed: judged.flatMap(({ days, error, standardError }) => {
      const by = Math.abs(error) - WORST_ERROR
      return by > 0 ? [{ days, by: rounded(by), standardError }] : []
    }),
    worstError: Math.max(0, ...judged.map(({ error }) => Math.abs(error))),
    checks,
  }
}
