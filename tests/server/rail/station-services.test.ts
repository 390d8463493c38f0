import { describe, expect, test } from 'vitest'
import type { Command } from '#lib/spine/registry.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import type { RailLog } from '#tests/support/gated-log.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { OPEN, order } from '#tests/support/orders.ts'
import { createRailRoom, settle } from '#tests/support/rail-room.ts'

const CLOSE: Command = { type: 'close' }

const createServices = async (log: RailLog = createMemoryLog()) => {
  const room = await createRailRoom({ log })
  const services = await openStationServices(room.ports)
  return { log, services, faults: room.faults }
}

describe('the services of a station', () => {
  test('[R15] of two that are opened at once one is refused', async () => {
    const { services, log } = await createServices()
    const answers = await Promise.all([
      services.submit('s-one', 'one', OPEN, 'lead'),
      services.submit('s-two', 'two', OPEN, 'lead'),
    ])
    expect(answers).toEqual([
      { id: 'one', answer: 'accepted', position: 1 },
      { id: 'two', answer: 'refused', refusal: { code: 'service-already-open' } },
    ])
    expect(await log.services()).toEqual(['s-one'])
    expect(services.current()?.service).toBe('s-one')
  })

  test('[R15] the next is opened when the one before is closed, and is followed from then on', async () => {
    const { services, log } = await createServices()
    await services.submit('s-one', 'one', OPEN, 'lead')
    await services.submit('s-one', 'close', CLOSE, 'lead')
    expect(services.current()?.service).toBe('s-one')
    const followed: (string | undefined)[] = []
    services.onShow(() => followed.push(services.current()?.service))
    await services.submit('s-two', 'two', OPEN, 'lead')
    expect(followed).toEqual(['s-two'])
    expect(
      (await openStationServices((await createRailRoom({ log })).ports)).current(),
    ).toMatchObject({ service: 's-two' })
  })

  test('[R15] one that was refused can be opened later under another id, and is shown once', async () => {
    const { services } = await createServices()
    await services.submit('s-one', 'one', OPEN, 'lead')
    await services.submit('s-two', 'two', OPEN, 'lead')
    await services.submit('s-one', 'close', CLOSE, 'lead')
    const shown: string[] = []
    services.onShow((rail, events) => {
      for (const { type } of events) shown.push(`${rail.service} ${type}`)
    })
    expect(await services.submit('s-two', 'two', OPEN, 'lead')).toMatchObject({ answer: 'refused' })
    expect(await services.submit('s-two', 'again', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    await settle()
    expect(shown).toEqual(['s-two serviceOpened'])
  })

  test('[R15][R4] an opening that is sent again opens nothing more', async () => {
    const { services, log } = await createServices()
    const first = await services.submit('s-one', 'one', OPEN, 'lead')
    expect(await services.submit('s-one', 'one', OPEN, 'lead')).toEqual(first)
    await services.submit('s-one', 'close', CLOSE, 'lead')
    expect(await services.submit('s-one', 'one', OPEN, 'lead')).toEqual(first)
    expect(await log.head('s-one')).toBe(2)
  })

  test('[R16] a command for a service that does not exist is not taken, and stores nothing', async () => {
    const { services, log } = await createServices()
    expect(await services.submit('s-none', 'order', order(), 'counter')).toEqual({
      id: 'order',
      answer: 'not taken',
      because: { code: 'no-such-service' },
    })
    expect(await services.find('s-none')).toBeNull()
    expect(await log.answerTo('s-none', 'order')).toBeNull()
    expect(log.commits()).toBe(0)
  })

  test('[R16] a service that was closed takes nothing more, and can still be read', async () => {
    const { services } = await createServices()
    await services.submit('s-one', 'one', OPEN, 'lead')
    await services.submit('s-one', 'close', CLOSE, 'lead')
    expect(await services.submit('s-one', 'order', order(), 'counter')).toMatchObject({
      refusal: { code: 'service-closed' },
    })
    expect((await services.find('s-one'))?.state().stage).toBe('closed')
  })

  test('[R9] a store that can no longer be read ends the process', async () => {
    const log: RailLog = createMemoryLog()
    const { services, faults } = await createServices(log)
    const failure = Object.assign(new Error('disk I/O error'), { code: 'SQLITE_IOERR_READ' })
    log.head = () => Promise.reject(failure)
    await expect(services.submit('s-one', 'order', order(), 'counter')).rejects.toBe(failure)
    expect(faults).toEqual([failure])
  })
})
