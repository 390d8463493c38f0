import { pino } from 'pino'
import { describe, expect, it } from 'vitest'
import type { Recorded } from '#lib/service/events/event.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Rail } from '#server/rail/rail.ts'
import { openKnownRecords } from '#server/records/known-records.ts'
import type { ServiceRecords } from '#server/records/port.ts'
import { createMemoryRecords } from '#tests/support/memory-records.ts'
import { recordOf } from '#tests/support/records.ts'
import {
  CLOSES,
  choice,
  give,
  order,
  type Stocked,
  stocked,
  stockedStation,
} from '#tests/support/stock.ts'

const cancelled = give(stocked(), 1, order(choice('garden-chicken')), {
  type: 'cancel',
  ticket: 1,
  letter: 'A',
})
const sold = give(
  cancelled,
  3,
  order(choice('garden-chicken')),
  { type: 'start', ticket: 2, letter: 'A' },
  { type: 'finish', ticket: 2, letter: 'A' },
  { type: 'handOver', ticket: 2, letter: 'A' },
)

const closed = (told: Stocked): RunningState => ({
  ...told.state,
  stage: 'closed',
  closedAt: CLOSES,
})

const railOf = (state: RunningState): Rail => ({
  service: state.service,
  state: () => state,
  position: () => 1,
  eventsAfter: () => null,
  submit: () => Promise.reject(new Error('nobody sends')),
  note: () => undefined,
  look: () => undefined,
  onShow: () => undefined,
  idle: () => Promise.resolve(),
  close: () => undefined,
})

const open = (records: ServiceRecords, events: readonly Recorded[] = []) => {
  const faults: unknown[] = []
  return openKnownRecords({
    records,
    events: () => Promise.resolve(events),
    logger: pino({ level: 'silent' }),
    fatal: (error) => faults.push(error),
  }).then((known) => ({ known, faults }))
}

describe('the records that are known', () => {
  it('[Z47] get that of a service when it has closed, once', async () => {
    const records = createMemoryRecords()
    const { known } = await open(records, sold.events)
    known.take(railOf(sold.state))
    known.take(railOf(closed(sold)))
    known.take(railOf(closed(sold)))
    await known.idle()
    known.take(railOf(closed(sold)))
    await known.idle()
    expect(known.all()).toMatchObject([{ service: 's-lunch', made: 1 }])
    expect(await records.list()).toHaveLength(1)
  })

  it('[Z49] say how heavy the newest service scooped', async () => {
    const records = createMemoryRecords()
    await records.put(recordOf(1, 3, { bias: { chicken: { bias: 0.12, sd: 0.02 } } }))
    const { known } = await open(records)
    expect(known.knownBias('alder-hall', 'real').chicken?.bias).toBe(0.12)
    expect(known.knownBias('alder-hall', 'demo')).toEqual({})
  })

  it('[Z48] teach what is learned once for as many records', async () => {
    const records = createMemoryRecords()
    await records.put(recordOf(1, 30))
    const { known } = await open(records, sold.events)
    const taught = known.taught(stockedStation, 'real')
    expect(taught.past).toHaveLength(1)
    expect(known.taught(stockedStation, 'real')).toBe(taught)
    expect(known.taught(stockedStation, 'demo').past).toHaveLength(0)
    known.take(railOf(closed(sold)))
    await known.idle()
    expect(known.taught(stockedStation, 'real').past).toHaveLength(2)
  })

  it('[Z47] end the process where the store fails', async () => {
    const { known, faults } = await open({
      list: () => Promise.resolve([]),
      put: () => Promise.reject(new Error('disk full')),
    })
    known.take(railOf(closed(sold)))
    await known.idle()
    expect(faults).toHaveLength(1)
  })
})
