import { once } from 'node:events'
import { createServer, request } from 'node:http'
import type { AddressInfo } from 'node:net'
import { pino } from 'pino'
import { describe, expect, onTestFinished, test } from 'vitest'
import { createAnswer } from '#server/http/answer.ts'
import { createEdge } from '#server/http/edge.ts'
import { createInCharge } from '#server/in-charge/in-charge.ts'
import type { Passphrases } from '#server/in-charge/port.ts'
import { CHEAP } from '#tests/support/cheap-hash.ts'
import { createMemoryPassphrases } from '#tests/support/memory-in-charge.ts'

const RIGHT = 'left of the grill'
const OTHER = 'right of the grill'
const PATH = '/in-charge/passphrase'

interface Asking {
  readonly method?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string
  /** The address that the server sees. */
  readonly from?: string
}

const createRoom = async (passphrases: Passphrases = createMemoryPassphrases()) => {
  const inCharge = createInCharge({ passphrases, cost: CHEAP })
  const logged: string[] = []
  const answer = createAnswer({
    about: { version: '0', revision: null },
    health: { protocol: 1, service: () => null, commits: () => 0 },
    inCharge,
    allergens: () => ({ at: 0, facts: null }),
    pages: null,
    edge: createEdge({ secure: false, extraHosts: ['tablet-host'] }),
    development: false,
    port: () => 0,
    log: pino({ level: 'trace' }, { write: (line) => logged.push(line) }),
  })
  const server = createServer((asked, response) => {
    const from = asked.headers['x-test-from']
    delete asked.headers['x-test-from']
    if (from !== undefined) Object.defineProperty(asked.socket, 'remoteAddress', { value: from })
    void answer(asked, response)
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  onTestFinished(() => {
    server.closeAllConnections()
    server.close()
  })
  const { port } = server.address() as AddressInfo

  const ask = (path: string, { method = 'GET', headers = {}, body, from }: Asking = {}) =>
    new Promise<{ status: number | undefined; type: string | undefined; json: unknown }>(
      (settle, fail) => {
        const asked = request({
          host: '127.0.0.1',
          port,
          path,
          method,
          agent: false,
          headers: { ...headers, ...(from === undefined ? {} : { 'x-test-from': from }) },
        })
        asked.on('error', fail)
        asked.on('response', async (answered) => {
          let text = ''
          for await (const part of answered) text += String(part)
          const type = answered.headers['content-type']
          const isJson = type?.startsWith('application/json')
          settle({ status: answered.statusCode, type, json: isJson ? JSON.parse(text) : text })
        })
        asked.end(body)
      },
    )

  const set = (value: unknown, asking: Asking = {}) =>
    ask(PATH, {
      method: 'POST',
      body: JSON.stringify(value),
      ...asking,
      headers: { 'content-type': 'application/json', ...asking.headers },
    })

  return { inCharge, logged, ask, set, port }
}

const TABLET = '192.168.7.9'
const ofTablet = (port: number): Asking => ({
  from: TABLET,
  headers: { host: `tablet-host:${port}`, origin: `http://tablet-host:${port}` },
})

describe('the passphrase over http', () => {
  test('[I6] it is told whether there is one, and nothing more', async () => {
    const { ask, set } = await createRoom()
    expect(await ask('/in-charge')).toMatchObject({ status: 200, json: { set: false } })
    expect(await set({ passphrase: RIGHT })).toMatchObject({ status: 200, json: { code: 'set' } })
    expect((await ask('/in-charge')).json).toEqual({ set: true })
  })

  test('[I6] the first is set from this machine only', async () => {
    const { set, port, inCharge } = await createRoom()
    const only = { status: 403, json: { code: 'only-on-this-machine' } }
    expect(await set({ passphrase: RIGHT }, ofTablet(port))).toMatchObject(only)
    for (const header of ['forwarded', 'x-forwarded-for'])
      expect(
        await set({ passphrase: RIGHT }, { headers: { [header]: 'for=192.168.7.9' } }),
      ).toMatchObject(only)
    expect(await inCharge.isSet()).toBe(false)
  })

  test('[I6] a change needs the one before, from any tablet', async () => {
    const { set, port, inCharge } = await createRoom()
    await set({ passphrase: RIGHT })
    expect(await set({ passphrase: OTHER })).toMatchObject({
      status: 403,
      json: { code: 'before-missing' },
    })
    expect(await set({ passphrase: OTHER, before: OTHER }, ofTablet(port))).toMatchObject({
      status: 403,
      json: { code: 'wrong-passphrase' },
    })
    expect(await inCharge.prove(RIGHT, 'a test')).toBe('right')
    expect(await set({ passphrase: OTHER, before: RIGHT }, ofTablet(port))).toMatchObject({
      status: 200,
      json: { code: 'set' },
    })
    expect(await inCharge.prove(OTHER, 'a test')).toBe('right')
  })

  test('[I4] wrong tries are counted by address, over sockets and http together', async () => {
    const { set, port, inCharge } = await createRoom()
    await set({ passphrase: RIGHT })
    for (let tried = 0; tried < 4; tried += 1)
      await set({ passphrase: OTHER, before: OTHER }, ofTablet(port))
    expect(await inCharge.prove(OTHER, TABLET)).toBe('wrong-passphrase')
    expect(await set({ passphrase: OTHER, before: RIGHT }, ofTablet(port))).toMatchObject({
      status: 429,
      json: { code: 'too-many-tries' },
    })
    expect((await set({ passphrase: OTHER, before: RIGHT })).status).toBe(200)
  })

  test.each<[string, unknown, Asking, number, string]>([
    [
      'another origin',
      { passphrase: RIGHT },
      { headers: { origin: 'http://evil.example' } },
      403,
      'other-origin',
    ],
    ['no origin from a tablet', { passphrase: RIGHT }, { from: TABLET }, 403, 'other-origin'],
    [
      'a form',
      { passphrase: RIGHT },
      { headers: { 'content-type': 'text/plain' } },
      400,
      'not-as-asked',
    ],
    ['no JSON', null, { body: '{"passphrase":' }, 400, 'not-json'],
    ['nothing', null, { body: '' }, 400, 'not-json'],
    ['a list', [RIGHT], {}, 400, 'not-as-asked'],
    ['a number', { passphrase: 12_345_678 }, {}, 400, 'not-as-asked'],
    ['a field nobody knows', { passphrase: RIGHT, role: 'lead' }, {}, 400, 'not-as-asked'],
    ['one that is short', { passphrase: 'short' }, {}, 400, 'too-short'],
    ['one that is long', { passphrase: 'x'.repeat(201) }, {}, 400, 'too-long'],
    ['too much', null, { body: 'x'.repeat(100_000) }, 413, 'too-large'],
    ['a change of none', { passphrase: RIGHT, before: OTHER }, {}, 409, 'no-passphrase'],
  ])('[I7] %s is told by a code, and sets nothing', async (_, value, asking, status, code) => {
    const { set, inCharge } = await createRoom()
    expect(await set(value, asking)).toMatchObject({ status, json: { code } })
    expect(await inCharge.isSet()).toBe(false)
  })

  test('[I7] a strange host is not answered, and each path takes its own method only', async () => {
    const { ask, set, inCharge } = await createRoom()
    expect((await set({ passphrase: RIGHT }, { headers: { host: 'evil.example' } })).status).toBe(
      421,
    )
    expect((await ask('/in-charge', { headers: { host: 'evil.example' } })).status).toBe(421)
    expect((await ask('/in-charge', { method: 'POST' })).status).toBe(405)
    for (const method of ['GET', 'PUT', 'OPTIONS', 'DELETE'])
      expect((await ask(PATH, { method })).status, method).toBe(405)
    expect(await inCharge.isSet()).toBe(false)
  })

  test('[I7] a store that fails is told and logged, without the passphrase', async () => {
    const failing = {
      ...createMemoryPassphrases(),
      replace: () => Promise.reject(new Error('full')),
    }
    const { set, logged } = await createRoom(failing)
    expect(await set({ passphrase: RIGHT })).toMatchObject({
      status: 500,
      json: { code: 'failed' },
    })
    expect(logged.join()).toContain('full')
    expect(logged.join()).not.toContain(RIGHT)
  })
})
