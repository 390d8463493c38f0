import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { packList } from '#lib/rooms/prep/facts/pack-list.ts'
import { isPacked, packOf } from '#lib/rooms/prep/facts/pack-now.ts'
import { packEn as words } from '#lib/rooms/prep/words/pack-en.ts'
import { pansOf } from '#lib/station/find.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { STATION_SETS } from '#server/stations/sets.ts'
import { preparedService } from '#tests/support/prep-stories.ts'
import { codeOf, onward, running, when } from '#tests/support/service.ts'

const HOUR = 3_600_000

const listOf = (station: StationDocument, foods: readonly string[] = [], expected = 40) =>
  packList({
    ...{ station, expected, assemblers: 2, plan: { opensAt: 0, closesAt: HOUR, items: null } },
    foods: foods.map((component) => ({ component, loads: 1, portions: 24 })),
  })

const RULES: readonly StationDocument['components'][number]['portion'][] = [
  { tool: 'scoop', number: 16, level: 1, gPerCup: 200, source: 'here' },
  { tool: 'scoop', number: 14, level: 2, gPerCup: 200, source: 'here' },
  { tool: 'ladle', flOz: 2, level: 1, gPerCup: 200, source: 'here' },
  { tool: 'spoodle', flOz: 3, level: 1, gPerCup: 200, source: 'here' },
  { tool: 'measure', size: 0.25, unit: 'cup', level: 1, gPerCup: 200, source: 'here' },
  { tool: 'tongs', grams: 40, source: 'here' },
  { tool: 'tongs-pieces', pieces: 2 },
  { tool: 'piece', pieces: 1 },
  { tool: 'cup', flOz: 2 },
  { tool: 'bottle', squeezes: 2, weighed: { squeezes: 10, grams: 100 } },
]

/** Any of our lines with other tools, sides, and pans left away. */
const anyStation = fc
  .record({
    station: fc.constantFrom(demoStation, ...STATION_SETS.map(({ document }) => document)),
    rules: fc.array(fc.constantFrom(...RULES), { minLength: 20, maxLength: 20 }),
    sides: fc.array(fc.boolean(), { minLength: 20, maxLength: 20 }),
  })
  .map(
    ({ station, rules, sides }): StationDocument => ({
      ...station,
      components: station.components.map((one, at) => ({
        ...one,
        portion: rules[at % rules.length] ?? one.portion,
        side: sides[at % sides.length] ?? one.side,
      })),
    }),
  )

describe('what goes to the counter', () => {
  it('[LS7] covers its line: every pan, back-up, tool, base and cup that the document can ask for', () => {
    fc.assert(
      fc.property(anyStation, (station) => {
        const list = listOf(station)
        const pans = list.filter(({ what }) => what === 'pan')
        expect(pans.map(({ id }) => id)).toEqual(pansOf(station).map(({ id }) => `pack-pan.${id}`))
        expect(list.filter(({ what }) => what === 'back-up')).toHaveLength(station.backups.length)
        const name = (id: string) => id
        const said = list.map((one) => words.thing(one, name))
        for (const pan of pansOf(station)) {
          const component = station.components.find(({ id }) => id === pan.component)
          const rule = component?.portion
          if (!component || !rule) throw new Error('a pan of nothing')
          const tools = list.filter((one) => one.what === 'tool')
          const isServed = tools.some((one) => one.components.includes(component.id))
          expect(isServed, rule.tool).toBe(rule.tool !== 'piece' && rule.tool !== 'cup')
          if (rule.tool === 'scoop')
            expect(said.some((one) => one.startsWith(`#${rule.number} `))).toBe(true)
        }
        // As many tools as pans that need one.
        const needed = pansOf(station).filter(({ component }) => {
          const rule = station.components.find(({ id }) => id === component)?.portion.tool
          return rule !== 'piece' && rule !== 'cup'
        })
        expect(
          list.filter(({ what }) => what === 'tool').reduce((sum, { count }) => sum + count, 0),
        ).toBe(needed.length)
        for (const { id, side, portion } of station.components)
          if (side || portion.tool === 'cup')
            expect(
              list.some(
                (one) => (one.what === 'cup' || one.what === 'filled-cup') && one.component === id,
              ),
              id,
            ).toBe(true)
        for (const { base } of station.items)
          for (const choice of base?.choices ?? [null])
            expect(
              list.some(
                (one) => (one.what === 'wrap' || one.what === 'bowl') && one.component === choice,
              ),
            ).toBe(true)
        expect(new Set(list.map(({ id }) => id)).size).toBe(list.length)
        expect(list.every(({ count }) => Number.isInteger(count) && count >= 1)).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  it('[LS7] a protected back-up pan has its own tool, and one that isn’t has none', () => {
    const list = listOf(demoStation)
    const said = list
      .filter(({ group }) => group === 'back-ups')
      .map((one) => words.thing(one, (id) => id))
    expect(said).toContain('chicken: third pan, 4 in deep, its lid, own #8 gray scoop')
    expect(said).toContain('tuna: third pan, 4 in deep, its lid')
  })

  it('[LS8] each number has its rule: planned portions, guests, readings', () => {
    const list = listOf(demoStation, ['pita', 'yogurt-sauce', 'slaw', 'peppers'])
    const count = (id: string) => list.find((one) => one.id === id)?.count
    // 24 planned and one in ten over; 24 cups filled; a quarter and a half of 24 on the side.
    expect(count('pack-wrap.pita')).toBe(27)
    expect(count('pack-filled.yogurt-sauce')).toBe(24)
    expect(count('pack-cup.slaw')).toBe(6)
    const asSide = {
      ...demoStation,
      items: demoStation.items.map((item) => ({
        ...item,
        parts: item.parts.map((part) =>
          part.component === 'slaw' ? { ...part, usual: 'side' as const } : part,
        ),
      })),
    }
    expect(listOf(asSide, ['slaw']).find(({ id }) => id === 'pack-cup.slaw')?.count).toBe(12)
    // Nobody planned rice: one for each of 40 guests, and 4 over.
    expect(count('pack-bowl.rice')).toBe(44)
    expect(count('pack-wrap-labels')).toBe(44)
    expect(count('pack-tool.scoop-16')).toBe(2)
    for (const one of list)
      expect(
        words.rule(one, (id) => id),
        one.id,
      ).not.toBe('')
  })

  it('[LS9] what is packed is ticked with initials, once, and taken back', () => {
    const told = preparedService()
    const [first] = packOf(running(told)) ?? []
    const id = first?.id ?? ''
    expect(codeOf(when(told, { type: 'tickTask', task: id }))).toBe('not-initialled')
    const packed = onward(told, { type: 'tickTask', task: id, initials: 'KT' })
    expect(isPacked(running(packed), id)).toBe(true)
    expect(codeOf(when(packed, { type: 'tickTask', task: id, initials: 'KT' }))).toBe('already-so')
    const back = onward(packed, { type: 'takeBackTick', task: id })
    expect(isPacked(running(back), id)).toBe(false)
    expect(codeOf(when(back, { type: 'takeBackTick', task: id }))).toBe('already-so')
    expect(codeOf(when(told, { type: 'tickTask', task: 'pack-pan.none', initials: 'KT' }))).toBe(
      'unknown task',
    )
    expect(codeOf(when(told, { type: 'takeBackTick', task: 'pack-pan.none' }))).toBe('unknown task')
  })
})
