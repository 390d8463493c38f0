/** A probe's scale as it is drawn: how far it goes, and which part of it is in the limit. */

import type { EntryLimit } from '#lib/rooms/food/views/reading-entry.ts'
import type { SafetyLimits } from '#lib/safety/limits.ts'
import type { Scale } from '#lib/safety/temperature.ts'

export type ZoneKind =
  | 'hot-enough'
  | 'too-cool'
  | 'cold-enough'
  | 'too-warm'
  /** Of what cools: above where it starts, within its first stage, within its second. */
  | 'starts'
  | 'first-stage'
  | 'second-stage'

/** From and up to so many tenths of a degree. */
export interface ProbeZone {
  readonly from: number
  readonly to: number
  readonly kind: ZoneKind
  /** By when it has to be left behind; null where no clock runs on it. */
  readonly by: string | null
}

export interface ProbeScale {
  readonly least: number
  readonly most: number
  /** Where a number stands beside it, tenths of a degree. */
  readonly ticks: readonly number[]
  readonly limits: readonly number[]
  readonly zones: readonly ProbeZone[]
}

/** Tenths of a degree: what a kitchen's probe is drawn with, and how far its numbers stand apart. */
const HOT = { F: { least: 300, most: 1950, step: 200 }, C: { least: 0, most: 900, step: 100 } }
const COLD = { F: { least: 200, most: 800, step: 100 }, C: { least: -100, most: 300, step: 50 } }

type Range = (typeof HOT)['F']

/** Nearer to a limit than that its own number would stand over another. */
const APART = 0.6

const ticksOf = ({ least, most, step }: Range, limits: readonly number[]): readonly number[] => {
  const first = Math.ceil(least / step) * step
  const count = Math.floor((most - first) / step) + 1
  return Array.from({ length: count }, (_, index) => first + index * step).filter((one) =>
    limits.every((limit) => Math.abs(limit - one) >= step * APART),
  )
}

/** Where a temperature stands on it, 0 at its foot to 1 at its head; what is beyond stands at the end. */
export const shareOf = (
  { least, most }: Pick<ProbeScale, 'least' | 'most'>,
  tenths: number,
): number => Math.min(1, Math.max(0, (tenths - least) / (most - least)))

const drawn = (
  range: Range,
  limits: readonly number[],
  zones: ProbeScale['zones'],
): ProbeScale => ({
  least: range.least,
  most: range.most,
  ticks: ticksOf(range, limits),
  limits,
  zones,
})

/** Of one limit, or of the lowest of combinations that are enough. */
export const probeScaleOf = (limit: EntryLimit, scale: Scale): ProbeScale => {
  const isLeast = limit.kind === 'heat' || limit.limit.bound === 'at-least'
  const at =
    limit.kind === 'heat'
      ? Math.min(...limit.limit.combinations.map((one) => one.tenths[scale]))
      : limit.limit.tenths[scale]
  const range = at > HOT[scale].least + 6 * (HOT[scale].step / 2) ? HOT[scale] : COLD[scale]
  const { least, most } = range
  return drawn(
    range,
    [at],
    isLeast
      ? [
          { from: at, to: most, kind: 'hot-enough', by: null },
          { from: least, to: at, kind: 'too-cool', by: null },
        ]
      : [
          { from: at, to: most, kind: 'too-warm', by: null },
          { from: least, to: at, kind: 'cold-enough', by: null },
        ],
  )
}

/**
 * The two stages of what cools: from where it starts through the first to the second's end.
 *
 * @param by until when each stage lasts, in words; null while its clock hasn't started
 */
export const coolingScaleOf = (
  limits: SafetyLimits,
  scale: Scale,
  by: { readonly first: string | null; readonly second: string | null },
): ProbeScale => {
  const [start, middle, end] = [limits.coolingFrom, limits.coolingFirstTo, limits.coolingTo].map(
    (one) => one.tenths[scale],
  ) as [number, number, number]
  const { least, most } = HOT[scale]
  return drawn(
    HOT[scale],
    [start, middle, end],
    [
      { from: start, to: most, kind: 'starts', by: null },
      { from: middle, to: start, kind: 'first-stage', by: by.first },
      { from: end, to: middle, kind: 'second-stage', by: by.second },
      { from: least, to: end, kind: 'cold-enough', by: null },
    ],
  )
}

/** The scale of what cools from room temperature: one stage, from wherever it is. @param by its end, as said */
export const roomCoolingScaleOf = (
  limits: SafetyLimits,
  scale: Scale,
  by: string | null,
): ProbeScale => {
  const end = limits.coolingTo.tenths[scale]
  const { least, most } = HOT[scale]
  return drawn(
    HOT[scale],
    [end],
    [
      { from: end, to: most, kind: 'second-stage', by },
      { from: least, to: end, kind: 'cold-enough', by: null },
    ],
  )
}
