import styles from '#components/plan/list.module.css'
import { usePlanWords } from '#components/plan/words.tsx'
import { civilDate } from '#lib/measure/civil.ts'
import type { Prepared } from '#lib/prep/prep-plan.ts'
import { nameIn } from '#lib/station/name-in.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** On a phone: the tasks one below the other, by their day. */
export function TaskList({
  station,
  prepared,
  names,
}: {
  readonly station: StationDocument
  readonly prepared: Prepared
  readonly names: Readonly<Record<string, string>>
}) {
  const words = usePlanWords()
  const lacking = new Set(prepared.unready.map(({ task }) => task))
  const tasks = prepared.tasks.filter(({ kind }) => kind !== 'serve')
  const days = [...new Set(tasks.map(({ from }) => civilDate(from, station.timeZone)))]
  return (
    <div className={styles.list}>
      {days.map((on) => (
        <section key={on}>
          <h3>{words.day(on)}</h3>
          <ol>
            {tasks
              .filter(({ from }) => civilDate(from, station.timeZone) === on)
              .map((task) => (
                <li key={task.id} data-unready={lacking.has(task.id) || undefined}>
                  <b>{words.sayTime(task.from, station.timeZone)}</b>
                  <span>
                    {words.taskName(
                      task,
                      task.component === null ? '' : nameIn(station)(task.component),
                    )}
                  </span>
                  <span>
                    {[...new Set(task.who.map(({ who }) => names[who] ?? who))].join(', ')}
                  </span>
                </li>
              ))}
          </ol>
        </section>
      ))}
    </div>
  )
}
