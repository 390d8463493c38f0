import type { KeptStation, ParseDocument, Stations } from '#server/stations/port.ts'

/** Station documents that last as long as the process: for tests and simulations. */
export const createMemoryStations = <Document>(setup: {
  readonly parse: ParseDocument<Document>
}): Stations<Document> => {
  const kept = new Map<string, { revision: number; body: string }>()

  const newest = (
    station: string,
    { revision, body }: { revision: number; body: string },
  ): KeptStation<Document> => ({ station, revision, document: setup.parse(JSON.parse(body)) })

  return {
    async put(station, document) {
      const revision = 1 + (kept.get(station)?.revision ?? 0)
      kept.set(station, { revision, body: JSON.stringify(document) })
      return revision
    },
    async latest(station) {
      const one = kept.get(station)
      return one === undefined ? null : newest(station, one)
    },
    async list() {
      return [...kept].map(([station, one]) => newest(station, one))
    },
  }
}
