/** Planned services with tasks, on the demo station, the morning before they open. */
import type { PrepEvent } from '#lib/service/events/prep-event.ts'
import { PLAN, type PlanRefused, plannedService } from '#tests/support/plans.ts'
import type { ToldCode } from '#tests/support/refusal-code.ts'
import { type Given, onward, type Told } from '#tests/support/service.ts'

const there = (initials: string, adult: boolean, from: string, to: string, on = PLAN.on) => ({
  ...{ initials, adult, on, from, to },
})

/** As in most schools: all are gone by three on the day before. */
export const SCHOOL_DAY: Given = {
  ...PLAN,
  crew: [
    there('KT', true, '12:00', '15:00', '2026-11-25'),
    there('AB', false, '12:00', '14:50', '2026-11-25'),
    there('KT', true, '07:00', '14:00'),
    there('AB', false, '08:40', '13:10'),
    there('CD', false, '08:40', '13:10'),
  ],
}

export const SLAW = { component: 'slaw', loads: 2, portions: 40 }
export const BEANS = { component: 'beans', loads: 2, portions: 24 }

/** `ahead`: nobody is there as they have to be read at 41 °F. */
export const AHEAD: Given = { type: 'planPrep', foods: [{ ...BEANS, ahead: true }] }
export const TAKEN: Given = { type: 'planPrep', foods: [SLAW, BEANS] }
export const TICK: Extract<Given, { readonly type: 'tickTask' }> = {
  type: 'tickTask',
  task: 'make.slaw',
  initials: 'KT',
}
export const PASS: Extract<Given, { readonly type: 'passTask' }> = {
  type: 'passTask',
  task: 'make.slaw',
  far: 2,
  where: 'table',
  initials: 'KT',
}

export const preparedService = (...commands: Given[]): Told =>
  onward(plannedService(), SCHOOL_DAY, TAKEN, ...commands)

/** A story in which each event of a preparation happens. */
export const prepStories: Readonly<Record<PrepEvent['type'], Told>> = {
  prepPlanned: preparedService(),
  taskTicked: preparedService(TICK),
  tickTakenBack: preparedService(TICK, { type: 'takeBackTick', task: 'make.slaw' }),
  taskPassed: preparedService(PASS),
}

/** Codes with which what stands in the way of a preparation is refused: tests/lib/rooms/prep has one of each. */
export type PrepRefused = Extract<ToldCode, 'prep-not-ready' | 'reading-no-tick' | 'unknown task'>

export type OfPlans = PlanRefused | PrepRefused
