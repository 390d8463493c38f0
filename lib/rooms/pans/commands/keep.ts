import { z } from 'zod'
import { KEPT_APART } from '#lib/rooms/pans/facts/kept.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { RunningState } from '#lib/service/state.ts'
import { isKnownNeed } from '#lib/station/codes/askable.ts'
import { findComponent, findItem } from '#lib/station/find.ts'

const MOST_KEPT = 500

const isKnown = (state: RunningState, id: string): boolean =>
  id === KEPT_APART || findItem(state.station, id) !== undefined || isKnownNeed(state.station, id)

/** Portions that only some orders may take from now on. Keeping again says anew how many and for whom. */
export const keep = defineCommand({
  type: 'keep',
  who: [],
  stages: ['open'],
  schema: {
    component: idField,
    portions: z.int().min(1).max(MOST_KEPT),
    /** Ids of items, codes of needs, or `kept-apart`. */
    for: z.array(idField).min(1).max(20).readonly(),
  },
  decide: (state, { component, portions, for: whom }) => {
    if (!findComponent(state.station, component))
      return refuse({ code: 'unknown', what: 'component', id: component })
    const unknown = whom.find((id) => !isKnown(state, id))
    if (unknown !== undefined) return refuse({ code: 'unknown', what: 'order', id: unknown })
    return happened({ type: 'portionsKept', component, portions, for: [...new Set(whom)].sort() })
  },
  sample: ({ station }) =>
    station.components.map(({ id }) => ({
      component: id,
      portions: 1,
      for: [station.items[0]?.id ?? ''],
    })),
  rules: ['U7', 'U8', 'U9'],
  example: { component: 'tuna', portions: 4, for: ['harbor-tuna'] },
  tells: ' (`for`: items, codes of needs, `kept-apart`): nobody else is sold them',
})

export const endKeep = defineCommand({
  type: 'endKeep',
  who: [],
  stages: ['open'],
  schema: { component: idField },
  decide: (state, { component }) => {
    if (!findComponent(state.station, component))
      return refuse({ code: 'unknown', what: 'component', id: component })
    return state.keeps[component] === undefined
      ? refuse({ code: 'already-so' })
      : happened({ type: 'keepEnded', component })
  },
  sample: ({ station }) => station.components.map(({ id }) => ({ component: id })),
  rules: ['U7'],
  example: { component: 'tuna' },
})
