import { describe, expect, it } from 'vitest'
import usda from '#fixtures/reference/usda-sr28.json' with { type: 'json' }
import { mlFrom } from '#lib/measure/kitchen-units.ts'
import { panUsableMl } from '#lib/measure/pans.ts'
import { scoopVolumeMl } from '#lib/measure/scoops.ts'
import { fitsOneWell } from '#lib/measure/well.ts'
import { declaredBy } from '#lib/needs/declared.ts'
import { takenComponents, usualChoice } from '#lib/service/events/build-choice.ts'
import { ALLERGEN_SETS } from '#lib/station/codes/allergen-sets.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'
import {
  choose,
  codeOf,
  demoStation,
  given,
  needs,
  onward,
  send,
  when,
} from '#tests/support/service.ts'

const { components, items, line } = demoStation

const densities = components.flatMap(({ id, portion }) =>
  portion.tool === 'scoop' ? [{ id, gPerCup: portion.gPerCup, source: portion.source }] : [],
)

describe('the demo station', () => {
  it.each(densities.filter(({ source }) => source.includes('WEIGHT.txt')))(
    '[M20] weighs a cup of $id as its cited row of the USDA table does',
    ({ source, gPerCup }) => {
      const ndb = /NDB (\d{5})/.exec(source)?.[1]
      const rows = usda.rows.filter((row) => row.ndb === ndb && row.measure === 'cup')
      expect(rows.map((row) => row.grams / row.amount)).toContain(gPerCup)
    },
  )

  it('[M20] states for every other density that it is from memory', () => {
    const others = densities.filter(({ source }) => !source.includes('WEIGHT.txt'))
    expect(others.map(({ id }) => id)).toEqual(['tuna', 'almonds'])
    for (const { source } of others) expect(source).toMatch(/from memory$/)
  })

  it('[M21] has at least three items, which share at least ten components', () => {
    expect(items.length).toBeGreaterThanOrEqual(3)
    const takers = (id: string) =>
      items.filter(
        (item) =>
          item.base?.choices.includes(id) || item.parts.some((part) => part.component === id),
      )
    expect(components.length).toBeGreaterThanOrEqual(10)
    expect(components.every((one) => takers(one.id).length > 0)).toBe(true)
    expect(
      components.filter((one) => takers(one.id).length === items.length).map((one) => one.id),
    ).toEqual([...['rice', 'pita', 'peppers', 'slaw', 'cheddar', 'almonds', 'yogurt-sauce']])
  })

  it('[M22] has hot and cold pans, a sauce in lidded cups, and a choice of base', () => {
    expect(new Set(line.wells.map((well) => well.held))).toEqual(new Set(['hot', 'cold']))
    expect(
      components.filter((one) => one.portion.tool === 'cup' && one.side).map((one) => one.id),
    ).toEqual(['yogurt-sauce'])
    expect(items.every((item) => (item.base?.choices.length ?? 0) > 1)).toBe(true)
  })

  it('[M23] contains at least seven of the nine allergens', () => {
    const codes = ALLERGEN_SETS['us-9'].groups.map((one) => one.code)
    const contained = codes.filter((code) =>
      components.some((one) => declaredBy(demoStation, one.id, code).state === 'contains'),
    )
    expect(contained).toEqual(['milk', 'egg', 'fish', 'tree-nuts', 'wheat', 'soy', 'sesame'])
  })

  it('[M24] sells a build to a meat eater, a vegetarian and a vegan', () => {
    const free = (build: ReturnType<typeof choose>, code: NeedCode) =>
      takenComponents(build).every((id) => declaredBy(demoStation, id, code).state === 'free')
    const diet = (code: 'vegetarian' | 'vegan') =>
      needs({ code, handling: 'leave-out', reason: 'diet' })
    const vegetarian = choose('bean-and-pepper', {}, diet('vegetarian'))
    const vegan = choose('bean-and-pepper', { cheddar: 'no', 'yogurt-sauce': 'no' }, diet('vegan'))
    expect(free(vegetarian, 'vegetarian')).toBe(true)
    expect(free(vegetarian, 'vegan')).toBe(false)
    expect(free(vegan, 'vegan')).toBe(true)
    const meat = choose('garden-chicken')
    expect(declaredBy(demoStation, 'chicken', 'vegetarian').state).toBe('contains')
    expect(Object.keys(onward(given(), send(meat, vegetarian, vegan)).state.tickets)).toEqual([
      't1',
    ])
    expect(codeOf(when(given(), send(choose('garden-chicken', {}, diet('vegetarian')))))).toBe(
      'contains',
    )
  })

  it('[M25] loads its pans within what they can carry, where the volume of a portion is known', () => {
    const known = pansOf(demoStation).flatMap((pan) => {
      const { portion } = componentOf(demoStation, pan.component)
      const ml =
        portion.tool === 'scoop'
          ? scoopVolumeMl(portion.number) * portion.level
          : portion.tool === 'cup'
            ? mlFrom(portion.flOz, 'flOz')
            : null
      return ml === null ? [] : [{ pan, ml: ml * pan.usualPortions }]
    })
    expect(known.map(({ pan }) => pan.component)).toEqual([
      ...['rice', 'chicken', 'beans', 'peppers', 'tuna', 'cheddar', 'almonds', 'yogurt-sauce'],
    ])
    for (const { pan, ml } of known)
      expect(ml, pan.id).toBeLessThanOrEqual(panUsableMl(pan.size, pan.depthIn) ?? 0)
  })

  it('stands its pans in wells that they fit, and holds each usual choice', () => {
    for (const well of line.wells)
      expect(fitsOneWell(well.pans.map((pan) => pan.size)), well.id).toBe(true)
    for (const item of items)
      expect(codeOf(when(given(), send(usualChoice(item)))), item.id).toBeNull()
  })
})
