import { describe, expect, test } from 'vitest'
import { notchPath } from '#components/ui/outline.ts'

const panel = { left: 0, top: 100, right: 400, bottom: 300 }
const at = { pad: 5, radius: 10 }

/** Where the outline turns, in order. */
const corners = (path: string): readonly string[] =>
  [...path.matchAll(/Q([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => `${x},${y}`)

describe('the outline of a panel and what it is about', () => {
  test('is the panel alone where it is about nothing', () => {
    expect(corners(notchPath(panel, [], at))).toEqual(['0,100', '400,100', '400,300', '0,300'])
  })

  test('runs up around a pan, as far off as asked', () => {
    const pan = { left: 100, top: 20, right: 160, bottom: 90 }
    expect(corners(notchPath(panel, [pan], at))).toEqual([
      '0,100',
      '95,100',
      '95,15',
      '165,15',
      '165,100',
      '400,100',
      '400,300',
      '0,300',
    ])
  })

  test('grows two notches for two pans, whichever is named first', () => {
    const one = { left: 100, top: 20, right: 160, bottom: 90 }
    const other = { left: 250, top: 20, right: 310, bottom: 90 }
    const path = notchPath(panel, [other, one], at)
    expect(path).toBe(notchPath(panel, [one, other], at))
    expect(corners(path)).toHaveLength(12)
  })

  test('has no step at the end of the line', () => {
    const first = { left: 3, top: 20, right: 60, bottom: 90 }
    const last = { left: 340, top: 20, right: 398, bottom: 90 }
    expect(corners(notchPath(panel, [first, last], at))).toEqual([
      '0,15',
      '65,15',
      '65,100',
      '335,100',
      '335,15',
      '400,15',
      '400,300',
      '0,300',
    ])
  })

  test('has no notch for what is walked out of sight at either end', () => {
    const before = { left: -200, top: 20, right: -116, bottom: 90 }
    const after = { left: 430, top: 20, right: 514, bottom: 90 }
    expect(notchPath(panel, [before, after], at)).toBe(notchPath(panel, [], at))
  })

  test('goes by itself around a pan with another row between', () => {
    const far = { left: 100, top: -200, right: 160, bottom: -100 }
    const path = notchPath(panel, [far], at)
    expect(path.split('Z').filter((part) => part.trim() !== '')).toHaveLength(2)
    expect(corners(path)).toEqual([
      '0,100',
      '400,100',
      '400,300',
      '0,300',
      '95,-205',
      '165,-205',
      '165,-95',
      '95,-95',
    ])
  })
})
