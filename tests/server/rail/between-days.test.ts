import { describe, expect, it } from 'vitest'
import { whenOf } from '#lib/rooms/day/views/services-here.ts'
import { isRunning } from '#lib/service/state.ts'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import { sayMuch } from '#lib/words/amounts-en.ts'
import { sayLotProblem } from '#lib/words/larder/lot-en.ts'
import { demoStation } from '#server/demo-station.ts'
import type { LarderLog } from '#server/larder/larder-rail.ts'
import { openRail } from '#server/rail/rail.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import { createGatedLog, type RailLog } from '#tests/support/gated-log.ts'
import { createLarderRoom } from '#tests/support/larder-room.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { LOADS, OPEN } from '#tests/support/orders.ts'
import { PLAN } from '#tests/support/plans.ts'
import { createRailRoom, createTestClock, NOON } from '#tests/support/rail-room.ts'

const DAY = 86_400_000
const THE_DAY_BEFORE = Date.parse('2026-11-25T20:00:00Z')
const SLAW = 612_345

describe('between one day and the next', () => {
  it('[LA53] a crash between setting aside and closing: it is in the larder once, and the service closes', async () => {
    const gated = createGatedLog()
    const { larder } = await createLarderRoom({ at: NOON, log: gated.log.as() as LarderLog })
    const { rail, ports } = await createRailRoom({ log: gated.log, larder })
    await rail.submit('open', OPEN, 'lead')
    for (const [index, load] of LOADS.entries()) await rail.submit(`load-${index}`, load, 'lead')
    const aside: Command = {
      ...{ type: 'endFood', what: 'pan', id: 'pan-slaw', end: 'dry', amount: SLAW },
      ...{ how: 'weighed', preparedOn: '2026-03-01', initials: 'KT', lot: 'slaw-1' },
    }
    expect(await rail.submit('aside', aside, 'lead')).toMatchObject({ answer: 'accepted' })
    rail.close()
    const again = await openRail(ports)
    // Whoever wasn't answered sends it once more.
    expect(await again.submit('aside', aside, 'lead')).toMatchObject({ answer: 'accepted' })
    expect(await again.submit('close', { type: 'close' }, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    const events = await gated.log.read('s-lunch', 0)
    expect(events.filter(({ type }) => type === 'foodEnded')).toHaveLength(1)
    expect((await larder.newest()).lots['slaw-1']?.amount).toBe(SLAW)
  })

  const processOn = async (log: RailLog, startsAt: number) => {
    const time = createTestClock(startsAt)
    const document = { revision: 1, document: demoStation }
    const { ports } = await createRailRoom({ log, clock: time.clock, station: () => document })
    return openStationServices(ports)
  }
  const plan = commandSchema.parse(PLAN)
  const slaw = ['startBatch', 'finishBatch'].map((type) =>
    commandSchema.parse({
      ...{ type, batch: 'b1' },
      ...(type === 'startBatch'
        ? { component: 'slaw', loads: 1 }
        : { amount: 1_000_000, preparedOn: '2026-11-25' }),
    }),
  )

  it('[PL30] a planned service that is never opened stays, is told as over, and goes once its food is answered', async () => {
    const log: RailLog = createMemoryLog()
    const first = await processOn(log, THE_DAY_BEFORE)
    await first.submit('s-lunch', 'plan', plan, 'lead')
    for (const [index, command] of slaw.entries())
      await first.submit('s-lunch', `slaw-${index}`, command, 'lead')
    first.close()
    const later = await processOn(log, THE_DAY_BEFORE + 3 * DAY)
    const [rail] = later.planned('alder-hall')
    const state = rail?.state()
    if (!state || !isRunning(state) || !state.plan) throw new Error('no plan')
    expect(whenOf(state.plan, THE_DAY_BEFORE + 3 * DAY, '2026-11-28')).toBe('over')
    expect(whenOf(state.plan, THE_DAY_BEFORE, '2026-11-25')).toBe('ahead')
    const drop: Command = { type: 'dropPlan' }
    expect(await later.submit('s-lunch', 'drop', drop, 'lead')).toMatchObject({
      refusal: { code: 'throw-out-first' },
    })
    const out = { type: 'endFood', what: 'batch', id: 'b1', end: 'throw-out', how: 'eye' } as const
    await later.submit('s-lunch', 'out', { ...out, initials: 'KT' }, 'lead')
    expect(await later.submit('s-lunch', 'again', drop, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    expect(later.planned('alder-hall')).toEqual([])
  })

  it('[PL31] a date that passes while the laptop is off binds what was made for a planned service as it starts', async () => {
    const log: RailLog = createMemoryLog()
    const first = await processOn(log, THE_DAY_BEFORE)
    await first.submit('s-lunch', 'plan', plan, 'lead')
    for (const [index, command] of slaw.entries())
      await first.submit('s-lunch', `slaw-${index}`, command, 'lead')
    first.close()
    const later = await processOn(log, THE_DAY_BEFORE + 9 * DAY)
    later.look()
    await later.idle()
    const state = later.planned('alder-hall')[0]?.state()
    expect(state?.toThrowOut['batch/b1']).toMatchObject({ because: 'date' })
  })

  it('[LA53] what isn’t there in the larder is said with what is left and the way out', () => {
    const say = (problem: Parameters<typeof sayLotProblem>[0]) =>
      sayLotProblem(
        problem,
        () => '8:10 AM',
        (id) => id,
        sayMuch,
      )
    expect(say({ code: 'lot-holds-less', left: 453_592, unit: 'mg' })).toBe(
      'There isn’t that much of it: 1 lb is left. Take that, or less.',
    )
    expect(say({ code: 'lot-holds-less', left: 3, unit: 'piece' })).toMatch(/3 .*left\. Take that/)
    expect(say({ code: 'lot-gone', how: 'taken', at: 0 })).toMatch(/8:10 AM.*Take another\.$/)
    expect(say({ code: 'lot-bound', why: 'date' })).toMatch(/past its last day: throw it out/)
  })
})
