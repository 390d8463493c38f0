/** Who asks, and what of a service that is: whoever isn't let in by a line here, isn't. */
import type { Role } from '#lib/service/roles.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import type { Command, CommandType } from '#lib/spine/registry.ts'

/** A device that was proved, as the role it now acts as; or one that walks through the demo. */
export type Asker =
  | {
      readonly kind: 'proved'
      readonly device: string
      readonly station: string
      readonly role: Role
    }
  | { readonly kind: 'demo'; readonly role: Role }

/** What is asked about a service: null where none of that name was opened. */
export interface ServiceOf {
  readonly station: string
  readonly kind: 'real' | 'demo'
}

export const serviceOf = (state: ServiceState): ServiceOf | null =>
  isRunning(state)
    ? { station: state.station.id, kind: state.kind === 'demo' ? 'demo' : 'real' }
    : null

/** Whether a service is for whoever asks: of the device's station, or the demo. */
export const maySee = (asker: Asker, service: ServiceOf): boolean =>
  asker.kind === 'proved' ? asker.station === service.station : service.kind === 'demo'

/** What changes the station's document, from which the next real service is opened. */
export const TO_THE_HOUSE: readonly CommandType[] = ['notSameProduct', 'changeLabel']

/** Why a command isn't taken from an asker whose role may give it; null where it is. */
export type RightsProblem = 'not-proved' | 'not-joined' | 'no-such-service'

/**
 * Whether an asker's command is for a service that is theirs.
 * @param service the one that is named, null where none of that name was opened; of an opening, or of
 * a plan, the newest that there is
 * @param hasProof it comes with a passphrase
 */
export const rightsProblem = (
  asker: Asker,
  command: Command,
  service: ServiceOf | null,
  hasProof: boolean,
): RightsProblem | null => {
  if (asker.kind === 'demo' && hasProof) return 'not-proved'
  if (command.type === 'open' || command.type === 'plan') {
    if (asker.kind === 'demo' && command.kind !== 'demo') return 'not-proved'
    // Let in while a demo was the newest: over what came since it opens none.
    if (asker.kind === 'demo') return service?.kind === 'demo' ? null : 'not-joined'
    return command.station === asker.station ? null : 'no-such-service'
  }
  if (service === null) return 'no-such-service'
  if (maySee(asker, service))
    return asker.kind === 'demo' && TO_THE_HOUSE.includes(command.type) ? 'not-proved' : null
  // What was ordered before the proof was lost waits until it is there again.
  return asker.kind === 'demo' ? 'not-joined' : 'no-such-service'
}
