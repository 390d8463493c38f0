import { describe, expect, it } from 'vitest'
import { declaredIn } from '#lib/needs/declared.ts'
import { glutenProblem } from '#lib/station/gluten.ts'
import type { Declaration, Ingredient } from '#lib/station/station-document.ts'
import { ingredient } from '#tests/support/kitchens.ts'

const US = { allergenSet: 'us-9', ownAllergens: [] } as const
const EU = { allergenSet: 'eu-14', ownAllergens: [] } as const

const WORDS: readonly (Declaration | undefined)[] = [
  'contains',
  'may-contain',
  'free',
  'unknown',
  undefined,
]

const label = (
  declarations: Ingredient['declarations'],
  over: Partial<Ingredient> = {},
): Ingredient => ({ ...ingredient('flour', {}, over), declarations })

const said = (gluten: Declaration | undefined) => (gluten === undefined ? {} : { gluten })

describe('gluten of a grain that is contained', () => {
  it.each(WORDS)('[N30] wheat is gluten, though the label says %s', (word) => {
    for (const set of [US, EU])
      expect(declaredIn(set, label({ wheat: 'contains', ...said(word) }), 'gluten')).toBe(
        'contains',
      )
  })

  // 21 CFR 101.91(b)(3).
  it.each(WORDS)(
    '[N30] with the statement beside wheat it is as declared free: said %s',
    (word) => {
      const stated = label({ wheat: 'contains', ...said(word) }, { glutenStatement: true })
      for (const set of [US, EU])
        expect(declaredIn(set, stated, 'gluten')).toBe(word === 'free' ? 'free' : 'contains')
      expect(declaredIn(US, stated, 'wheat')).toBe('contains')
      expect(declaredIn(US, { ...stated, traits: ['gluten-grain'] }, 'gluten')).toBe(
        word === 'free' ? 'free' : 'contains',
      )
    },
  )

  it('[N30] a statement that nobody has read counts for nothing', () => {
    const stated = label({ wheat: 'contains', gluten: 'free' }, { glutenStatement: true })
    expect(declaredIn(US, { ...stated, readOn: null }, 'gluten')).toBe('unknown')
  })

  it.each(['barley', 'rye'])('[N31] %s is gluten, whatever is declared or stated', (grain) => {
    for (const set of [US, EU])
      for (const word of WORDS)
        for (const over of [{}, { glutenStatement: true as const }])
          for (const wheat of [{}, { wheat: 'contains' as const }])
            expect(
              declaredIn(
                set,
                label({ ...wheat, [grain]: 'contains', ...said(word) }, over),
                'gluten',
              ),
            ).toBe('contains')
  })

  it('[N31] so is a gluten grain that is ticked and isn’t wheat', () => {
    for (const over of [{}, { glutenStatement: true as const }])
      expect(
        declaredIn(US, label({ gluten: 'free' }, { traits: ['gluten-grain'], ...over }), 'gluten'),
      ).toBe('contains')
  })

  it('[N31] a cereal that isn’t named leaves gluten unknown, unless its grains are declared free', () => {
    const cereal = { 'gluten-cereals': 'contains', gluten: 'free' } as const
    expect(declaredIn(EU, label(cereal), 'gluten')).toBe('unknown')
    expect(declaredIn(EU, label({ ...cereal, gluten: 'contains' }), 'gluten')).toBe('contains')
    expect(declaredIn(EU, label({ ...cereal, oats: 'contains' }), 'gluten')).toBe('free')
    const others = { wheat: 'free', barley: 'free', rye: 'free' } as const
    expect(declaredIn(EU, label({ ...cereal, ...others }), 'gluten')).toBe('free')
    expect(declaredIn(EU, label({ ...cereal, ...others, rye: 'unknown' }), 'gluten')).toBe(
      'unknown',
    )
  })
})

describe('what a label that is told says of gluten', () => {
  it('[N32] contradicts where it is anything but contained beside a grain, or not said', () => {
    for (const word of WORDS) {
      const isSo = word === 'contains'
      expect(glutenProblem(label({ wheat: 'contains', ...said(word) }))).toEqual(
        isSo ? null : { why: 'wheat-is-gluten' },
      )
      expect(glutenProblem(label({ rye: 'contains', ...said(word) }))).toEqual(
        isSo ? null : { why: 'always-gluten', grain: 'rye' },
      )
      expect(glutenProblem(label({ ...said(word) }, { traits: ['gluten-grain'] }))).toEqual(
        isSo ? null : { why: 'always-gluten', grain: 'gluten-grain' },
      )
      expect(glutenProblem(label({ oats: 'contains', wheat: 'may-contain', ...said(word) }))).toBe(
        null,
      )
    }
  })

  it('[N32] is free beside wheat with the statement, which stands nowhere else', () => {
    const stated = { glutenStatement: true } as const
    const free = { wheat: 'contains', gluten: 'free' } as const
    expect(glutenProblem(label(free, stated))).toBeNull()
    expect(glutenProblem(label(free, { ...stated, traits: ['gluten-grain'] }))).toBeNull()
    expect(glutenProblem(label({ ...free, barley: 'contains' }, stated))).toEqual({
      why: 'always-gluten',
      grain: 'barley',
    })
    for (const gluten of ['contains', 'may-contain'] as const)
      expect(glutenProblem(label({ ...free, gluten }, stated))).toEqual({ why: 'statement-alone' })
    expect(glutenProblem(label({ wheat: 'free', gluten: 'free' }, stated))).toEqual({
      why: 'statement-alone',
    })
  })
})
