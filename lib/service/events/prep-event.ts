/** Preparing a planned service: what is made how, and how far its tasks are. */
import type { PrepChoice } from '#lib/prep/food-of.ts'

/** How much of a task is done, in quarters, as somebody sees it. */
export type HowFar = 1 | 2 | 3

export const PASSED_WHERE = ['cooler', 'freezer', 'range', 'oven', 'table', 'ice', 'line'] as const

/** Where a half-done task stands. */
export type PassedWhere = (typeof PASSED_WHERE)[number]

/** Its tasks are worked out of this and the plan; said again it takes the place of what was said. */
export interface PrepPlanned {
  readonly type: 'prepPlanned'
  readonly foods: readonly PrepChoice[]
  /** Raw food has a table and a board of its own. */
  readonly ownTable: boolean
}
export interface TaskTicked {
  readonly type: 'taskTicked'
  readonly task: string
}
/** It was ticked by a slip. */
export interface TickTakenBack {
  readonly type: 'tickTakenBack'
  readonly task: string
}
export interface TaskPassed {
  readonly type: 'taskPassed'
  readonly task: string
  readonly far: HowFar
  readonly where: PassedWhere
}

export type PrepEvent = PrepPlanned | TaskTicked | TickTakenBack | TaskPassed

export interface PrepState extends Omit<PrepPlanned, 'type'> {
  /** When that was last said, epoch milliseconds: nothing is put before it. */
  readonly from: number
  /** By a task's id: when it was ticked. */
  readonly ticked: Readonly<Record<string, number>>
  readonly passed: Readonly<
    Record<
      string,
      Omit<TaskPassed, 'type' | 'task'> & {
        readonly at: number
        /** Since when it is in no cooler and on no heat, where that is longer than since `at`. */
        readonly since?: number
      }
    >
  >
}
