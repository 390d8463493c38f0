import { convert } from 'convert'
import { describe, expect, it } from 'vitest'
import nist from '#fixtures/reference/nist-definitions.json' with { type: 'json' }
import household from '#fixtures/reference/nist-household.json' with { type: 'json' }
import { mlFrom, VOLUME_ML, type VolumeUnit, WEIGHT_G } from '#lib/measure/kitchen-units.ts'
import { gramsFrom, INCH_MM } from '#tests/support/kitchen-units.ts'

const volume = nist.volume.map((row) => ({ ...row, unit: row.unit as VolumeUnit }))
const weight = nist.weight.map((row) => ({ ...row, unit: row.unit as keyof typeof WEIGHT_G }))

/** Text like 4.92892159375 as a whole number of 1e-12ths, so that nothing is lost in a double. */
const exact = (decimal: string): bigint => {
  const [whole = '0', part = ''] = decimal.split('.')
  return BigInt(whole + part.padEnd(12, '0'))
}

describe('NIST Handbook 44, Appendix C', () => {
  it('[Q1] the gallon is 231 cubic inches of 2.54 cm, and every volume its exact share', () => {
    const inch = exact(nist.inchCm) / 10n ** 10n
    const gallon = (BigInt(nist.gallonCubicInches) * inch ** 3n * 10n ** 12n) / 10n ** 6n
    expect(volume.map(({ unit }) => unit).toSorted()).toEqual(Object.keys(VOLUME_ML).toSorted())
    for (const { unit, ml, perGallon } of volume) {
      expect(exact(ml) * BigInt(perGallon), unit).toBe(gallon)
      expect(VOLUME_ML[unit], unit).toBe(Number(ml))
    }
  })

  it('[Q1] the pound and the ounce are the exact avoirdupois weights', () => {
    expect(weight.map(({ unit }) => unit).toSorted()).toEqual(Object.keys(WEIGHT_G).toSorted())
    for (const { unit, g, perLb } of weight) {
      expect(exact(g) * BigInt(perLb), unit).toBe(exact('453.59237'))
      expect(WEIGHT_G[unit], unit).toBe(Number(g))
    }
    expect(INCH_MM).toBe(Number(nist.inchCm) * 10)
  })

  it('[Q1] the rounded household table of NIST is what the exact factors round to', () => {
    for (const { amount, unit, ml } of household.rows) {
      const [over = 0, under = 1] = amount
      const printedDecimals = Number.isInteger(ml) ? 0 : 1
      const got = mlFrom(over / under, unit as VolumeUnit)
      expect(Number(got.toFixed(printedDecimals)), `${over}/${under} ${unit}`).toBe(ml)
    }
  })

  it('[Q1] a kitchen cup is not the 240 mL cup of nutrition labels, 1.44 percent larger', () => {
    const off = (nist.labelMeasures.cupMl / VOLUME_ML.cup - 1) * 100
    expect(off).toBeCloseTo(1.44, 2)
    expect(convert(1, 'US legal cup').to('mL')).toBeCloseTo(nist.labelMeasures.cupMl, 9)
  })
})

describe('the general unit library convert 8.0.2', () => {
  const names = {
    gallon: 'US liquid gallon',
    quart: 'US liquid quart',
    pint: 'US liquid pint',
    cup: 'cup',
    flOz: 'US fluid ounce',
    tbsp: 'US tablespoon',
    tsp: 'US teaspoon',
  } as const

  it('[Q1] agrees on every volume to within the rounding of a double (1e-15 of the value)', () => {
    for (const { unit } of volume) {
      const theirs = convert(1, names[unit]).to('mL')
      expect(Math.abs(mlFrom(1, unit) / theirs - 1), unit).toBeLessThan(1e-15)
    }
  })

  it('[Q1] agrees on pounds, ounces and inches exactly', () => {
    expect(gramsFrom(1, 'lb')).toBe(convert(1, 'pound').to('g'))
    expect(gramsFrom(1, 'oz')).toBe(convert(1, 'ounce').to('g'))
    expect(INCH_MM).toBeCloseTo(convert(1, 'inch').to('mm'), 12)
  })
})
