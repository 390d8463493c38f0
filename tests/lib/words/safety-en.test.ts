import { describe, expect, it } from 'vitest'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import { panRuleWords } from '#lib/words/pan-rules-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

const clock = (at: number): string => `${at}`
const said = { weight: (mg: number) => `${mg / 1000} g`, name: (id: string) => id }

/** Every string in a table of words, and what its functions say of some values. */
const strings = (words: object): readonly string[] =>
  Object.values(words).flatMap((one) =>
    typeof one === 'string' ? [one] : typeof one === 'object' && one ? strings(one) : [],
  )

const LOAD: readonly LoadProblem[] = [
  { code: 'in-the-future', byMs: 60_000 },
  { code: 'finished-before-started', byMs: 60_000 },
  { code: 'thrown-out' },
  { code: 'off-sale' },
  { code: 'not-finished' },
  { code: 'to-order-only' },
  { code: 'not-cooked', why: 'no-reading' },
  { code: 'not-cooled' },
  { code: 'not-reheated' },
  { code: 'not-watched', since: 1 },
  { code: 'past-throw-out', at: 1 },
  { code: 'past-date-mark', lastDay: '2026-10-01' },
  { code: 'not-back-to-hot-or-cold', at: 1 },
  { code: 'needs-clock' },
  { code: 'no-load-reading' },
  { code: 'load-out-of-limits' },
]

const CARRIES = { id: '#8', why: 'carries', from: 'Slaw', into: 'Rice' } as const

const sentences = [
  ...strings(safetyWords),
  ...strings(panRuleWords),
  safetyWords.outOfLimits('Chicken', '128 °F'),
  ...LOAD.map((problem) => safetyWords.load(problem, clock)),
  safetyWords.readingMissed('Chicken', '11:00'),
  safetyWords.toThrowOut('Chicken', '15:10'),
  safetyWords.cooling({ state: 'missed', stage: 1, startedAt: 1 }, limits, 'F', clock),
  safetyWords.cooling({ state: 'cooled', startedAt: 1, at: 2 }, limits, 'F', clock),
  panRuleWords.notLent({ ...CARRIES, code: 'milk' }, said),
  panRuleWords.notLent({ ...CARRIES, code: 'vegan' }, said),
  panRuleWords.notLent({ id: '#8', why: 'allergen-only' }, said),
  panRuleWords.nearest({ best: null, notLent: [] }, said),
]

describe('words on temperature and time', () => {
  it('[F40] nothing is called safe or allergen-free', () => {
    expect(sentences.length).toBeGreaterThan(30)
    for (const sentence of sentences)
      expect(sentence).not.toMatch(/\bsafe(ly|ty)?\b|allergen[- ]free|\bfree of\b/i)
  })

  it('[F40] every reason not to load has a sentence of its own', () => {
    expect(new Set(LOAD.map((one) => safetyWords.load(one, clock))).size).toBe(LOAD.length)
  })

  it('[F40] local code and the certified person in charge decide', () => {
    expect(safetyWords.decides).toMatch(/Local code and the certified person in charge decide/)
    expect(safetyWords.outOfLimits('Chicken', '128 °F')).toContain(safetyWords.askInCharge)
    expect(safetyWords.load({ code: 'load-out-of-limits' }, clock)).toContain(
      safetyWords.askInCharge,
    )
  })

  it('[F2] a limit is said with its paragraph, and what was not read in a copy is told', () => {
    expect(safetyWords.limit(limits.hotHolding, 'F')).toBe('135 °F or above')
    expect(safetyWords.limit(limits.coldHolding, 'C')).toBe('5 °C or below')
    expect(safetyWords.paragraph(limits.hotHolding)).toBe('FDA Food Code 2022, 3-501.16(A)(1)')
    expect(safetyWords.paragraph(limits.cookPlant)).toMatch(/not read in a copy/)
    expect(safetyWords.heat(limits.reheatMicrowave, 'F')).toBe('165 °F, then 2 min covered')
    expect(safetyWords.heat(limits.cookGroundMeat, 'C')).toBe(
      '68 °C for 17 s, or 63 °C for 180 s, or 66 °C for 60 s, or 70 °C',
    )
  })

  it('[F5] a question names the scale and the figure', () => {
    const read = { tenths: 1650, scale: 'C' } as const
    expect(safetyWords.question({ code: 'did-you-mean', scale: 'F', must: true }, read)).toBe(
      '165 °C can’t be here. Did you mean °F: 165 °F?',
    )
    expect(safetyWords.degrees({ tenths: 1285, scale: 'F' })).toBe('128.5 °F')
  })

  it('[F23] cooling is said in the limits that hold and on the kitchen’s scale', () => {
    const stage = { state: 'first-stage', startedAt: 1, dueAt: 7 } as const
    expect(safetyWords.cooling(stage, limits, 'F', clock)).toBe('To 70 °F by 7')
    expect(safetyWords.cooling(stage, limits, 'C', clock)).toBe('To 21 °C by 7')
    const missed = { state: 'missed', stage: 2, startedAt: 1 } as const
    expect(safetyWords.cooling(missed, limits, 'F', clock)).toMatch(
      /No reading shows 41 °F in time/,
    )
  })

  it('[F35] the nearest scoop is said with its error and the portions', () => {
    const best = {
      measures: [{ id: '#30 black', count: 2 }],
      portionMg: 1,
      error: 0.0667,
      portionsLeft: 37,
      portionsBefore: 40,
    }
    expect(panRuleWords.nearest({ best, notLent: [] }, said)).toBe(
      '2 level #30 black: 7 % heavy, 37 portions instead of 40.',
    )
    expect(panRuleWords.nearest({ best: { ...best, error: -0.2 }, notLent: [] }, said)).toMatch(
      /20 % light/,
    )
  })

  it('[F36] a tool that stays where it is says what it may carry, also of a diet', () => {
    const carries = (code: string) => panRuleWords.notLent({ ...CARRIES, code }, said)
    expect(carries('tree-nuts')).toBe(
      '#8 stays where it is: it may carry tree nuts from Slaw into Rice.',
    )
    expect(carries('no-pork')).toBe('#8 stays where it is: it may carry pork from Slaw into Rice.')
    expect(carries('halal')).toBe(
      '#8 stays where it is: it may carry what may not be halal from Slaw into Rice.',
    )
  })

  it('[F37][F38] a pan too full or a weight too small is refused with its reason', () => {
    expect(panRuleWords.amount({ code: 'overfull', most: 4_000_000 }, 'mg', said)).toMatch(/4000 g/)
    expect(panRuleWords.amount({ code: 'overfull', most: 24 }, 'piece', said)).toMatch(/24 at most/)
    expect(panRuleWords.amount({ code: 'below-tare', tareMg: 900_000 }, 'mg', said)).toMatch(
      /900 g/,
    )
  })
})
