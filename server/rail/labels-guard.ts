/** Who changes a label of the house, and who opens a service with its labels, come one after the other. */
import type { Recorded } from '#lib/service/events/event.ts'
import type { EventLog, Guard } from '#server/event-log/port.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

type Log = Pick<EventLog<Recorded, StoredAnswer>, 'guard' | 'append'>

export interface LabelsGuard {
  /** The version that a label gets which changes now. */
  next(): Promise<number>
  /** What an append of entries is guarded by, where it opens a service or changes a label with it. */
  guards(entries: readonly Recorded[], next: number): readonly Guard[]
  /** What an append is guarded by that makes a label unread as of a version. */
  guardOf(version: number): Guard
  /** Takes the next version, so that nobody else gets it. */
  claim(): Promise<number>
}

/** Under which nothing is ever stored: a guard is raised beside all services. */
const OF_THE_HOUSE = '@house'

export const createLabelsGuard = (log: Log, house: string): LabelsGuard => {
  const key = `labels:${house}`
  const next = async (): Promise<number> => (await log.guard(key)) + 1
  const guardOf = (version: number): Guard => ({ key, expected: version - 1 })
  return {
    next,
    guardOf,
    guards: (entries, version) =>
      entries.some(
        (one) =>
          one.type === 'serviceOpened' ||
          one.type === 'servicePlanned' ||
          (one.type === 'labelChanged' && one.version === version),
      )
        ? [guardOf(version)]
        : [],
    claim: async () => {
      while (true) {
        const version = await next()
        const guards = [guardOf(version)]
        if ((await log.append(OF_THE_HOUSE, 0, [], [], guards)) === 'committed') return version
      }
    },
  }
}
