import { type ReactNode, useState } from 'react'
import type { Acting } from '#components/live/acting.ts'
import { useServerTime } from '#components/live/server-time.ts'
import styles from '#components/prep/panel.module.css'
import { usePrepWords } from '#components/prep/words.tsx'
import { Button } from '#components/ui/button.tsx'
import { Choice } from '#components/ui/choice.tsx'
import { Field } from '#components/ui/field.tsx'
import { Note } from '#components/ui/note.tsx'
import { backByOf } from '#lib/rooms/prep/facts/out-of-cold.ts'
import { isOfCrew } from '#lib/rooms/prep/facts/tasks-now.ts'
import { coolsOf } from '#lib/rooms/prep/views/cools-of.ts'
import type { TaskSeen } from '#lib/rooms/prep/views/prep-list.ts'
import { type HowFar, PASSED_WHERE, type PassedWhere } from '#lib/service/events/prep-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'
import { nameIn } from '#lib/station/name-in.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'

interface TaskPanelProps {
  readonly seen: TaskSeen
  readonly state: RunningState
  readonly names: Readonly<Record<string, string>>
  readonly acting: Acting
  /** It hangs below its own row, which says what it is and when. */
  readonly isBelowRow?: true
  /** The page on which a reading is recorded; null where this device doesn’t. */
  readonly record: string | null
}

const FAR: readonly { readonly id: '1' | '2' | '3'; readonly far: HowFar }[] = [
  { id: '1', far: 1 },
  { id: '2', far: 2 },
  { id: '3', far: 3 },
]

/** How far a half-done task is, and where it stands, for whoever goes on with it. */
function PassForm({
  task,
  backBy,
  initials,
  field,
  acting,
  onBack,
}: {
  readonly task: string
  /** By when it is cold again if it waits there; null: nothing runs there. */
  readonly backBy: (where: PassedWhere) => string | null
  readonly initials: string
  /** Where those are typed. */
  readonly field: ReactNode
  readonly acting: Acting
  readonly onBack: () => void
}) {
  const words = usePrepWords()
  const [far, setFar] = useState<'1' | '2' | '3' | null>(null)
  const [where, setWhere] = useState<PassedWhere | null>(null)
  const said = FAR.find(({ id }) => id === far)?.far
  const lacks =
    (initials.trim() === '' && words.lacksInitials) ||
    (said === undefined && words.lacksFar) ||
    (where === null && words.lacksWhere) ||
    null
  const by = where === null ? null : backBy(where)
  const pass = async () => {
    if (said === undefined || where === null) return
    const command = { type: 'passTask' as const, task, far: said, where, initials }
    if (await acting.act(command, words.passedOn)) onBack()
  }
  return (
    <div className={styles.pass}>
      <Choice
        legend={words.howFar}
        ways={FAR.map(({ id, far: quarters }) => ({ id, label: words.far[quarters] }))}
        chosen={far}
        onChoose={setFar}
      />
      <Choice
        legend={words.whereIs}
        ways={PASSED_WHERE.map((id) => ({ id, label: words.where[id] }))}
        chosen={where}
        onChoose={setWhere}
      />
      {by !== null && (
        <div className={styles.cold}>
          <Note kind="watch">{words.outIf(by)}</Note>
          <Button onClick={() => setWhere('cooler')}>{words.intoCooler}</Button>
        </div>
      )}
      <div className={styles.acts}>
        <Button kind="quiet" onClick={onBack}>
          {words.back}
        </Button>
        {field}
        <Button
          kind="main"
          size="large"
          lacks={lacks}
          disabled={acting.busy}
          onClick={() => void pass()}
        >
          {words.passIt}
        </Button>
      </div>
    </div>
  )
}

/** One task: what, how much, who, when; ticked with initials, or passed on half done. */
export function TaskPanel({ seen, state, names, acting, isBelowRow, record }: TaskPanelProps) {
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
  const putBack = () =>
    passed &&
    void acting.act(
      { type: 'passTask', task: task.id, far: passed.far, where: 'cooler', initials },
      words.passedOn,
    )
  const field = (
    <Field
      label={words.initials}
      maxLength={6}
      value={initials}
      onChange={(event) => setInitials(event.target.value)}
    />
  )
  const act = (type: 'tickTask' | 'takeBackTick') => {
    const command =
      type === 'tickTask' ? { type, task: task.id, initials } : { type, task: task.id }
    void acting.act(command, type === 'tickTask' ? words.ticked : words.takenBack)
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
              <Button kind="quiet" disabled={acting.busy} onClick={() => act('takeBackTick')}>
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
                />
              ) : (
                <div className={styles.acts}>
                  {out && (
                    <Button disabled={acting.busy || initials.trim() === ''} onClick={putBack}>
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
                    onClick={() => act('tickTask')}
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
