/** Knocks as bytes on a running server's port. */
import { connect } from 'node:net'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import type { Knock } from '#tests/support/knocks.ts'

const LINES = {
  read: 'GET /access/devices',
  act: 'POST /access/codes',
  socket: 'GET /socket.io/?EIO=4&transport=websocket',
} as const

/** A text frame of a client, under a mask of zeros. */
const frame = (text: string): Buffer => {
  const payload = Buffer.from(text)
  const size = payload.length
  const head =
    size < 126 ? Buffer.from([0x81, 0x80 | size]) : Buffer.from([0x81, 0xfe, size >> 8, size & 255])
  return Buffer.concat([head, Buffer.alloc(4), payload])
}

/**
 * All that the server answers to one knock; a handshake goes on to its hello as a lead. A page says
 * its token as a cookie, a script, which sends no origin, as scripts do.
 * @param cookie the cookie's name
 */
export const askKnock = (
  { port, cookie, token }: { port: number; cookie: string; token: string | null },
  knock: Knock,
  localAddress: string,
): Promise<string> =>
  new Promise((settle) => {
    const host = knock.host.of.replaceAll('PORT', String(port))
    const body = knock.transport === 'act' ? '{"role":"counter"}' : ''
    const of = {
      read: ['Connection: close'],
      act: [
        'Connection: close',
        'Content-Type: application/json',
        `Content-Length: ${body.length}`,
      ],
      socket: [
        'Connection: Upgrade',
        'Upgrade: websocket',
        'Sec-WebSocket-Version: 13',
        'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==',
      ],
    }[knock.transport]
    const isScript = knock.origin.says === 'none'
    const said = isScript ? `Authorization: Bearer ${token}` : `Cookie: ${cookie}=${token}`
    const isInHello = isScript && knock.transport === 'socket'
    const lines = [
      ...of,
      ...(token === null || isInHello ? [] : [said]),
      ...knock.origin.of(port, host),
      ...knock.header.of(port, host),
    ]
    const hello = { protocol: PROTOCOL, role: 'lead', ...(isInHello && token ? { token } : {}) }
    const socket = connect({ port, host: '127.0.0.1', localAddress })
    let heard = ''
    let greeted = false
    const end = () => {
      socket.destroy()
      settle(heard)
    }
    socket.on('data', (part) => {
      heard += part.toString('latin1')
      if (!heard.startsWith('HTTP/1.1 101')) return
      if (!greeted && heard.includes('"sid"')) {
        greeted = true
        heard = 'HTTP/1.1 101 '
        socket.write(frame(`40${JSON.stringify(hello)}`))
      } else if (/4[04]\{/.test(heard)) end()
    })
    socket.on('error', end)
    socket.on('close', end)
    socket.write(
      `${LINES[knock.transport]} HTTP/1.1\r\nHost: ${host}\r\n${lines.join('\r\n')}\r\n\r\n${body}`,
    )
  })

/** It got what only a lead's device gets: the list, a code, or a hello that was let in. */
export const isIn = (answer: string, { transport }: Knock): boolean =>
  transport === 'socket'
    ? /^HTTP\/1\.1 101 .*40\{"sid"/s.test(answer)
    : /^HTTP\/1\.1 200 .*"code":"done"/s.test(answer)
