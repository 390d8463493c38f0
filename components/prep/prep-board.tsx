import { useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import { PackBoard } from '#components/prep/pack-board.tsx'
import styles from '#components/prep/prep.module.css'
import { TaskPanel } from '#components/prep/task-panel.tsx'
import { usePrepWords } from '#components/prep/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { crewNumbers } from '#lib/rooms/prep/views/plan-entry.ts'
import { prepList, type TaskIs, type TaskSeen } from '#lib/rooms/prep/views/prep-list.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'

/** What is behind comes first, and what is done last. */
const ORDER: Readonly<Record<TaskIs, number>> = { late: 0, now: 1, 'to-come': 2, done: 3 }

interface RowProps {
  readonly seen: TaskSeen
  readonly state: RunningState
  readonly names: Readonly<Record<string, string>>
  readonly isChosen: boolean
  readonly onChoose: () => void
}

function TaskRow({ seen, state, names, isChosen, onChoose }: RowProps) {
  const words = usePrepWords()
  const { task, is, lateBy, passed } = seen
  const { station } = state
  const clock = words.sayTime(task.from, station.timeZone)
  const who = [...new Set(task.who.map((hand) => names[hand.who] ?? hand.who))].join(', ')
  return (
    <li>
      <button
        type="button"
        className={styles.row}
        data-is={is}
        aria-pressed={isChosen}
        onClick={onChoose}
      >
        <b>
          {words.taskName(task, task.component === null ? '' : nameIn(station)(task.component))}
        </b>
        <span>
          {clock}
          {who && ` · ${who}`}
          {passed &&
            is !== 'done' &&
            ` · ${words.passed(words.far[passed.far], words.where[passed.where])}`}
        </span>
        <em>{is === 'late' ? words.lateBy(words.sayLength(lateBy)) : words.is[is]}</em>
      </button>
    </li>
  )
}

/** The line with what of each pan is done, the chosen task below it, and all others in their order. */
export function PrepBoard({
  state,
  prep,
}: {
  readonly state: RunningState
  readonly prep: PrepState
}) {
  const words = usePrepWords()
  const acting = useActing(words.loadRefusals)
  const now = Math.floor(useServerTime() / MINUTE_MS) * MINUTE_MS
  const [chosen, setChosen] = useState<string | null>(null)
  const [isPacking, setPacking] = useState(false)
  const { station, plan } = state
  const seen = prepList(state, now)
  const sorted = [...seen].sort(
    (one, other) => ORDER[one.is] - ORDER[other.is] || one.task.from - other.task.from,
  )
  const open = seen.find(({ task }) => task.id === chosen) ?? sorted[0]
  const names = Object.fromEntries(
    Object.entries(crewNumbers(plan?.crew ?? [])).map(([id, { adult, number }]) => [
      id,
      words.person(adult, number),
    ]),
  )
  const late = seen.filter(({ is }) => is === 'late').length
  const unready = preparedOf(state)?.unready.length ?? 0
  const about = pansOf(station)
    .filter(({ component }) => component === open?.task.component)
    .map(({ id }) => id)
  const choose = (id: string) => {
    acting.hush()
    setChosen(id)
  }
  if (isPacking) return <PackBoard state={state} onBack={() => setPacking(false)} />
  return (
    <main className={styles.board}>
      <header className={styles.header}>
        <h1>{plan ? words.titleOf(plan.on) : words.title}</h1>
        {late > 0 && (
          <p role="alert" className={styles.late}>
            {words.lateOnes(late)}
          </p>
        )}
        <p>{words.sayClock(now, station.timeZone)}</p>
        <Button kind="quiet" onClick={() => setPacking(true)}>
          {words.pack.toPack}
        </Button>
        <a href="/">{words.toStart}</a>
      </header>
      {unready > 0 && <Note kind="no">{words.notReady(unready)}</Note>}
      <Notch
        about={about}
        kind={open?.is === 'late' ? 'no' : 'main'}
        className={styles.stage ?? ''}
      >
        <div className={styles.line}>
          <Line
            station={station}
            label={words.title}
            wrap="by-well"
            renderPan={(pan, component) => {
              const own = seen.filter(({ task }) => task.component === component.id)
              const done = own.filter(({ is }) => is === 'done').length
              return (
                <button
                  type="button"
                  className={styles.pan}
                  data-notch={pan.id}
                  disabled={own.length === 0}
                  onClick={() => {
                    const next = own.find(({ is }) => is !== 'done') ?? own[0]
                    if (next) choose(next.task.id)
                  }}
                >
                  <b>
                    {component.short.map((part) => (
                      <span key={part}>{part}</span>
                    ))}
                  </b>
                  <span className={styles.marks} aria-hidden="true">
                    {own.map(({ task, is }) => (
                      <span key={task.id} data-is={is} />
                    ))}
                  </span>
                  <span>{own.length === 0 ? '' : `${done}/${own.length}`}</span>
                </button>
              )
            }}
          />
        </div>
        {open && <TaskPanel key={open.task.id} {...{ seen: open, state, names, acting }} />}
      </Notch>
      <ol className={styles.rows} data-foods={prep.foods.length}>
        {sorted.map((one) => (
          <TaskRow
            key={one.task.id}
            seen={one}
            {...{ state, names }}
            isChosen={one.task.id === open?.task.id}
            onChoose={() => choose(one.task.id)}
          />
        ))}
      </ol>
      <Connection />
    </main>
  )
}
