/**
 * That a station has one open service: held by the log itself, so that it is so whatever a process
 * remembers, and over several of them.
 */
import type { Recorded } from '#lib/service/events/event.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { EventLog, Guard } from '#server/event-log/port.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'

type Log = EventLog<Recorded, StoredAnswer>

/** Raised by each opening and each close: odd while a service is open. */
const keyOf = (station: string): string => `open:${station}`

/** Raised by each opening and each revision: who opens does so on the newest one, or decides again. */
const lineOf = (station: string): string => `line:${station}`
const isOpenAt = (version: number): boolean => version % 2 === 1

/** Whether the log holds that a station has an open service; also where nothing was held of it yet. */
export const holdsOpen = async (log: Pick<Log, 'guard'>, station: string): Promise<boolean> => {
  const version = await log.guard(keyOf(station))
  return version === 0 || isOpenAt(version)
}

/** The versions of stations at which a batch is decided. */
export type OpenVersions = ReadonlyMap<string, number>

/** Of the stations that commands want to open, as the log has them now. */
export const openVersions = async (
  log: Pick<Log, 'guard'>,
  orders: readonly { readonly command: Command }[],
): Promise<OpenVersions> => {
  const versions = new Map<string, number>()
  for (const { command } of orders)
    if (command.type === 'open')
      for (const key of [keyOf(command.station), lineOf(command.station)])
        if (!versions.has(key)) versions.set(key, await log.guard(key))
  return versions
}

export const hasOpenService = (versions: OpenVersions, station: string): boolean =>
  isOpenAt(versions.get(keyOf(station)) ?? 0)

/**
 * What an append of entries is guarded by: that it opens where none was open as that was decided, and
 * that who closes gives the station free.
 * @param after the service once they are appended
 */
export const openGuards = async (
  log: Pick<Log, 'guard'>,
  entries: readonly Recorded[],
  after: ServiceState,
  versions: OpenVersions,
): Promise<readonly Guard[]> => {
  const opened = entries.find((one) => one.type === 'serviceOpened')
  const isClosed = entries.some((one) => one.type === 'serviceClosed')
  if (!isRunning(after) || !(opened || isClosed)) return []
  const key = keyOf(after.station.id)
  if (opened) {
    const line = lineOf(after.station.id)
    const expected = versions.get(key) ?? 0
    return [
      { key, expected },
      { key: line, expected: versions.get(line) ?? 0 },
      ...(isClosed ? [{ key, expected: expected + 1 }] : []),
    ]
  }
  const expected = await log.guard(key)
  return isOpenAt(expected) ? [{ key, expected }] : []
}

/** A service that was opened before guards were kept holds its station from now on. */
export const holdStation = async (
  log: Pick<Log, 'guard' | 'append'>,
  service: string,
  state: ServiceState,
  position: number,
): Promise<'held' | 'conflict'> => {
  if (!isRunning(state) || state.stage !== 'open') return 'held'
  const key = keyOf(state.station.id)
  const expected = await log.guard(key)
  if (isOpenAt(expected)) return 'held'
  return (await log.append(service, position, [], [], [{ key, expected }])) === 'committed'
    ? 'held'
    : 'conflict'
}

/** Under which nothing is ever stored: a guard is raised beside all services. */
const OF_THE_HOUSE = '@house'

/** A revision is the station's newest from now on, so that none opens on the one before. */
export const raiseLine = async (
  log: Pick<Log, 'guard' | 'append'>,
  station: string,
): Promise<void> => {
  const key = lineOf(station)
  while (true) {
    const guards = [{ key, expected: await log.guard(key) }]
    if ((await log.append(OF_THE_HOUSE, 0, [], [], guards)) === 'committed') return
  }
}
