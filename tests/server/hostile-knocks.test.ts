import { connect } from 'node:net'
import { describe, expect, test } from 'vitest'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { type Knock, knocks, sayKnock } from '#tests/support/knocks.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const OF_EACH = 320
const AT_ONCE = 16

/** Loopback addresses of this test that the server takes for those of tablets. */
const TABLETS = 200

/** What one knock is answered: its status and text; 101 is taken for a handshake that was let in. */
const ask = (port: number, knock: Knock, place: number): Promise<string> =>
  new Promise((settle) => {
    const host = knock.host.of.replaceAll('PORT', String(port))
    const act = knock.transport === 'act'
    const line = {
      read: 'GET /access',
      act: 'POST /access/sign-off',
      socket: 'GET /socket.io/?EIO=4&transport=websocket',
    }[knock.transport]
    const body = act ? '{}' : ''
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
    const lines = [...of, ...knock.origin.of(port, host), ...knock.header.of(port, host)]
    const localAddress = knock.sender === 'here' ? '127.0.0.1' : `127.0.1.${1 + (place % TABLETS)}`
    const socket = connect({ port, host: '127.0.0.1', localAddress })
    let heard = ''
    const end = () => {
      socket.destroy()
      settle(heard)
    }
    socket.on('data', (part) => {
      heard += part.toString('latin1')
      if (heard.startsWith('HTTP/1.1 101')) end()
    })
    socket.on('error', end)
    socket.on('close', end)
    socket.write(`${line} HTTP/1.1\r\nHost: ${host}\r\n${lines.join('\r\n')}\r\n\r\n${body}`)
  })

const OF_THE_EDGE = ['not-as-asked', 'other-origin', 'too-often', 'too-large', 'too-slow', 'busy']

/** What only a program of this machine is told in a demo, that passes on nothing for another. */
const isFromHere = (answer: string): boolean => answer.includes('"mayWalkDemo":true')

/** It got past the edge: it was read, its act was looked at, or its handshake was taken. */
const isIn = (answer: string, { transport }: Knock): boolean => {
  if (transport === 'read') return answer.startsWith('HTTP/1.1 200')
  if (transport === 'socket') return answer.startsWith('HTTP/1.1 101')
  const code = /"code":"([\w-]+)"/.exec(answer)?.[1]
  return code !== undefined && !OF_THE_EDGE.includes(code)
}

describe('a running server', () => {
  const chosen = knocks(OF_EACH)

  const askAll = async (): Promise<readonly string[]> => {
    const answers: string[] = []
    const { url, httpServer } = await startComposedStation(temporaryFolder())
    // Before the edge counts it: tablets have addresses of the network.
    httpServer.prependListener('connection', (socket) => {
      const tablet = /^127\.0\.1\.(\d+)$/.exec(socket.remoteAddress ?? '')?.[1]
      if (tablet !== undefined)
        Object.defineProperty(socket, 'remoteAddress', { value: `192.168.7.${tablet}` })
    })
    const port = Number(new URL(url).port)
    const waiting = [...chosen.entries()]
    const work = async (): Promise<void> => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const [place, knock] = next
        answers[place] = await ask(port, knock, place)
      }
    }
    await Promise.all(Array.from({ length: AT_ONCE }, work))
    return answers
  }
  let asked: Promise<readonly string[]> | null = null
  /** Once, for whichever test comes first. */
  const answered = (): Promise<readonly string[]> => {
    asked ??= askAll()
    return asked
  }

  test('[EG9] lets none of the hostile combinations in, and every honest one', async () => {
    const answers = await answered()
    const said = chosen.map((knock, place) => ({
      knock,
      answer: answers[place] ?? '',
      isIn: isIn(answers[place] ?? '', knock),
    }))
    const hostile = said.filter(({ knock }) => knock.hostile)
    const honest = said.filter(({ knock }) => !knock.hostile)
    const of = (list: typeof said) =>
      list.map(({ knock, answer }) => `${sayKnock(knock)}: ${answer.slice(0, 60)}`)
    console.log(
      `hostile ${hostile.length}: ${hostile.filter((one) => one.isIn).length} in; honest ${honest.length}: ${honest.filter((one) => one.isIn).length} in`,
    )
    expect(of(hostile.filter((one) => one.isIn))).toEqual([])
    expect(of(honest.filter((one) => !one.isIn))).toEqual([])
    expect(new Set(hostile.map(({ knock }) => sayKnock(knock))).size).toBeGreaterThanOrEqual(200)
    expect(honest.length).toBe(hostile.length)
  })

  test('[EG6] no forwarding header changed what became of a combination', async () => {
    const answers = await answered()
    const same = new Map<string, Set<boolean>>()
    for (const [place, knock] of chosen.entries()) {
      if (knock.header.hostile) continue
      const { host, origin, transport, sender } = knock
      const key = [host.says, origin.says, transport, sender].join('; ')
      same.set(key, (same.get(key) ?? new Set()).add(isIn(answers[place] ?? '', knock)))
    }
    expect([...same].filter(([, of]) => of.size > 1).map(([key]) => key)).toEqual([])
    expect([...same.keys()].length).toBeGreaterThan(100)
    const near = chosen.filter((_, place) => isFromHere(answers[place] ?? ''))
    expect(near.length).toBeGreaterThan(10)
    expect(near.filter(({ sender }) => sender !== 'here').map(sayKnock)).toEqual([])
    expect(near.filter(({ header }) => /forwarded|really|meant/.test(header.says))).toEqual([])
  })
})
