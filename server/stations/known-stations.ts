import type { LabelVersions } from '#lib/service/events/line-event.ts'
import { unlabelled } from '#lib/station/filled.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { HouseLabels } from '#server/labels/house-labels.ts'
import type { KeptStation, Stations } from '#server/stations/port.ts'

/** A station's newest document with the house's labels, as they are now. */
export interface LabelledStation extends KeptStation<StationDocument> {
  readonly labels: LabelVersions
}

/** The newest document of each station, in memory as the rail needs it, and in its store. */
export interface KnownStations {
  /** The station that was kept first; null where there is none. */
  first(): LabelledStation | null
  find(station: string): LabelledStation | null
  all(): readonly LabelledStation[]
  /**
   * Keeps a document as the newest of its station, without labels: those that the house has none of are
   * the house's from now on, the others go. The revision, durable when the promise settles.
   */
  put(document: StationDocument): Promise<number>
}

export const openKnownStations = async ({
  stations,
  labels,
}: {
  readonly stations: Stations<StationDocument>
  readonly labels: Pick<HouseLabels, 'begin' | 'filled' | 'versionsIn'>
}): Promise<KnownStations> => {
  const known = new Map((await stations.list()).map((one) => [one.station, one]))
  // Kept by a version before labels were the house's.
  for (const { document } of known.values()) labels.begin(document)

  const labelled = (one: KeptStation<StationDocument>): LabelledStation => ({
    ...one,
    document: labels.filled(one.document),
    labels: labels.versionsIn(one.document),
  })
  const all = () => [...known.values()].map(labelled)

  return {
    first: () => all()[0] ?? null,
    find: (station) => {
      const one = known.get(station)
      return one ? labelled(one) : null
    },
    all,
    put: async (document) => {
      const { id } = document
      labels.begin(document)
      const bare = unlabelled(document)
      const revision = await stations.put(id, bare)
      known.set(id, { station: id, revision, document: bare })
      return revision
    },
  }
}
