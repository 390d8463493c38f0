import { describe, expect, it } from 'vitest'
import { type Mark, markOf } from '#lib/service/mark.ts'
import { markLines } from '#lib/words/service-en.ts'
import { choose, given, needs, running } from '#tests/support/service.ts'

const mark = (choice: ReturnType<typeof choose>): Mark => markOf(running(given()), 21, 'A', choice)
const said = (choice: ReturnType<typeof choose>): string => {
  const { name } = mark(choice)
  const lines = markLines(mark(choice))
  return lines.length === 0 ? name : `${name} ${lines.join(' · ')}`
}

describe('the mark of a build', () => {
  it('[W4] is its number and letter alone where nothing is otherwise', () => {
    expect(said(choose('garden-chicken'))).toBe('21A')
  })

  it('[W4] names what it goes without, has with it, has more of, and has on the side', () => {
    expect(said(choose('garden-chicken', { cheddar: 'no', slaw: 'no' }))).toBe(
      '21A NO SLAW · NO CHEDDAR',
    )
    expect(said(choose('garden-chicken', { almonds: 'in' }))).toBe('21A WITH ALMONDS')
    expect(said(choose('garden-chicken', { peppers: 2 }))).toBe('21A MORE PEPPERS')
    expect(said(choose('garden-chicken', { 'yogurt-sauce': 'side' }))).toBe('21A CUP SAUCE')
    expect(said(choose('garden-chicken', {}, { base: 'rice' }))).toBe('21A WITH RICE')
  })

  it('[W4] names a cup that goes beside it also where that is usual, and a usual cup that goes in', () => {
    expect(said(choose('bean-and-pepper'))).toBe('21A CUP SAUCE')
    expect(said(choose('bean-and-pepper', { 'yogurt-sauce': 'in' }))).toBe('21A WITH SAUCE')
  })

  it('[W5] never names an allergen alone, which would read as "contains"', () => {
    const choice = choose(
      'garden-chicken',
      { cheddar: 'no', 'yogurt-sauce': 'no' },
      needs(
        { code: 'milk', handling: 'keep-apart', reason: 'allergy' },
        { code: 'egg', handling: 'leave-out', reason: 'dislike' },
        { code: 'fish', handling: 'keep-apart', reason: null },
      ),
    )
    expect(markLines(mark(choice)).slice(2)).toEqual(['KEEP FROM MILK, FISH', 'WITHOUT EGG'])
  })

  it('[W5] names a diet as what the build is', () => {
    const vegan = needs({ code: 'vegan', handling: 'leave-out', reason: 'diet' })
    expect(said(choose('bean-and-pepper', { cheddar: 'no', 'yogurt-sauce': 'no' }, vegan))).toBe(
      '21A NO CHEDDAR · NO SAUCE · VEGAN',
    )
  })

  it('[W5] names kinds, gluten, and a diet that is kept apart', () => {
    const apart = (code: string) => ({ code, handling: 'keep-apart', reason: null }) as const
    const said = (...codes: string[]) =>
      markLines(mark(choose('garden-chicken', {}, needs(...codes.map(apart)))))
    expect(said('almond', 'gluten')).toEqual(['KEEP FROM ALMOND, GLUTEN'])
    expect(said('halal')).toEqual(['HALAL, KEPT APART'])
    expect(said('no-pork', 'milk')).toEqual(['KEEP FROM PORK, MILK'])
    const without = needs({ code: 'no-pork', handling: 'leave-out', reason: 'faith' })
    expect(markLines(mark(choose('garden-chicken', {}, without)))).toEqual(['WITHOUT PORK'])
  })
})
