import { describe, expect, it } from 'vitest'
import ladles from '#fixtures/reference/icn-ladles.json' with { type: 'json' }
import { mlFrom, VOLUME_ML } from '#lib/measure/kitchen-units.ts'
import {
  SPOODLE_FL_OZ,
  type ToolPortion,
  toolAmount,
  toolVolumeMl,
} from '#lib/measure/portion-tools.ts'
import { scoopHandle } from '#lib/measure/scoops.ts'

describe('portion tools', () => {
  it('[F34] the purple handle is scoop #40 (common practice, no source) and holds 1/40 quart', () => {
    expect(scoopHandle(40)?.colour).toBe('purple')
    expect(toolVolumeMl({ tool: 'scoop', number: 40 })).toBe(VOLUME_ML.quart / 40)
    expect(toolVolumeMl({ tool: 'scoop', number: 40 })).toBeCloseTo(23.66, 2)
  })

  it('[F34] a ladle or spoodle stamped in ounces holds fluid ounces', () => {
    for (const { labelOz, measureCups } of ladles.rows) {
      const ml = mlFrom(measureCups, 'cup')
      expect(toolVolumeMl({ tool: 'ladle', flOz: labelOz })).toBeCloseTo(ml, 9)
      if (labelOz < 12) expect(toolVolumeMl({ tool: 'spoodle', flOz: labelOz })).toBeCloseTo(ml, 9)
    }
    expect(() => toolVolumeMl({ tool: 'spoodle', flOz: 12 })).toThrow(RangeError)
    expect(SPOODLE_FL_OZ).not.toContain(5)
    expect(() => toolVolumeMl({ tool: 'ladle', flOz: 5 })).toThrow(RangeError)
  })

  it('[F34] a measure holds its size of cup, tablespoon or teaspoon', () => {
    expect(toolVolumeMl({ tool: 'measure', size: 0.25, unit: 'cup' })).toBe(VOLUME_ML.cup / 4)
    expect(toolVolumeMl({ tool: 'measure', size: 2, unit: 'tbsp' })).toBe(VOLUME_ML.tbsp * 2)
    expect(() => toolVolumeMl({ tool: 'measure', size: 0, unit: 'tsp' })).toThrow(RangeError)
    expect(() => toolVolumeMl({ tool: 'measure', size: Infinity, unit: 'tsp' })).toThrow(RangeError)
  })

  it.each<[string, ToolPortion, number]>([
    ['2 level #16 of 100 g a cup', { tool: 'scoop', number: 16, level: 2, gPerCup: 100 }, 50_000],
    ['a 2 fl oz ladle of 240 g a cup', { tool: 'ladle', flOz: 2, level: 1, gPerCup: 240 }, 60_000],
    ['a spoodle of 4 fl oz', { tool: 'spoodle', flOz: 4, level: 1, gPerCup: 175 }, 87_500],
    ['1/3 cup', { tool: 'measure', size: 1 / 3, unit: 'cup', level: 1, gPerCup: 100 }, 33_333],
    ['tongs by weight', { tool: 'tongs', grams: 42.5 }, 42_500],
    [
      '2 squeezes, 7 of which weighed 60 g',
      { tool: 'bottle', squeezes: 2, weighed: { squeezes: 7, grams: 60 } },
      17_143,
    ],
  ])('[F34] %s take whole milligrams, rounded once', (_, portion, mg) => {
    expect(toolAmount(portion)).toEqual({ unit: 'mg', amount: mg })
  })

  it('[F34] tongs by the piece, pieces and lidded cups are counted', () => {
    expect(toolAmount({ tool: 'tongs-pieces', pieces: 3 })).toEqual({ unit: 'piece', amount: 3 })
    expect(toolAmount({ tool: 'piece', pieces: 2 })).toEqual({ unit: 'piece', amount: 2 })
    expect(toolAmount({ tool: 'lidded-cup' })).toEqual({ unit: 'piece', amount: 1 })
  })

  it.each<[string, ToolPortion]>([
    ['half a piece', { tool: 'piece', pieces: 0.5 }],
    ['no pieces', { tool: 'tongs-pieces', pieces: 0 }],
    ['no level measures', { tool: 'scoop', number: 16, level: 0, gPerCup: 100 }],
    ['a heaped one and a half', { tool: 'ladle', flOz: 2, level: 1.5, gPerCup: 100 }],
    ['no weight', { tool: 'tongs', grams: 0 }],
    [
      'a bottle nobody weighed',
      { tool: 'bottle', squeezes: 2, weighed: { squeezes: 0, grams: 0 } },
    ],
    ['no density', { tool: 'scoop', number: 16, level: 1, gPerCup: 0 }],
  ])('[F34] %s is no portion', (_, portion) => {
    expect(() => toolAmount(portion)).toThrow(RangeError)
  })
})
