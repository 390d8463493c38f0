/** A task of the preparation, or a thing of its pack list: done, not done after all, or passed on half done. */
import { z } from 'zod'
import type { Task } from '#lib/prep/prep-plan.ts'
import { isPacked, isPacking, packOf } from '#lib/rooms/prep/facts/pack-now.ts'
import { isDone, isOfCrew, isReading, preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { type Decision, happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { PASSED_WHERE } from '#lib/service/events/prep-event.ts'
import type { RunningState } from '#lib/service/state.ts'

const taskField = z.string().regex(/^[a-z-]{1,20}(\.[a-z][a-z0-9-]{0,49})?$/)

const withTask = (state: RunningState, id: string, decide: (task: Task) => Decision): Decision => {
  const task = preparedOf(state)?.tasks.find((one) => one.id === id && isOfCrew(one))
  return task ? decide(task) : refuse({ code: 'unknown', what: 'task', id })
}

const withPacked = (state: RunningState, id: string, decide: () => Decision): Decision =>
  packOf(state)?.some((one) => one.id === id)
    ? decide()
    : refuse({ code: 'unknown', what: 'task', id })

const firstTasks = (state: RunningState) =>
  (preparedOf(state)?.tasks ?? []).filter((task) => isOfCrew(task) && !isReading(task)).slice(0, 2)

/** Whether it comes too early or too late is told, and refuses nothing. */
export const tickTask = defineCommand({
  type: 'tickTask',
  who: ['counter', 'assembly', 'hand-over'],
  stages: ['planned'],
  schema: { task: taskField, initials: initialsField },
  decide: (state, { task: id, initials }, { now }) => {
    if (isPacking(id))
      return withPacked(state, id, () => {
        if (initials === undefined) return refuse({ code: 'not-initialled' })
        return isPacked(state, id)
          ? refuse({ code: 'already-so' })
          : happened({ type: 'taskTicked', task: id })
      })
    return withTask(state, id, (task) => {
      if (isReading(task)) return refuse({ code: 'reading-no-tick', task: id })
      if (initials === undefined) return refuse({ code: 'not-initialled' })
      return isDone(state, task, now)
        ? refuse({ code: 'already-so' })
        : happened({ type: 'taskTicked', task: id })
    })
  },
  sample: (state) => [
    ...firstTasks(state).map(({ id }) => ({ task: id, initials: 'KT' })),
    ...(packOf(state) ?? []).slice(0, 1).map(({ id }) => ({ task: id, initials: 'KT' })),
  ],
  rules: ['PP13', 'PP14', 'LS9'],
  example: { task: 'make.slaw', initials: 'KT' },
  tells:
    ': a task of the preparation is done, or a thing of its pack list is packed (`pack-pan.…`); a reading is no tick, it is recorded of its batch',
})

/** A slip is cheap. */
export const takeBackTick = defineCommand({
  type: 'takeBackTick',
  who: ['counter', 'assembly', 'hand-over'],
  stages: ['planned'],
  schema: { task: taskField },
  decide: (state, { task: id }) => {
    const takeBack = () =>
      isPacked(state, id)
        ? happened({ type: 'tickTakenBack', task: id })
        : refuse({ code: 'already-so' })
    return isPacking(id) ? withPacked(state, id, takeBack) : withTask(state, id, takeBack)
  },
  sample: ({ prep }) => Object.keys(prep?.ticked ?? {}).map((task) => ({ task })),
  rules: ['PP13'],
  example: { task: 'make.slaw' },
})

/** The bell rings, and somebody else goes on. */
export const passTask = defineCommand({
  type: 'passTask',
  who: ['counter', 'assembly', 'hand-over'],
  stages: ['planned'],
  schema: {
    task: taskField,
    /** Quarters of it. */
    far: z.literal([1, 2, 3]),
    where: z.enum(PASSED_WHERE),
    initials: initialsField,
  },
  decide: (state, { task: id, far, where, initials }, { now }) =>
    withTask(state, id, (task) => {
      if (isReading(task)) return refuse({ code: 'reading-no-tick', task: id })
      if (initials === undefined) return refuse({ code: 'not-initialled' })
      const before = state.prep?.passed[id]
      return isDone(state, task, now) || (before?.far === far && before.where === where)
        ? refuse({ code: 'already-so' })
        : happened({ type: 'taskPassed', task: id, far, where })
    }),
  sample: (state) =>
    firstTasks(state).map(({ id }) => ({
      ...{ task: id, far: 2 as const, where: 'table' as const, initials: 'KT' },
    })),
  rules: ['PP15'],
  example: { task: 'make.slaw', far: 2, where: 'cooler', initials: 'KT' },
  tells: ' (`far`: quarters of it that are done; `where` it stands)',
})
