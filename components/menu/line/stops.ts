import type { PanSize } from '#lib/measure/pans.ts'
import { fitsOneWell } from '#lib/measure/well.ts'

interface Standing {
  readonly pan: string
  readonly size: PanSize
}

/** A well and what stands in it, in building order. */
export interface WellPlan<Pan extends Standing = Standing> {
  readonly well: string
  readonly pans: readonly Pan[]
}

/** Where a pan in the hand can be set down, or a well that has no room for it. */
export interface Stop {
  readonly well: string
  /** Before how many of the others; after all of them where it doesn't fit. */
  readonly at: number
  readonly fits: boolean
}

const stopsIn = ({ well, pans }: WellPlan, pan: Standing): readonly Stop[] => {
  const others = pans.filter((one) => one.pan !== pan.pan)
  return fitsOneWell([...others.map(({ size }) => size), pan.size])
    ? Array.from({ length: others.length + 1 }, (_, at) => ({ well, at, fits: true }))
    : [{ well, at: others.length, fits: false }]
}

/** All stops of a pan, left to right. */
export const stopsOf = (wells: readonly WellPlan[], pan: Standing): readonly Stop[] =>
  wells.flatMap((well) => stopsIn(well, pan))

const isSame = (one: Stop, other: Stop): boolean => one.well === other.well && one.at === other.at

/** The stop where a pan stands; null where it stands nowhere. */
export const stopNow = (wells: readonly WellPlan[], pan: string): Stop | null => {
  for (const { well, pans } of wells) {
    const at = pans.findIndex((one) => one.pan === pan)
    if (at !== -1) return { well, at, fits: true }
  }
  return null
}

/** The next stop to a side; the same at the line's ends, the first one where it stands nowhere. */
export const stopBeside = (stops: readonly Stop[], from: Stop | null, by: -1 | 1): Stop | null => {
  const now = from === null ? -1 : stops.findIndex((stop) => isSame(stop, from))
  if (now === -1) return stops[0] ?? null
  return stops[now + by] ?? stops[now] ?? null
}

/**
 * The stop that a pointer means.
 *
 * @param along how far along its well the pointer is, 0 to 1
 * @param middles of the well's other pans along it, in building order, 0 to 1
 */
export const stopUnder = (
  stops: readonly Stop[],
  well: string,
  along: number,
  middles: readonly number[],
): Stop | null => {
  const inWell = stops.filter((stop) => stop.well === well)
  const passed = middles.filter((middle) => middle < along).length
  return inWell.find(({ at }) => at === passed) ?? inWell.at(-1) ?? null
}

/** The line with a pan set down at a stop; where it doesn't fit, as it stands without it. */
export const setDown = <Pan extends Standing>(
  wells: readonly WellPlan<Pan>[],
  pan: Pan,
  { well, at, fits }: Stop,
): readonly WellPlan<Pan>[] =>
  wells.map((one) => {
    const others = one.pans.filter((each) => each.pan !== pan.pan)
    return one.well === well && fits
      ? { ...one, pans: others.toSpliced(at, 0, pan) }
      : { ...one, pans: others }
  })
