import { describe, expect, it } from 'vitest'
import { typedLoad } from '#lib/editor/cards/typed-load.ts'
import type { Json } from '#lib/editor/draft.ts'
import { setUpFacts } from '#lib/paper/set-up/set-up-facts.ts'
import { setUpSheetEn } from '#lib/paper/words/set-up-sheet-en.ts'
import { portionTotal } from '#lib/recipes/portion-total.ts'
import { ratio } from '#lib/recipes/rational.ts'
import { typedAmount } from '#lib/recipes/typed-amount.ts'
import { setUpWords } from '#lib/rooms/pans/words/set-up-en.ts'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import { prepEn } from '#lib/rooms/prep/words/prep-en.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'
import { loadTotal } from '#lib/station/portion-amount.ts'
import { sayPortionTotal } from '#lib/words/recipe/portion-total-en.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { readSources } from '#tests/support/source-tree.ts'

const amount = (typed: string) => {
  const found = typedAmount(typed)
  if (!found.ok || found.amount === null) throw new Error(typed)
  return found.amount
}
const said = (typed: string, count: number) => sayPortionTotal(portionTotal(amount(typed), count))

describe('portion × count = total', () => {
  it('[RC60] is exact, and said as a kitchen measures', () => {
    expect(portionTotal(amount('1/3 cup'), 3).total).toEqual(amount('1 cup'))
    expect(portionTotal(amount('1/4 cup'), ratio(5, 2)).total).toEqual(amount('5/8 cup'))
    expect(said('1/2 cup', 24)).toBe('24 × 1/2 cup = 3 qt')
    // Common practice, no source: 40 portions of 1 1/2 oz.
    expect(said('1 1/2 oz', 40)).toBe('40 × 1 1/2 oz = 3 lb 12 oz')
    expect(said('1 piece', 36)).toBe('36 × 1 = 36 pieces')
    expect(said('2 pieces', 1)).toBe('1 × 2 = 2 pieces')
  })

  const sheets = setUpFacts(demoStation).wells.flatMap(({ pans }) => pans)

  it.each(pansOf(demoStation))('[RC60] of $id every sheet says the same', (pan) => {
    const component = componentOf(demoStation, pan.component)
    const count = pan.usualPortions
    const total = loadTotal(component, count)
    const same = sayPortionTotal(total)
    const onPaper = sheets.find((one) => one.pan === pan.id)
    if (!onPaper) throw new Error('not on the set-up sheet')
    expect(setUpSheetEn.load(onPaper).join(' ')).toBe(same)
    expect(setUpWords.total(total)).toBe(same)
    expect(planEn.panTitle(component.name, 1, total)).toBe(`${component.name}: 1 load, ${same}`)
    expect(prepEn.amount({ amount: { loads: 1, portions: count } }, total)).toBe(`1 load, ${same}`)
    expect(recipeEn.portionTotal(null, 1, total)).toBe(same)
    expect(recipeEn.portionTotal(16, 2, total)).toBe(`2 level #16: ${same}`)
  })

  it.each(pansOf(demoStation))('[RC60] of $id it stands while the pan is set up', (pan) => {
    const { portion } = componentOf(demoStation, pan.component)
    const said = (typed: Json | undefined, count: Json | undefined) => {
      const load = typedLoad(typed, count)
      return load && sayPortionTotal(load)
    }
    const same = sayPortionTotal(loadTotal({ portion }, pan.usualPortions))
    const typed = JSON.parse(JSON.stringify(portion)) as Record<string, Json>
    expect(said(typed, pan.usualPortions)).toBe(same)
    // What a cup of it weighs isn't known yet, but what it measures is.
    const { gPerCup: _, ...unweighed } = typed
    expect(said(unweighed, pan.usualPortions)).toBe(same)
    for (const count of [undefined, 0, 1.5, '24']) expect(said(typed, count)).toBeNull()
    expect(said(undefined, 24)).toBeNull()
    expect(said({ tool: 'scoop' }, 24)).toBeNull()
  })

  const sources = readSources(['lib', 'components'])
  const ONE = 'lib/recipes/portion-total.ts'
  const WORDS = 'lib/words/recipe/portion-total-en.ts'

  it('[RC60] no other file multiplies a portion, or writes one with a times sign', () => {
    expect(sources.map(({ path }) => path)).toEqual(expect.arrayContaining([ONE, WORDS]))
    const multiplies = /\bscaled\(\s*\w*[pP]ortion\b/
    const writes = /×.*\b(sayAmount|amountOf|sayMeasure|sayWeight|words\.amount)\(/
    const offenders = sources.flatMap(({ path, text }) =>
      (multiplies.test(text) && path !== ONE) || (writes.test(text) && path !== WORDS)
        ? [path]
        : [],
    )
    expect(offenders).toEqual([])
  })

  const takesIt = ({ path, imports }: (typeof sources)[number]) =>
    path === 'lib/words/recipe/recipe-en.ts' && imports.some(({ file }) => file === WORDS)

  it('[RC60] every sheet with portions on it takes its words from there', () => {
    const sheetsWords = sources.filter(
      ({ path, text }) =>
        /^lib\/(paper\/words|rooms\/prep\/words)\/.*(sheet|list|plan|tasks|card).*-en\.ts$/.test(
          path,
        ) && /portions/.test(text),
    )
    expect(sheetsWords.length).toBeGreaterThanOrEqual(3)
    // The card says it by the words of its screen, which take it from there.
    const by = [WORDS, ...sources.filter(takesIt).map(({ path }) => path)]
    for (const { path, imports } of sheetsWords)
      expect(
        imports.some(({ file }) => by.includes(file ?? '')),
        path,
      ).toBe(true)
  })
})
