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

/** Any of those with wells of any pans, also none of a component or several of one, and any back-ups. */
const anyLine = fc
  .record({
    station: anyStation,
    wells: fc.array(fc.array(fc.nat(40), { minLength: 1, maxLength: 9 }), {
      minLength: 1,
      maxLength: 5,
    }),
    behind: fc.array(fc.record({ of: fc.nat(40), isProtected: fc.boolean() }), { maxLength: 9 }),
  })
  .map(({ station, wells, behind }): StationDocument => {
    const [well] = station.line.wells
    const pan = pansOf(station)[0]
    const [backup] = station.backups.length > 0 ? station.backups : demoStation.backups
    const idOf = (at: number) => station.components[at % station.components.length]?.id ?? ''
    if (!well || !pan || !backup) throw new Error('a line without pans')
    return {
      ...station,
      line: {
        ...station.line,
        wells: wells.map((pans, nth) => ({
          ...well,
          id: `well-${nth}`,
          pans: pans.map((at, place) => ({
            ...pan,
            id: `pan-${nth}-${place}`,
            component: idOf(at),
          })),
        })),
      },
      backups: behind.map(({ of, isProtected }, at) => ({
        ...backup,
        ...{ id: `backup-${at}`, component: idOf(of), protected: isProtected },
      })),
    }
  })

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
    // 24 planned and one in ten over; 24 cups filled; a quarter of 24 where no item has it on the side.
    expect(count('pack-wrap.pita')).toBe(27)
    expect(count('pack-filled.yogurt-sauce')).toBe(24)
    expect(count('pack-cup.slaw')).toBe(6)
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

  it('[LS12] cups for the side go by the menu: all of items that have it so, a quarter of the others', () => {
    const as = (
      usual: (at: number) => 'in' | 'side' | 'no',
      items: readonly string[] | null = null,
    ) => {
      const [first] = demoStation.items
      if (first === undefined) throw new Error('no item')
      const parts = (at: number) => [
        { component: 'slaw', usual: usual(at), required: false, most: 1 } as never,
      ]
      const station: StationDocument = {
        ...demoStation,
        items: [0, 1].map((at) => ({
          ...first,
          ...{ id: `item-${at}`, heart: 'chicken', parts: parts(at) },
        })),
      }
      const list = packList({
        ...{ station, expected: 40, assemblers: 2, plan: { opensAt: 0, closesAt: HOUR, items } },
        foods: [{ component: 'slaw', loads: 1, portions: 24 }],
      })
      return list.find(({ id }) => id === 'pack-cup.slaw')?.count
    }
    expect(as(() => 'in')).toBe(6)
    expect(as(() => 'side')).toBe(24)
    // One of two items that are taken alike: half of 24, and a quarter of the other half.
    expect(as((at) => (at === 0 ? 'side' : 'in'))).toBe(15)
    // The other isn't on sale that day.
    expect(as((at) => (at === 0 ? 'side' : 'in'), ['item-0'])).toBe(24)
    // An item that usually goes without is taken with it 15 times in 100, the other 80: par's first guess.
    expect(as((at) => (at === 0 ? 'side' : 'no'))).toBe(Math.ceil((24 * (0.8 + 0.15 / 4)) / 0.95))
  })

  it('[LS13] covers any line: lids, scoops by number, own tools, cups, wraps, gloves, probes, wipes, labels, sheets', () => {
    fc.assert(
      fc.property(anyLine, fc.integer({ min: 1, max: 4 }), (station, assemblers) => {
        const list = packList({
          ...{ station, assemblers, expected: 40 },
          ...{ plan: { opensAt: 0, closesAt: 2 * HOUR, items: null }, foods: [] },
        })
        const name = (id: string) => id
        const count = (id: string) => list.find((one) => one.id === id)?.count ?? 0
        const pans = pansOf(station)
        const all = [...pans, ...station.backups]
        for (const one of list)
          if (one.what === 'pan' || one.what === 'back-up')
            expect(words.thing(one, name)).toMatch(/ in deep, its lid/)
        expect(list.filter(({ what }) => what === 'pan' || what === 'back-up')).toHaveLength(
          all.length,
        )
        // As many of each number as pans that are served with it, and one for each protected back-up.
        const ruleOf = (id: string) => station.components.find((one) => one.id === id)?.portion
        for (const number of [8, 14, 16, 24, 30]) {
          const uses = (component: string) => {
            const rule = ruleOf(component)
            return rule?.tool === 'scoop' && rule.number === number
          }
          const own = list.filter(
            (one) =>
              one.what === 'back-up' && one.own?.tool === 'scoop' && one.own.number === number,
          )
          expect(count(`pack-tool.scoop-${number}`)).toBe(
            pans.filter(({ component }) => uses(component)).length,
          )
          expect(own).toHaveLength(
            station.backups.filter((one) => one.protected && uses(one.component)).length,
          )
        }
        const read = pans.filter(
          ({ component }) => station.components.find(({ id }) => id === component)?.held !== 'dry',
        )
        const rounds = 1 + Math.ceil(120 / station.safety.readings.everyMin)
        expect(count('pack-wipes')).toBeGreaterThanOrEqual(Math.max(1, read.length * rounds))
        // Changed every 30 minutes of two hours, and at the start.
        expect(count('pack-gloves')).toBeGreaterThanOrEqual(assemblers * 5)
        expect(count('pack-probes')).toBeGreaterThanOrEqual(2)
        expect(count('pack-pan-labels')).toBe(all.length)
        for (const sheet of ['set-up-sheet', 'allergen-sheet', 'readings-sheet'])
          expect(count(`pack-${sheet}`)).toBe(1)
        for (const one of list)
          if (one.what === 'wrap' || one.what === 'bowl')
            expect(one.count).toBeGreaterThanOrEqual(40)
      }),
      { numRuns: 150 },
    )
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

  it('[PR65] where nobody said how many guests come, it has enough for all that is planned to be served', () => {
    const [item] = demoStation.items
    if (!item) throw new Error('the demo sells something')
    const bowls = {
      ...demoStation,
      items: demoStation.items.map((one) => ({ ...one, base: null })),
    }
    const of = (expected: number | null, loads: Readonly<Record<string, number>>) => {
      const all = packList({
        ...{ station: bowls, expected, assemblers: 2 },
        plan: { opensAt: 0, closesAt: HOUR, items: null },
        foods: Object.entries(loads).map(([component, portions]) => ({
          ...{ component, loads: 1, portions },
        })),
      })
      const count = (id: string) => all.find((one) => one.id === id)?.count
      return [count('pack-bowl'), count('pack-wrap-labels')]
    }
    const planned = { [item.heart]: 50, rice: 500 }
    expect(of(null, planned)).toEqual([55, 55])
    expect(of(20, planned)).toEqual([22, 22])
    expect(of(null, {})).toEqual([2, 1])
  })
})
