import { describe, expect, it } from 'vitest'
import { total } from '#lib/estimate/service-counts.ts'
import { firstShares, stakesOf } from '#lib/rooms/advice/facts/stakes.ts'
import { knownBiasOf, pastTaught } from '#lib/rooms/day/facts/past-services.ts'
import { serviceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { minuteAt } from '#lib/service/minute.ts'
import { recordOf } from '#tests/support/records.ts'
import {
  CLOSES,
  choice,
  give,
  happens,
  MINUTE,
  OPENED,
  order,
  panFor,
  portionOf,
  stocked,
  stockedStation,
} from '#tests/support/stock.ts'

const milk = { code: 'milk', handling: 'leave-out', reason: 'allergy' } as const
const told = give(
  happens(stocked({ chicken: 20 }), 1, {
    type: 'batchStarted',
    batch: 'b1',
    component: 'chicken',
    loads: 1,
    startedAt: OPENED,
  }),
  2,
  { type: 'signOn' },
  {
    ...order(
      choice(
        'bean-and-pepper',
        {
          cheddar: { placement: 'no', portions: 0, because: 'need' },
          almonds: { placement: 'no', portions: 0, because: 'need' },
          'yogurt-sauce': { placement: 'no', portions: 0, because: 'need' },
        },
        { asked: 'needs', needs: [milk] },
      ),
    ),
    name: 'Ada',
  } as never,
  order(choice('garden-chicken')),
  { type: 'waste', component: 'chicken', amount: 2 * portionOf('chicken'), reason: 'spill' },
  { type: 'correct', pan: panFor('chicken'), amount: 19 * portionOf('chicken'), kind: 'weighing' },
)
const state = { ...told.state, stage: 'closed' as const, closedAt: CLOSES }
const reading = {
  temperature: { tenths: 1_500, scale: 'F' as const },
  at: OPENED + MINUTE,
  probe: 'p1',
  where: 'middle-stirred' as const,
  initialled: true,
}
const withReading = happens(told, 9, {
  type: 'temperatureRead',
  what: 'pan',
  id: panFor('chicken'),
  reading,
  inLimits: true,
})

describe('a service record', () => {
  const record = serviceRecord(state, withReading.events)

  it('[Z47] keeps what was wanted, and what became of the food', () => {
    expect(record).toMatchObject({ service: 's-lunch', station: 'alder-hall', kind: 'real' })
    expect(total(record.counts.builds)).toBe(2)
    expect(total(record.counts.takings.chicken)).toBe(1)
    expect(record.components.chicken).toMatchObject({
      loaded: 20 * portionOf('chicken'),
      wasted: 2 * portionOf('chicken'),
      wastedFor: { spill: 2 * portionOf('chicken') },
      left: state.pans[panFor('chicken')]?.amount,
    })
    expect(record.batches).toMatchObject([{ component: 'chicken', loads: 1, finishedAt: null }])
    expect(record.readings).toContainEqual({
      of: 'pan',
      component: 'chicken',
      at: reading.at,
      temperature: reading.temperature,
      met: true,
    })
  })

  it('[Z47] keeps every reading that was taken, also as food was put somewhere or came back', () => {
    const at = told
    const food = {
      heldBy: 'hot',
      clock: null,
      dateMark: null,
      finishedAt: 0,
      guarded: false,
    } as const
    const pan = panFor('chicken')
    const backup = state.station?.backups[0]
    if (!backup) throw new Error('the station has no back-up pan')
    const stamp = { position: 99, at: OPENED, command: null }
    const more = serviceRecord(state, [
      ...at.events,
      { ...stamp, type: 'panToppedUp', pan, amount: 1, batch: null, from: null, food, reading },
      {
        ...stamp,
        type: 'backupSet',
        component: backup.component,
        backup: backup.id,
        ready: true,
        amount: 1,
        reading,
      },
      {
        ...stamp,
        type: 'offSaleResolved',
        what: 'pan',
        id: pan,
        way: 'reheat',
        reading: { ...reading, heldSeconds: 15, stoodSeconds: null },
        clock: null,
      },
    ])
    const of = { at: reading.at, temperature: reading.temperature, met: true }
    expect(more.readings.slice(-3)).toEqual([
      { ...of, of: 'pan', component: 'chicken' },
      { ...of, of: 'backup', component: backup.component },
      { ...of, of: 'reheating', component: 'chicken' },
    ])
  })

  it('[Z47] has no ticket number, no need, and no name', () => {
    const said = JSON.stringify(record)
    for (const word of ['Ada', 'milk', 'allergy', 'need', '"ticket', '"letter', '1A'])
      expect(said, word).not.toContain(word)
    expect(JSON.stringify(withReading.events)).toContain('milk')
  })

  it('[Z72] tells that it was cut short, where more than a tenth of its time was to come', () => {
    const { opens } = state.counts
    const until = (closes: number, closesAt: number | null = CLOSES) =>
      serviceRecord({ ...state, closesAt, counts: { ...state.counts, closes } }, []).cutShort
    const ended = minuteAt(state, CLOSES)
    const length = ended - opens
    expect(until(ended)).toBeUndefined()
    expect(until(opens + length / 0.91)).toBeUndefined()
    expect(until(opens + length / 0.89)).toBe(true)
    expect(until(opens + length / 0.5, null)).toBeUndefined()
  })

  it('[Z49] keeps a bias that is known, not one that isn’t', () => {
    const sure = { ...state, beliefs: { ...state.beliefs } }
    const belief = state.beliefs.chicken
    if (!belief) throw new Error('nothing is believed of chicken')
    sure.beliefs.chicken = { ...belief, bias: 0.08, biasVar: 0.02 ** 2 }
    expect(serviceRecord(sure, []).bias).toEqual({ chicken: { bias: 0.08, sd: 0.02 } })
  })
})

describe('what past services teach', () => {
  it('[Z48] is read from records of the same station and kind in which something was sold', () => {
    const records = [
      recordOf(3, 40),
      recordOf(1, 20),
      recordOf(2, 30, { kind: 'demo' }),
      recordOf(4, 50, { station: 'other-hall' }),
      recordOf(5, 0),
    ]
    const taught = pastTaught(records, stockedStation, 'real')
    expect(taught.past.map(({ builds }) => total(builds))).toEqual([20, 40])
    expect(pastTaught(records, stockedStation, 'demo').past).toHaveLength(1)
  })

  it('[Z72] is not read from a practice, nor from one that was cut short', () => {
    const records = [
      recordOf(1, 20),
      recordOf(2, 99, { kind: 'practice' }),
      recordOf(3, 8, { cutShort: true }),
    ]
    for (const kind of ['real', 'practice'] as const) {
      const { past } = pastTaught(records, stockedStation, kind)
      expect(past.map(({ builds }) => total(builds))).toEqual([20])
    }
  })

  it('[Z48] reads no more than the newest two dozen', () => {
    const records = Array.from({ length: 40 }, (_, day) => recordOf(day + 1, day + 1))
    const { past } = pastTaught(records, stockedStation, 'real')
    expect(past.map(({ builds }) => total(builds))).toEqual(
      Array.from({ length: 24 }, (_, index) => index + 17),
    )
  })

  it('[Z49] is the newest bias of each, less sure by a day', () => {
    const records = [
      recordOf(1, 9, {
        bias: { chicken: { bias: 0.02, sd: 0.04 }, slaw: { bias: -0.1, sd: 0.05 } },
      }),
      recordOf(2, 9, { bias: { chicken: { bias: 0.1, sd: 0.04 } } }),
    ]
    const known = knownBiasOf(records, 'alder-hall', 'real')
    expect(known.chicken).toEqual({ bias: 0.1, sd: 0.05 })
    expect(known.slaw?.bias).toBe(-0.1)
    expect(knownBiasOf(records, 'alder-hall', 'demo')).toEqual({})
  })

  it('[PL10] teaches nothing of a practice, or of a plan that was dropped; a practice learns of real ones', () => {
    const of = (bias: number) => ({ bias: { chicken: { bias, sd: 0.04 } } })
    const real = recordOf(1, 9, of(0.1))
    const all = [
      real,
      recordOf(2, 30, { kind: 'practice', ...of(0.3) }),
      recordOf(3, 30, { neverOpened: true, ...of(0.3) }),
    ]
    const wanted = (kind: 'real' | 'practice' | 'demo') =>
      pastTaught(all, stockedStation, kind).past.map(({ builds }) => total(builds))
    expect([wanted('real'), wanted('practice'), wanted('demo')]).toEqual([[9], [9], []])
    expect(knownBiasOf(all, 'alder-hall', 'real').chicken?.bias).toBe(0.1)
    expect(knownBiasOf(all, 'alder-hall', 'practice').chicken?.bias).toBe(0.1)
  })
})

describe('what is at stake', () => {
  it('[Z50] is the build’s margin with its heart, else what a portion brings beyond its cost', () => {
    const heart = stakesOf(stockedStation, 'chicken')
    const item = stockedStation.items.find(({ id }) => id === 'garden-chicken')
    expect(heart.leftCents).toBe(115)
    expect(heart.lostCents).toBeGreaterThan(100)
    expect(heart.lostCents).toBeLessThan(item?.priceCents ?? 0)
    const slaw = stockedStation.components.find(({ id }) => id === 'slaw')
    expect(stakesOf(stockedStation, 'slaw').lostCents).toBe(
      Math.max(5, (slaw?.extraCents ?? 0) - (slaw?.costCents ?? 0)),
    )
  })

  it('[Z50] takes a part as often as the menu has it, where nothing is known', () => {
    const shares = firstShares(stockedStation)
    expect(shares.chicken).toBeGreaterThan(0.25)
    expect((shares.rice ?? 0) + (shares.pita ?? 0)).toBeGreaterThan(0.5)
    for (const share of Object.values(shares)) expect(share).toBeLessThanOrEqual(1)
  })
})
