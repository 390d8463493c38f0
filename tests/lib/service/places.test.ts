import { describe, expect, it } from 'vitest'
import { PLACE_KINDS } from '#lib/service/events/food-event.ts'
import { withPlace } from '#lib/service/folding/food-folding.ts'
import { allPlaces, componentAt, noPlace, placeOf } from '#lib/service/place.ts'
import { onward, openedService, running } from '#tests/support/service.ts'

/** A batch of another component that is called as a pan is. */
const told = onward(openedService(), {
  type: 'startBatch',
  batch: 'pan-rice',
  component: 'chicken',
  loads: 1,
})

describe('a place of food', () => {
  const state = running(told)
  const offSale = { why: 'out-of-limits', since: 1, lastGoodAt: null } as const

  it('is known by what it is and its id: a batch may be called as a pan is', () => {
    expect(componentAt(state, 'pan', 'pan-rice')).toBe('rice')
    expect(componentAt(state, 'batch', 'pan-rice')).toBe('chicken')
    expect(componentAt(state, 'build', 'pan-rice-1A')).toBeUndefined()
    expect(placeOf(state, { what: 'pan', id: 'pan-rice' })).toMatchObject({ component: 'rice' })
    expect(placeOf(state, { what: 'batch', id: 'pan-rice' })).toMatchObject({
      component: 'chicken',
      stage: 'making',
      batches: ['pan-rice'],
    })
  })

  it.each([
    ['pan', 'batch'],
    ['batch', 'pan'],
  ] as const)('that is a %s is changed alone, not the %s of the same name', (what, other) => {
    const next = withPlace(state, { what, id: 'pan-rice', at: state.at }, { offSale })
    expect(placeOf(next, { what, id: 'pan-rice' })?.offSale).toEqual(offSale)
    expect(placeOf(next, { what: other, id: 'pan-rice' })?.offSale).toBeNull()
  })

  it.each(PLACE_KINDS)('that isn’t there is neither seen nor changed: %s', (what) => {
    for (const id of ['nowhere', 'constructor']) {
      expect(placeOf(state, { what, id })).toBeUndefined()
      expect(noPlace({ what, id })).toEqual({ code: 'unknown', what, id })
    }
    expect(() => withPlace(state, { what, id: 'nowhere', at: 1 }, { offSale })).toThrow()
  })

  it('is listed once each: the line, what is behind it, and the batches', () => {
    const ids = allPlaces(state).map(({ what, id }) => `${what}/${id}`)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids).toEqual([
      ...Object.keys(state.pans).map((id) => `pan/${id}`),
      ...Object.keys(state.backupPans).map((id) => `backup/${id}`),
      'batch/pan-rice',
    ])
  })
})
