import { describe, expect, it } from 'vitest'
import {
  firstAsked,
  goesBefore,
  goesFirst,
  isHatched,
  reasonsNot,
  waitsForLabel,
} from '#components/larder/lot-said.ts'
import type { LotShown, RelabelledHere } from '#lib/larder/shelf-view.ts'

type Said = Parameters<typeof isHatched>[0]

const good: Said = { bound: null, barred: null, relabelled: [], isFirst: true, kept: 'cold' }
const changed: RelabelledHere = { ingredient: 'soy', name: 'Soy', was: null, is: null, version: 2 }
const OPEN: readonly (readonly [string, Partial<LotShown>, ReturnType<typeof firstAsked>])[] = [
  ['bound', { bound: 'out-of-limits' }, 'bin'],
  ['past its date', { barred: { code: 'lot-bound', why: 'date' } }, 'bin'],
  ['unread', { barred: { code: 'lot-unread', since: 0 } }, 'reading'],
  ['of a label that changed', { relabelled: [changed] }, 'label'],
  [
    'unread, of a label that changed',
    { relabelled: [changed], barred: { code: 'lot-unread', since: 0 } },
    'label',
  ],
]

describe('a lot on its shelf', () => {
  it('[LA60] a good one goes first and is not hatched; its taking is asked', () => {
    expect([isHatched(good), goesFirst(good), firstAsked(good)]).toEqual([false, true, 'take'])
  })

  it.each(OPEN)('[LA60] %s: hatched, never said to go first', (_, more, first) => {
    const lot = { ...good, ...more }
    expect([isHatched(lot), goesFirst(lot), firstAsked(lot)]).toEqual([true, false, first])
  })

  it('[LA60] one that cools is read first, and never said to go first', () => {
    const lot: Said = { ...good, kept: 'cooling' }
    expect([isHatched(lot), goesFirst(lot), firstAsked(lot)]).toEqual([false, false, 'reading'])
  })
})

describe('a younger lot behind an older one', () => {
  const lot = (id: string, more: Partial<LotShown>) => ({
    ...{ ...good, lot: id, component: 'slaw' },
    ...more,
  })
  const [older, younger] = [lot('b', { relabelled: [changed] }), lot('c', { isFirst: false })]
  const rice = lot('a', { component: 'rice' })

  it('[EN30] names the one of its own food that goes first, and none where it does', () => {
    const lots = [rice, older, younger]
    expect(goesBefore(younger, lots)).toBe(older)
    expect(goesBefore(older, lots)).toBeNull()
    expect(goesBefore(rice, lots)).toBeNull()
    expect(goesBefore(younger, [rice, younger])).toBeNull()
  })

  it('[EN30] held back by a label it leads there; that it cools is no reason where it doesn’t', () => {
    expect([waitsForLabel(older), waitsForLabel(rice), waitsForLabel(null)]).toEqual([
      ...[true, false, false],
    ])
    expect(reasonsNot(older)).toEqual(['not-found', 'for-another-day'])
    expect(reasonsNot({ ...older, kept: 'cooling' })).toContain('still-cooling')
    // The laptop knows of an older one that this screen hasn't seen.
    expect(reasonsNot(null)).toContain('still-cooling')
  })
})
