/** A command on a service: what it does to it, folded once. */
import type { Circumstances } from '#lib/service/commands/decision.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { happen, type Led } from '#lib/spine/happen.ts'
import { type Command, decideAlone } from '#lib/spine/registry.ts'

export interface TakenCommand extends Led {
  /** Why it wasn't done; null where it was. */
  readonly refusal: Refusal | null
}

/** Decides a command and folds what it brings with it. Stores nothing. @throws as `happen` does */
export const take = (
  state: ServiceState,
  {
    id,
    command,
    position,
    adult,
  }: {
    readonly id: string
    readonly command: Command
    readonly position: number
    /** Whose passphrase proved it, where one did. */
    readonly adult?: string
  },
  circumstances: Circumstances,
): TakenCommand => {
  const decision = decideAlone(state, command, circumstances)
  const [refusal, events] =
    'refusal' in decision ? [decision.refusal, decision.also ?? []] : [null, decision.events]
  const stamp = { position, command: id, ...(adult === undefined ? {} : { adult }) }
  return { ...happen(state, events, stamp, circumstances), refusal }
}
