import { describe, expect, it } from 'vitest'
import { itemLeft, lacking, levelOf, levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import {
  at,
  choose,
  type Given,
  given,
  ofPortions,
  onward,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const correct = (component: string, count: number, off = 0): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: ofPortions(component, count) + off,
})
const stop = (what: 'component' | 'item', id: string): Given => ({ type: 'stopSelling', what, id })
const left = (told: Told, item: string) => itemLeft(running(told), levelsOf(running(told)), item)

describe('the level of a component', () => {
  it('[K14] is what its pans hold, what is on tickets, and what remains of the two', () => {
    const sent = given(send(choose('garden-chicken')), correct('chicken', 10))
    expect(levelOf(running(sent), 'chicken')).toEqual({
      unit: 'mg',
      inPan: ofPortions('chicken', 10),
      behind: 0,
      heldBack: 0,
      onTickets: ofPortions('chicken', 1),
      remaining: ofPortions('chicken', 9),
      ending: 0,
      endsAt: null,
      portionsLeft: 9,
    })
    expect(levelOf(running(sent), 'pita')).toMatchObject({
      unit: 'piece',
      inPan: 24,
      onTickets: 1,
      remaining: 23,
    })
  })

  it('[K15] is left in whole portions, and never in less than none', () => {
    const almost = onward(given(), correct('chicken', 3, -1))
    expect(levelOf(running(almost), 'chicken').portionsLeft).toBe(2)
    const short = given(send(choose('garden-chicken')), correct('chicken', 0))
    expect(levelOf(running(short), 'chicken')).toMatchObject({
      remaining: -ofPortions('chicken', 1),
      portionsLeft: 0,
    })
  })

  it('[K15] is nothing for what the station does not have', () => {
    expect(levelOf(running(given()), 'kale')).toEqual({
      unit: 'mg',
      inPan: 0,
      behind: 0,
      heldBack: 0,
      onTickets: 0,
      remaining: 0,
      ending: 0,
      endsAt: null,
      portionsLeft: 0,
    })
  })

  it('[K16] sells nothing where selling was stopped, though it is there', () => {
    const told = running(onward(given(), stop('component', 'chicken')))
    expect(sellable(told, levelsOf(told), 'chicken')).toBe(0)
    expect(levelOf(told, 'chicken').portionsLeft).toBe(24)
    expect(sellable(told, levelsOf(told), 'beans')).toBe(24)
    expect(sellable(told, levelsOf(told), 'kale')).toBe(0)
  })
})

describe('how many of an item are left', () => {
  it('[K17] counts its base, summed over the choices', () => {
    const told = onward(given(), correct('pita', 3), correct('rice', 4))
    expect(left(told, 'garden-chicken')).toEqual({ remaining: 7, limitedBy: 'base', gone: [] })
    expect(left(onward(told, stop('component', 'pita')), 'garden-chicken')).toMatchObject({
      remaining: 4,
      limitedBy: 'base',
    })
  })

  it('[K17] counts its heart', () => {
    expect(left(onward(given(), correct('tuna', 2)), 'harbor-tuna')).toMatchObject({
      remaining: 2,
      limitedBy: 'tuna',
    })
    expect(left(onward(given(), stop('component', 'tuna')), 'harbor-tuna')).toMatchObject({
      remaining: 0,
      limitedBy: 'tuna',
    })
  })

  it("[K17] counts what can't be left out", () => {
    const told = onward(given(), correct('slaw', 1))
    const station = {
      ...running(told).station,
      items: running(told).station.items.map((item) => ({
        ...item,
        parts: item.parts.map((part) => ({ ...part, required: part.component === 'slaw' })),
      })),
    }
    const state = { ...running(told), station }
    expect(itemLeft(state, levelsOf(state), 'harbor-tuna')).toMatchObject({
      remaining: 1,
      limitedBy: 'slaw',
      gone: [],
    })
  })

  it('[K18] is not limited by what is optional; that it is gone is said, for what is usually in it', () => {
    const told = onward(
      given(),
      correct('slaw', 0),
      correct('almonds', 0),
      stop('component', 'cheddar'),
    )
    expect(left(told, 'harbor-tuna')).toEqual({
      remaining: 16,
      limitedBy: 'tuna',
      gone: ['slaw', 'cheddar'],
    })
    expect(left(told, 'bean-and-pepper').gone).toEqual(['slaw', 'cheddar', 'almonds'])
  })

  it('[K19] is none where the item is not sold', () => {
    expect(left(onward(given(), stop('item', 'harbor-tuna')), 'harbor-tuna')).toMatchObject({
      remaining: 0,
      limitedBy: 'harbor-tuna',
    })
  })

  it('goes down by one with each that is sent, and up again with each that is cancelled', () => {
    const sent = given(send(choose('harbor-tuna')))
    expect(left(sent, 'harbor-tuna').remaining).toBe(15)
    expect(left(onward(sent, { type: 'cancel', ...at('1A') }), 'harbor-tuna').remaining).toBe(16)
  })
})

describe('what is lacking', () => {
  it('[K20] is each component of which less is left than is wanted', () => {
    const state = running(onward(given(), correct('beans', 2)))
    const of = (line: Record<string, number>) =>
      lacking(state, { line, behind: {} }).map(({ component }) => component)
    const beans = ofPortions('beans', 2)
    expect(of({ chicken: 1, beans })).toEqual([])
    expect(of({ chicken: 1, beans: beans + 1 })).toEqual(['beans'])
    expect(of({ beans: beans + 1, chicken: 1, kale: 1 })).toEqual(['beans', 'kale'])
    expect(of({ kale: 0 })).toEqual([])
    expect(lacking(state, { line: {}, behind: { rice: 1 } })).toEqual([
      { component: 'rice', endsAt: null },
    ])
  })
})
