import { describe, expect, it } from 'vitest'
import {
  choicesOf,
  type ItemFields,
  markOf,
  tapped,
  withBase,
  withHeart,
  withRequired,
  withUsual,
} from '#components/menu/items/item-now.ts'
import type { Row } from '#lib/editor/draft.ts'

const LINE = ['rice', 'beans', 'slaw', 'sauce']
const changed = (item: Row, fields: ItemFields): Row => ({ ...item, ...fields })
const tap = (item: Row, component: string, hasCups = false): Row =>
  changed(item, tapped(item, component, hasCups, LINE))

describe('an item over the line', () => {
  const empty: Row = { name: 'Bowl', base: null, parts: [] }

  it('is named for the first that is tapped, which can’t be left out', () => {
    const one = tap(empty, 'beans')
    expect(one).toMatchObject({
      heart: 'beans',
      parts: [{ component: 'beans', usual: 'in', required: true }],
    })
    expect(markOf(one, 'beans')).toBe('heart')
    expect(markOf(one, 'rice')).toBe('not')
  })

  it('takes what follows as well, in the line’s order', () => {
    const two = tap(tap(tap(empty, 'beans'), 'sauce'), 'rice')
    expect(two.heart).toBe('beans')
    expect((two.parts as Row[]).map((part) => part.component)).toEqual(['rice', 'beans', 'sauce'])
  })

  it('goes round: in it, on the side where there are cups, only if asked, not part of it', () => {
    let item = tap(tap(empty, 'beans'), 'sauce', true)
    const marks = [markOf(item, 'sauce')]
    for (let taps = 0; taps < 4; taps += 1) {
      item = tap(item, 'sauce', true)
      marks.push(markOf(item, 'sauce'))
    }
    expect(marks).toEqual(['in', 'side', 'no', 'not', 'in'])
    expect(markOf(tap(tap(empty, 'beans'), 'slaw'), 'slaw')).toBe('in')
    expect(markOf(tap(tap(tap(empty, 'beans'), 'slaw'), 'slaw'), 'slaw')).toBe('no')
  })

  it('is named for another in it where its heart is taken out, and for none where none is left', () => {
    const two = tap(tap(empty, 'beans'), 'slaw')
    const asked = tap(two, 'beans')
    expect(asked.heart).toBe('slaw')
    const gone = tap(tap(tap(empty, 'beans'), 'beans'), 'beans')
    expect(gone).toMatchObject({ heart: '', parts: [] })
  })

  it('comes in a base of which one is usual, and no base is a part as well', () => {
    const both = changed(empty, withBase(tap(empty, 'rice'), 'rice'))
    expect(markOf(both, 'rice')).toBe('base')
    expect(both).toMatchObject({ base: { choices: ['rice'], usual: 'rice' }, parts: [], heart: '' })
    const two = changed(both, withBase(both, 'slaw'))
    expect(choicesOf(two)).toEqual(['rice', 'slaw'])
    expect(withUsual(two, 'slaw').base).toEqual({ choices: ['rice', 'slaw'], usual: 'slaw' })
    expect(withBase(two, 'rice').base).toEqual({ choices: ['slaw'], usual: 'slaw' })
    expect(tapped(both, 'rice', false, LINE).base).toBeNull()
  })

  it('can be named for another part, and lets one be left out or not', () => {
    const two = tap(tap(empty, 'beans'), 'slaw')
    expect(withHeart(two, 'slaw')).toMatchObject({
      heart: 'slaw',
      parts: [{ component: 'beans' }, { component: 'slaw', required: true }],
    })
    expect(withRequired(two, 'slaw').parts).toMatchObject([{}, { required: true }])
  })
})
