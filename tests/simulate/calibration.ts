/** Of the times a chance was said, how often it came so: ten bins of equal count. */
import type { Said } from '#tests/simulate/play.ts'

export interface Bin {
  readonly cases: number
  readonly said: number
  readonly came: number
  readonly error: number
}

export interface Calibration {
  readonly cases: number
  readonly bins: readonly Bin[]
  readonly worst: number
  /** Mean squared error, and what saying the overall rate each time would have had. */
  readonly brier: number
  readonly brierOfRate: number
}

const mean = (values: readonly number[]): number =>
  values.length > 0 ? values.reduce((sum, value) => sum + value, 0) / values.length : 0

const BINS = 10

export const calibrate = (cases: readonly Said[]): Calibration => {
  const sorted = [...cases].sort((one, other) => one.chance - other.chance)
  const came = ({ came: did }: Said): number => (did ? 1 : 0)
  const bins = Array.from({ length: BINS }, (_, index): Bin => {
    const from = Math.round((sorted.length * index) / BINS)
    const to = Math.round((sorted.length * (index + 1)) / BINS)
    const part = sorted.slice(from, to)
    const said = mean(part.map(({ chance }) => chance))
    const happened = mean(part.map(came))
    return { cases: part.length, said, came: happened, error: happened - said }
  })
  const rate = mean(sorted.map(came))
  return {
    cases: sorted.length,
    bins,
    worst: Math.max(...bins.map(({ error }) => Math.abs(error))),
    brier: mean(sorted.map((one) => (one.chance - came(one)) ** 2)),
    brierOfRate: mean(sorted.map((one) => (rate - came(one)) ** 2)),
  }
}
