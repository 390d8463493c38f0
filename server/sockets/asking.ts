/** Which services are whose: asked before anything of one is followed or done. */
import type { WhichHouse } from '#lib/access/http.ts'
import {
  type Asker,
  maySee,
  type RightsProblem,
  rightsProblem,
  serviceOf,
} from '#lib/access/rights.ts'
import type { Command } from '#lib/spine/registry.ts'
import type { Access } from '#server/access/access.ts'
import type { Rail } from '#server/rail/rail.ts'
import type { StationServices } from '#server/rail/station-services.ts'

/** Its id where it was proved; null where it walks through the demo. */
export const deviceOf = (asker: Asker): string | null =>
  asker.kind === 'proved' ? asker.device : null

export interface Asking {
  /** The newest service that is for the asker: of a device, its station's. */
  current(asker: Asker): Rail | null
  /** A service by its id; null where there is none, or none for the asker. */
  find(asker: Asker, service: string): Promise<Rail | null>
  /** Why a command isn't taken from an asker whose role may give it; null where it is. */
  problem(
    asker: Asker,
    asked: { readonly command: Command; readonly service: string; readonly hasProof: boolean },
  ): Promise<RightsProblem | null>
}

export const createAsking = ({
  house,
  services,
  access,
}: {
  readonly house: WhichHouse
  readonly services: Pick<StationServices, 'current' | 'currents' | 'find'>
  readonly access: { readonly devices: Pick<Access['devices'], 'use'> }
}): Asking => {
  const ofRail = (rail: Rail | null) => rail && serviceOf(rail.state())

  const seen = (asker: Asker, rail: Rail | null): Rail | null => {
    const of = ofRail(rail)
    return of && maySee(asker, of) ? rail : null
  }

  const use = (asker: Asker): void => {
    if (asker.kind === 'proved') access.devices.use(asker.device)
  }

  return {
    current: (asker) => services.currents().findLast((rail) => seen(asker, rail) !== null) ?? null,
    find: async (asker, service) => {
      use(asker)
      return seen(asker, await services.find(service))
    },
    problem: async (asker, { command, service, hasProof }) => {
      use(asker)
      const isNew = command.type === 'open' || command.type === 'plan'
      // Nothing real is opened or planned in the demo: all that is ordered there says so.
      if (house === 'demo' && isNew && command.kind !== 'demo')
        return asker.kind === 'demo' ? 'not-proved' : 'no-such-service'
      const rail = isNew ? services.current(command.station) : await services.find(service)
      return rightsProblem(asker, command, ofRail(rail), hasProof)
    },
  }
}
