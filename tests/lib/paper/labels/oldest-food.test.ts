import { describe, expect, it } from 'vitest'
import { type LabelsHere, larderShown } from '#lib/larder/shelf-view.ts'
import { datesOf, earliestOf, type LabelDates } from '#lib/paper/labels/label-dates.ts'
import { lotFacts } from '#lib/paper/labels/lot-facts.ts'
import { placeOf } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf } from '#lib/station/find.ts'
import { coldRice, larderAfter, setAside } from '#tests/support/larder.ts'
import { plannedService } from '#tests/support/plans.ts'
import { at } from '#tests/support/readings.ts'
import { demoStation, onward, running } from '#tests/support/service.ts'

const begun = running(
  onward(
    plannedService(),
    { type: 'startBatch', batch: 'b1', component: 'slaw', loads: 1 },
    { type: 'finishBatch', batch: 'b1', loads: 1, amount: 1_000_000 },
  ),
)
const [one] = Object.values(begun.batches)

/** Slaw that is there, of batches begun and finished at these moments. */
const datesWith = (...times: (readonly [begun: string, finished: string])[]): LabelDates => {
  if (!one) throw new Error('a batch is there')
  const batches = Object.fromEntries(
    times.map(([from, to], index) => [
      `b${index + 1}`,
      { ...one, dateMark: null, startedAt: Date.parse(from), finishedAt: Date.parse(to) },
    ]),
  )
  const state: RunningState = { ...begun, batches }
  const place = placeOf(state, { what: 'batch', id: 'b1' })
  if (!place) throw new Error('it is there')
  const all = { ...place, batches: Object.keys(batches) }
  return datesOf(state, componentOf(state.station, 'slaw'), 'cold', all)
}

describe('the dates of food of several ages', () => {
  it('[PR66] are those of the oldest, whichever comes first', () => {
    const young = ['2026-11-25T18:00:00Z', '2026-11-25T18:30:00Z'] as const
    const old = ['2026-11-23T18:00:00Z', '2026-11-23T18:30:00Z'] as const
    for (const all of [
      [young, old],
      [old, young],
    ])
      expect(datesWith(...all)).toMatchObject({
        made: { at: Date.parse(old[1]) },
        // Chicago's midnight that ends the 29th: the 23rd is day 1 of 7 (3-501.17(A)).
        discard: { at: Date.parse('2026-11-30T06:00:00Z'), because: 'date' },
      })
  })

  it('[PR66] what was begun before midnight and finished after it has its first day before', () => {
    const { made, discard } = datesWith(['2026-11-24T05:30:00Z', '2026-11-24T06:30:00Z'])
    expect(made?.at).toBe(Date.parse('2026-11-24T06:30:00Z'))
    expect(discard).toEqual({ at: Date.parse('2026-11-30T06:00:00Z'), because: 'date' })
  })

  it('[PR66] out of several pans a clock that runs goes first, then one that is to come, then the earliest day', () => {
    const of = (discard: LabelDates['discard']): LabelDates => ({
      ...{ first: 'made', made: null, isPlanned: false, discard },
    })
    const { timeOnly4h: within } = { timeOnly4h: { withinMs: 1, source: 'here' } as never }
    const toCome = of({ at: null, because: 'reading', within })
    const [sooner, later] = [of({ at: 50, because: 'date' }), of({ at: 90, because: 'date' })]
    const clock = of({ at: 40, because: 'clock' })
    expect(earliestOf([later, sooner])).toBe(sooner)
    expect(earliestOf([sooner, toCome, later])).toBe(toCome)
    expect(earliestOf([sooner, toCome, clock])).toBe(clock)
    expect(earliestOf([])).toBeUndefined()
  })
})

describe('a lot whose label changed since it was set aside', () => {
  it('[PR67] is as unread on its own label until somebody said which pack it was of', () => {
    const labels: LabelsHere = {
      ...{ newest: () => ({ cheddar: 2 }), from: () => [], nameOf: (_, id) => id },
      ...{ labelOf: () => null, allergensOf: () => null },
    }
    const lotOf = (version: number) => {
      const food = coldRice({ madeOf: ['cheddar'], labels: { cheddar: version } })
      const state = larderAfter([[at('14:30'), setAside('a', food)]])
      const [lot] = larderShown(state, at('15:00'), labels).lots
      if (!lot) throw new Error('it is there')
      return lotFacts(demoStation, lot, at('15:00')).said
    }
    expect(lotOf(2).unread).toEqual([])
    expect(lotOf(1).unread).toHaveLength(1)
    expect(lotOf(1).contains.map(({ code }) => code)).toContain('milk')
  })
})
