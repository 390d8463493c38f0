import { mlFrom } from '#lib/measure/kitchen-units.ts'

export const PAN_SIZES = ['full', 'half', 'third', 'quarter', 'sixth', 'ninth'] as const
export const PAN_DEPTHS_IN = [2.5, 4, 6] as const

export type PanSize = (typeof PAN_SIZES)[number]
export type PanDepthIn = (typeof PAN_DEPTHS_IN)[number]
export type PanCapacitySource = 'maker-manual' | 'memory'

export type PanCapacity = {
  readonly size: PanSize
  readonly depthIn: PanDepthIn
  /** What can be carried and served from, not the brim. */
  readonly usableFlOz: number
  readonly source: PanCapacitySource
}

const seen = (size: PanSize, depthIn: PanDepthIn, usableFlOz: number): PanCapacity => ({
  size,
  depthIn,
  usableFlOz,
  source: 'maker-manual',
})

/**
 * Usable capacities. `maker-manual`: a steam-cooker maker's table "Sizing up pan capacity", cited
 * in fixtures/reference/maker-pans.json. `memory`: the ninth-size pan, not seen in a source: about
 * 0.6 and 1.1 quarts to the brim, less the margin that the manual leaves in a sixth-size pan.
 * Makers differ by 5 to 12 percent, so a station may state its own.
 */
export const PAN_CAPACITIES: readonly PanCapacity[] = [
  seen('full', 2.5, 240),
  seen('full', 4, 420),
  seen('full', 6, 625),
  seen('half', 2.5, 125),
  seen('half', 4, 208),
  seen('half', 6, 314),
  seen('third', 2.5, 75),
  seen('third', 4, 125),
  seen('third', 6, 186),
  seen('quarter', 2.5, 55),
  seen('quarter', 4, 95),
  seen('quarter', 6, 140),
  seen('sixth', 2.5, 35),
  seen('sixth', 4, 55),
  seen('sixth', 6, 82),
  { size: 'ninth', depthIn: 2.5, usableFlOz: 16, source: 'memory' },
  { size: 'ninth', depthIn: 4, usableFlOz: 32, source: 'memory' },
]

/** The capacity row of a pan, or null where none is known (a ninth is not sold 6 in deep). */
export function panCapacity(size: PanSize, depthIn: PanDepthIn): PanCapacity | null {
  return PAN_CAPACITIES.find((row) => row.size === size && row.depthIn === depthIn) ?? null
}

/** Usable millilitres of a pan, not rounded, or null where no capacity is known. */
export function panUsableMl(size: PanSize, depthIn: PanDepthIn): number | null {
  const row = panCapacity(size, depthIn)
  return row === null ? null : mlFrom(row.usableFlOz, 'flOz')
}
