import type { Acting } from '#components/live/acting.ts'
import styles from '#components/prep/prep-tasks.module.css'
import { TaskPanel } from '#components/prep/task-panel.tsx'
import rowStyles from '#components/prep/task-rows.module.css'
import { TaskRows } from '#components/prep/task-rows.tsx'
import { taskSaid } from '#components/prep/task-said.ts'
import { usePrepWords } from '#components/prep/words.tsx'
import { Notch } from '#components/ui/notch.tsx'
import type { DoorsMissed } from '#lib/rooms/prep/facts/doors-missed.ts'
import { periodsOf } from '#lib/rooms/prep/facts/prep-plan-of.ts'
import { isLoud, type TaskSeen } from '#lib/rooms/prep/views/prep-list.ts'
import { taskRows } from '#lib/rooms/prep/views/task-rows.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { RunningState } from '#lib/service/state.ts'

interface PrepTasksProps {
  readonly state: RunningState
  readonly plan: ServicePlan
  /** In the order in which they are told. */
  readonly seen: readonly TaskSeen[]
  readonly names: Readonly<Record<string, string>>
  readonly chosen: string | null
  readonly onChoose: (task: string) => void
}

/** All tasks below their pans; a tap brings one under the line. */
export function PrepTasks({ state, plan, seen, names, chosen, onChoose }: PrepTasksProps) {
  const words = usePrepWords()
  const { station } = state
  const byId = new Map(seen.map((one) => [one.task.id, one]))
  const tasks = seen.map(({ task }) => task)
  return (
    <TaskRows
      {...{ station, words }}
      rows={taskRows(station, tasks, periodsOf(plan, station))}
      renderTask={(task) => {
        const one = byId.get(task.id)
        if (!one) return null
        const said = taskSaid(words, state, names, one)
        return (
          <button
            type="button"
            className={`${rowStyles.task} ${styles.box}`}
            data-kind={task.kind}
            data-is={one.is}
            data-loud={isLoud(one, seen) || undefined}
            aria-pressed={task.id === chosen}
            onClick={() => onChoose(task.id)}
          >
            <span className="visually-hidden">{said.name} </span>
            <b aria-hidden="true">{words.taskWord[task.kind]}</b>
            {one.is === 'done' ? (
              <em>{said.is}</em>
            ) : (
              <>
                <span>{said.clock}</span> <span>{said.who}</span>
                {said.passed && <i> {said.passed}</i>}
                {said.out && <i> {said.out}</i>}
                {one.is !== 'to-come' && (
                  <em>
                    <span aria-hidden="true">{words.is[one.is]}</span>
                    <span className="visually-hidden"> {said.is}</span>
                  </em>
                )}
              </>
            )}
          </button>
        )
      }}
      foot={<span>{words.doors(words.sayClock(plan.opensAt, station.timeZone))}</span>}
    />
  )
}

interface PrepListProps extends Omit<PrepTasksProps, 'plan'> {
  readonly there: readonly string[]
  readonly missedOf: (seen: TaskSeen) => DoorsMissed | null
  readonly acting: Acting
  readonly record: string | null
}

/** On a phone: one below the other, what is late first; the chosen one opens where it is. */
export function PrepList({
  state,
  seen,
  names,
  there,
  missedOf,
  chosen,
  onChoose,
  acting,
  record,
}: PrepListProps) {
  const words = usePrepWords()
  return (
    <ol className={styles.list}>
      {seen.map((one) => {
        const { task, is } = one
        const said = taskSaid(words, state, names, one)
        const isChosen = task.id === chosen
        return (
          <li key={task.id}>
            <Notch about={isChosen ? [task.id] : []} kind={isLoud(one, seen) ? 'no' : 'main'}>
              <button
                type="button"
                className={styles.row}
                data-is={is}
                data-loud={isLoud(one, seen) || undefined}
                data-notch={task.id}
                aria-pressed={isChosen}
                onClick={() => onChoose(task.id)}
              >
                <b>{said.name}</b>
                <span>
                  {said.clock}
                  {said.who && ` · ${said.who}`}
                  {said.passed && ` · ${said.passed}`}
                  {said.out && ` · ${said.out}`}
                </span>
                <em>{said.is}</em>
              </button>
              {isChosen && (
                <TaskPanel
                  seen={one}
                  missed={missedOf(one)}
                  {...{ state, names, there, acting, record }}
                  isBelowRow
                />
              )}
            </Notch>
          </li>
        )
      })}
    </ol>
  )
}
