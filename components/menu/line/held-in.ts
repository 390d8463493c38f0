import type { Held } from '#components/menu/line/drawn.ts'

/**
 * How a component is held whose pan stands in a well: as the well holds. In a well by time alone it
 * stays hot or cold, and is cold where nobody has said: no clock starts by being loaded, so that
 * until somebody starts it, the food is asked for its readings. Dry, nobody would ask at all.
 */
export const heldIn = (well: Held | null, before: string): 'hot' | 'cold' | 'dry' => {
  if (well === 'time') return before === 'hot' ? 'hot' : 'cold'
  return well === 'hot' || well === 'cold' ? well : 'dry'
}
