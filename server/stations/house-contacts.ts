/**
 * What touches what, of a station's newest revision, brought to its open service. Found again at a
 * start: each side knows revisions.
 */
import { contactsToTake } from '#lib/rooms/care/facts/house-contacts.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { isRunning } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import type { EventLog } from '#server/event-log/port.ts'
import { raiseLine } from '#server/rail/open-guard.ts'
import type { Rail } from '#server/rail/rail.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import type { KnownStations } from '#server/stations/known-stations.ts'
import type { Revisions } from '#server/stations/revisions.ts'

/** Where contacts are told. */
export type ContactsRail = Pick<Rail, 'state' | 'note' | 'idle'>

export interface HouseContacts {
  /**
   * Told once a station's revision is kept. Who opens a service meanwhile conflicts and decides on the
   * new one; settles when the one that is open has taken it.
   */
  published(station: string): Promise<void>
  /** What was cut short between a revision and its service is done now. */
  recover(): void
}

/**
 * @param deps.rails the newest service of each station
 * @param deps.revisions its earlier ones: of what one took away that was said
 * @param deps.neverTouched whether who published a revision said so of what it no longer names
 */
export const createHouseContacts = (deps: {
  readonly log: Pick<EventLog<Recorded, StoredAnswer>, 'guard' | 'append'>
  readonly stations: Pick<KnownStations, 'find'>
  readonly revisions: Pick<Revisions<Pick<StationDocument, 'contacts'>>, 'at'>
  readonly rails: () => readonly ContactsRail[]
  readonly neverTouched: (station: string, revision: number) => boolean
}): HouseContacts => {
  const tell = (rail: ContactsRail): void =>
    rail.note((state) => {
      const newest = deps.stations.find(state.station.id)
      if (state.stage !== 'open' || newest === null) return []
      const { revision, document } = newest
      const neverTouched = deps.neverTouched(newest.station, revision)
      const before = deps.revisions.at(newest.station, revision - 1)?.contacts ?? null
      return contactsToTake(state, { revision, document, neverTouched, before })
    })

  return {
    published: async (station) => {
      await raiseLine(deps.log, station)
      const rails = deps.rails().filter((rail) => rail.state().station?.id === station)
      for (const rail of rails) tell(rail)
      await Promise.all(rails.map((rail) => rail.idle()))
    },
    recover: () => {
      for (const rail of deps.rails()) {
        const state = rail.state()
        if (isRunning(state) && state.stage === 'open') tell(rail)
      }
    },
  }
}
