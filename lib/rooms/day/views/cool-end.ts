/** What it takes to cool food that a service leaves, before anybody chooses it. */
import { coolingAt } from '#lib/rooms/day/facts/ends/food-history.ts'
import { coolsFrom, stagesFrom } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { hereOf } from '#lib/rooms/prep/facts/prep-plan-of.ts'
import { type CoolingStage, planCooling, stagesToCome } from '#lib/safety/cooling.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'

/** Why what is left of a stage's time is too little, or may be. */
export interface TooLittle {
  readonly stage: CoolingStage
  /** So long it has been going on, milliseconds. */
  readonly usedMs: number
  readonly leftMs: number
  /** What this kitchen was measured to need for that stage in all; null: nobody measured it. */
  readonly needsMs: number | null
}

export interface CoolEnd {
  /** Stages to be read yet, the next one first: at least one. */
  readonly stages: readonly CoolingStage[]
  /** It cools already: its clock doesn't start with a reading taken now. */
  readonly isStarted: boolean
  /** Somebody said to be there as its next stage ends. */
  readonly isStayed: boolean
  /**
   * By the plan of the day the last moment, up to the end of the next stage, at which somebody is there;
   * null: nobody is; undefined: no plan says who is there.
   */
  readonly there: number | null | undefined
  readonly tooLittle: TooLittle | null
}

/** Less than this in which to be cold is little. Common practice, no source. */
const LITTLE_MS = 30 * MINUTE_MS

const tooLittleOf = (
  state: RunningState,
  place: Placed,
  stages: readonly CoolingStage[],
  now: number,
): TooLittle | null => {
  const coolsIn = state.prep?.foods.find((one) => one.component === place.component)?.coolsIn
  const all = stages.map((stage): TooLittle => {
    const minutes = coolsIn && (stage.stage === 1 ? coolsIn.first : coolsIn.total)
    const startedAt = stage.by - stage.within.withinMs
    return {
      stage,
      usedMs: now - startedAt,
      leftMs: stage.by - now,
      needsMs: minutes === undefined ? null : minutes * MINUTE_MS,
    }
  })
  const isLittle = ({ stage, leftMs, needsMs }: TooLittle) =>
    leftMs < LITTLE_MS || (needsMs !== null && needsMs > stage.within.withinMs)
  return all.find(isLittle) ?? null
}

/**
 * By when food that is cooled now has to be read, who is there by the plan, and whether the time that is
 * used already leaves too little. Both stages of cooked food (3-501.14(A)), the one of food from room
 * temperature (3-501.14(B)); what is hot is counted from a reading now.
 *
 * @returns null where nothing of it is to be read any more: it is cold, or missed a stage
 */
export const coolEnd = (state: RunningState, place: Placed, now: number): CoolEnd | null => {
  const { station, plan } = state
  const component = componentOf(station, place.component)
  const cooling = coolingAt(state, place, now)
  const own = place.what === 'batch' ? (state.batches[place.id] ?? null) : null
  const stages = cooling
    ? stagesToCome(cooling, coolsFrom(component), limitsOf(station))
    : stagesFrom(station, component, own, now)
  const [next] = stages
  if (!next) return null
  const crew = plan ? hereOf(plan, station.timeZone) : []
  const seen = planCooling([next], now, crew, { first: 0, total: 0 })
  return {
    stages,
    isStarted: cooling !== null,
    isStayed: (own?.presentUntil ?? 0) >= next.by,
    there: crew.length === 0 ? undefined : seen.ok ? (seen.stages[0]?.readAt ?? null) : null,
    tooLittle: tooLittleOf(state, place, stages, now),
  }
}
