import type { Recorded } from '#lib/service/events/event.ts'
import type { EventLog, Guard, LoggedAnswer } from '#server/event-log/port.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'

export type RailLog = EventLog<Recorded, StoredAnswer>

export interface Attempt {
  readonly entries: readonly Recorded[]
  readonly answers: readonly LoggedAnswer<StoredAnswer>[]
  readonly guards: readonly Guard[]
}

/** A log in memory that can be held back, be overtaken by another server, or fail. */
export interface GatedLog {
  readonly log: RailLog
  /** Every append that was tried, in order. */
  readonly attempts: readonly Attempt[]
  /** From now on an append waits until the gate is opened. */
  hold(): void
  open(): void
  /** The next append finds that another server was there first. */
  overtake(by: (log: RailLog) => Promise<unknown>): void
  /** The next append fails as a disk does. */
  fail(error: Error): void
}

export const createGatedLog = (within: RailLog = createMemoryLog()): GatedLog => {
  const attempts: Attempt[] = []
  let gate: Promise<void> = Promise.resolve()
  let lift: () => void = () => undefined
  let first: ((log: RailLog) => Promise<unknown>) | null = null
  const attempted = async (
    entries: Attempt['entries'],
    answers: Attempt['answers'],
    guards: readonly Guard[],
  ): Promise<void> => {
    attempts.push({ entries, answers, guards })
    const before = first
    first = null
    await before?.(within)
    await gate
  }
  return {
    attempts,
    hold: () => {
      gate = new Promise((settle) => {
        lift = settle
      })
    },
    open: () => lift(),
    overtake: (by) => {
      first = by
    },
    fail: (error) => {
      first = () => Promise.reject(error)
    },
    log: {
      ...within,
      append: async (service, after, entries, answers, guards = []) => {
        await attempted(entries, answers, guards)
        return within.append(service, after, entries, answers, guards)
      },
      appendAll: async (appends, guards = []) => {
        await attempted(appends[0].entries, appends[0].answers, guards)
        return within.appendAll(appends, guards)
      },
    },
  }
}
