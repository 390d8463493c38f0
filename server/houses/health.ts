import { PROTOCOL } from '#lib/protocol/wire.ts'
import { isRunning } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import type { Houses } from '#server/houses/houses.ts'
import type { HealthSource, ServicePlace } from '#server/http/health.ts'
import type { Rail } from '#server/rail/rail.ts'

/** What /health tells of services: the hash of each is worked out once a position. */
export const createHealth = (houses: Houses, scriptsToken: string): HealthSource => {
  const known = new WeakMap<Rail, ServicePlace>()
  const placeOf = (rail: Rail): ServicePlace => {
    const before = known.get(rail)
    if (before?.position === rail.position()) return before
    const state = rail.state()
    const place = { id: rail.service, position: rail.position(), hash: stateHash(state) }
    known.set(rail, place)
    return place
  }
  return {
    protocol: PROTOCOL,
    scriptsToken,
    commits: () => houses.all().reduce((sum, [, { events }]) => sum + events.commits(), 0),
    service: () => {
      const house = houses.find(undefined)
      const first = house?.stations.first()
      const rail = first ? house?.services.current(first.station) : null
      return rail ? placeOf(rail) : null
    },
    services: () =>
      houses.all().flatMap(([house, { services }]) =>
        services.currents().flatMap((rail) => {
          const state = rail.state()
          return isRunning(state) ? [{ house, station: state.station.id, ...placeOf(rail) }] : []
        }),
      ),
  }
}
