import type { ReactNode } from 'react'
import { Line } from '#components/line/line.tsx'
import styles from '#components/prep/task-rows.module.css'
import type { Task } from '#lib/prep/prep-plan.ts'
import type { TaskRow } from '#lib/rooms/prep/views/task-rows.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What the rows say; each screen has it among its own words. */
interface RowWords {
  readonly tasks: string
  readonly weekday: (on: string) => string
  readonly sayClock: (at: number, timeZone: string) => string
}

interface TaskRowsProps {
  readonly station: StationDocument
  readonly rows: readonly TaskRow[]
  readonly words: RowWords
  readonly renderTask: (task: Task) => ReactNode
  /** At the doors, where all of it ends. */
  readonly foot: ReactNode
}

/** The tasks of a planned day, hung below the line: each under its own pan, a row for a class period. */
export function TaskRows({ station, rows, words, renderTask, foot }: TaskRowsProps) {
  const { timeZone } = station
  return (
    <div className={styles.frame}>
      <ol className={styles.rows} aria-label={words.tasks}>
        {rows.map(({ on, isFirst, period, from, byPan, beside }) => {
          const said = period ?? words.sayClock(from, timeZone)
          return (
            <li
              key={`${from} ${period}`}
              className={styles.row}
              data-first={isFirst || undefined}
              data-between={period === null || undefined}
            >
              <h3 className={styles.head}>
                {isFirst && <b>{words.weekday(on)} </b>}
                <span>{said}</span>
              </h3>
              <div className={styles.body}>
                <Line
                  station={station}
                  label={said}
                  className={styles.cells ?? ''}
                  renderPan={({ id }) => (
                    <ul className={styles.cell}>
                      {(byPan[id] ?? []).map((task) => (
                        <li key={task.id}>{renderTask(task)}</li>
                      ))}
                    </ul>
                  )}
                />
                {beside.length > 0 && (
                  <ul className={styles.beside}>
                    {beside.map((task) => (
                      <li key={task.id}>{renderTask(task)}</li>
                    ))}
                  </ul>
                )}
              </div>
            </li>
          )
        })}
      </ol>
      <div className={styles.foot}>{foot}</div>
    </div>
  )
}
