import { useState } from 'react'
import type { Acting } from '#components/live/acting.ts'
import { useServerTime } from '#components/live/server-time.ts'
import styles from '#components/prep/panel.module.css'
import { PassForm } from '#components/prep/pass-form.tsx'
import { usePrepWords } from '#components/prep/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { InitialsField } from '#components/ui/initials-field.tsx'
import { Note } from '#components/ui/note.tsx'
import type { DoorsMissed } from '#lib/rooms/prep/facts/doors-missed.ts'
import { backByOf } from '#lib/rooms/prep/facts/out-of-cold.ts'
import { isOfCrew } from '#lib/rooms/prep/facts/tasks-now.ts'
import { coolsOf } from '#lib/rooms/prep/views/cools-of.ts'
import type { TaskSeen } from '#lib/rooms/prep/views/prep-list.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'

interface TaskPanelProps {
  readonly seen: TaskSeen
  readonly state: RunningState
  readonly names: Readonly<Record<string, string>>
  /** Initials that are one tap. */
  readonly there: readonly string[]
  /** Where its food isn’t on the line as the doors open. */
  readonly missed: DoorsMissed | null
  readonly acting: Acting
  /** It hangs below its own row, which says what it is and when. */
  readonly isBelowRow?: true
  /** The page on which a reading is recorded; null where this device doesn’t. */
  readonly record: string | null
}

/** One task: what, how much, who, when; ticked with initials, or passed on half done. */
export function TaskPanel({
  seen,
  state,
  names,
  there,
  missed,
  acting,
  isBelowRow,
  record,
}: TaskPanelProps) {
  const words = usePrepWords()
  const [initials, setInitials] = useState('')
  const [isPassing, setPassing] = useState(false)
  const { task, is, passed, readBy, out, back } = seen
  const now = useServerTime()
  const { timeZone } = state.station
  const name = task.component === null ? '' : nameIn(state.station)(task.component)
  const who = task.who.map((hand) => names[hand.who] ?? hand.who)
  const times =
    task.from === task.to
      ? readBy === null
        ? words.sayClock(task.to, timeZone)
        : words.readBy(words.sayClock(readBy, timeZone))
      : `${words.sayTime(task.from, timeZone)}–${words.sayClock(task.to, timeZone)}`
  const component = task.component === null ? null : findComponent(state.station, task.component)
  const total = component && task.amount ? loadTotal(component, task.amount.portions) : null
  const clock = (at: number) => words.sayTime(at, timeZone)
  const { scale } = state.station.safety
  const limits = limitsOf(state.station)
  const cools = coolsOf(state, task, now)
  const putBack = async () => {
    if (!passed) return
    const command = { type: 'passTask' as const, task: task.id, far: passed.far, initials }
    if (await acting.act({ ...command, where: 'cooler' }, words.passedOn)) setInitials('')
  }
  const field = (
    <InitialsField
      label={words.initials}
      others={words.otherInitials}
      value={initials}
      onChange={setInitials}
      {...{ there }}
    />
  )
  const act = async (type: 'tickTask' | 'takeBackTick') => {
    const command =
      type === 'tickTask' ? { type, task: task.id, initials } : { type, task: task.id }
    // What is taken back may have been somebody else's: whoever does it then says so.
    if (await acting.act(command, type === 'tickTask' ? words.ticked : words.takenBack))
      setInitials('')
  }
  return (
    <section
      className={styles.panel}
      data-passing={isPassing || undefined}
      data-notch-panel=""
      aria-label={words.taskName(task, name)}
    >
      <div className={styles.told}>
        {!isBelowRow && <h2>{words.taskName(task, name)}</h2>}
        <p>
          {!isBelowRow && `${times} · ${words.by(who)}`}
          {task.amount &&
            task.kind !== 'chill' &&
            task.kind !== 'thaw' &&
            `${isBelowRow ? '' : ' · '}${words.amount(task, total)}`}
        </p>
        {passed && is !== 'done' && !isBelowRow && (
          <p>
            <b>{words.passed(words.far[passed.far], words.where[passed.where])}</b>
          </p>
        )}
        {missed && (
          <p className={styles.caution} data-kind="refused">
            {words.readyLate(
              missed,
              clock(missed.readyAt),
              words.hours(Math.round(missed.lateBy / MINUTE_MS)),
            )}
          </p>
        )}
        {back && <p className={styles.caution}>{words.goesBack(back, scale)}</p>}
        {cools.pots.map((one) => (
          <Note key={one.id} kind="watch">
            {/* A reading's own hour is above it; what it counts from is said at the pot. */}
            {words.coolPot(
              { ...one.by, isStarted: one.by.isStarted || seen.isReading },
              limits,
              scale,
              clock,
            )}
          </Note>
        ))}
        {cools.isToCome && <p className={styles.caution}>{words.coolAfter(limits, scale)}.</p>}
        {out && !isPassing && (
          <Note kind={out.is === 'in-time' ? 'watch' : 'no'}>{words.out(out, clock, scale)}</Note>
        )}
        <p role="status" data-kind={acting.said?.kind ?? 'none'}>
          {acting.said?.text ?? ''}
        </p>
      </div>
      {seen.isReading && (
        <p className={styles.reading}>
          {words.reading} {record !== null && <a href={record}>{words.toRecord}</a>}
        </p>
      )}
      {!seen.isReading && isOfCrew(task) && (
        <div className={styles.work}>
          {is === 'done' ? (
            seen.isTicked && (
              <Button kind="quiet" disabled={acting.busy} onClick={() => void act('takeBackTick')}>
                {words.takeBack}
              </Button>
            )
          ) : (
            <>
              {!isPassing && field}
              {isPassing ? (
                <PassForm
                  task={task.id}
                  backBy={(where) => {
                    const by = backByOf(state.station, task, { where, before: passed }, now)
                    return by === null ? null : clock(by)
                  }}
                  {...{ initials, field, acting }}
                  onBack={() => setPassing(false)}
                  onPassed={() => {
                    setPassing(false)
                    setInitials('')
                  }}
                />
              ) : (
                <div className={styles.acts}>
                  {out && (
                    <Button
                      disabled={acting.busy || initials.trim() === ''}
                      onClick={() => void putBack()}
                    >
                      {words.inCooler}
                    </Button>
                  )}
                  <Button kind="quiet" onClick={() => setPassing(true)}>
                    {words.pass}
                  </Button>
                  <Button
                    kind="main"
                    size="large"
                    lacks={initials.trim() === '' ? words.lacksInitials : null}
                    disabled={acting.busy}
                    onClick={() => void act('tickTask')}
                  >
                    {words.done}
                  </Button>
                </div>
              )}
            </>
          )}
        </div>
      )}
    </section>
  )
}
