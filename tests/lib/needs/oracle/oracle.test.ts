import { describe, expect, it } from 'vitest'
import { generatedStation } from '#tests/lib/needs/oracle/generated-stations.ts'
import { createOracle, ingredientsOf, reachedFrom } from '#tests/lib/needs/oracle/oracle.ts'
import { createSearch } from '#tests/lib/needs/oracle/smallest-change.ts'
import { rankOf } from '#tests/lib/needs/oracle/table.ts'
import { backup, ingredient, kitchen, need, touching } from '#tests/support/kitchens.ts'

describe('the oracle on cases worked out by hand', () => {
  it('rules out to keep apart what contains it and what is unknown, and warns of a warning', () => {
    const opinion = createOracle(
      kitchen({
        said: {
          cheese: { milk: 'contains' },
          leaf: { milk: 'unknown' },
          sauce: { milk: 'may-contain' },
        },
      }),
    )
    const classes = (handling: 'keep-apart' | 'leave-out') =>
      ['cheese', 'leaf', 'sauce', 'heart'].map((id) => opinion(id, need('milk', handling)).class)
    expect(classes('keep-apart')).toEqual(['no', 'no', 'caution', 'ok'])
    expect(classes('leave-out')).toEqual(['no', 'ask', 'note', 'ok'])
  })

  it('follows contact over any number of steps, and out of a back-up pan only what stays', () => {
    const said = { cheese: { milk: 'contains' as const } }
    const contacts = [touching('scoop', 'heart', 'leaf'), touching('griddle', 'leaf', 'cheese')]
    const backups = ['heart', 'leaf'].map((component) => backup(component))
    const line = kitchen({ said, contacts, backups })
    const ready = kitchen({ said, contacts, backups, ready: ['heart', 'leaf'] })
    expect([...reachedFrom(line, 'heart', false)].sort()).toEqual(['cheese', 'leaf'])
    expect([...reachedFrom(line, 'heart', true)]).toEqual([])
    expect([...reachedFrom(line, 'leaf', true)].sort()).toEqual(['cheese', 'heart'])
    expect(createOracle(line)('heart', need('milk'))).toMatchObject({
      class: 'caution',
      named: ['contact'],
      fromBackup: false,
    })
    expect(createOracle(ready)('heart', need('milk'))).toMatchObject({
      class: 'ok',
      fromBackup: true,
    })
    expect(createOracle(ready)('leaf', need('milk')).class).toBe('caution')
  })

  it('counts a soiled pan as contact, and contact that nobody told as unknown', () => {
    const said = { cheese: { milk: 'contains' as const } }
    const soiled = [{ component: 'leaf', by: 'cheese' }]
    const classOf = (plan: Parameters<typeof kitchen>[0], handling: 'keep-apart' | 'leave-out') =>
      createOracle(kitchen({ said, ...plan }))('leaf', need('milk', handling)).class
    expect(classOf({}, 'keep-apart')).toBe('ok')
    expect(classOf({ soiled }, 'keep-apart')).toBe('caution')
    expect(classOf({ soiled, over: { cautions: 'block' } }, 'keep-apart')).toBe('no')
    expect(classOf({ contacts: null }, 'keep-apart')).toBe('no')
    expect(classOf({ contacts: null }, 'leave-out')).toBe('note')
  })

  it('finds every ingredient of a recipe in a recipe', () => {
    const { station } = kitchen({
      over: {
        ingredients: [ingredient('flour'), ingredient('salt')],
        recipes: [
          { id: 'dough', name: 'Dough', ingredients: ['flour'], recipes: [] },
          { id: 'bread', name: 'Bread', ingredients: ['salt'], recipes: ['dough'] },
        ],
      },
    })
    const names = ingredientsOf(station, { ingredients: [], recipes: ['bread'] })
    expect(names.map((one) => one.id).sort()).toEqual(['flour', 'salt'])
  })

  it('tries every change, and keeps those that are smallest', () => {
    const [item] = kitchen().station.items
    if (!item) throw new Error('no item')
    const search = createSearch(item)
    const tried = (bad: Readonly<Record<string, 'no' | 'caution'>>) =>
      search((id) => rankOf(bad[id] ?? 'ok'))
    expect(tried({}).kind).toBe('fits')
    expect(tried({ cheese: 'no', wrap: 'no' })).toEqual({
      kind: 'with-change',
      changes: [{ leaveOut: ['cheese'], base: 'bowl' }],
    })
    expect(tried({ heart: 'caution', cheese: 'caution' })).toEqual({
      kind: 'ask',
      changes: [{ leaveOut: ['cheese'], base: 'wrap' }],
    })
    expect(tried({ heart: 'no' }).kind).toBe('no')
    expect(tried({ wrap: 'no', bowl: 'no' }).kind).toBe('no')
  })
})

describe('generated stations', () => {
  const stations = Array.from({ length: 200 }, (_, index) => generatedStation(index + 1))

  it('are the same each time', () => {
    expect(generatedStation(7)).toEqual(generatedStation(7))
    expect(generatedStation(7)).not.toEqual({ ...generatedStation(8), id: 'generated-7' })
  })

  it('have among them all that a document can say of needs', () => {
    const some = (is: (station: (typeof stations)[number]) => boolean) => stations.some(is)
    const depth = (station: (typeof stations)[number], ids: readonly string[]): number =>
      Math.max(
        0,
        ...station.recipes
          .filter((one) => ids.includes(one.id))
          .map((one) => 1 + depth(station, one.recipes)),
      )
    const depths = stations.flatMap((one) =>
      one.components.map((component) => depth(one, component.recipes)),
    )
    expect([...new Set(depths)].sort()).toEqual([0, 1, 2, 3])
    expect(new Set(stations.map((one) => one.allergenSet)).size).toBe(2)
    expect(new Set(stations.map((one) => one.cautions)).size).toBe(2)
    expect(some((one) => one.contacts === null)).toBe(true)
    expect(some((one) => one.ownAllergens.length > 0)).toBe(true)
    expect(some((one) => one.backups.some((backup) => !backup.protected))).toBe(true)
    expect(some((one) => one.ingredients.some(({ readOn }) => readOn === null))).toBe(true)
    expect(some((one) => one.ingredients.some(({ traits }) => traits === null))).toBe(true)
    expect(some((one) => one.ingredients.some(({ claims }) => claims.halal === 'not'))).toBe(true)
    const all = stations.flatMap((one) => one.ingredients)
    const wheats = all.filter(
      ({ declarations: { wheat, gluten } }) => wheat === 'contains' && gluten === 'free',
    )
    expect(new Set(wheats.map((one) => one.glutenStatement)).size).toBe(2)
    for (const trait of ['stock', 'lard', 'gelatin', 'animal-rennet'] as const) {
      const counts = all.flatMap(({ traits, sources }) =>
        traits?.includes(trait) ? [sources?.[trait]?.length] : [],
      )
      expect(new Set(counts), trait).toEqual(new Set([undefined, 0, 1, 2]))
    }
    expect(some((one) => one.items.some(({ base }) => base === null))).toBe(true)
    const kinds = stations.flatMap((one) => (one.contacts ?? []).map(({ kind }) => kind))
    expect(new Set(kinds).size).toBe(9)
    const optional = stations.flatMap((one) =>
      one.items.map(
        ({ parts, heart }) =>
          parts.filter((part) => !part.required && part.component !== heart).length,
      ),
    )
    expect(Math.max(...optional)).toBe(8)
  })
})
