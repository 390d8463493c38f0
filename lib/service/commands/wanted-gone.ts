import { z } from 'zod'
import { findComponent, findItem } from '#lib/menu/find.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { itemLeft, levelsOf } from '#lib/stock/levels.ts'
import { sellingNow } from '#lib/stock/selling.ts'

export const wantedGoneSchema = z.strictObject({
  type: z.literal('wantedGone'),
  component: idField.optional(),
  item: idField.optional(),
})

/**
 * A guest wanted it, it was gone, and no build says so. What a sent build goes without since it is
 * gone is counted with that build.
 */
export const decideWantedGone = (
  state: ServiceState,
  { component, item: id }: z.infer<typeof wantedGoneSchema>,
  { now }: Pick<Circumstances, 'now'>,
): Decision =>
  whenOpen(state, (running) => {
    if (component !== undefined) {
      if (!findComponent(running.station, component))
        return refuse({ code: 'no-such-component', id: component })
      return happened({ type: 'wantedGone', item: id ?? null, components: [component] })
    }
    const item = id === undefined ? undefined : findItem(running.station, id)
    if (!item) return refuse({ code: 'no-such-item', id: id ?? '' })
    const { limitedBy } = itemLeft(running, levelsOf(sellingNow(running, 1, now)), item.id)
    const missing =
      limitedBy === null || limitedBy === item.id
        ? item.heart
        : limitedBy === 'base'
          ? (item.base?.usual ?? item.heart)
          : limitedBy
    return happened({ type: 'wantedGone', item: item.id, components: [missing] })
  })
