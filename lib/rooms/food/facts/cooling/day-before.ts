/** Whether the doors of a planned service open on a later day. */
import { civilDate } from '#lib/measure/civil.ts'
import type { RunningState } from '#lib/service/state.ts'

/** False once it is open, and of a service without a plan. */
export const isDayBefore = (
  { stage, plan, station }: Pick<RunningState, 'stage' | 'plan' | 'station'>,
  at: number,
): boolean => stage === 'planned' && plan !== undefined && civilDate(at, station.timeZone) < plan.on
