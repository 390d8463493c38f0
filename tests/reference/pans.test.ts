import { describe, expect, it } from 'vitest'
import gastronorm from '#fixtures/reference/gastronorm-pans.json' with { type: 'json' }
import icn from '#fixtures/reference/icn-pans.json' with { type: 'json' }
import maker from '#fixtures/reference/maker-pans.json' with { type: 'json' }
import outer from '#fixtures/reference/pan-outer-sizes.json' with { type: 'json' }
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import {
  PAN_CAPACITIES,
  PAN_SIZES,
  type PanDepthIn,
  type PanSize,
  panCapacity,
  panUsableMl,
} from '#lib/measure/pans.ts'
import { wholePortions } from '#lib/measure/portion.ts'
import { fitsOneWell } from '#lib/measure/well.ts'
import { mlTo, mmFromInches, wholeScoops } from '#tests/support/kitchen-units.ts'

describe('ICN steamtable pan table', () => {
  const printed = icn.rows.filter((row) => row.reproducedBy !== 'nothing')

  it.each(printed)(
    '[Q7] $quarts quarts give the printed $printed scoops of number $scoop',
    (row) => {
      expect(wholeScoops(mlFrom(row.quarts, 'quart'), row.scoop)).toBe(row.printed)
    },
  )

  it('[Q7] the misprinted row of 135 is not reproduced: 14 quarts hold 140 scoops of number 10', () => {
    const misprints = icn.rows.filter((row) => row.reproducedBy === 'nothing')
    expect(misprints.map(({ depthIn, scoop, printed }) => ({ depthIn, scoop, printed }))).toEqual([
      { depthIn: 4, scoop: 10, printed: 135 },
    ])
    expect(wholeScoops(mlFrom(14, 'quart'), 10)).toBe(140)
    expect(wholePortions(14 * 4 * 8, 3)).toBe(149)
  })

  it('[Q4] rows by the cup measure agree but for number 10, which the rule alone reproduces', () => {
    for (const row of printed) {
      const [over = 0, under = 1] = row.servingCups
      const byCup = wholePortions(row.quarts * 4 * under, over)
      expect(byCup === row.printed, `${row.depthIn} in, #${row.scoop}`).toBe(
        row.reproducedBy === 'rule and cup measure',
      )
    }
  })
})

describe('a maker’s fractional pans', () => {
  const known = maker.rows.filter((row) => PAN_SIZES.some((size) => size === row.size))

  it('[Q8] usable capacities are the published ones, fifteen of them', () => {
    expect(known).toHaveLength(15)
    for (const row of known) {
      const ours = panCapacity(row.size as PanSize, row.depthIn as PanDepthIn)
      expect(ours, `${row.size} ${row.depthIn}`).toMatchObject({
        usableFlOz: row.usableFlOz,
        source: 'maker-manual',
      })
    }
  })

  it('[Q8] usable is below the brim, and both below the box of the inside dimensions', () => {
    for (const row of known) {
      const usable = panUsableMl(row.size as PanSize, row.depthIn as PanDepthIn) ?? 0
      const [wide = 0, long = 0] = row.insideIn
      const box = mmFromInches(wide) * mmFromInches(long) * mmFromInches(row.depthIn)
      expect(usable).toBeGreaterThan(0)
      expect(usable).toBeLessThan(mlFrom(row.brimQt, 'quart'))
      expect(mlFrom(row.brimQt, 'quart')).toBeLessThan(box / 1000)
    }
  })

  it('[Q8] the full pan is under the ICN figures by 6.25, 6.25 and 2.34 percent', () => {
    const icnQuarts = new Map(icn.rows.map((row) => [row.depthIn, row.quarts]))
    const off = ([2.5, 4, 6] as const).map((depth) => {
      const quarts = mlTo(panUsableMl('full', depth) ?? 0, 'quart')
      return Number(((quarts / (icnQuarts.get(depth) ?? 0) - 1) * 100).toFixed(2))
    })
    expect(off).toEqual([-6.25, -6.25, -2.34])
  })

  it.each(gastronorm.rows)(
    '[Q8] the $size pan of $depthIn in is $offPercent percent off GN $gn of $depthMm mm',
    (row) => {
      const ours = panUsableMl(row.size as PanSize, row.depthIn as PanDepthIn) ?? 0
      expect((ours / 1000 / row.litres - 1) * 100).toBeCloseTo(row.offPercent, 1)
      expect(Math.abs(row.offPercent)).toBeLessThan(12.5)
    },
  )

  it('[Q8] the ninth-size pan is labelled as from memory and keeps the sixth’s margin', () => {
    const ninths = PAN_CAPACITIES.filter((row) => row.size === 'ninth')
    expect(ninths).toHaveLength(maker.ninth.rows.length)
    for (const ninth of ninths) {
      const brim = maker.ninth.rows.find((row) => row.depthIn === ninth.depthIn)?.brimQt ?? 0
      const sixth = maker.rows.find((row) => row.size === 'sixth' && row.depthIn === ninth.depthIn)
      const margin = (sixth?.usableFlOz ?? 0) / ((sixth?.brimQt ?? 1) * 32)
      expect(ninth.source).toBe('memory')
      expect(Math.abs(ninth.usableFlOz - brim * 32 * margin)).toBeLessThan(1)
    }
    expect(PAN_CAPACITIES.filter((row) => row.source === 'memory')).toEqual(ninths)
  })
})

describe('pans in a well, common practice, no source', () => {
  it('[Q9] three third-size pans fill one full-size well', () => {
    expect(fitsOneWell(['third', 'third', 'third'])).toBe(true)
    expect(fitsOneWell(['third', 'third', 'third', 'ninth'])).toBe(false)
  })

  it('[Q9] rows of pans by their outer inches fit exactly where the rule says so', () => {
    const [wide = 0, long = 0] = outer.wellIn
    const sizeOf = (size: PanSize) => {
      const row = outer.rows.find((one) => one.size === size)
      if (row === undefined) throw new Error(`no outer size for ${size}`)
      return row
    }
    const rows = (['full', 'half', 'third', 'quarter', 'sixth', 'ninth'] as const).map((size) => {
      const { acrossIn, alongIn } = sizeOf(size)
      return { size, across: Math.floor(wide / acrossIn), deep: Math.floor(long / alongIn) }
    })
    for (const { size, across, deep } of rows) {
      const most = across * deep
      expect(fitsOneWell(Array.from({ length: most }, () => size)), size).toBe(true)
      expect(fitsOneWell(Array.from({ length: most + 1 }, () => size)), size).toBe(false)
    }
  })
})
