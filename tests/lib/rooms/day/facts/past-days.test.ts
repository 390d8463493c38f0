import { describe, expect, test } from 'vitest'
import { countBuild } from '#lib/estimate/service-counts.ts'
import { pastDays } from '#lib/rooms/day/facts/past-days.ts'
import type { ServiceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { portionsOf } from '#lib/station/portion.ts'
import { recordOf } from '#tests/support/records.ts'
import { demoStation } from '#tests/support/service.ts'

const portion = portionsOf(demoStation).chicken
if (!portion) throw new Error('chicken has no portion')

const chicken = (left: number): Partial<ServiceRecord> => ({
  components: {
    chicken: {
      ...{ portion, loaded: 30 * portion.amount, used: 0, wasted: 0, wastedFor: {} },
      ...{ corrected: 0, takenAway: 0, left },
    },
  },
})
const of = (...records: readonly ServiceRecord[]) => pastDays(records, demoStation, 'real')

describe('past services as par reads them', () => {
  test('[PR4] real ones in order, with what was wanted and what ran out', () => {
    const days = of(recordOf(20_001, 30, chicken(0)), recordOf(20_000, 12, chicken(portion.amount)))
    expect(days.map(({ builds, soldOut }) => [builds, soldOut])).toEqual([
      [12, []],
      [30, ['chicken']],
    ])
    expect(days[1]).toMatchObject({
      expected: 30,
      items: { 'garden-chicken': 30 },
      takings: { chicken: 30 },
      portions: { chicken: 30 },
    })
  })

  test('[PR4] what came to its end as the service closed hadn’t run out, also where it was thrown out', () => {
    const ended = { what: 'pan', end: 'throw-out', component: 'chicken', how: 'eye' } as const
    const ends = [{ ...ended, amount: 3 * portion.amount }]
    expect(of(recordOf(20_000, 30, { ...chicken(0), ends }))[0]?.soldOut).toEqual([])
  })

  test('[PR17] what had been sold as a component was taken last is known of its time', () => {
    const record = recordOf(20_000, 30, chicken(0))
    const gone = countBuild(record.counts, 700, { item: null, portions: { chicken: 1 } })
    const slaw = (minute: number, counts: ServiceRecord['counts']) =>
      countBuild(counts, minute, { item: 'bean-and-pepper', portions: { slaw: 1 } })
    const counts = [650, 655, 690, 695].reduce((sum, minute) => slaw(minute, sum), gone)
    const one = record.components.chicken
    if (!one) throw new Error('it has chicken')
    const components = { chicken: one, slaw: { ...one, used: 2 * portion.amount } }
    const [day] = of({ ...record, counts, components })
    expect(day?.takings.chicken).toBe(31)
    // A tap after the last one was sold isn't the time at which it was gone.
    expect(day?.until.chicken?.takings.chicken).toBe(30)
    expect(day?.taps).toEqual({ chicken: 1 })
    // Of slaw two were taken out, the other two went without.
    expect(day?.until.slaw?.takings.slaw).toBe(2)
    // Of the builds beside it in its last five minutes half are taken to have come before.
    expect(day?.until.slaw?.items['bean-and-pepper']).toBe(1.5)
  })

  test('[PR17] a tap in the five minutes in which a part was gone came after it; an item not sold that day says nothing', () => {
    const record = recordOf(20_000, 0, chicken(0))
    const build = { item: 'garden-chicken', portions: { chicken: 1, slaw: 1 } }
    const tap = { item: null, portions: { slaw: 1 } }
    const counts = [650, 660, 661].reduce(
      (sum, minute) => countBuild(sum, minute, build),
      countBuild(record.counts, 662, tap),
    )
    const one = record.components.chicken
    if (!one) throw new Error('it has chicken')
    const components = { slaw: { ...one, used: 3 * portion.amount } }
    const slawPlate = demoStation.items.map((item) =>
      item.id === 'harbor-tuna' ? { ...item, heart: 'slaw' } : item,
    )
    for (const items of [demoStation.items, slawPlate]) {
      const station = { ...demoStation, items }
      const [day] = pastDays([{ ...record, counts, components }], station, 'real')
      expect(day?.until.slaw?.takings.slaw).toBe(3)
      expect(day?.until.slaw?.items['garden-chicken']).toBe(2)
    }
  })

  test('[PR5] a practice, a demo, another station’s, a service cut short and a plan dropped teach nothing', () => {
    expect(
      of(
        recordOf(1, 30, { kind: 'practice' }),
        recordOf(2, 30, { kind: 'demo' }),
        recordOf(3, 30, { station: 'other' }),
        recordOf(4, 30, { cutShort: true }),
        recordOf(5, 30, { neverOpened: true }),
        recordOf(6, 0),
      ),
    ).toEqual([])
  })
})
