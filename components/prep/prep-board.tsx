import { useState } from 'react'
import { Line } from '#components/line/line.tsx'
import { useActing } from '#components/live/acting.ts'
import { Connection } from '#components/live/connection.tsx'
import { useServerTime } from '#components/live/server-time.ts'
import { useIsPhone } from '#components/pans/use-walk.ts'
import { MissedDoors } from '#components/prep/doors-missed.tsx'
import { PackBoard } from '#components/prep/pack-board.tsx'
import styles from '#components/prep/prep.module.css'
import { PrepList, PrepTasks } from '#components/prep/prep-tasks.tsx'
import { TaskPanel } from '#components/prep/task-panel.tsx'
import { useCrewInitials } from '#components/prep/use-crew-initials.ts'
import { usePrepWords } from '#components/prep/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Notch } from '#components/ui/notch.tsx'
import { Note } from '#components/ui/note.tsx'
import { type DoorsMissed, doorsMissed } from '#lib/rooms/prep/facts/doors-missed.ts'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { crewNames } from '#lib/rooms/prep/views/plan-entry.ts'
import { inTurn, isLoud, prepList, type TaskSeen } from '#lib/rooms/prep/views/prep-list.ts'
import { whoIsThere } from '#lib/rooms/prep/views/who-is-there.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { ServicePlan } from '#lib/service/events/plan-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { pansOf } from '#lib/station/find.ts'
import type { Component } from '#lib/station/station-document.ts'

/** Until the server answered. */
const NOBODY: Readonly<Record<string, string>> = {}

/** Who somebody is on this tablet, so that nobody else's tasks are in the way. */
function Mine({
  all,
  mine,
  onMine,
}: {
  readonly all: readonly string[]
  readonly mine: string | null
  readonly onMine: (who: string | null) => void
}) {
  const words = usePrepWords()
  return (
    <fieldset className={styles.mine}>
      <legend className="visually-hidden">{words.whose}</legend>
      {[null, ...all].map((who) => (
        <button key={who} type="button" aria-pressed={who === mine} onClick={() => onMine(who)}>
          {who ?? words.everybody}
        </button>
      ))}
    </fieldset>
  )
}

/** A mark for each task of a pan, filled once it is done. */
function PrepPan({
  pan,
  component,
  own,
  loud,
  ready,
  onChoose,
}: {
  readonly pan: string
  readonly component: Component
  readonly own: readonly TaskSeen[]
  readonly loud: readonly TaskSeen[]
  /** When its food is on the line where that is after the doors, and whether it is the last one. */
  readonly ready: { readonly at: string; readonly isLast: boolean } | null
  readonly onChoose: (task: string) => void
}) {
  const words = usePrepWords()
  const done = own.filter(({ is }) => is === 'done').length
  const next = own.find(({ is }) => is !== 'done') ?? own[0]
  return (
    <button
      type="button"
      className={styles.pan}
      data-notch={pan}
      disabled={next === undefined}
      onClick={() => next && onChoose(next.task.id)}
    >
      <b>
        {component.short.map((part) => (
          <span key={part}>{part}</span>
        ))}
      </b>
      <span className={styles.foot}>
        {ready && (
          <em className={styles.ready} data-last={ready.isLast || undefined}>
            <span className="visually-hidden">{words.readyAt} </span>
            {ready.at}
          </em>
        )}
        <span className={styles.marks} aria-hidden="true">
          {own.map((one) => (
            <span key={one.task.id} data-is={one.is} data-loud={loud.includes(one) || undefined} />
          ))}
        </span>
      </span>
      {own.length > 0 && <span className="visually-hidden">{words.doneOf(done, own.length)}</span>}
    </button>
  )
}

/** The line with what of each pan is done, the chosen task below it, and all others in their order. */
export function PrepBoard({
  state,
  plan,
  service,
  record,
}: {
  readonly state: RunningState
  readonly plan: ServicePlan
  readonly service: string
  /** Where a lead records what is read; null on a device that doesn’t. */
  readonly record: string | null
}) {
  const words = usePrepWords()
  const acting = useActing(words.loadRefusals)
  const isPhone = useIsPhone()
  const now = Math.floor(useServerTime() / MINUTE_MS) * MINUTE_MS
  const [chosen, setChosen] = useState<string | null>(null)
  const [isPacking, setPacking] = useState(false)
  const [mine, setMine] = useState<string | null>(null)
  const { station } = state
  const { timeZone } = station
  const initials = useCrewInitials(service, plan.crew) ?? NOBODY
  const names = crewNames(plan.crew, initials, words.person)
  const there = whoIsThere(plan, initials, now, timeZone)
  const all = prepList(state, now)
  const isMine = ({ task }: TaskSeen) =>
    mine === null || task.who.some(({ who }) => names[who] === mine)
  const sorted = inTurn(all.filter(isMine))
  const open = sorted.find(({ task }) => task.id === chosen) ?? sorted[0]
  const missed = doorsMissed(state, now)
  const readyOf = (component: string) => {
    const one = missed.find((food) => food.component === component)
    return one ? { at: words.sayTime(one.readyAt, timeZone), isLast: one === missed[0] } : null
  }
  const late = all.filter(({ is }) => is === 'late').length
  const unready = preparedOf(state)?.unready.length ?? 0
  const about = pansOf(station)
    .filter(({ component }) => component === open?.task.component)
    .map(({ id }) => id)
  const choose = (id: string) => {
    acting.hush()
    setChosen(id)
  }
  if (isPacking) return <PackBoard {...{ state, there }} onBack={() => setPacking(false)} />
  const line = (
    <div className={styles.line}>
      <Line
        station={station}
        label={words.title}
        wrap="by-well"
        className={styles.wells ?? ''}
        renderPan={(pan, component) => (
          <PrepPan
            pan={pan.id}
            component={component}
            own={sorted.filter(({ task }) => task.component === component.id)}
            ready={readyOf(component.id)}
            loud={sorted.filter((one) => isLoud(one, sorted))}
            onChoose={choose}
          />
        )}
      />
    </div>
  )
  const tasks = { state, names, seen: sorted, chosen: open?.task.id ?? null, onChoose: choose }
  // The last one is said above the line already.
  const missedOf = ({ task, is }: TaskSeen): DoorsMissed | null =>
    missed.slice(1).find((food) => is !== 'done' && food.component === task.component) ?? null
  return (
    <main className={styles.board}>
      <header className={styles.header}>
        <div>
          <h1>{words.titleOf(plan.on)}</h1>
          <div className={styles.sub}>
            {words.sub(
              state.stage === 'open',
              plan.kind === 'practice',
              words.sayClock(now, timeZone),
            )}{' '}
            <Connection />
          </div>
        </div>
        {late > 0 && (
          <p role="alert" className={styles.late}>
            {words.lateOnes(late)}
          </p>
        )}
        <Button kind="quiet" onClick={() => setPacking(true)}>
          {words.pack.toPack}
        </Button>
        <Mine all={[...new Set(Object.values(names))].sort()} {...{ mine }} onMine={setMine} />
        <a href="/">{words.toStart}</a>
      </header>
      {unready > 0 && <Note kind="no">{words.notReady(unready)}</Note>}
      <MissedDoors {...{ missed, station, words }} opensAt={plan.opensAt} isOnPans />
      {isPhone ? (
        <>
          {line}
          <PrepList {...tasks} {...{ there, missedOf, acting, record }} />
        </>
      ) : (
        <>
          <Notch
            about={about}
            kind={open && isLoud(open, sorted) ? 'no' : 'main'}
            className={styles.stage ?? ''}
          >
            {line}
            {open && (
              <TaskPanel
                key={open.task.id}
                seen={open}
                missed={missedOf(open)}
                {...{ state, names, there, acting, record }}
              />
            )}
          </Notch>
          <PrepTasks {...tasks} plan={plan} />
        </>
      )}
    </main>
  )
}
