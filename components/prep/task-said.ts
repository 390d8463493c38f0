import type { PrepWords } from '#components/prep/words.tsx'
import type { TaskSeen } from '#lib/rooms/prep/views/prep-list.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { RunningState } from '#lib/service/state.ts'
import { nameIn } from '#lib/station/name-in.ts'

interface TaskSaid {
  readonly name: string
  readonly clock: string
  readonly who: string
  /** How far it was when it was passed on, and where it is; null where nobody did, or it is done. */
  readonly passed: string | null
  /** Its clock where it lies out of the cooler; null where none runs. */
  readonly out: string | null
  /** In a word or few: late by so much, done, in hand, to come. */
  readonly is: string
}

/** What a row or a box says of a task. */
export const taskSaid = (
  words: PrepWords,
  state: RunningState,
  names: Readonly<Record<string, string>>,
  { task, is, passed, readBy, out, lateBy }: TaskSeen,
): TaskSaid => {
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  return {
    name: words.taskName(
      task,
      task.component === null ? '' : nameIn(state.station)(task.component),
    ),
    clock: readBy === null ? time(task.from) : words.readBy(time(readBy)),
    who: [...new Set(task.who.map((hand) => names[hand.who] ?? hand.who))].join(', '),
    passed:
      passed && is !== 'done'
        ? words.passed(words.far[passed.far], words.where[passed.where])
        : null,
    out: out && words.outShort(out, time),
    is:
      is === 'late'
        ? words.lateBy(words.hours(Math.max(1, Math.floor(lateBy / MINUTE_MS))))
        : words.is[is],
  }
}
