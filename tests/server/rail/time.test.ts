import { afterEach, describe, expect, test, vi } from 'vitest'
import type { Command } from '#lib/spine/registry.ts'
import { createServerClock } from '#server/rail/clock.ts'
import { openRail } from '#server/rail/rail.ts'
import type { RailPorts } from '#server/rail/rail-ports.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import { order } from '#tests/support/orders.ts'
import {
  createOpenRoom,
  createRailRoom,
  createTestClock,
  NOON,
  settle,
} from '#tests/support/rail-room.ts'

const DEMO: Command = { type: 'open', station: 'alder-hall', kind: 'demo' }
const HOUR = 3_600_000
const DAY = 24 * HOUR

afterEach(() => {
  vi.useRealTimers()
})

describe('the time of an event', () => {
  test('[R13] is the server’s, and stays where the clock is set back', async () => {
    const { give, time, entries } = await createOpenRoom()
    time.pass(5_000)
    await give('one', order())
    time.set(NOON - HOUR)
    await give('two', order())
    time.set(NOON + 6_000)
    await give('three', order())
    const all = await entries()
    const of = (command: string) => all.filter((event) => event.command === command)
    expect(of('one').map(({ at }) => at)).toEqual([NOON + 5_000])
    expect(of('two').map(({ at }) => at)).toEqual([NOON + 5_000])
    expect(of('three').map(({ at }) => at)).toEqual([NOON + 6_000])
    const times = all.map(({ at }) => at)
    expect(times).toEqual([...times].sort((one, other) => one - other))
  })

  test('[R13] stays also over a restart with a clock that is behind', async () => {
    const { give, time, ports, entries } = await createOpenRoom()
    time.pass(9_000)
    await give('one', order())
    time.set(NOON)
    const again = await openRail(ports)
    await again.submit('two', order(), 'counter')
    expect((await entries()).at(-1)).toMatchObject({ command: 'two', at: NOON + 9_000 })
  })
})

describe('what falls due', () => {
  test('[R12] is appended before the commands of the batch, with the moment at which it was due', async () => {
    const { give, time, entries, rail } = await createRailRoom()
    await give('open', DEMO)
    const due = rail.state().closesItselfAt
    expect(due).toBeGreaterThan(NOON)
    time.pass(DAY)
    expect(await give('order', order())).toMatchObject({ refusal: { code: 'service-closed' } })
    expect((await entries()).at(-1)).toEqual({
      type: 'serviceClosed',
      why: 'demo-left-open',
      position: 2,
      at: NOON + DAY,
      command: null,
      due,
    })
  })

  test('[R12] is appended by looking, without any command', async () => {
    const { give, time, rail, entries, shown } = await createRailRoom()
    await give('open', DEMO)
    rail.look()
    await rail.idle()
    expect(await entries()).toHaveLength(1)
    time.pass(DAY)
    rail.look()
    await rail.idle()
    expect(rail.state().stage).toBe('closed')
    expect(shown.at(-1)).toHaveLength(1)
    rail.look()
    await rail.idle()
    expect(await entries()).toHaveLength(2)
  })

  test('[R12] is appended at its moment by itself', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    const { give, time, rail } = await createRailRoom()
    await give('open', DEMO)
    const wait = (rail.state().closesItselfAt ?? 0) - NOON
    for (let left = wait; left > 0; left -= HOUR) {
      expect(rail.state().stage).toBe('open')
      time.pass(Math.min(left, HOUR))
      vi.advanceTimersByTime(Math.min(left, HOUR))
      await settle()
    }
    expect(rail.state().stage).toBe('closed')
    rail.close()
  })

  test('[R12] nothing is appended after the rail was closed', async () => {
    const { give, time, rail, entries } = await createRailRoom()
    await give('open', DEMO)
    rail.close()
    time.pass(DAY)
    rail.look()
    await settle()
    expect(await entries()).toHaveLength(1)
  })
})

describe('a clock that jumps', () => {
  test('[R14] is recorded once, before the commands of its batch, and holds back what would fall due', async () => {
    const { give, time, entries, rail } = await createRailRoom()
    await give('open', DEMO)
    time.set(NOON + DAY)
    expect(await give('early', { type: 'pay', ticket: 1, paid: true })).toMatchObject({
      refusal: { code: 'unknown', what: 'ticket' },
    })
    rail.look()
    await rail.idle()
    expect((await entries()).slice(1)).toEqual([
      { type: 'clockJumped', byMs: DAY, position: 2, at: NOON + DAY, command: null },
    ])
    expect(rail.state()).toMatchObject({ stage: 'open', clockJump: { byMs: DAY } })
    await give('confirm', { type: 'confirmClock' })
    rail.look()
    await rail.idle()
    expect((await entries()).slice(2).map(({ type }) => type)).toEqual([
      'clockConfirmed',
      'serviceClosed',
    ])
  })

  test('[R14] is told to every service that is open, not only to the first that asks', () => {
    let wall = NOON
    const clock = createServerClock(
      () => wall,
      () => 0,
    )
    const [one, other] = [clock.watchJumps(), clock.watchJumps()]
    wall += HOUR
    expect([one(), one(), other()]).toEqual([HOUR, 0, HOUR])
    wall -= HOUR
    expect([one(), other()]).toEqual([-HOUR, -HOUR])
    wall += 59_999
    expect(one()).toBe(0)
  })

  test('[R14] is recorded in the open service though a closed one is looked after too', async () => {
    const { ports, time } = await createRailRoom()
    const services = await openStationServices(ports)
    await services.submit('s-one', 'one', DEMO, 'lead')
    await services.submit('s-one', 'close', { type: 'close' }, 'lead')
    await services.submit('s-two', 'two', DEMO, 'lead')
    time.set(NOON + HOUR)
    services.look()
    await services.idle()
    expect((await ports.log.read('s-one', 0)).map(({ type }) => type)).not.toContain('clockJumped')
    expect((await ports.log.read('s-two', 1)).map(({ type }) => type)).toEqual(['clockJumped'])
    services.close()
  })

  test('[R14] back is recorded as well', async () => {
    const { give, time, entries } = await createRailRoom()
    await give('open', DEMO)
    time.set(NOON - HOUR)
    await give('pay', { type: 'pay', ticket: 1, paid: true })
    expect((await entries()).at(-1)).toMatchObject({ type: 'clockJumped', byMs: -HOUR, at: NOON })
  })

  /** The server is started anew by a wall clock that shows this. */
  const startedAt = async (ports: RailPorts, wall: number) => {
    const time = createTestClock(wall)
    const rail = await openRail({ ...ports, clock: time.clock })
    await settle()
    await rail.idle()
    return { rail, time }
  }

  test('[R37] that was set back while the server was stopped is noticed when it starts', async () => {
    const { ports, rail: before } = await createOpenRoom()
    before.close()
    const { rail } = await startedAt(ports, NOON - HOUR)
    expect(rail.state().clockJump).toMatchObject({ byMs: -HOUR })
    expect((await ports.log.read(ports.service, 0)).at(-1)).toMatchObject({
      type: 'clockJumped',
      command: null,
    })
  })

  test('[R37] that was set back before the stop, and is known so, isn’t taken for another one', async () => {
    const { ports, rail: before, time, give } = await createOpenRoom()
    time.set(NOON - HOUR)
    await give('pay', { type: 'pay', ticket: 1, paid: true })
    await give('confirm', { type: 'confirmClock' })
    time.pass(5 * 60_000)
    before.close()
    const { rail } = await startedAt(ports, NOON - HOUR + 10 * 60_000)
    expect(rail.state().clockJump).toBeNull()
    rail.close()
    const again = await startedAt(ports, NOON - 2 * HOUR)
    expect(again.rail.state().clockJump).toMatchObject({ byMs: -HOUR })
  })

  test('[R37] that went on as time does is no jump, nor is one of a closed service', async () => {
    const { ports, rail: before } = await createOpenRoom()
    before.close()
    const later = await startedAt(ports, NOON + 60_000)
    expect(later.rail.state().clockJump).toBeNull()
    await later.rail.submit('close', { type: 'close' }, 'lead')
    later.rail.close()
    const closed = await startedAt(ports, NOON - HOUR)
    expect(closed.rail.state()).toMatchObject({ stage: 'closed', clockJump: null })
  })
})
