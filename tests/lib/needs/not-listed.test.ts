import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { byWorst } from '#lib/needs/allergen-word.ts'
import { declaredBy, declaredIn } from '#lib/needs/declared.ts'
import { judgeComponent, RANK } from '#lib/needs/judge.ts'
import { factsOf } from '#lib/needs/kitchen.ts'
import { everyNeed } from '#lib/needs/says.ts'
import { ALLERGEN_SET_IDS, ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import { type Allergens, declarable } from '#lib/station/codes/askable.ts'
import { DIETS } from '#lib/station/codes/diets.ts'
import type { Declaration, Ingredient } from '#lib/station/station-document.ts'
import { ingredient, kitchen, need, touching } from '#tests/support/kitchens.ts'

const US: Allergens = { allergenSet: 'us-9', ownAllergens: ['kiwi'] }
const EU: Allergens = { allergenSet: 'eu-14', ownAllergens: ['kiwi'] }

const label = (declarations: Ingredient['declarations'], law?: Ingredient['law']): Ingredient => ({
  id: 'one',
  name: 'one',
  declarations,
  traits: [],
  claims: {},
  ...(law === undefined ? {} : { law }),
  readOn: '2026-11-20',
  readBy: 'lead',
})

/** What a label says of an allergen that it doesn't list. */
const unlisted = (code: string, law?: Ingredient['law'], station = US): Declaration =>
  declaredIn(station, label({ [code]: 'not-listed' }, law), code)

describe('what a label doesn’t list', () => {
  it('[N60] counts of each group of the law of its pack, and of nothing where that isn’t known', () => {
    for (const [station, law] of [
      [US, 'us-9'],
      [EU, 'eu-14'],
    ] as const)
      for (const { code } of ALLERGEN_SETS[law].groups) {
        expect(unlisted(code, law, station), code).toBe('not-listed')
        expect(unlisted(code, undefined, station), code).toBe('unknown')
      }
  })

  it.each(['molluscs', 'barley', 'rye', 'oats', 'gluten', 'kiwi'])(
    '[N60] says nothing of %s under the US nine',
    (code) => {
      expect(unlisted(code, 'us-9')).toBe('unknown')
      expect(unlisted(code, 'us-9', EU)).toBe('unknown')
    },
  )

  it('[N60] counts of kinds that have to be named: US nuts, fish and crustaceans, EU cereals and nuts', () => {
    for (const kind of ['walnut', 'pine-nut', 'salmon', 'shrimp'])
      expect(unlisted(kind, 'us-9'), kind).toBe('not-listed')
    for (const kind of ['walnut', 'wheat', 'oats'])
      expect(unlisted(kind, 'eu-14', EU), kind).toBe('not-listed')
    for (const kind of ['salmon', 'shrimp'])
      expect(unlisted(kind, 'eu-14', EU), kind).toBe('unknown')
  })

  it('[N60] by another law than the station’s counts for what that law has a label name', () => {
    expect(unlisted('molluscs', 'eu-14')).toBe('not-listed')
    expect(unlisted('barley', 'eu-14')).toBe('not-listed')
    expect(unlisted('wheat', 'eu-14')).toBe('not-listed')
    expect(unlisted('wheat', 'us-9', EU)).toBe('not-listed')
    expect(unlisted('gluten-cereals', 'us-9', EU)).toBe('unknown')
    expect(unlisted('celery', 'us-9', EU)).toBe('unknown')
    // A pine nut is a tree nut to a station of the US, and none to a pack of the EU.
    expect(unlisted('tree-nuts', 'eu-14')).toBe('unknown')
    expect(declaredIn(US, label({ 'tree-nuts': 'not-listed' }, 'eu-14'), 'almond')).toBe(
      'not-listed',
    )
    expect(declaredIn(US, label({ 'tree-nuts': 'not-listed' }, 'eu-14'), 'pine-nut')).toBe(
      'unknown',
    )
  })

  it('[N62] a kind isn’t listed where its group isn’t, and its other kinds aren’t warned of', () => {
    const fish = { fish: 'not-listed' } as const
    expect(declaredIn(US, label(fish, 'us-9'), 'salmon')).toBe('not-listed')
    expect(declaredIn(EU, label(fish, 'eu-14'), 'salmon')).toBe('not-listed')
    expect(declaredIn(US, label(fish), 'salmon')).toBe('unknown')
    const warned = label({ ...fish, cod: 'may-contain' }, 'us-9')
    expect(declaredIn(US, warned, 'salmon')).toBe('may-contain')
    expect(declaredIn(US, warned, 'fish')).toBe('may-contain')
  })

  it('[N62] a kind may be what a group says of no kind by name', () => {
    const said = (fish: Declaration, cod?: Declaration) =>
      declaredIn(
        US,
        label({ fish, salmon: 'not-listed', ...(cod === undefined ? {} : { cod }) }, 'us-9'),
        'salmon',
      )
    expect(said('contains')).toBe('unknown')
    expect(said('contains', 'contains')).toBe('not-listed')
    expect(said('may-contain')).toBe('may-contain')
    expect(said('may-contain', 'may-contain')).toBe('not-listed')
    expect(said('unknown')).toBe('not-listed')
  })

  it('[N63] no gluten is listed where none of the four cereals is, by a law that names them', () => {
    const cereals = { wheat: 'not-listed', rye: 'not-listed', barley: 'not-listed' } as const
    const gluten = (said: Ingredient['declarations'], law: Ingredient['law'], station = US) =>
      declaredIn(station, label(said, law), 'gluten')
    expect(gluten({ ...cereals, oats: 'not-listed' }, 'eu-14')).toBe('not-listed')
    expect(gluten({ ...cereals, oats: 'free' }, 'eu-14')).toBe('not-listed')
    expect(gluten({ 'gluten-cereals': 'not-listed' }, 'eu-14', EU)).toBe('not-listed')
    expect(gluten({ ...cereals, oats: 'not-listed' }, 'us-9')).toBe('unknown')
    for (const oats of ['contains', 'may-contain', 'unknown'] as const)
      expect(gluten({ ...cereals, oats }, 'eu-14'), oats).toBe('unknown')
    expect(gluten(cereals, 'eu-14')).toBe('unknown')
    expect(gluten({ ...cereals, oats: 'not-listed', gluten: 'may-contain' }, 'eu-14')).toBe(
      'may-contain',
    )
    expect(
      declaredIn(
        US,
        { ...label({ ...cereals, oats: 'not-listed' }, 'eu-14'), traits: ['gluten-grain'] },
        'gluten',
      ),
    ).toBe('contains')
  })

  it('[N64] takes nothing out of a diet whose traits were read, where it counts', () => {
    const all = {
      milk: 'not-listed',
      egg: 'not-listed',
      fish: 'not-listed',
      shellfish: 'not-listed',
    }
    const said = all as Ingredient['declarations']
    for (const diet of DIETS) {
      expect(declaredIn(US, label(said, 'us-9'), diet), diet).toBe('free')
      expect(declaredIn(US, { ...label(said, 'us-9'), traits: null }, diet), diet).toBe('unknown')
    }
    expect(declaredIn(US, label(said), 'vegan')).toBe('unknown')
  })

  it('[N66] counts for nothing while nobody has read the label', () => {
    expect(declaredIn(US, { ...label({ milk: 'not-listed' }, 'us-9'), readOn: null }, 'milk')).toBe(
      'unknown',
    )
  })
})

const unlistedMilk = (over: object = {}, said: Declaration = 'not-listed') => {
  const place = kitchen(over)
  return {
    ...place,
    station: {
      ...place.station,
      ingredients: place.station.ingredients.map((one) =>
        one.id === 'leaf' ? ingredient('leaf', { milk: said }, { law: 'us-9' }) : one,
      ),
    },
  }
}

describe('food that lists nothing of it', () => {
  it('[N61] is not listed, by no label alone, and worse than declared free', () => {
    const { station } = unlistedMilk()
    expect(declaredBy(station, 'leaf', 'milk')).toEqual({ state: 'not-listed', through: [] })
    const both = station.components.map((one) =>
      one.id === 'leaf' ? { ...one, ingredients: ['heart', 'leaf'] } : one,
    )
    expect(declaredBy({ ...station, components: both }, 'leaf', 'milk').state).toBe('not-listed')
    expect(byWorst('not-listed', 'free')).toBeLessThan(0)
    expect(byWorst('may-contain', 'not-listed')).toBeLessThan(0)
  })

  it('[N65] fits with a note, kept apart or left out', () => {
    for (const handling of ['keep-apart', 'leave-out'] as const)
      expect(judgeComponent(unlistedMilk(), 'leaf', [need('milk', handling)])).toMatchObject({
        level: 'note',
        findings: [
          { why: 'not-listed', level: 'note', touches: null, states: { leaf: 'not-listed' } },
        ],
      })
  })

  it('[N65] is a caution to keep apart where the station takes it so, and rules out where it blocks', () => {
    const level = (handling: 'keep-apart' | 'leave-out', cautions: 'ask' | 'block') =>
      judgeComponent(unlistedMilk({ over: { notListed: 'caution', cautions } }), 'leaf', [
        need('milk', handling),
      ]).level
    expect(level('keep-apart', 'ask')).toBe('caution')
    expect(level('keep-apart', 'block')).toBe('no')
    expect(level('leave-out', 'ask')).toBe('note')
    expect(level('leave-out', 'block')).toBe('note')
  })

  it('[N65] is taken from its own pan behind where what touches it can’t be', () => {
    const place = unlistedMilk({
      contacts: [touching('beside', 'leaf', 'cheese')],
      said: { cheese: { milk: 'contains' } },
      ready: ['leaf'],
    })
    const station = {
      ...place.station,
      backups: [
        {
          ...place.station.backups[0],
          id: 'b',
          component: 'leaf',
          protected: true,
          size: 'third',
          depthIn: 4,
          tareMg: null,
          kept: 'cold',
        } as const,
      ],
    }
    const judged = judgeComponent({ ...place, station }, 'leaf', [need('milk')])
    expect(judged).toMatchObject({ level: 'note', fromBackup: true })
    expect(judged.findings.map(({ why }) => why)).toEqual(['not-listed'])
  })

  it('[N64] reaches nothing that it touches, nor by its scoop, and carries what touches it', () => {
    const contacts = [touching('beside', 'leaf', 'heart')]
    const soiled = [{ component: 'wrap', by: 'leaf' }]
    const facts = factsOf(unlistedMilk({ contacts, soiled, over: { notListed: 'caution' } }))
    expect(facts('heart', 'milk').touched).toBeNull()
    expect(facts('wrap', 'milk').soiled).toBeNull()
    const beside = [...contacts, touching('board', 'leaf', 'cheese')]
    const said = { cheese: { milk: 'contains' } } as const
    const carried = factsOf(unlistedMilk({ contacts: beside, soiled, said }))
    expect(carried('wrap', 'milk').soiled).toMatchObject({
      component: 'leaf',
      states: { leaf: 'contains' },
    })
    expect(carried('leaf', 'milk').touched).toMatchObject({ reached: ['cheese'] })
  })
})

const WORDS = ['contains', 'unknown', 'may-contain', 'not-listed', 'free'] as const

/** Any label, any law, any station: also such as the schema refuses. */
const anyLabel = fc
  .record({
    allergenSet: fc.constantFrom(...ALLERGEN_SET_IDS),
    law: fc.constantFrom(undefined, ...ALLERGEN_SET_IDS),
    seed: fc.array(fc.constantFrom(undefined, ...WORDS), { minLength: 60, maxLength: 60 }),
    traits: fc.constantFrom<Ingredient['traits']>(null, [], ['dairy'], ['gluten-grain']),
  })
  .map(({ allergenSet, law, seed, traits }) => {
    const station: Allergens = { allergenSet, ownAllergens: ['kiwi'] }
    const codes = [...declarable(station)]
    const declarations = Object.fromEntries(
      codes.flatMap((code, at) => {
        const said = seed[at % seed.length]
        return said === undefined ? [] : [[code, said]]
      }),
    )
    return { station, codes, one: { ...label(declarations, law), traits } }
  })

describe('not listed, of any label', () => {
  it('[N61] is never better than declared free, and no answer is better than not listed', () => {
    let counted = 0
    fc.assert(
      fc.property(anyLabel, fc.nat(), ({ station, codes, one }, at) => {
        const code = codes[at % codes.length] ?? ''
        const as = (said: Declaration) => ({
          ...one,
          declarations: { ...one.declarations, [code]: said },
        })
        for (const need of everyNeed(station)) {
          const [contains, unknown, unlistedWord, free] = (
            ['contains', 'unknown', 'not-listed', 'free'] as const
          ).map((said) => declaredIn(station, as(said), need))
          if (!contains || !unknown || !unlistedWord || !free) throw new Error('a word is missing')
          // Of another kind than the one that is said, a kind that is named says that it is no other.
          const isOwn = need === code
          expect(byWorst(unlistedWord, free), `${need} by ${code}`).toBeLessThanOrEqual(0)
          if (isOwn) expect(byWorst(contains, unlistedWord)).toBeLessThanOrEqual(0)
          if (isOwn) expect(byWorst(unknown, unlistedWord)).toBeLessThanOrEqual(0)
          if (unlistedWord === 'not-listed') counted += 1
        }
      }),
      { numRuns: 300 },
    )
    expect(counted).toBeGreaterThan(500)
  })

  it('[N60] is nothing that is known where the law of the pack isn’t', () => {
    fc.assert(
      fc.property(anyLabel, ({ station, one }) => {
        const { law: _, ...without } = one
        const plain = Object.fromEntries(
          Object.entries(one.declarations).map(([code, said]) => [
            code,
            said === 'not-listed' ? ('unknown' as const) : said,
          ]),
        )
        for (const code of everyNeed(station))
          expect(declaredIn(station, without, code), code).toBe(
            declaredIn(station, { ...without, declarations: plain }, code),
          )
      }),
      { numRuns: 150 },
    )
  })

  it('[N61] [N65] what is unknown or warned of never fits as it is for what is kept apart', () => {
    fc.assert(
      fc.property(
        anyLabel,
        fc.constantFrom('fits' as const, 'caution' as const),
        ({ station, one }, notListed) => {
          const base = kitchen()
          const place = {
            ...base,
            station: {
              ...base.station,
              ...station,
              ownAllergens: [...station.ownAllergens],
              notListed,
              ingredients: base.station.ingredients.map((other) =>
                other.id === 'leaf' ? { ...one, id: 'leaf' } : other,
              ),
            },
          }
          for (const code of declarable(station)) {
            const { state } = declaredBy(place.station, 'leaf', code)
            const { level, findings } = judgeComponent(place, 'leaf', [need(code)])
            const expected = {
              contains: 'no',
              unknown: 'no',
              'may-contain': 'caution',
              'not-listed': notListed === 'fits' ? 'note' : 'caution',
              free: 'ok',
            } as const
            expect(level, `${code} ${state}`).toBe(expected[state])
            expect(findings.length).toBe(RANK[level] === RANK.ok ? 0 : 1)
          }
        },
      ),
      { numRuns: 80 },
    )
  })
})
