import { describe, expect, test } from 'vitest'
import { demandAhead, learnPast } from '#lib/estimate/demand-history.ts'
import { noCounts, total } from '#lib/estimate/service-counts.ts'
import { timedGroups } from '#lib/rooms/advice/facts/timed-groups.ts'

const past = Array.from({ length: 6 }, () => ({
  ...noCounts(690, 750, 60),
  builds: new Array<number>(12).fill(5),
}))
const ahead = (groups: readonly { minute: number; guests: number }[]) =>
  demandAhead(learnPast(past, {}), { ...{ opens: 690, closes: 750, expected: 60 }, groups }).profile

describe('groups with a time', () => {
  test('[PR14] come at their hour: the whole stays as it is, the rest comes as guests usually do', () => {
    const plain = ahead([])
    const timed = ahead([{ minute: 720, guests: 20 }])
    expect(total(timed)).toBeCloseTo(total(plain), 9)
    expect(timed[6]).toBeCloseTo((2 / 3) * (plain[6] ?? 0) + 20, 6)
    for (const slot of [0, 3, 5, 7, 11])
      expect(timed[slot]).toBeCloseTo((2 / 3) * (plain[slot] ?? 0), 6)
  })

  test('[PR14] a group outside the doors’ hours is in the whole, and more than all is all', () => {
    expect(ahead([{ minute: 600, guests: 20 }])).toEqual(ahead([]))
    expect(ahead([{ minute: 750, guests: 20 }])).toEqual(ahead([]))
    const all = ahead([{ minute: 692, guests: 90 }])
    expect(total(all)).toBeCloseTo(60, 6)
    expect(all[0]).toBeCloseTo(60, 6)
  })

  test('[PR14] a plan names those that have one', () => {
    const groups = [
      { label: 'Grade 9', guests: 30, at: '11:40' },
      { label: 'Band', guests: 12 },
    ]
    expect(timedGroups({ guests: { groups } })).toEqual([{ minute: 700, guests: 30 }])
    expect(timedGroups(undefined)).toEqual([])
  })
})
