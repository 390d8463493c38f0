import { describe, expect, it } from 'vitest'
import { type SaidOf, saidOf } from '#lib/paper/allergens/said-of.ts'
import { sayAllergens } from '#lib/paper/words/labels-en.ts'
import { sheetOf } from '#lib/rooms/care/views/allergen-sheet.ts'
import { ingredient, kitchen, touching } from '#tests/support/kitchens.ts'

type Plan = NonNullable<Parameters<typeof kitchen>[0]>

const almonds = { 'tree-nuts': 'contains', almond: 'contains' } as const
const nuts = [{ code: 'tree-nuts', kinds: [] }]
const onlyAlmonds = [{ code: 'tree-nuts', kinds: ['almond'] }]

/** The leaf is made of two ingredients, so that what one says counts beside the other. */
const madeOfTwo = (other: Parameters<typeof ingredient>[1], over = {}): Plan => {
  const { station } = kitchen({ said: { leaf: almonds } })
  return {
    over: {
      ingredients: [...station.ingredients, ingredient('dressing', other, over)],
      components: station.components.map((one) =>
        one.id === 'leaf' ? { ...one, ingredients: ['leaf', 'dressing'] } : one,
      ),
    },
  }
}

const labelOf = (plan: Plan): SaidOf =>
  saidOf(kitchen({ said: { leaf: almonds }, ...plan }), 'leaf')

const kindsOnSheet = (plan: Plan, id = 'leaf') => {
  const { station, soiled, lent } = kitchen({ said: { leaf: almonds }, ...plan })
  const { codes, items, components } = sheetOf({ station, soiled, lent, revision: 1, asOf: 0 })
  return [...items, ...components].find((one) => one.id === id)?.cells[codes.indexOf('tree-nuts')]
}

const words = (of: SaidOf): string =>
  sayAllergens(of)
    .map((part) => (part.kind === 'said' ? `${part.lead} ${part.items.join(', ')}` : ''))
    .join(' | ')

describe('the kinds of a group on paper', () => {
  it('[PR60] are named where they are all that labels name', () => {
    expect(labelOf({}).contains).toEqual(onlyAlmonds)
    expect(labelOf({}).mayContain).toEqual([])
    expect(kindsOnSheet({})).toMatchObject({ word: 'contains', kinds: ['almond'] })
    expect(kindsOnSheet({}, 'meal')).toMatchObject({ word: 'contains', kinds: ['almond'] })
  })

  it('[PR60] a kind that is warned of isn’t lost behind one that is contained', () => {
    for (const plan of [
      { said: { leaf: { ...almonds, walnut: 'may-contain' } } } as const,
      madeOfTwo({ 'tree-nuts': 'may-contain', walnut: 'may-contain' }),
    ]) {
      const label = labelOf(plan)
      expect(label.contains).toEqual(onlyAlmonds)
      expect(label.mayContain).toEqual([{ code: 'tree-nuts', kinds: ['walnut'] }])
      expect(words(label)).toMatch(
        /CONTAINS TREE NUTS \(ALMONDS?\).*MAY CONTAIN tree nuts \(walnut/,
      )
      expect(kindsOnSheet(plan)).toMatchObject({ word: 'contains', kinds: [] })
    }
  })

  it('[PR60] where a label names the group alone it may be any of them', () => {
    const contained = madeOfTwo({ 'tree-nuts': 'contains' })
    expect(labelOf(contained).contains).toEqual(nuts)
    expect(kindsOnSheet(contained)?.kinds).toEqual([])
    const warned = madeOfTwo({ 'tree-nuts': 'may-contain' })
    expect(labelOf(warned)).toMatchObject({ contains: onlyAlmonds, mayContain: nuts })
    expect(kindsOnSheet(warned)?.kinds).toEqual([])
  })

  it('[PR60] what nobody knows of one ingredient isn’t said to be one kind', () => {
    const unsaid = madeOfTwo({ 'tree-nuts': 'unknown' })
    expect(labelOf(unsaid).contains).toEqual(nuts)
    expect(kindsOnSheet(unsaid)?.kinds).toEqual([])
    const unread = madeOfTwo({}, { readOn: null })
    expect(labelOf(unread).contains).toEqual(nuts)
  })

  it('[PR60] a scoop of another kind, and what is beside it, are told of each kind', () => {
    const said = { leaf: almonds, cheese: { 'tree-nuts': 'contains', walnut: 'contains' } } as const
    const soiled = { said, soiled: [{ component: 'leaf', by: 'cheese' }] }
    expect(labelOf(soiled)).toMatchObject({ contains: onlyAlmonds, mayContain: nuts })
    expect(kindsOnSheet(soiled)?.kinds).toEqual([])
    const beside = { said, contacts: [touching('beside', 'leaf', 'cheese')] }
    expect(labelOf(beside).touches).toEqual(['walnut'])
    const same = { ...said, cheese: almonds }
    expect(labelOf({ ...beside, said: same }).touches).toEqual([])
  })

  it('[PR60] an item names no kind where another of its foods may be of any other', () => {
    const said = { leaf: almonds, sauce: { 'tree-nuts': 'may-contain' } } as const
    expect(kindsOnSheet({ said }, 'meal')).toMatchObject({ word: 'contains', kinds: [] })
    const walnut = {
      ...said,
      sauce: { 'tree-nuts': 'may-contain', walnut: 'may-contain' },
    } as const
    expect(kindsOnSheet({ said: walnut }, 'meal')?.kinds).toEqual([])
    const both = { ...said, sauce: { 'tree-nuts': 'contains', walnut: 'contains' } } as const
    expect(kindsOnSheet({ said: both }, 'meal')?.kinds).toEqual(['almond', 'walnut'])
  })
})
