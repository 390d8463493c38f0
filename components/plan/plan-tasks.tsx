import { Fragment, useState } from 'react'
import styles from '#components/plan/times.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import rowStyles from '#components/prep/task-rows.module.css'
import { TaskRows } from '#components/prep/task-rows.tsx'
import { civilDate } from '#lib/measure/civil.ts'
import type { Prepared, PrepPlan, Task } from '#lib/prep/prep-plan.ts'
import { taskRows } from '#lib/rooms/prep/views/task-rows.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

interface PlanTasksProps {
  readonly station: StationDocument
  readonly asPrep: PrepPlan
  readonly prepared: Prepared
  /** By the id of each of the crew, how it is called. */
  readonly names: Readonly<Record<string, string>>
}

/** The tasks below their pans, back from when the doors open; where something falls to nobody, that day's. */
export function PlanTasks({ station, asPrep, prepared, names }: PlanTasksProps) {
  const words = usePlanWords()
  const [isAll, setAll] = useState(false)
  const { timeZone } = station
  const { tasks, unready, idle } = prepared
  const lacking = new Set(unready.map(({ task }) => task))
  // What is brought to the whole line stands with its loading, where that has the room.
  const atLine = new Set(idle.length > 0 ? ['load'] : ['tools', 'load'])
  const rows = taskRows(
    station,
    tasks.filter(({ kind }) => !atLine.has(kind)),
    asPrep.periods,
  )
  const line = tasks.filter(({ kind }) => atLine.has(kind)).sort((a, b) => a.from - b.from)
  const [lack] = unready
  const on = lack === undefined || isAll ? null : civilDate(lack.at, timeZone)
  const shown = rows.filter((row) => on === null || row.on === on)
  const days = [...new Set(rows.map((row) => row.on))].filter((day) => day !== on)
  const renderTask = (task: Task) => {
    const who = [...new Set(task.who.map((hand) => names[hand.who] ?? hand.who))].join(' ')
    const name = task.component === null ? '' : nameIn(station)(task.component)
    const isUnready = lacking.has(task.id)
    return (
      <span className={rowStyles.task} data-kind={task.kind} data-unready={isUnready || undefined}>
        <span className="visually-hidden">{words.taskName(task, name)} </span>
        <b aria-hidden="true">{words.taskWord[task.kind]}</b>
        <span>
          {words.sayTime(task.from, timeZone)} {isUnready && who === '' ? words.nobody : who}
        </span>
      </span>
    )
  }
  return (
    <TaskRows
      {...{ station, words, renderTask }}
      rows={shown}
      foot={
        <>
          {line.map((task) => (
            <Fragment key={task.id}>{renderTask(task)}</Fragment>
          ))}
          {on !== null && days.length > 0 && (
            <button type="button" className={styles.all} onClick={() => setAll(true)}>
              {words.alsoOn(days)}
            </button>
          )}
          {idle.length > 0 && <span className={styles.idle}>{words.idle(idle.length)}</span>}
          <span>{words.doors(words.sayClock(asPrep.doorsOpen, timeZone))}</span>
        </>
      }
    />
  )
}
