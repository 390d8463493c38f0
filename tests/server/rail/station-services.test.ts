import { describe, expect, test } from 'vitest'
import type { Command } from '#lib/spine/registry.ts'
import { openStationServices } from '#server/rail/station-services.ts'
import type { RailLog } from '#tests/support/gated-log.ts'
import { createMemoryLog } from '#tests/support/memory-log.ts'
import { OPEN, order, railStation } from '#tests/support/orders.ts'
import { createRailRoom, settle } from '#tests/support/rail-room.ts'

const CLOSE: Command = { type: 'close' }

const SOUP = { ...railStation, id: 'soup-line', name: 'Soup line' }
const OPEN_SOUP: Command = { type: 'open', station: SOUP.id, kind: 'real' }

/** Two stations of one house. */
const createBoth = async (log: RailLog = createMemoryLog()) => {
  const stations = [railStation, SOUP]
  const room = await createRailRoom({
    log,
    station: (id) => {
      const document = stations.find((one) => one.id === id)
      return document ? { revision: 1, document } : null
    },
  })
  return { log, services: await openStationServices(room.ports) }
}

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
    expect(services.current('alder-hall')?.service).toBe('s-one')
  })

  test('[R15] the next is opened when the one before is closed, and is followed from then on', async () => {
    const { services, log } = await createServices()
    await services.submit('s-one', 'one', OPEN, 'lead')
    await services.submit('s-one', 'close', CLOSE, 'lead')
    expect(services.current('alder-hall')?.service).toBe('s-one')
    const followed: (string | undefined)[] = []
    services.onShow(() => followed.push(services.current('alder-hall')?.service))
    await services.submit('s-two', 'two', OPEN, 'lead')
    expect(followed).toEqual(['s-two'])
    expect(
      (await openStationServices((await createRailRoom({ log })).ports)).current('alder-hall'),
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

describe('the stations of a house', () => {
  test('[R15][R40] each have an open service of their own, and a second one of none', async () => {
    const { services } = await createBoth()
    expect(await services.submit('s-wraps', 'one', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    expect(await services.submit('s-soup', 'two', OPEN_SOUP, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    expect(await services.submit('s-more', 'three', OPEN_SOUP, 'lead')).toMatchObject({
      refusal: { code: 'service-already-open' },
    })
    await services.submit('s-wraps', 'close', CLOSE, 'lead')
    expect(await services.submit('s-next', 'four', OPEN, 'lead')).toMatchObject({
      answer: 'accepted',
    })
    expect(services.current('soup-line')?.service).toBe('s-soup')
    expect(services.current('alder-hall')?.service).toBe('s-next')
    expect(services.currents().map(({ service }) => service)).toEqual(['s-soup', 's-next'])
    expect(services.current('no-such-station')).toBeNull()
  })

  test('[R40] what happens to one is in the stream of the other nowhere', async () => {
    const { services, log } = await createBoth()
    await services.submit('s-wraps', 'one', OPEN, 'lead')
    await services.submit('s-soup', 'two', OPEN_SOUP, 'lead')
    const before = await log.read('s-soup', 0)
    await services.submit('s-wraps', 'stop', { type: 'stopSelling', what: 'item', id: 'x' }, 'lead')
    await services.submit('s-wraps', 'close', CLOSE, 'lead')
    expect(await log.read('s-soup', 0)).toEqual(before)
    expect(services.current('soup-line')?.state().stage).toBe('open')
  })

  test('[R40] the newest of each is found again when the log is opened anew', async () => {
    const { services, log } = await createBoth()
    await services.submit('s-soup', 'one', OPEN_SOUP, 'lead')
    await services.submit('s-wraps', 'two', OPEN, 'lead')
    await services.submit('s-wraps', 'close', CLOSE, 'lead')
    await services.submit('s-next', 'three', OPEN, 'lead')
    services.close()
    const again = (await createBoth(log)).services
    expect(again.currents().map(({ service }) => service)).toEqual(['s-soup', 's-next'])
    expect(again.current('soup-line')?.service).toBe('s-soup')
  })

  test('[R40] of one whose newest is erased the one before is followed, and the other stays', async () => {
    const { services } = await createBoth()
    await services.submit('s-wraps', 'one', OPEN, 'lead')
    await services.submit('s-wraps', 'close', CLOSE, 'lead')
    await services.submit('s-next', 'two', OPEN, 'lead')
    await services.submit('s-next', 'close', CLOSE, 'lead')
    await services.submit('s-soup', 'three', OPEN_SOUP, 'lead')
    expect(await services.erase(['s-next', 's-soup'])).toEqual(['s-next'])
    expect(services.current('alder-hall')?.service).toBe('s-wraps')
    expect(services.current('soup-line')?.service).toBe('s-soup')
  })
})
