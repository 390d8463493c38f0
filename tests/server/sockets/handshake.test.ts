import { describe, expect, test } from 'vitest'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { connectScreen, createSocketRoom, isLetIn, knock } from '#tests/support/socket-room.ts'

describe('who may connect', () => {
  test('[X1] a script of this machine, which sends no origin', async () => {
    const { url } = await createSocketRoom()
    expect(await isLetIn(knock(url, 'lead'))).toBe(true)
  })

  test('[X1] a page of this very host and port', async () => {
    const { url, port } = await createSocketRoom()
    const headers = { host: `station.test:${port}`, origin: `http://station.test:${port}` }
    expect(await isLetIn(knock(url, 'counter', { headers }))).toBe(true)
  })

  test.each([
    ['another site', 'http://elsewhere.example'],
    ['another port of this host', 'http://station.test:1'],
    ['no site at all', 'null'],
    ['a file', 'file://'],
  ])('[X1] not a page of %s', async (_, origin) => {
    const { url, port } = await createSocketRoom()
    const headers = { host: `station.test:${port}`, origin }
    expect(await isLetIn(knock(url, 'counter', { headers }))).not.toBe(true)
  })

  test('[X1] not a page that reached this machine under a name that is not its own', async () => {
    const { url, port } = await createSocketRoom()
    const host = `rebound.example:${port}`
    expect(
      await isLetIn(knock(url, 'counter', { headers: { host, origin: `http://${host}` } })),
    ).not.toBe(true)
  })

  test.each([
    ['nothing', {}],
    ['a role that there is not', { protocol: PROTOCOL, role: 'owner' }],
    ['no role', { protocol: PROTOCOL }],
    ['a token that is no text', { protocol: PROTOCOL, role: 'counter', token: { a: 1 } }],
    ['a token without end', { protocol: PROTOCOL, role: 'counter', token: 'a'.repeat(201) }],
    ['a version that is no number', { protocol: '1', role: 'counter' }],
    ['a list', { protocol: [1], role: ['counter'], token: ['one'] }],
  ])('[X2] not who says %s', async (_, auth) => {
    const { url } = await createSocketRoom()
    expect(await isLetIn(knock(url, 'counter', { auth }))).toBe('not-the-protocol')
  })

  test('[X2] who is let in is told version, build, station, service, its own id and time', async () => {
    const { url, room } = await createSocketRoom()
    const { welcome } = await connectScreen(url, 'pick-up')
    expect(welcome).toEqual({
      protocol: PROTOCOL,
      build: 'build-1',
      house: 'own',
      station: { id: 'alder-hall', name: 'Alder Hall' },
      service: 's-lunch',
      device: 'd-pick-up',
      at: room.time.clock.now(),
    })
  })

  test('[X2] a page of an older or newer version is let in, so that it learns of the new build', async () => {
    const { url, token } = await createSocketRoom()
    for (const protocol of [PROTOCOL - 1, PROTOCOL + 1]) {
      const auth = { protocol, role: 'counter', device: 'old-tablet', token: token('counter') }
      expect((await connectScreen(url, 'counter', { auth })).welcome.build).toBe('build-1')
    }
  })

  test('[X13] sockets open after a page was served, and pages after a socket was opened', async () => {
    const { url } = await createSocketRoom()
    expect(await (await fetch(`${url}/counter`)).text()).toBe('a page')
    expect(await isLetIn(knock(url, 'counter'))).toBe(true)
    expect(await (await fetch(`${url}/counter`)).text()).toBe('a page')
    expect(await isLetIn(knock(url, 'pans' as never))).toBe('not-the-protocol')
  })
})
