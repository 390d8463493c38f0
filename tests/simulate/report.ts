/** What the simulation shows, against what was asked of it. */
import { type Calibration, calibrate } from '#tests/simulate/calibration.ts'
import type { Outcomes } from '#tests/simulate/planner.ts'
import { components, scenario } from '#tests/simulate/scenario.ts'
import type { SchoolRun } from '#tests/simulate/school-run.ts'

const WORST_ERROR = 0.05
const CASES_A_BIN = 1_000
const HALF_WAY = 0.5
const MOST_AN_HOUR = 6

const rounded = (value: number, digits = 3): number =>
  Math.round(value * 10 ** digits) / 10 ** digits

const shown = ({ cases, bins, worst, brier, brierOfRate }: Calibration) => ({
  cases,
  worstError: rounded(worst),
  brier: rounded(brier, 4),
  brierOfSayingTheRate: rounded(brierOfRate, 4),
  bins: bins.map((bin) => ({
    cases: bin.cases,
    said: rounded(bin.said),
    came: rounded(bin.came),
    error: rounded(bin.error),
  })),
})

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0)

interface Way {
  readonly services: number
  readonly withGap: number | null
  readonly gaps: number | null
  /** Builds that somebody wanted and didn't get whole; null where nobody counted. */
  readonly notWhole: number | null
  readonly lostPortions: number
  readonly leftPortions: number
  readonly leftCents: number
  readonly costCents: number
  readonly batches: number | null
}

/** Means per service, apart from the counts of services. */
const wayOf = (
  all: readonly {
    readonly outcomes: Outcomes
    readonly gaps?: readonly string[]
    readonly batches?: number
    readonly notWhole?: number
  }[],
): Way => {
  const services = all.length
  const each = (of: (outcomes: Outcomes) => number): number =>
    sum(all.map(({ outcomes }) => of(outcomes))) / Math.max(1, services)
  const isKnown = all.every(({ gaps }) => gaps !== undefined)
  return {
    services,
    withGap: isKnown ? all.filter(({ gaps }) => (gaps?.length ?? 0) > 0).length : null,
    gaps: isKnown ? rounded(sum(all.map(({ gaps }) => gaps?.length ?? 0)) / services) : null,
    notWhole: isKnown ? rounded(sum(all.map(({ notWhole }) => notWhole ?? 0)) / services) : null,
    lostPortions: rounded(each((one) => sum(Object.values(one).map(({ lost }) => lost)))),
    leftPortions: rounded(each((one) => sum(Object.values(one).map(({ left }) => left)))),
    leftCents: rounded(
      each((one) =>
        sum(components.map(({ id, stakes }) => (one[id]?.left ?? 0) * stakes.leftCents)),
      ),
      0,
    ),
    costCents: rounded(
      each((one) => sum(Object.values(one).map(({ costCents: cost }) => cost))),
      0,
    ),
    batches: isKnown ? rounded(sum(all.map(({ batches }) => batches ?? 0)) / services) : null,
  }
}

/** The most that were told within any hour. */
export const mostAnHour = (at: readonly number[]): number =>
  Math.max(0, ...at.map((from) => at.filter((one) => one >= from && one < from + 60).length))

export const reportOf = (seed: number, services: number, runs: readonly SchoolRun[]) => {
  const compared = runs.flatMap((run) => run.compared)
  const toClose = calibrate(runs.flatMap((run) => run.toClose))
  const toNextBatch = calibrate(runs.flatMap((run) => run.toNextBatch))
  const waits = runs.flatMap((run) => run.waits)
  const advice = wayOf(compared.map((one) => one.advice))
  const quarter = wayOf(compared.map((one) => one.quarter))
  const planner = wayOf(compared.map((one) => ({ outcomes: one.planner })))
  const hours = (compared.length * (scenario.closes - scenario.opens)) / 60
  const told = {
    anHour: rounded(sum(compared.map((one) => one.told.at.length)) / Math.max(1, hours)),
    mostInAnyHour: Math.max(0, ...compared.map((one) => mostAnHour(one.told.at))),
    inRush: sum(compared.map((one) => one.told.inRush)),
    batchesThatCantBeMade: sum(compared.map((one) => one.told.impossible)),
  }
  const wayToPlanner =
    (quarter.costCents - advice.costCents) / (quarter.costCents - planner.costCents)
  const checks = {
    casesABin:
      Math.min(...[...toClose.bins, ...toNextBatch.bins].map(({ cases }) => cases)) >= CASES_A_BIN,
    calibration: toClose.worst <= WORST_ERROR,
    calibrationBeforeNextBatch: toNextBatch.worst <= WORST_ERROR,
    fewerServicesWithGap: (advice.withGap ?? 0) < (quarter.withGap ?? 0),
    fewerGaps: (advice.gaps ?? 0) < (quarter.gaps ?? 0),
    noMoreLeftOver: advice.leftCents <= quarter.leftCents,
    halfWayToPlanner: wayToPlanner >= HALF_WAY,
    atMostSixAnHour: told.mostInAnyHour <= MOST_AN_HOUR,
    quietInRush: told.inRush === 0,
    onlyWhatCanBeMade: told.batchesThatCantBeMade === 0,
  }
  return {
    seed,
    services,
    commands: sum(runs.map((run) => run.commands)),
    calibration: { beforeClose: shown(toClose), beforeNextBatch: shown(toNextBatch) },
    ways: { advice, refillAtOneQuarter: quarter, planner },
    wayToPlanner: rounded(wayToPlanner),
    suggestions: told,
    wait: {
      cases: waits.length,
      withinRange: rounded(
        waits.filter(({ said, seconds }) => seconds >= said.early && seconds <= said.late).length /
          Math.max(1, waits.length),
      ),
      meanSaidSeconds: rounded(sum(waits.map(({ said }) => said.seconds)) / waits.length, 0),
      meanRealSeconds: rounded(sum(waits.map(({ seconds }) => seconds)) / waits.length, 0),
    },
    checks,
  }
}
