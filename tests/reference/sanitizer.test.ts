/**
 * FDA Food Code 2022, 4-501.114(A) to (C): chlorine and iodine as seen in state adoptions of the text
 * (shared reference table, 4.4), quaternary ammonium by its label. The most of chlorine is from memory.
 */
import { describe, expect, it } from 'vitest'
import { type SanitizerReading, sanitizerProblem } from '#lib/safety/sanitizer.ts'
import { degrees } from '#tests/support/readings.ts'

const solution = (
  kind: SanitizerReading['kind'],
  mgPerL: number,
  water: number | null,
  ph: number | null,
  scale: 'F' | 'C' = 'F',
): SanitizerReading => ({
  kind,
  mgPerL,
  water: water === null ? null : degrees(water, scale),
  ph,
})
const label = { leastMgPerL: 200, mostMgPerL: 400, mostPh: null } as const

describe('4-501.114(A), chlorine', () => {
  it.each([
    // 25 to 49 mg/L
    [24, 120, 7, 'too-weak'],
    [25, 120, 10, null],
    [25, 119.9, 7, 'water-too-cold'],
    [49, 120, 8, null],
    [49, 100, 7, 'water-too-cold'],
    // 50 to 99 mg/L
    [50, 100, 10, null],
    [50, 99.9, 10, 'water-too-cold'],
    [50, 75, 8, null],
    [50, 75, 8.1, 'water-too-cold'],
    [99, 74.9, 7, 'water-too-cold'],
    // 100 mg/L
    [100, 55, 10, null],
    [100, 54.9, 7, 'water-too-cold'],
    [100, 75, 10.1, 'ph-too-high'],
    [200, 75, 7, null],
    [201, 75, 7, 'too-strong'],
  ] as const)('[F71] %s mg/L at %s °F, pH %s: %s', (mgPerL, water, ph, problem) => {
    expect(sanitizerProblem(solution('chlorine', mgPerL, water, ph), null)).toBe(problem)
  })

  it.each([
    [25, 49, 7, null],
    [50, 38, 10, null],
    [50, 24, 8, null],
    [50, 23.9, 8, 'water-too-cold'],
    [100, 13, 7, null],
    [100, 12.9, 7, 'water-too-cold'],
  ] as const)('[F71] %s mg/L at %s °C, pH %s: %s', (mgPerL, water, ph, problem) => {
    expect(sanitizerProblem(solution('chlorine', mgPerL, water, ph, 'C'), null)).toBe(problem)
  })

  it('[F71] of a pH that nobody read takes the stricter row', () => {
    expect(sanitizerProblem(solution('chlorine', 50, 75, null), null)).toBe('water-too-cold')
    expect(sanitizerProblem(solution('chlorine', 50, 100, null), null)).toBeNull()
    const mild = { leastMgPerL: 50, mostMgPerL: 150, mostPh: 8 }
    expect(sanitizerProblem(solution('chlorine', 100, 75, null), mild)).toBe('ph-not-read')
    expect(sanitizerProblem(solution('chlorine', 100, 75, 8), mild)).toBeNull()
    expect(sanitizerProblem(solution('chlorine', 160, 75, 8), mild)).toBe('too-strong')
    expect(sanitizerProblem(solution('chlorine', 40, 120, 8), mild)).toBe('too-weak')
  })

  it('[F71] isn’t weaker than the code by its label', () => {
    const weak = { leastMgPerL: 10, mostMgPerL: 20, mostPh: null }
    expect(sanitizerProblem(solution('chlorine', 15, 120, 7), weak)).toBe('too-weak')
  })
})

describe('4-501.114(B), iodine', () => {
  it.each([
    [12.4, 68, 5, 'too-weak'],
    [12.5, 68, 5, null],
    [25, 68, 5, null],
    [25.1, 68, 5, 'too-strong'],
    [12.5, 67.9, 5, 'water-too-cold'],
    [12.5, 68, 5.1, 'ph-too-high'],
    [12.5, 68, null, 'ph-not-read'],
  ] as const)('[F72] %s mg/L at %s °F, pH %s: %s', (mgPerL, water, ph, problem) => {
    expect(sanitizerProblem(solution('iodine', mgPerL, water, ph), null)).toBe(problem)
  })

  it('[F72] at the pH that its label states', () => {
    const stated = { leastMgPerL: 12.5, mostMgPerL: 25, mostPh: 6.5 }
    expect(sanitizerProblem(solution('iodine', 15, 20, 6.5, 'C'), stated)).toBeNull()
    expect(sanitizerProblem(solution('iodine', 15, 20, 6.6, 'C'), stated)).toBe('ph-too-high')
    const strong = { leastMgPerL: 15, mostMgPerL: 20, mostPh: 5 }
    expect(sanitizerProblem(solution('iodine', 14, 20, 5, 'C'), strong)).toBe('too-weak')
    expect(sanitizerProblem(solution('iodine', 21, 20, 5, 'C'), strong)).toBe('too-strong')
  })
})

describe('4-501.114(C), quaternary ammonium', () => {
  it('[F73] passes nothing without its label', () => {
    expect(sanitizerProblem(solution('quaternary-ammonium', 200, 75, 7), null)).toBe(
      'label-not-read',
    )
  })

  it.each([
    [199, 75, 'too-weak'],
    [200, 75, null],
    [400, 75, null],
    [401, 75, 'too-strong'],
    [200, 74.9, 'water-too-cold'],
  ] as const)('[F73] %s mg/L at %s °F by a label of 200 to 400: %s', (mgPerL, water, problem) => {
    expect(sanitizerProblem(solution('quaternary-ammonium', mgPerL, water, null), label)).toBe(
      problem,
    )
  })

  it('[F73] minds the pH only where its label does', () => {
    const strict = { ...label, mostPh: 9 }
    const of = (ph: number | null) => solution('quaternary-ammonium', 200, 24, ph, 'C')
    expect(sanitizerProblem(of(null), strict)).toBe('ph-not-read')
    expect(sanitizerProblem(of(9), strict)).toBeNull()
    expect(sanitizerProblem(of(9.1), strict)).toBe('ph-too-high')
  })
})

describe('any solution', () => {
  it.each(['chlorine', 'iodine', 'quaternary-ammonium'] as const)(
    '[F74] of %s passes nothing without the temperature of its water',
    (kind) => {
      expect(sanitizerProblem(solution(kind, 200, null, 7), label)).toBe('water-not-read')
    },
  )

  it('[F74] is a strength of 0 mg/L or above and a pH of 0 to 14', () => {
    expect(() => sanitizerProblem(solution('chlorine', -1, 75, 7), null)).toThrow(RangeError)
    expect(() => sanitizerProblem(solution('chlorine', Number.NaN, 75, 7), null)).toThrow(
      RangeError,
    )
    expect(() => sanitizerProblem(solution('chlorine', 50, 75, 14.1), null)).toThrow(RangeError)
    expect(sanitizerProblem(solution('chlorine', 0, 120, 7), null)).toBe('too-weak')
  })
})
