import { describe, expect, it } from 'vitest'
import { followedBy, withChanged, without, withSteps } from '#components/menu/draft/pending.ts'
import type { Row } from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'

const put = (id: string, fields: Row) => ({ do: 'put', entity: 'item', id, fields }) as const

const all = (...steps: readonly Step[]): readonly Step[] =>
  steps.reduce<readonly Step[]>(followedBy, [])

describe('what was typed and isn’t saved yet', () => {
  it('is one step a row, however many letters it takes', () => {
    expect(
      all(
        put('bowl', { priceCents: 6 }),
        put('bowl', { priceCents: 65 }),
        put('bowl', { heart: 'a' }),
      ),
    ).toEqual([put('bowl', { priceCents: 65, heart: 'a' })])
    expect(
      all(
        { do: 'rename', entity: 'item', id: 'bowl', name: 'B' },
        { do: 'rename', entity: 'item', id: 'bowl', name: 'Bo' },
      ),
    ).toEqual([{ do: 'rename', entity: 'item', id: 'bowl', name: 'Bo' }])
  })

  it('emptied and typed anew has an answer, and typed and emptied has none', () => {
    const emptied = { ...put('bowl', {}), clear: ['priceCents'] }
    expect(all(emptied, put('bowl', { priceCents: 700 }))).toEqual([
      put('bowl', { priceCents: 700 }),
    ])
    expect(all(put('bowl', { priceCents: 700 }), emptied)).toEqual([emptied])
  })

  it('stays in order where it is of several rows', () => {
    const steps = all(
      put('bowl', { heart: 'a' }),
      put('wrap', { heart: 'b' }),
      put('bowl', { heart: 'c' }),
    )
    expect(steps).toHaveLength(3)
    expect(without(steps, ['item:bowl'])).toEqual([put('wrap', { heart: 'b' })])
  })

  it('is drawn over what the server knows; a step that can’t be taken changes nothing', () => {
    const draft = { station: 's', rows: { 'item:bowl': { name: 'Bowl', at: 0 } } }
    expect(withSteps(draft, [put('bowl', { heart: 'a' })]).rows['item:bowl']).toEqual({
      name: 'Bowl',
      at: 0,
      heart: 'a',
    })
    expect(withSteps(draft, [{ do: 'remove', entity: 'item', id: 'none' }])).toBe(draft)
    expect(withChanged(draft.rows, { 'item:bowl': null, 'item:wrap': { name: 'Wrap' } })).toEqual({
      'item:wrap': { name: 'Wrap' },
    })
  })
})
