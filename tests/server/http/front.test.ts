import { once } from 'node:events'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { pino } from 'pino'
import { Server } from 'socket.io'
import { io } from 'socket.io-client'
import { describe, expect, onTestFinished, test } from 'vitest'
import { createEdge, type EdgeLimits } from '#server/http/edge.ts'
import { listenerOptions, openFront } from '#server/http/front.ts'
import { MOST_BODIES, MOST_REQUESTS, WITHIN_MS } from '#server/http/limits.ts'
import { createRouteTable } from '#server/http/routes.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { rawHttp } from '#tests/support/raw-http.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const JSON_TYPE = 'Content-Type: application/json'
const SIGN_ON = '/access/sign-on'

const startRaw = async () => {
  const { url } = await startComposedStation(temporaryFolder())
  const port = Number(new URL(url).port)
  const ask = (line: string, headers: readonly string[] = [], body = '') =>
    rawHttp(
      port,
      `${line} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n${headers.map((one) => `${one}\r\n`).join('')}\r\n${body}`,
    )
  return { url, port, ask }
}

describe('default deny', () => {
  test('[EG2] a path, a method or a query’s trick that no row names is not answered', async () => {
    const { ask } = await startRaw()
    const answered = async (line: string) => (await ask(line)).status
    expect(await answered('GET /health')).toBe(200)
    expect(await answered('HEAD /health')).toBe(200)
    expect(await answered('GET /health?a=/allergens')).toBe(200)
    for (const path of ['/Health', '/health/', '//health', '/%68ealth', '/./health', '/nowhere'])
      expect(await answered(`GET ${path}`), path).toBe(404)
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'PROPFIND'])
      for (const path of ['/health', '/nowhere', '/counter'])
        expect(await answered(`${method} ${path}`), `${method} ${path}`).toBe(405)
    expect(await answered(`GET ${SIGN_ON}`)).toBe(405)
    expect(await answered('GET /socket.io/?EIO=4&transport=polling'), 'no polling').toBe(404)
    for (const method of ['TRACE', 'CONNECT'])
      expect([0, 400, 405], method).toContain(await answered(`${method} /health`))
  })

  test('[EG2] a request that two readers would read differently is not answered', async () => {
    const { ask, port } = await startRaw()
    for (const twice of [
      `Host: 127.0.0.1:${port}`,
      'Origin: a\r\nOrigin: b',
      'Content-Length: 2\r\nTransfer-Encoding: chunked',
    ])
      expect((await ask('POST /access/sign-on', [JSON_TYPE, twice], '{}')).status).toBe(400)
    expect((await ask(`GET http://evil.example/health`)).status).toBe(400)
    expect((await ask('GET *')).status).toBe(400)
    expect((await ask(`GET /health?${'a'.repeat(2_100)}`)).status).toBe(413)
    expect((await ask('GET /health', [`A: ${'a'.repeat(17_000)}`])).status).toBe(431)
    expect((await ask('GET /health', ['Content-Length: 3'], 'abc')).status).toBe(400)
  })

  test('[EG2] a handshake is taken at one address only', async () => {
    const { ask } = await startRaw()
    const upgrade = [
      'Connection: Upgrade',
      'Upgrade: websocket',
      'Sec-WebSocket-Version: 13',
      'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==',
    ]
    const status = async (line: string) => (await ask(line, upgrade)).status
    expect(await status('GET /socket.io/?EIO=4&transport=websocket')).toBe(101)
    for (const path of ['/', '/health', '/socket.iox/', '/socket.io', '/_next/hmr'])
      expect(await status(`GET ${path}?EIO=4&transport=websocket`), path).toBe(404)
    expect(await status('POST /socket.io/?EIO=4&transport=websocket')).toBe(404)
  })

  test('[EG2] the table has each row once, and no body where it is only read', () => {
    const row = { path: '/a', method: 'GET', answer: () => undefined } as const
    expect(() => createRouteTable([row, row])).toThrow('two routes')
    const body = { types: ['image/jpeg'], mostBytes: 9 }
    expect(() => createRouteTable([{ ...row, body }])).toThrow('a body')
    expect(createRouteTable([row]).find('/a', 'HEAD')).toBe(row)
    expect(createRouteTable([row]).find('/a', 'POST')).toEqual({ allow: 'GET, HEAD' })
    expect(createRouteTable([row]).find('/constructor', 'GET')).toBeNull()
  })
})

describe('bodies', () => {
  test('[EG3] of another type, packed or too large are not read', async () => {
    const { ask } = await startRaw()
    const post = (headers: readonly string[], body = '{}') => ask(`POST ${SIGN_ON}`, headers, body)
    const length = 'Content-Length: 2'
    expect((await post([length])).status).toBe(400)
    expect((await post([length, 'Content-Type: text/plain'])).status).toBe(400)
    expect((await post([length, 'Content-Type: application/jsonx'])).status).toBe(400)
    expect((await post([length, JSON_TYPE, 'Content-Encoding: gzip'])).status).toBe(400)
    const large = await post([JSON_TYPE, 'Content-Length: 16385'], 'a')
    expect(large.status).toBe(413)
    expect(large.text).toContain('Connection: close')
    const chunk = `2000\r\n${'a'.repeat(8_192)}\r\n`
    const chunked = [JSON_TYPE, 'Transfer-Encoding: chunked']
    expect((await post(chunked, `${chunk}${chunk}${chunk}0\r\n\r\n`)).status).toBe(413)
    expect((await post([length, JSON_TYPE.toUpperCase()])).text).toContain('not-as-asked')
  })

  test('[EG3] who waits to be told to go on is told only what will be read', async () => {
    const { ask } = await startRaw()
    const wait = 'Expect: 100-continue'
    const fits = await ask(`POST ${SIGN_ON}`, [JSON_TYPE, 'Content-Length: 2', wait], '{}')
    expect(fits).toMatchObject({ continued: true, status: 400 })
    const large = await ask(`POST ${SIGN_ON}`, [JSON_TYPE, 'Content-Length: 99999', wait])
    expect(large).toMatchObject({ continued: false, status: 413 })
    const nowhere = await ask('POST /nowhere', [JSON_TYPE, 'Content-Length: 2', wait])
    expect(nowhere).toMatchObject({ continued: false, status: 405 })
    const foreign = ['Origin: http://evil.example', JSON_TYPE, 'Content-Length: 2', wait]
    expect(await ask(`POST ${SIGN_ON}`, foreign)).toMatchObject({
      continued: false,
      status: 403,
    })
  })
})

/** A front with limits of its own over one route, whose answers are what was read. */
const startFront = async ({
  most = 1_000,
  ...own
}: Partial<EdgeLimits> & { readonly most?: number } = {}) => {
  const httpServer = createServer({ ...listenerOptions, connectionsCheckingInterval: 50 })
  httpServer.headersTimeout = 300
  const sockets = new Server(httpServer, { transports: ['websocket'] })
  const limits = { ofOne: most, ofLoopback: most, inAll: 1_000 }
  const edge = createEdge(
    { secure: false, extraHosts: [] },
    { connections: limits, sockets: limits, bodies: MOST_BODIES, requests: MOST_REQUESTS, ...own },
  )
  openFront({
    httpServer,
    edge,
    more: false,
    log: pino({ level: 'silent' }),
    answer: async (request, response) => {
      const refused = await edge.refusal(request, 'act')
      const rule = { types: ['image/jpeg'], mostBytes: 1_000, withinMs: 300 }
      const read = refused ?? (await edge.bodies.read(request, rule))
      response.end(JSON.stringify('read' in read && read.read ? read.bytes.length : read))
    },
  })
  httpServer.listen(0, '127.0.0.1')
  await once(httpServer, 'listening')
  onTestFinished(() => {
    void sockets.close()
    httpServer.closeAllConnections()
  })
  const { port } = httpServer.address() as AddressInfo
  return { port, edge, head: `POST /a HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n` }
}

const IMAGE = 'Content-Type: image/jpeg\r\n'

describe('slow senders and many at once', () => {
  test('[EG4] headers that don’t come to their end are cut off', async () => {
    const { port, head } = await startFront()
    const drip = Array.from({ length: 100 }, (_, index) => `A${index}: b\r\n`)
    const slow = await rawHttp(port, head, { later: drip, everyMs: 50, quietMs: 60_000 })
    expect([0, 408]).toContain(slow.status)
    expect(await rawHttp(port, '', { quietMs: 60_000 })).toMatchObject({ continued: false })
    expect(WITHIN_MS.headers).toBeLessThanOrEqual(10_000)
  })

  test('[EG4] so is a body, however steadily it drips', async () => {
    const { port, head, edge } = await startFront()
    const drip = Array.from({ length: 100 }, () => 'a')
    const slow = await rawHttp(port, `${head}${IMAGE}Content-Length: 100\r\n\r\n`, {
      later: drip,
      everyMs: 50,
    })
    expect(slow.text).toContain('too-slow')
    expect(edge.bodies.count()).toBe(0)
    const quick = await rawHttp(port, `${head}${IMAGE}Content-Length: 3\r\n\r\nabc`)
    expect(quick.text).toMatch(/\r\n3$/)
  })

  test('[EG3] no more bodies are read at once than there is room for', async () => {
    const bodies = { ofOne: 9, ofLoopback: 9, inAll: 9, bytesInAll: 2_000 }
    const { port, head } = await startFront({ bodies })
    const slow = () => rawHttp(port, `${head}${IMAGE}Content-Length: 100\r\n\r\na`)
    const three = await Promise.all([slow(), slow(), slow()])
    const said = three.map(({ text }) => /too-slow|busy/.exec(text)?.[0]).sort()
    expect(said).toEqual(['busy', 'too-slow', 'too-slow'])
    expect((await slow()).text).toContain('too-slow')
  })

  test('[EG5] connections and WebSockets of one address are counted', async () => {
    const { port, edge } = await startFront({ most: 3 })
    const opened = Array.from({ length: 5 }, () =>
      io(`http://127.0.0.1:${port}`, {
        transports: ['websocket'],
        forceNew: true,
        reconnection: false,
      }),
    )
    const letIn = await Promise.all(
      opened.map(
        (socket) =>
          new Promise<boolean>((settle) => {
            socket.once('connect', () => settle(true))
            socket.once('connect_error', () => settle(false))
          }),
      ),
    )
    expect(letIn.filter((one) => one)).toHaveLength(3)
    for (const socket of opened) socket.disconnect()
    await expect.poll(() => edge.sockets.count()).toBe(0)
    expect(edge.connections.refused()).toBe(2)
  })

  test('[EG5] handshakes and requests are counted together', async () => {
    const requests = { windowS: 10, ofOne: 3, ofLoopback: 3, inAll: 99, fewOf: 1 }
    const { port, head } = await startFront({ requests })
    for (let asked = 0; asked < 3; asked += 1)
      await rawHttp(port, `${head}Content-Length: 0\r\nConnection: close\r\n\r\n`)
    const handshake = `GET /socket.io/?EIO=4&transport=websocket HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n`
    expect((await rawHttp(port, handshake)).status).toBe(429)
  })
})
