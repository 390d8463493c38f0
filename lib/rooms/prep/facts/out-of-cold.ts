/** Food out of the cooler while it is prepared: what goes back, and until when it may be out. */
import type { Task, TaskKind } from '#lib/prep/prep-plan.ts'
import { MINUTE_MS, type TemperatureLimit } from '#lib/safety/limits.ts'
import type { PassedWhere, PrepState } from '#lib/service/events/prep-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { findComponent } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/**
 * How long food is out while it is worked on: common practice, no source. The model code sets no time
 * for it: its limits don't apply during preparation (3-501.16(A)), and a half-done task that lies waits.
 */
export const WORKED_ON_MS = 30 * MINUTE_MS

/** Places that keep food neither cold nor hot: the line's wells aren't on yet. */
const OUT: ReadonlySet<PassedWhere> = new Set(['table', 'line'])

export const isOut = (where: PassedWhere): boolean => OUT.has(where)

const OF_FOOD: ReadonlySet<TaskKind> = new Set(['thaw', 'measure', 'make', 'cook', 'reheat'])

type OfTask = Pick<Task, 'kind' | 'component'>

/** How the food of a task is held; null where it needs no temperature, or it is about no food. */
const heldOf = (station: StationDocument, { kind, component }: OfTask): 'hot' | 'cold' | null => {
  const held = component === null ? undefined : findComponent(station, component)?.held
  return held === undefined || held === 'dry' || !OF_FOOD.has(kind) ? null : held
}

export interface GoesBack {
  /** Hot food may be weighed out of dry stores alone: only what came out of the cooler goes back. */
  readonly held: 'hot' | 'cold'
  readonly limit: TemperatureLimit
}

/**
 * What was weighed out waits for its making, till the next day maybe: cold at 41 °F or below
 * (3-501.16(A)(2)), covered (3-302.11(A)(4), from memory) and labelled (3-302.12, from memory; with
 * its date where it waits for more than 24 hours, 3-501.17(A)). Whatever nobody called dry counts as
 * food that needs it. null: nothing of the task goes back.
 */
export const goesBack = (station: StationDocument, task: OfTask): GoesBack | null => {
  const held = heldOf(station, task)
  return task.kind !== 'measure' || held === null
    ? null
    : { held, limit: limitsOf(station).coldHolding }
}

type Passed = PrepState['passed'][string]

export interface OutOfCold {
  /** At the latest: it may have been out before it was passed on. Epoch milliseconds, as all of these. */
  readonly since: number
  /** Back in the cooler, or on the heat, by then. */
  readonly backBy: number
  /** Food out of its limits for four hours is thrown out: the longest that time alone allows (3-501.19(B)). */
  readonly throwOutAt: number
  readonly is: 'in-time' | 'too-long' | 'over'
  readonly limit: TemperatureLimit
}

/** The clock of a half-done food that was passed on where nothing keeps it cold; null where none runs. */
export const outOfCold = (
  station: StationDocument,
  task: OfTask,
  passed: Passed | null,
  now: number,
): OutOfCold | null => {
  if (passed === null || !isOut(passed.where) || heldOf(station, task) === null) return null
  const limits = limitsOf(station)
  const since = passed.since ?? passed.at
  const backBy = since + WORKED_ON_MS
  const throwOutAt = since + limits.timeOnly4h.withinMs
  const is = now >= throwOutAt ? 'over' : now > backBy ? 'too-long' : 'in-time'
  return { since, backBy, throwOutAt, is, limit: limits.coldHolding }
}

/** By when food that is passed on there now is back in the cooler; null where no clock runs there. */
export const backByOf = (
  station: StationDocument,
  task: OfTask,
  { where, before }: { readonly where: PassedWhere; readonly before: Passed | null },
  now: number,
): number | null => {
  const since = outOfCold(station, task, before, now)?.since ?? now
  return outOfCold(station, task, { far: 1, where, at: since }, now)?.backBy ?? null
}
