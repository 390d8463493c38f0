import type { LarderState } from '#lib/larder/lot.ts'
import type { HappensWith } from '#lib/service/consequence.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import type { PlannedPeriod, ServiceKind } from '#lib/service/events/plan-event.ts'
import type { KnownBias } from '#lib/service/events/stock-event.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { Role } from '#lib/service/roles.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, findTicket } from '#lib/service/tickets.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** What a command is decided with besides the state; `now` is the server's, never before the state's. */
export interface Circumstances extends HappensWith {
  readonly by: Role
  /** Id of the service whose stream this is. */
  readonly service: string
  /** Whether the station has another service that is open. */
  readonly otherIsOpen: boolean
  /** The newest revision of a station's document, for opening. */
  readonly station: (id: string) => {
    readonly revision: number
    readonly document: StationDocument
    /** Of the house's labels that the document was filled with. */
    readonly labels?: LabelVersions
  } | null
  /** Services of a station that are planned, this one too; none is known where left away. */
  readonly plans?: (station: string) => readonly PlannedPeriod[]
  /** Version that a label gets in the house if it changes now; left away where no house keeps any. */
  readonly nextLabel?: number
  /** What is set aside between services; nothing is where left away. */
  readonly larder?: LarderState
  /** How heavy earlier services scooped each component; nothing is known where left away. */
  readonly knownBias?: (station: string, kind: ServiceKind) => Readonly<Record<string, KnownBias>>
}

export type Decision =
  | { readonly events: readonly ServiceEvent[] }
  /** `also`: what was seen meanwhile and is recorded, though what was asked for isn't done. */
  | { readonly refusal: Refusal; readonly also?: readonly ServiceEvent[] }

export const refuse = (refusal: Refusal): Decision => ({ refusal })

/** What was asked for isn't done, but what was seen with it is recorded. */
export const refuseHaving = (refusal: Refusal, also: readonly ServiceEvent[]): Decision => ({
  refusal,
  also,
})

export const happened = (...events: ServiceEvent[]): Decision => ({ events })

/** Decides on a build that exists. */
export const withBuild = (
  state: RunningState,
  at: { readonly ticket: number; readonly letter: string },
  decide: (found: { readonly build: Build; readonly name: string }) => Decision,
): Decision => {
  const ticket = findTicket(state, at.ticket)
  if (!ticket) return refuse({ code: 'unknown', what: 'ticket', id: String(at.ticket) })
  const name = buildName(at.ticket, at.letter)
  const build = ticket.builds.find((one) => one.letter === at.letter)
  return build ? decide({ build, name }) : refuse({ code: 'unknown', what: 'build', id: name })
}
