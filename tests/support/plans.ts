/** Services that are planned, on the demo station, the morning before they open. */
import type { PlanEvent } from '#lib/service/events/plan-event.ts'
import type { ToldCode } from '#tests/support/refusal-code.ts'
import {
  demoStation,
  type Given,
  happening,
  NOTHING,
  onward,
  portions,
  type Told,
} from '#tests/support/service.ts'

export type PlanGiven = Extract<Given, { readonly type: 'plan' }>

/** Lunch on the day after the tests’ clock, from eleven. */
export const PLAN: PlanGiven = {
  type: 'plan',
  station: 'alder-hall',
  kind: 'real',
  on: '2026-11-26',
  doorsOpen: '11:00',
  doorsClose: '13:00',
  guests: { walkIn: 40, groups: [{ label: 'Grade 9', guests: 20, at: '11:40' }] },
  crew: [
    { initials: 'KT', adult: true, from: '07:00', to: '14:00' },
    { initials: 'AB', adult: false, on: '2026-11-25', from: '13:00', to: '16:00' },
  ],
}

export const OPEN_PLANNED: Extract<Given, { readonly type: 'open' }> = {
  type: 'open',
  station: 'alder-hall',
  kind: 'real',
}

/** Planned, and after these commands. */
export const plannedService = (...commands: Given[]): Told => onward(NOTHING, PLAN, ...commands)

/** A batch of rice that was started in it. */
export const RICE: Given = { type: 'startBatch', batch: 'b1', component: 'rice', loads: 1 }

/** As the server notes it of a document that was published since. */
export const followed = (told: Told, revision = 4): Told =>
  happening(
    told,
    [{ type: 'planFollowed', revision, station: demoStation, portions, labels: {} }],
    null,
  )

/** A story in which each event of a plan happens. */
export const planStories: Readonly<Record<PlanEvent['type'], Told>> = {
  servicePlanned: plannedService(),
  planChanged: plannedService({ ...PLAN, doorsClose: '13:30' }),
  planFollowed: followed(plannedService()),
  planDropped: plannedService({ type: 'dropPlan' }),
}

/** Codes with which what stands in the way of a plan is refused: tests/lib/rooms/day has one of each. */
export type PlanRefused = Extract<
  ToldCode,
  | 'plan-in-past'
  | 'doors-close-first'
  | 'over-midnight'
  | 'no-such-time'
  | 'after-the-service'
  | 'there-twice'
  | 'adult-and-student'
  | 'plans-overlap'
  | 'not-as-planned'
  | 'food-of-before'
  | 'food-unanswered'
  | 'unknown bells'
>
