import { describe, expect, it } from 'vitest'
import { afterSetBack } from '#lib/rooms/food/folds/clock-set-back.ts'
import type { BatchState, HeldStock } from '#lib/service/food-state.ts'
import { minute } from '#tests/support/food.ts'
import { given, running } from '#tests/support/service.ts'

const HOUR = 3_600_000
const base = running(given())
const food = base.pans['pan-chicken']?.food
const [batchId = '', batch] = Object.entries(base.batches)[0] ?? []
const pan = base.pans['pan-chicken']
if (!batch || !pan || !food) throw new Error('no chicken')

const readAt = (at: number) => ({
  temperature: { tenths: 1500, scale: 'F' as const },
  at,
  probe: 'probe 1',
  where: 'middle-stirred' as const,
  initialled: true,
  heldSeconds: null,
  stoodSeconds: null,
})

/** Each moment of it lies so many minutes after the opening, all of them other ones. */
const stock = (by: number): HeldStock => ({
  ...pan,
  since: minute(1) - by,
  loadedAt: minute(2) - by,
  readings: [readAt(minute(3) - by), readAt(minute(4) - by)],
  food: {
    ...food,
    clock: { rule: '4h', startedAt: minute(5) - by, throwOutAt: minute(6) - by },
    finishedAt: minute(7) - by,
  },
  // When it was found is told by the clock of then.
  offSale: { why: 'out-of-limits', since: minute(8), lastGoodAt: minute(9) - by },
})

const making = (by: number): BatchState => ({
  ...batch,
  startedAt: minute(10) - by,
  finishedAt: minute(11) - by,
  cooking: [readAt(minute(12) - by)],
  cooling: [readAt(minute(13) - by)],
  presentUntil: minute(23) - by,
  reheat: {
    place: 'range',
    startedAt: minute(14) - by,
    readings: [readAt(minute(15) - by)],
    ok: true,
    why: null,
  },
  clock: { rule: '4h', startedAt: minute(16) - by, throwOutAt: minute(17) - by },
  readings: [readAt(minute(18) - by)],
  toldAt: minute(19) - by,
  offSale: { why: 'cooling-missed', since: minute(20), lastGoodAt: minute(21) - by },
  newestAt: minute(22) - by,
})

describe('a clock that was set back', () => {
  const backId = Object.keys(base.backupPans)[0] ?? ''
  const back = base.backupPans[backId]
  if (!back) throw new Error('no back-up pan')
  const { component, guarded, kept } = back
  const stateWith = (by: number) => ({
    ...base,
    pans: { 'pan-chicken': stock(by) },
    backupPans: { [backId]: { ...stock(by), component, guarded, kept } },
    batches: { [batchId]: making(by) },
  })

  it('[S129] moves every moment that food lived through by as much, of pans, back-up pans and batches', () => {
    const after = afterSetBack(stateWith(0), HOUR)
    const wanted = stateWith(HOUR)
    expect(after.pans).toEqual(wanted.pans)
    expect(after.backupPans).toEqual(wanted.backupPans)
    expect(after.batches).toEqual(wanted.batches)
  })

  it('[S129] and leaves open what nobody knows', () => {
    const unknown = {
      ...base,
      pans: {
        'pan-chicken': {
          ...stock(0),
          food: null,
          offSale: { why: 'out-of-limits', since: minute(8), lastGoodAt: null } as const,
        },
      },
      batches: {
        [batchId]: { ...making(0), finishedAt: null, reheat: null, clock: null, offSale: null },
      },
    }
    const after = afterSetBack(unknown, HOUR)
    expect(after.pans['pan-chicken']).toMatchObject({ food: null, offSale: { lastGoodAt: null } })
    expect(after.batches[batchId]).toMatchObject({
      finishedAt: null,
      reheat: null,
      clock: null,
      offSale: null,
    })
  })
})
