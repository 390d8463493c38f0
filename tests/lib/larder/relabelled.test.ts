import { describe, expect, it } from 'vitest'
import { decideLarder } from '#lib/larder/decide.ts'
import {
  type LabelHistory,
  type LabelOnce,
  labelsOfBefore,
  relabelledOf,
} from '#lib/larder/relabelled.ts'
import { larderShown } from '#lib/larder/shelf-view.ts'
import type { Label } from '#lib/station/label.ts'
import { UNREAD_LABEL } from '#lib/station/label.ts'
import { coldRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { at } from '#tests/support/readings.ts'

const afternoon = at('14:30')

const says = (milk: 'contains' | 'free' | 'not-listed'): Label => ({
  declarations: { milk },
  traits: [],
  claims: {},
  list: 'rice, salt',
  readOn: '2026-09-01',
  readBy: 'KT',
})
const bare = (label: Label): Label => {
  const { list: _, ...rest } = label
  return { ...rest, readBy: null }
}

const history = (...rows: readonly LabelOnce[]): LabelHistory => {
  const last = rows.at(-1)?.version ?? 0
  return {
    newest: () => (last === 0 ? {} : { rice: last }),
    from: (ingredient, version) =>
      ingredient === 'rice' ? rows.filter((one) => one.version >= version) : [],
  }
}
const once = (version: number, label: Label | null, same = false): LabelOnce => ({
  version,
  label,
  same,
})

const NONE = { labelOf: () => null, allergensOf: () => null }

const lot = (version: number) => coldRice({ labels: version === 0 ? {} : { rice: version } })
const OLD = says('contains')
const TODAY = says('free')
const withOld = history(once(0, OLD), once(4, TODAY))

const larder = (version = 0) => larderAfter([[afternoon, setAside('a', lot(version))]])
const confirms = (pack: 'same' | 'before', saw = 4) =>
  ({ type: 'confirmLotLabel', lot: 'a', ingredient: 'rice', pack, saw }) as const

describe('a lot whose label changed since', () => {
  it('[LA50] is one whose label is of another version than the house’s newest', () => {
    expect(relabelledOf(lot(0), {})).toEqual([])
    expect(relabelledOf(lot(4), { rice: 4 })).toEqual([])
    expect(relabelledOf(lot(0), { rice: 4 })).toEqual(['rice'])
    expect(relabelledOf(lot(3), { rice: 4 })).toEqual(['rice'])
    expect(relabelledOf(coldRice({ labels: null }), { rice: 4, pita: 2 })).toEqual(['rice'])
  })

  it.each<[string, number, LabelHistory, readonly Label[]]>([
    ['what was read of it', 0, withOld, [OLD]],
    ['unknown where nobody had read it', 0, history(once(0, null), once(4, TODAY)), [UNREAD_LABEL]],
    ['unknown where no row is left', 2, withOld, [UNREAD_LABEL]],
    ['unknown where the lot is ahead of the house', 9, withOld, [UNREAD_LABEL]],
    [
      'each reading of its product since, until another came',
      0,
      history(once(0, TODAY), once(2, OLD, true), once(3, says('not-listed')), once(4, TODAY)),
      [TODAY, OLD],
    ],
  ])('[LA50] of a pack of before %s counts', (_, version, known, counts) => {
    expect(labelsOfBefore(lot(version), 'rice', known)).toEqual(
      counts.map((one) => (one === UNREAD_LABEL ? one : bare(one))),
    )
  })

  it('[LA50] said to be of a pack of before, what was read of it counts beside today’s label', () => {
    const decided = decideLarder(larder(), confirms('before'), afternoon, withOld)
    expect(decided).toEqual({
      events: [
        {
          type: 'lotLabelConfirmed',
          lot: 'a',
          ingredient: 'rice',
          version: 4,
          pack: 'before',
          before: [bare(OLD)],
        },
      ],
    })
    const [event] = 'events' in decided ? decided.events : []
    const after = larderAfter(event ? [[afternoon, event]] : [], larder()).lots.a
    expect(after).toMatchObject({
      labels: { rice: 4 },
      before: [{ ingredient: 'rice', label: bare(OLD) }],
      // Nothing of it is taken by that.
      amount: 1_000_000,
      version: 1,
    })
  })

  it('[LA50] said to be of the pack that is read now, today’s label counts alone', () => {
    expect(decideLarder(larder(), confirms('same'), afternoon, withOld)).toMatchObject({
      events: [{ version: 4, pack: 'same', before: [] }],
    })
  })

  it('[LA50] isn’t said of a label that nobody saw yet, nor of one that is the same', () => {
    expect(decideLarder(larder(), confirms('before', 3), afternoon, withOld)).toEqual({
      refusal: { code: 'lot-label-newer' },
    })
    expect(decideLarder(larder(4), confirms('before'), afternoon, withOld)).toEqual({
      refusal: { code: 'lot-label-same' },
    })
    expect(
      decideLarder(larder(), { ...confirms('same'), ingredient: 'pita' }, afternoon, withOld),
    ).toEqual({ refusal: { code: 'lot-label-same' } })
  })

  it('[LA50] is told with what its label said then, and says now', () => {
    const labels = { ...withOld, nameOf: () => 'Rice, long grain', ...NONE }
    expect(larderShown(larder(), afternoon, labels).lots[0]?.relabelled).toEqual([
      { ingredient: 'rice', name: 'Rice, long grain', was: OLD, is: TODAY, version: 4 },
    ])
    expect(larderShown(larder(4), afternoon, labels).lots[0]?.relabelled).toEqual([])
  })

  it('[LA50] that is thrown out needs nobody to say it', () => {
    const bin = { type: 'throwOutLot', lot: 'a', reason: 'other', initials: 'KT' } as const
    expect(decideLarder(larder(), bin, afternoon, withOld)).toMatchObject({
      events: [{ type: 'lotThrownOut', amount: 1_000_000 }],
    })
  })
})
