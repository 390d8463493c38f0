import { itemLeft, levelsOf } from '#lib/rooms/pans/facts/levels.ts'
import { sellingNow } from '#lib/rooms/pans/facts/selling.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { findComponent, findItem } from '#lib/station/find.ts'

/**
 * A guest wanted it, it was gone, and no build says so. What a sent build goes without since it is
 * gone is counted with that build.
 */
export const wantedGone = defineCommand({
  type: 'wantedGone',
  who: ['counter'],
  stages: ['open'],
  schema: { component: idField.optional(), item: idField.optional() },
  decide: (state, { component, item: id }, { now }) => {
    if (component !== undefined) {
      if (!findComponent(state.station, component))
        return refuse({ code: 'unknown', what: 'component', id: component })
      return happened({ type: 'wantedGone', item: id ?? null, components: [component] })
    }
    const item = id === undefined ? undefined : findItem(state.station, id)
    if (!item) return refuse({ code: 'unknown', what: 'item', id: id ?? '' })
    const { limitedBy } = itemLeft(state, levelsOf(sellingNow(state, 1, now)), item.id)
    const missing =
      limitedBy === null || limitedBy === item.id
        ? item.heart
        : limitedBy === 'base'
          ? (item.base?.usual ?? item.heart)
          : limitedBy
    return happened({ type: 'wantedGone', item: item.id, components: [missing] })
  },
  sample: ({ station }) => station.components.map(({ id }) => ({ component: id })),
  rules: ['Z7', 'Z46'],
  example: { component: 'slaw' },
  tells: ', or an `item`: a guest went without, and no build says so',
})
