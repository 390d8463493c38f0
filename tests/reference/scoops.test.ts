import { describe, expect, it } from 'vitest'
import ladles from '#fixtures/reference/icn-ladles.json' with { type: 'json' }
import icn from '#fixtures/reference/icn-scoops.json' with { type: 'json' }
import trade from '#fixtures/reference/trade-scoops.json' with { type: 'json' }
import { mlFrom, type VolumeUnit } from '#lib/measure/kitchen-units.ts'
import {
  LADLE_FL_OZ,
  ladleVolumeMl,
  SCOOP_HANDLES,
  scoopHandle,
  scoopVolumeMl,
} from '#lib/measure/scoops.ts'

const offPercent = (printedMl: number, number: number): number =>
  (printedMl / scoopVolumeMl(number) - 1) * 100

describe('ICN Basics at a Glance, scoops', () => {
  it.each(icn.rows)(
    '[Q4] the table says $measure for scoop $number, $offPercent percent off',
    (row) => {
      const [over = 0, under = 1] = row.amount
      const off = offPercent(mlFrom(over / under, row.unit as VolumeUnit), row.number)
      if (row.offPercent === 0) expect(Math.abs(off)).toBeLessThan(1e-12)
      else expect(off).toBeCloseTo(row.offPercent, 2)
    },
  )

  it('[Q4] five sizes of the table are exact and eight are rounded', () => {
    const exact = icn.rows.filter((row) => {
      const [over = 0, under = 1] = row.amount
      const off = offPercent(mlFrom(over / under, row.unit as VolumeUnit), row.number)
      return Math.abs(off) < 1e-9
    })
    expect(exact.map((row) => row.number)).toEqual([6, 8, 12, 16, 24])
    expect(icn.rows).toHaveLength(13)
  })

  it.each(ladles.rows)(
    '[Q17] a ladle stamped $labelOz oz holds $measureCups cup of volume',
    (row) => {
      expect(ladleVolumeMl(row.labelOz)).toBeCloseTo(mlFrom(row.measureCups, 'cup'), 10)
    },
  )

  it('[Q17] the sizes are those of the table', () => {
    expect(ladles.rows.map((row) => row.labelOz)).toEqual([...LADLE_FL_OZ])
  })
})

describe('trade charts', () => {
  it.each(trade.rows)(
    '[Q4] a trade chart says $flOz fl oz for scoop $number, $offPercent percent off',
    (row) => {
      const off = offPercent(mlFrom(row.flOz, 'flOz'), row.number)
      expect(Math.abs(off - row.offPercent)).toBeLessThan(0.06)
    },
  )

  it('[Q5] handle colours are those of the trade, by their plainest word', () => {
    const plain: Record<string, string> = { 'royal blue': 'blue', orchid: 'purple', grey: 'gray' }
    const word = (colour: string): string => plain[colour] ?? colour
    expect(SCOOP_HANDLES.map(({ number }) => number)).toEqual(trade.rows.map((row) => row.number))
    for (const row of trade.rows) {
      expect(scoopHandle(row.number)?.colour, `#${row.number}`).toBe(word(row.retailerColour))
      if (row.sellerColour !== null) {
        expect(scoopHandle(row.number)?.colour).toBe(word(row.sellerColour))
      }
    }
  })
})
