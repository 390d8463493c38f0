/** The services of a house's stations: which one of each is followed now, and a rail for each that is asked for. */

import { isLarderStream } from '#lib/larder/stream.ts'
import type { Answer } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Role } from '#lib/service/roles.ts'
import { isRunning, isUnderWay } from '#lib/service/state.ts'
import type { Command } from '#lib/spine/registry.ts'
import { holdsOpen } from '#server/rail/open-guard.ts'
import { type Opened, openingOf } from '#server/rail/opening-of.ts'
import { openRail, type Rail } from '#server/rail/rail.ts'
import type { RailPorts } from '#server/rail/rail-ports.ts'
import { storeProblemOf } from '#server/store/store-problem.ts'

export interface StationServices {
  /** The newest service that was opened of a station; null where none ever was. */
  current(station: string): Rail | null
  /** The newest of each station that ever had one, last opened last. */
  currents(): readonly Rail[]
  /** Services that are planned and not opened yet, of one station or of all, the earliest first. */
  planned(station?: string): readonly Rail[]
  /** A service by its id; null where there is none. */
  find(service: string): Promise<Rail | null>
  submit(service: string, id: string, command: Command, by: Role, adult?: string): Promise<Answer>
  onShow(listener: (rail: Rail, events: readonly Recorded[]) => void): void
  /**
   * Takes services that are over out of the log: from then on there are no such services, and who
   * followed one turns to the newest that is left. Returns those that are gone; one that is planned or open stays.
   */
  erase(services: readonly string[]): Promise<readonly string[]>
  look(): void
  idle(): Promise<void>
  close(): void
}

export const openStationServices = async (
  ports: Omit<RailPorts, 'service'>,
): Promise<StationServices> => {
  const rails = new Map<string, Promise<Rail>>()
  const opened = new Set<Rail>()
  const listeners: ((rail: Rail, events: readonly Recorded[]) => void)[] = []
  const current = new Map<string, Rail>()
  let opening: Promise<unknown> = Promise.resolve()

  /** In the order of opening, so that the last one opened stands last. */
  const turnTo = (rail: Rail): void => {
    const state = rail.state()
    if (!isRunning(state)) return
    current.delete(state.station.id)
    current.set(state.station.id, rail)
  }

  /** Reading failed: where the store is at fault, nothing more may be said. */
  const failed = (error: unknown): never => {
    if (storeProblemOf(error, 'log') !== null) ports.fatal(error)
    throw error
  }

  const start = async (service: string): Promise<Rail> => {
    const rail = await openRail({ ...ports, service })
    opened.add(rail)
    rail.onShow((events) => {
      if (events.some((event) => event.type === 'serviceOpened')) turnTo(rail)
      for (const listener of listeners) listener(rail, events)
    })
    return rail
  }

  const railOf = (service: string): Promise<Rail> => {
    const known = rails.get(service)
    if (known) return known
    const rail = start(service).catch((error: unknown) => {
      rails.delete(service)
      return failed(error)
    })
    rails.set(service, rail)
    return rail
  }

  const find = async (service: string): Promise<Rail | null> => {
    if (isLarderStream(service)) return null
    const isThere = rails.has(service) || (await ports.log.head(service).catch(failed)) > 0
    return isThere ? railOf(service) : null
  }

  const open = async (service: string, id: string, command: Command, by: Role, adult?: string) => {
    const rail = await railOf(service)
    const answer = await rail.submit(id, command, by, adult)
    if (rail.state().stage === 'none') await letGo(rail)
    return answer
  }

  /** A service that wasn't opened keeps no rail, which would otherwise listen to the log for ever. */
  const letGo = async (rail: Rail): Promise<void> => {
    await rail.idle()
    if (rail.state().stage !== 'none') return
    rail.close()
    opened.delete(rail)
    rails.delete(rail.service)
  }

  /**
   * Of a station's services the one that is open, else the one that was opened last. Moments tell that
   * but where the clock was set back: then the guard says that another one is open, and it is looked for.
   * @param all the last that was begun first
   */
  const newestOf = async (all: readonly Opened[]): Promise<readonly Opened[]> => {
    const inOrder = all.toSorted((one, other) => other.at - one.at)
    const [first] = inOrder
    if (!first) return []
    const mayBeOpen = await holdsOpen(ports.log, first.station)
    const isOpenNow = async ({ service }: Opened) =>
      (await railOf(service)).state().stage === 'open'
    if (mayBeOpen) for (const one of inOrder) if (await isOpenNow(one)) return [one]
    return [first]
  }

  /**
   * A service's first event tells its station, so that no other stream is read to its end, but of one
   * that was planned: those that still are get their rails, and things fall due in them.
   */
  const toNewest = async (): Promise<void> => {
    const byStation = new Map<string, Opened[]>()
    for (const service of await ports.log.services()) {
      const opened = await openingOf(ports.log, service)
      if (opened === 'planned') await railOf(service)
      else if (opened)
        byStation.set(opened.station, [opened, ...(byStation.get(opened.station) ?? [])])
    }
    current.clear()
    const found: Opened[] = []
    for (const all of byStation.values()) found.push(...(await newestOf(all)))
    for (const { service } of found.sort((one, other) => one.at - other.at))
      turnTo(await railOf(service))
  }

  const erase = async (services: readonly string[]): Promise<readonly string[]> => {
    const gone: string[] = []
    for (const service of services) {
      const rail = await find(service)
      if (rail && isUnderWay(rail.state())) continue
      rail?.close()
      await rail?.idle()
      if (rail) opened.delete(rail)
      rails.delete(service)
      gone.push(service)
    }
    await ports.log.erase(gone).catch(failed)
    if ([...current.values()].some(({ service }) => gone.includes(service))) await toNewest()
    return gone
  }

  await toNewest()

  return {
    current: (station) => current.get(station) ?? null,
    currents: () => [...current.values()],
    planned: (station) =>
      [...opened]
        .flatMap((rail) => {
          const { stage, plan, station: of } = rail.state()
          const isAsked = station === undefined || of?.id === station
          return stage === 'planned' && plan && isAsked ? [{ rail, at: plan.opensAt }] : []
        })
        .sort((one, other) => one.at - other.at)
        .map(({ rail }) => rail),
    find,
    submit: async (service, id, command, by, adult) => {
      if (command.type === 'open' || command.type === 'plan') {
        // One at a time: the log holds that two leads never open two, this spares it the turns.
        const turn = opening.then(() => open(service, id, command, by, adult))
        opening = turn.catch(() => undefined)
        return turn
      }
      const rail = await find(service)
      return rail
        ? rail.submit(id, command, by, adult)
        : { id, answer: 'not taken', because: { code: 'no-such-service' } }
    },
    onShow: (listener) => {
      listeners.push(listener)
    },
    // In turn with openings: no service becomes the newest meanwhile.
    erase: (services) => {
      const turn = opening.then(() => erase(services))
      opening = turn.catch(() => undefined)
      return turn
    },
    look: () => {
      for (const rail of opened) rail.look()
    },
    idle: async () => {
      await opening
      await Promise.all([...opened].map((rail) => rail.idle()))
    },
    close: () => {
      for (const rail of opened) rail.close()
    },
  }
}
