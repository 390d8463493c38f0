import styles from '#components/plan/times.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import type { Prepared, PrepPlan } from '#lib/prep/prep-plan.ts'
import { drawTimes, type TaskDrawn } from '#lib/rooms/prep/views/task-times.ts'
import { componentOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

const LANE_PX = 50
const HEAD_PX = 46

/** As on its pan: there is no room for more. */
const shortName = (station: StationDocument, id: string): string =>
  componentOf(station, id).short.join(' ')

const percent = (share: number): string => `${Math.round(share * 10_000) / 100}%`

interface TaskTimesProps {
  readonly station: StationDocument
  readonly asPrep: PrepPlan
  readonly prepared: Prepared
  readonly names: Readonly<Record<string, string>>
  /** Of the whole width, what a task's words need. */
  readonly least: number
}

function TaskBox({
  drawn,
  station,
  names,
}: Pick<TaskTimesProps, 'station' | 'names'> & { readonly drawn: TaskDrawn }) {
  const words = usePlanWords()
  const { task, left, width, lane, isUnready } = drawn
  const name = task.component === null ? '' : shortName(station, task.component)
  const who = [...new Set(task.who.map((hand) => names[hand.who] ?? hand.who))].join(', ')
  return (
    <li
      className={styles.task}
      data-kind={task.kind}
      data-unready={isUnready || undefined}
      style={{
        left: percent(left),
        width: percent(width),
        top: HEAD_PX + lane * LANE_PX,
      }}
    >
      <b>
        {task.from === task.to
          ? `${words.taskShort(task, name)} ${name}`
          : words.taskShort(task, name)}
      </b>
      <span>
        {words.sayTime(task.from, station.timeZone)} {who && `· ${who}`}
      </span>
    </li>
  )
}

/** The tasks on the class periods of their days, back from when the doors open. */
export function TaskTimes(props: TaskTimesProps) {
  const { station, asPrep, prepared, least } = props
  const words = usePlanWords()
  const { timeZone } = station
  const drawn = drawTimes(prepared, asPrep, { timeZone, least })
  return (
    <div className={styles.scroll}>
      <div
        className={styles.times}
        style={{ minHeight: HEAD_PX + Math.max(1, drawn.lanes) * LANE_PX }}
      >
        {drawn.periods.map(({ name, from, left, width }) => (
          <div
            key={from}
            className={styles.period}
            style={{ left: percent(left), width: percent(width) }}
          >
            <span>{name}</span>
          </div>
        ))}
        {drawn.days.map(({ on, left, width }, index) => (
          <div
            key={on}
            className={styles.day}
            data-first={index === 0 || undefined}
            style={{ left: percent(left), width: percent(width) }}
          >
            <b>
              {index === drawn.days.length - 1
                ? words.dayAndDoors(on, words.sayTime(asPrep.doorsOpen, timeZone))
                : words.day(on)}
            </b>
          </div>
        ))}
        <ol aria-label={words.tasks}>
          {drawn.tasks.map((one) => (
            <TaskBox key={one.task.id} drawn={one} station={station} names={props.names} />
          ))}
        </ol>
      </div>
    </div>
  )
}
