import { describe, expect, it } from 'vitest'
import { decideLarder, NO_LABELS } from '#lib/larder/decide.ts'
import { EMPTY_LARDER } from '#lib/larder/lot.ts'
import {
  beginEntry,
  judgeEntry,
  type ReceivingEntry,
  type ReceivingHere,
  sentBackFor,
} from '#lib/larder/receiving-entry.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { ARRIVALS, type Arrival } from '#lib/safety/receiving.ts'

const NOW = Date.parse('2026-11-29T15:00:00Z')
const here: ReceivingHere = {
  today: '2026-11-29',
  limits: MODEL_CODE,
  scale: 'F',
  dayOrder: 'month-first',
  cold: null,
  deliveries: [],
}
const HANDS = { probe: 'blue', initials: 'KT' }

const full: ReceivingEntry = {
  ...beginEntry('milk'),
  same: 'same',
  degrees: '39',
  date: '1205',
  lot: ' M-114 ',
  packs: '2',
}
const judged = (part: Partial<ReceivingEntry> = {}, hands = HANDS) =>
  judgeEntry('milk', { ...full, ...part }, here, hands)

describe('a delivery as it is typed', () => {
  it('[DV17] that lacks nothing is what is sent', () => {
    expect(judged()).toMatchObject({ lacks: null, against: null, question: null, cools: null })
    expect(judged().said).toEqual({
      ingredient: 'milk',
      same: 'same',
      comes: 'milk',
      reading: { tenths: 390, scale: 'F', probe: 'blue' },
      useBy: '2026-12-05',
      lot: 'M-114',
      packs: 2,
    })
  })

  it('[DV17] nothing stands there beforehand but how it came last', () => {
    expect(judgeEntry('milk', beginEntry('cold'), here, HANDS).lacks).toBe('same')
    expect(judgeEntry('milk', beginEntry(null), here, HANDS).said).toBeNull()
  })

  it.each([
    ['same', { same: null }],
    ['comes', { comes: null }],
    ['temperature', { degrees: '' }],
    ['sure', { degrees: '4' }],
    ['solid', { comes: 'frozen' }],
    ['date', { date: '12' }],
    ['year', { date: '0401' }],
    ['no-date', { date: '1301' }],
    ['lot', { lot: ' ' }],
    ['lot', { comes: 'shellfish', lot: '', hasNoLot: true }],
    ['lot-too-long', { lot: 'x'.repeat(41) }],
    ['packs', { packs: '0' }],
  ] as const)('[DV17] it says what it lacks: %s', (lack, part) => {
    expect(judged(part).lacks).toBe(lack)
  })

  it('[DV20] what is said to come dry and goes into hot or cold food lacks a look at its label', () => {
    const inIt = { ...here, cold: 'in-it' as const }
    const dry = (part: Partial<ReceivingEntry>) =>
      judgeEntry('milk', { ...full, comes: 'dry', ...part }, inIt, HANDS)
    expect(dry({})).toMatchObject({ lacks: 'cold', asksCold: true })
    expect(dry({ needsNoCold: true })).toMatchObject({ lacks: null, said: { needsNoCold: true } })
    // Said of what comes cold it says nothing.
    expect(judged({ needsNoCold: true }).said).not.toHaveProperty('needsNoCold')
    expect(judged({ comes: 'dry' })).toMatchObject({ lacks: null, asksCold: false })
  })

  it('[DV21] what never came, of a label that nobody read, is the same as nothing', () => {
    expect(beginEntry('dry', false).same).toBe('not-sure')
    expect(beginEntry('dry').same).toBeNull()
  })

  it('[DV17] it lacks a probe where it is read, and initials always', () => {
    expect(judged({}, { ...HANDS, probe: '' }).lacks).toBe('probe')
    expect(judged({ comes: 'dry' }, { ...HANDS, probe: '' }).lacks).toBeNull()
    expect(judged({}, { ...HANDS, initials: ' ' }).lacks).toBe('initials')
  })

  it('[DV17] what turns it away is told at once, before all is typed', () => {
    const warm = judgeEntry('milk', { ...beginEntry('milk'), degrees: '50' }, here, HANDS)
    expect(warm.against).toMatchObject({ code: 'too-warm', limit: { paragraph: '3-202.11(B)' } })
    expect(warm.against && sentBackFor(warm.against)).toBe('too-warm')
    expect(judged({ date: '1128' }).against?.code).toBe('past-date')
    expect(judged({ comes: 'frozen', solid: false }).against?.code).toBe('thawed')
    // What is asked about first is no judgement yet.
    expect(judged({ degrees: '4' }).against).toBeNull()
    expect(judged({ degrees: '4', isSure: true })).toMatchObject({ lacks: null, against: null })
  })

  it('[DV5] [DV17] milk at 44 °F may come, and has to be cooled', () => {
    expect(judged({ degrees: '44' })).toMatchObject({
      lacks: null,
      against: null,
      cools: { withinMs: 14_400_000 },
    })
  })

  it('[DV17] the server takes what lacks nothing and turns away what it does, over all ways to come', () => {
    const known = {
      food: { name: 'Milk', limits: MODEL_CODE, timeZone: 'UTC', scale: 'F' as const, cold: null },
      labelVersion: 1,
    }
    let [taken, away] = [0, 0]
    for (const comes of ARRIVALS as readonly Arrival[])
      for (const degrees of ['20', '38', '41', '41.1', '45', '45.1', '134.9', '135', '160'])
        for (const date of ['1128', '1129', '1205'])
          for (const solid of [true, false]) {
            const entry = judged({ comes, degrees, date, solid })
            if (entry.said === null || entry.question) continue
            const command = { delivery: entry.said, initials: 'KT' }
            const decision = decideLarder(
              EMPTY_LARDER,
              { type: 'receiveDelivery', ...command },
              NOW,
              NO_LABELS,
              known,
            )
            if (entry.against) {
              away += 1
              expect(decision).toMatchObject({
                refusal: { code: 'delivery-turned-away', because: entry.against },
              })
            } else if (entry.lacks === null) {
              taken += 1
              expect(decision).toHaveProperty('events')
            }
          }
    expect(taken).toBeGreaterThan(40)
    expect(away).toBeGreaterThan(80)
  })
})
