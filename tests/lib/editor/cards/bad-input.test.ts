import { describe, expect, it } from 'vitest'
import { cardBoxOf, cardOf } from '#lib/editor/cards/card-box.ts'
import { servedAsOf } from '#lib/editor/cards/served-as.ts'
import type { Draft, Row } from '#lib/editor/draft.ts'
import { draftOf, type WrittenDocument } from '#lib/editor/draft-of.ts'
import { problemsOf } from '#lib/editor/problems-of.ts'
import { sayProblem } from '#lib/editor/words/problems-en.ts'
import { costOfCard } from '#lib/recipes/card-cost.ts'
import { invoiceTyped } from '#lib/recipes/invoice-typed.ts'
import { recipeSheet } from '#lib/recipes/sheet/recipe-sheet.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { demoStation } from '#server/demo-station.ts'

const demo = draftOf(JSON.parse(JSON.stringify(demoStation)) as WrittenDocument)
const put = (key: keyof Draft['rows'], fields: Row): Draft => ({
  ...demo,
  rows: { ...demo.rows, [key]: { ...demo.rows[key], ...fields } },
})
const unasked = { make: '', handOf: null, hand: '', fits: '', portions: '' }
const sheetOf = (draft: Draft, recipe: string) => {
  const card = cardOf(draft, recipe)
  if (!card) throw new Error(recipe)
  return recipeSheet(card, cardBoxOf(draft), servedAsOf(draft, recipe), unasked)
}
const codes = (draft: Draft) =>
  problemsOf(draft, {}).map(({ code, id, field }) => `${code} ${id} ${field}`)

describe('bad input of a recipe: where, and how to mend it', () => {
  it('[RC68] a unit without a density: a yield by weight isn’t held against scoops, and scoops are asked for', () => {
    const typed = put('recipe:tuna-mix', { yields: '8 lb' })
    const draft: Draft = {
      ...typed,
      rows: {
        ...typed.rows,
        // A lidded cup says a volume, and nothing of what is in it.
        'component:tuna': { ...demo.rows['component:tuna'], portion: { tool: 'cup', flOz: 4 } },
      },
    }
    expect(sheetOf(draft, 'tuna-mix').checked).toEqual({ code: 'no-density' })
    expect(recipeEn.noDensity).toMatch(/weigh ten scoops/)
    expect(cardOf(draft, 'tuna-mix')?.yields).toBe('8 lb')
  })

  it('[RC68] a yield of zero is told at its field, and stays as typed', () => {
    const draft = put('recipe:tuna-mix', { yields: 'serves 0' })
    expect(codes(draft)).toContain('yield-zero tuna-mix yields')
    const { yieldProblem, factor } = sheetOf(draft, 'tuna-mix')
    expect(yieldProblem && recipeEn.problem(yieldProblem)).toBe('It is nothing: type more than 0.')
    expect(factor.over).toBe(factor.under)
    expect(cardOf(draft, 'tuna-mix')?.yields).toBe('serves 0')
  })

  it('[RC68] a recipe that contains itself is told at it, and its cost says where', () => {
    const draft = put('recipe:dressed-mayonnaise', {
      recipes: ['tuna-mix'],
      yields: '2 cups',
      lines: [{ of: 'tuna-mix', typed: '1 cup' }],
    })
    const round: Draft = {
      ...draft,
      rows: {
        ...draft.rows,
        'recipe:tuna-mix': {
          ...demo.rows['recipe:tuna-mix'],
          yields: '4 qt',
          lines: [{ of: 'dressed-mayonnaise', typed: '1 cup' }],
        },
      },
    }
    const problem = problemsOf(round, {}).find(({ code }) => code === 'contains-itself')
    expect(problem?.field).toBe('recipes')
    expect(problem && sayProblem(round, problem)).toMatch(/contains itself/)
    const card = cardOf(round, 'tuna-mix')
    if (!card) throw new Error('no card')
    const { unknown } = costOfCard(card, cardBoxOf(round))
    expect(unknown.map(({ cost }) => !cost.ok && recipeEn.costCode(cost.code))).toContain(
      'it contains itself: take it out of one of its recipes',
    )
  })

  it('[RC68] a pan that can’t hold what it is usually loaded with says how much it holds', () => {
    const draft = put('pan:pan-rice', { usualPortions: 400 })
    expect(codes(draft)).toContain('usual-overfull pan-rice usualPortions')
    const problem = problemsOf(draft, {}).find(({ code }) => code === 'usual-overfull')
    expect(problem && sayProblem(draft, problem)).toMatch(/holds \d+ portions at most/)
  })

  it('[RC68] a price of nothing is no price: the field says so, and a line of before isn’t counted', () => {
    const typed = { date: '2026-11-02', packs: '2', packTyped: '6 x #10 cans', paid: '0' }
    expect(invoiceTyped(typed, '2026-11-02')).toMatchObject({ ok: false, field: 'paid' })
    const free = { date: '2026-11-02', packs: 1, packTyped: '1 #10 can', cents: 0 }
    const draft = put('ingredient:tuna', { invoices: [free] })
    const card = { ...sheetCard, lines: [{ of: 'tuna', isRecipe: false, typed: '1 #10 can' }] }
    const { unknown } = costOfCard(card, cardBoxOf(draft))
    expect(unknown.map(({ cost }) => !cost.ok && recipeEn.costCode(cost.code))).toEqual([
      'the invoice says 0: add a line with what was paid',
    ])
  })
})

const sheetCard = { id: 'tuna-mix', name: 'Tuna mix', yields: '4 qt' }
