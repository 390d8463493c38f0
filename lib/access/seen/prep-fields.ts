/** The class of every field of how a planned service is prepared. */
import { each, type Fields, list } from '#lib/access/seen/classed.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'

const CHOICE = {
  component: 'always',
  loads: 'always',
  portions: 'always',
  minutes: 'always',
  ahead: 'always',
  fromRoom: 'always',
  frozen: 'always',
  coolsIn: { first: 'always', total: 'always' },
} as const

const TASK = { task: 'always' } as const

export const PREP: Fields<PrepState> = {
  foods: list(CHOICE),
  ownTable: 'always',
  from: 'always',
  ticked: each('always'),
  passed: each({ far: 'always', where: 'always', at: 'always', since: 'always' }),
}

export const PREPARED = {
  prepPlanned: { foods: list(CHOICE), ownTable: 'always' },
  taskTicked: TASK,
  tickTakenBack: TASK,
  taskPassed: { ...TASK, far: 'always', where: 'always' },
} as const
