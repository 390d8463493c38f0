import type { KeptStation, ParseDocument, Stations } from '#server/stations/port.ts'

/** Station documents that last as long as the process: for tests and simulations. */
export const createMemoryStations = <Document>(setup: {
  readonly parse: ParseDocument<Document>
}): Stations<Document> => {
  const kept = new Map<string, string[]>()

  const newest = (station: string, bodies: readonly string[]): KeptStation<Document> => ({
    station,
    revision: bodies.length,
    document: setup.parse(JSON.parse(bodies.at(-1) ?? 'null')),
  })

  return {
    async put(station, document) {
      const bodies = [...(kept.get(station) ?? []), JSON.stringify(document)]
      kept.set(station, bodies)
      return bodies.length
    },
    async latest(station) {
      const bodies = kept.get(station)
      return bodies === undefined ? null : newest(station, bodies)
    },
    async list() {
      return [...kept].map(([station, bodies]) => newest(station, bodies))
    },
  }
}
