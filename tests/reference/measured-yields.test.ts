import jstat from 'jstat'
import { mean, sampleStandardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { correctedYield, studentT, withinStudentT } from '#lib/recipes/measured-yield.ts'

/** Two-sided chances by the incomplete beta function: I(ν / (ν + t²); ν/2, 1/2) lies outside ±t. */
const withinByBeta = (t: number, freedom: number): number =>
  1 - jstat.jStat.ibeta(freedom / (freedom + t * t), freedom / 2, 0.5)

/** Quantiles as every table prints them: Abramowitz and Stegun, table 26.10 (from memory). */
const TABLE = [
  { freedom: 1, printed: 12.706 },
  { freedom: 2, printed: 4.303 },
  { freedom: 3, printed: 3.182 },
  { freedom: 4, printed: 2.776 },
  { freedom: 8, printed: 2.306 },
  { freedom: 30, printed: 2.042 },
  { freedom: 120, printed: 1.98 },
]

describe('Student’s t', () => {
  it.each(TABLE)(
    '[RC50] 95 % with $freedom degrees of freedom is printed as $printed',
    ({ freedom, printed }) => {
      expect(Math.abs(studentT(0.95, freedom) - printed)).toBeLessThan(0.0006)
    },
  )

  it('[RC50] its chances are those of the incomplete beta function', () => {
    for (let freedom = 1; freedom <= 60; freedom += 1)
      for (const t of [0.01, 0.3, 1, 1.9723, 4, 12.7, 63])
        expect(Math.abs(withinStudentT(t, freedom) - withinByBeta(t, freedom))).toBeLessThan(1e-7)
  })

  it('[RC50] at 194 degrees of freedom it is 1.9723, as the handbook’s worked example takes it', () => {
    // NIST/SEMATECH e-Handbook 1.3.5.2, ZARR13.DAT: 195 flow calibrations (from memory).
    const off = (studentT(0.95, 194) * 0.022789) / Math.sqrt(195)
    expect(studentT(0.95, 194)).toBeCloseTo(1.9723, 4)
    expect(9.26146 - off).toBeCloseTo(9.258242, 5)
    expect(9.26146 + off).toBeCloseTo(9.264679, 5)
  })
})

describe('the range of own batches', () => {
  it('[RC51] is mean ± t·s/√n, by another library’s mean and deviation', () => {
    const ratios = [0.88, 0.86, 0.91, 0.87]
    const got = correctedYield(ratios)
    // t of 3 degrees of freedom, to six digits, by the beta function above.
    const off = (3.182446 * sampleStandardDeviation(ratios)) / 2
    expect(got?.ratio).toBeCloseTo(mean(ratios), 12)
    expect(got?.range?.low).toBeCloseTo(mean(ratios) - off, 6)
    expect(got?.range?.high).toBeCloseTo(mean(ratios) + off, 6)
  })
})
