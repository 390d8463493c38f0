import { ownDocument } from '#lib/rooms/care/facts/mixing.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { KeptStation, Stations } from '#server/stations/port.ts'

/** The newest document of each station, in memory as the rail needs it, and in its store. */
export interface KnownStations {
  /** The station that was kept first; null where there is none. */
  first(): KeptStation<StationDocument> | null
  find(station: string): KeptStation<StationDocument> | null
  all(): readonly KeptStation<StationDocument>[]
  /** Keeps a document as the newest of its station. The revision, durable when the promise settles. */
  put(document: StationDocument): Promise<number>
  newestRevision(station: string): number | null
  /**
   * Keeps the document of a service that changed it, where it is ahead of what is known: at once
   * for whoever asks, and in the store. Its event is committed before, so that a start after a crash
   * in between takes the same again.
   */
  take(state: ServiceState): void
  /** Settles when all that was taken is durable or has failed. */
  idle(): Promise<void>
}

/** @param deps.fatal told where what was taken couldn't be stored: the process ends */
export const openKnownStations = async ({
  stations,
  fatal,
}: {
  readonly stations: Stations<StationDocument>
  readonly fatal: (error: unknown) => void
}): Promise<KnownStations> => {
  const known = new Map((await stations.list()).map((one) => [one.station, one]))
  let storing: Promise<void> = Promise.resolve()

  return {
    first: () => [...known.values()][0] ?? null,
    find: (station) => known.get(station) ?? null,
    all: () => [...known.values()],
    put: async (document) => {
      const { id } = document
      const revision = await stations.put(id, document)
      known.set(id, { station: id, revision, document })
      return revision
    },
    newestRevision: (station) => known.get(station)?.revision ?? null,
    take: (state) => {
      if (!isRunning(state)) return
      const { revision } = state
      const document = ownDocument(state)
      const { id } = document
      if (revision <= (known.get(id)?.revision ?? 0)) return
      known.set(id, { station: id, revision, document })
      storing = storing.then(() => stations.putAs(id, revision, document)).catch(fatal)
    },
    idle: () => storing,
  }
}
