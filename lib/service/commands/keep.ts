import { z } from 'zod'
import { findComponent, findItem } from '#lib/menu/find.ts'
import { isKnownNeed } from '#lib/needs/askable.ts'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { RunningState, ServiceState } from '#lib/service/state.ts'
import { KEPT_APART } from '#lib/stock/kept.ts'

const MOST_KEPT = 500

export const keepSchema = z.strictObject({
  type: z.literal('keep'),
  component: idField,
  portions: z.int().min(1).max(MOST_KEPT),
  /** Ids of items, codes of needs, or `kept-apart`. */
  for: z.array(idField).min(1).max(20).readonly(),
})
export const endKeepSchema = z.strictObject({ type: z.literal('endKeep'), component: idField })

const isKnown = (state: RunningState, id: string): boolean =>
  id === KEPT_APART || findItem(state.station, id) !== undefined || isKnownNeed(state.station, id)

/** Portions that only some orders may take from now on. Keeping again says anew how many and for whom. */
export const decideKeep = (
  state: ServiceState,
  { component, portions, for: whom }: z.infer<typeof keepSchema>,
): Decision =>
  whenOpen(state, (running) => {
    if (!findComponent(running.station, component))
      return refuse({ code: 'no-such-component', id: component })
    const unknown = whom.find((id) => !isKnown(running, id))
    if (unknown !== undefined) return refuse({ code: 'no-such-order', id: unknown })
    return happened({ type: 'portionsKept', component, portions, for: [...new Set(whom)].sort() })
  })

export const decideEndKeep = (
  state: ServiceState,
  { component }: z.infer<typeof endKeepSchema>,
): Decision =>
  whenOpen(state, (running) => {
    if (!findComponent(running.station, component))
      return refuse({ code: 'no-such-component', id: component })
    return running.keeps[component] === undefined
      ? refuse({ code: 'already-so' })
      : happened({ type: 'keepEnded', component })
  })
