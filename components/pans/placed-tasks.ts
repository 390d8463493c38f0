/** What there is to do, laid out: one below the line, the others below their pans, or beside. */

import { tell } from '#components/pans/task-table.ts'
import type { Told } from '#components/pans/task-ways.ts'
import type { PansWords } from '#components/pans/words.tsx'
import type { Calm, PutOff } from '#lib/rooms/advice/views/calm.ts'
import { type Task, taskKey } from '#lib/rooms/advice/views/do-next.ts'
import type { RunningState } from '#lib/service/state.ts'
import { linePansOf } from '#lib/station/find.ts'
import type { SaidHere } from '#lib/words/said-here.ts'

export interface PlacedTask {
  readonly key: string
  readonly task: Task
  readonly told: Told
}

export interface PlacedTasks {
  readonly next: PlacedTask | null
  /** By pan, in the order in which they are told. */
  readonly below: Readonly<Record<string, readonly PlacedTask[]>>
  /** What was answered with later or no, by the pan that it is about, a few words each. */
  readonly putOff: Readonly<Record<string, string>>
  /** Of no pan. */
  readonly others: readonly PlacedTask[]
  /** Most that hang below one pan, 0 to 2. */
  readonly most: number
  go(one: PlacedTask): void
}

const isReading = ({ task }: PlacedTask): boolean =>
  task.kind === 'round' ||
  (task.kind === 'advice' &&
    task.advice.reason.why === 'safety' &&
    ['reading-due', 'reading-missed', 'cooling-due'].includes(task.advice.reason.what))

/** Of one pan: what is read comes first. */
export const readingsFirst = (tasks: readonly PlacedTask[]): readonly PlacedTask[] => [
  ...tasks.filter(isReading),
  ...tasks.filter((one) => !isReading(one)),
]

export const placeTasks = (
  words: PansWords,
  state: RunningState,
  tasks: readonly Task[],
  putOff: readonly PutOff[],
  here: SaidHere,
): Omit<PlacedTasks, 'go'> => {
  const all = tasks.map(
    (task): PlacedTask => ({ key: taskKey(task), task, told: tell(words, state, task, here) }),
  )
  const [next, ...then] = all
  const pans = [...new Set(then.flatMap(({ told }) => told.about.pans.slice(0, 1)))]
  const below = Object.fromEntries(
    pans.map((pan) => [pan, readingsFirst(then.filter(({ told }) => told.about.pans[0] === pan))]),
  )
  const { hang } = words.onLine
  const later = putOff.flatMap(({ reason, until }) => {
    const component = reason.component
    const pan = component === null ? undefined : linePansOf(state.station, component)[0]?.id
    if (pan === undefined) return []
    return [[pan, until === null ? hang.declined : hang.later(here.time(until))] as const]
  })
  return {
    next: next ?? null,
    below,
    putOff: Object.fromEntries(later),
    others: then.filter(({ told }) => told.about.pans.length === 0),
    most: Math.min(2, Math.max(1, ...Object.values(below).map((list) => list.length))),
  }
}

/** What is done next with one pan, where the line is walked: a reading before all else. */
export const nextAt = (placed: PlacedTasks, pan: string): PlacedTask | null => {
  const own = placed.next?.told.about.pans[0] === pan ? [placed.next] : []
  return readingsFirst([...own, ...(placed.below[pan] ?? [])])[0] ?? null
}

/** What is said while nothing is asked. */
export const sayCalm = (
  words: PansWords,
  open: Calm,
  here: SaidHere,
): Pick<Told, 'title' | 'why'> => ({
  title: words.calm.title(open, here),
  why: words.calm.calm(open, here),
})

/** What is said of a pan with nothing to do. */
export const calmAt = (words: PansWords, name: string): Pick<Told, 'title' | 'why'> => ({
  title: name,
  why: [words.nothingToDo],
})
