import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, test } from 'vitest'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Command } from '#lib/spine/registry.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import { createGatedLog, type RailLog } from '#tests/support/gated-log.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { OPEN } from '#tests/support/orders.ts'
import { createRailRoom, settle } from '#tests/support/rail-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const CLOSE: Command = { type: 'close' }
const HELD = 'open:alder-hall'
const ALREADY = { answer: 'refused', refusal: { code: 'service-already-open' } }
const DAY = 86_400_000

/** What one process has of a log: it knows nothing of what another one remembers. */
const processOn = async (log: RailLog) => {
  const room = await createRailRoom({ log })
  return { room, services: await openStationServices(room.ports) }
}

describe('the open service of a station', () => {
  test('[R38] of two processes that open at one time one wins, and the other is refused', async () => {
    const within: RailLog = createMemoryLog()
    const gated = createGatedLog(within)
    const [one, two] = [await processOn(gated.log), await processOn(within)]
    gated.overtake(() => two.services.submit('s-two', 'two', OPEN, 'lead'))
    const answer = await one.services.submit('s-one', 'one', OPEN, 'lead')
    expect(answer).toEqual({ id: 'one', ...ALREADY })
    // It was decided to open it before the other came first.
    expect(gated.attempts.map(({ entries }) => entries.length)).toEqual([1, 0])
    expect(await within.services()).toEqual(['s-two'])
  })

  test('[R38] one that another process opened, and this one never heard of, is open', async () => {
    const log: RailLog = createMemoryLog()
    const one = await processOn(log)
    const two = await processOn(log)
    await two.services.submit('s-two', 'two', OPEN, 'lead')
    expect(one.services.current('alder-hall')).toBeNull()
    expect(await one.services.submit('s-one', 'one', OPEN, 'lead')).toMatchObject(ALREADY)
    await two.services.submit('s-two', 'close', CLOSE, 'lead')
    expect(await one.services.submit('s-one', 'again', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    expect(await two.services.submit('s-three', 'three', OPEN, 'lead')).toMatchObject(ALREADY)
  })

  test('[R38] opened and closed in one append, it is free; a demo that closes itself too', async () => {
    const log: RailLog = createMemoryLog()
    const { room, services } = await processOn(log)
    await Promise.all([room.give('open', OPEN), room.give('close', CLOSE)])
    expect([log.commits(), await log.guard(HELD)]).toEqual([1, 2])
    const demo = { ...OPEN, type: 'open', kind: 'demo', station: 'alder-hall' } as const
    await services.submit('s-demo', 'demo', demo, 'lead')
    expect(await log.guard(HELD)).toBe(3)
    room.time.pass(DAY)
    services.look()
    await services.idle()
    expect(await log.guard(HELD)).toBe(4)
    expect(await services.submit('s-real', 'real', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
  })

  test('[R38] what is refused, and what is no opening, raises nothing', async () => {
    const log: RailLog = createMemoryLog()
    const { services } = await processOn(log)
    await services.submit('s-one', 'none', { ...OPEN, station: 'nowhere' } as Command, 'lead')
    expect([await log.guard('open:nowhere'), await log.guard(HELD)]).toEqual([0, 0])
    await services.submit('s-one', 'one', OPEN, 'lead')
    await services.submit('s-one', 'again', OPEN, 'lead')
    await services.submit('s-one', 'sign', { type: 'signOff' }, 'in-charge')
    await settle()
    expect(await log.guard(HELD)).toBe(1)
  })

  test('[R38] a file of before, with a service that is open, holds the station', async () => {
    const path = join(temporaryFolder(), 'log.db')
    const open = () => openSqliteLog<Recorded, StoredAnswer>({ path })
    const before = open()
    const { services } = await processOn(before)
    await services.submit('s-one', 'one', OPEN, 'lead')
    services.close()
    await before.close()
    const old = new Database(path)
    old.exec('DROP TABLE guards; PRAGMA user_version = 1')
    old.close()
    const log = open()
    const again = await processOn(log)
    expect(await log.guard(HELD)).toBe(1)
    expect(await again.services.submit('s-two', 'two', OPEN, 'lead')).toMatchObject(ALREADY)
    await again.services.submit('s-one', 'close', CLOSE, 'lead')
    expect(await log.guard(HELD)).toBe(2)
    expect(await again.services.submit('s-two', 'two again', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    again.services.close()
    await log.close()
  })
})
