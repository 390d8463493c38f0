import { describe, expect, test } from 'vitest'
import { measuredBatch, yieldsOfServices } from '#lib/rooms/day/facts/measured-batches.ts'
import { serviceRecord } from '#lib/rooms/day/facts/service-record.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import { cardTexts } from '#lib/tasting/card-of.ts'
import { given, onward, running } from '#tests/support/service.ts'
import { TASTING_STATION } from '#tests/support/tasting.ts'

/** A service of a line whose tuna salad has a card and a load of 20, in which a batch was made. */
const madeOf = (portions: number, measured: boolean, loads = 1) => {
  const before = running(given())
  const portion = before.portions.tuna?.amount ?? 0
  const told = onward(
    given(),
    { type: 'startBatch', batch: 'b9', component: 'tuna', loads, startedAt: before.at },
    {
      type: 'finishBatch',
      batch: 'b9',
      amount: portions * portion,
      loads,
      ...(measured ? { measured: true as const } : {}),
    },
  )
  const state = { ...running(told), station: { ...TASTING_STATION, id: before.station.id } }
  const batch = state.batches.b9
  if (!batch) throw new Error('no batch')
  return { told, state, batch }
}

describe('a batch of a service', () => {
  test('[RC56] that was weighed or counted is told over its loads as the house says them', () => {
    const { state, batch } = madeOf(17, true)
    expect(measuredBatch(state, batch)).toEqual({
      ratio: 17 / 20,
      card: hashOf(cardTexts(TASTING_STATION).tuna),
      load: 20,
    })
    const two = madeOf(34, true, 2)
    expect(measuredBatch(two.state, two.batch)?.ratio).toBeCloseTo(17 / 20, 12)
  })

  test('[RC56] as usual is no measurement, nor is a lot, nor what has no card', () => {
    const { state, batch } = madeOf(20, false)
    expect(measuredBatch(state, batch)).toBeNull()
    const measured = { ...batch, measured: true as const }
    expect(measuredBatch(state, { ...measured, lot: 'l1' })).toBeNull()
    expect(measuredBatch(state, { ...measured, finishedAt: null })).toBeNull()
    expect(measuredBatch(state, { ...measured, component: 'cheddar' })).toBeNull()
    expect(measuredBatch(running(given()), measured)).toBeNull()
  })

  test('[RC56] said again as usual it isn’t measured any more', () => {
    const { told, batch } = madeOf(17, true)
    expect(batch.measured).toBe(true)
    const again = onward(told, { type: 'finishBatch', batch: 'b9', amount: batch.amount, loads: 1 })
    expect(running(again).batches.b9).not.toHaveProperty('measured')
  })

  test('[RC56] stands so in the record, of real services alone', () => {
    const { state } = madeOf(17, true)
    const record = serviceRecord({ ...state, kind: 'real' }, [])
    const made = yieldsOfServices([record], TASTING_STATION)
    expect(made).toEqual([])
    const [one] = yieldsOfServices([record], state.station)
    expect(one).toMatchObject({ component: 'tuna', from: 'service', ratio: 17 / 20, load: 20 })
    expect(yieldsOfServices([{ ...record, kind: 'practice' }], state.station)).toEqual([])
  })

  test('[TB14] each batch of a record has an id of its own, which stays', () => {
    const { state } = madeOf(17, true)
    const record = serviceRecord({ ...state, kind: 'real' }, [])
    const first = record.batches.find((one) => one.measured !== undefined)
    if (!first) throw new Error('no batch')
    const { measured: _, ...unmeasured } = first
    const ids = (batches: typeof record.batches) =>
      yieldsOfServices([{ ...record, batches }], state.station).map(({ id }) => id)
    expect(new Set(ids([first, unmeasured, first])).size).toBe(2)
    expect(ids([unmeasured, first])).toEqual([ids([first, first])[1]])
  })
})
