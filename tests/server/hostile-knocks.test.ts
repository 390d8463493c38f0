import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { UNUSED_MS } from '#lib/access/life.ts'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import type { Role } from '#lib/service/roles.ts'
import { cookieName } from '#server/access/caller.ts'
import { newToken } from '#server/access/devices.ts'
import { createHouse, sha256 } from '#server/access/house.ts'
import { demoStation } from '#server/demo-station.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { askKnock, isIn } from '#tests/support/ask-knock.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { HEADERS, type Knock, knocks, sayKnock, type Token } from '#tests/support/knocks.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { rawHttp } from '#tests/support/raw-http.ts'
import { connectScreen } from '#tests/support/socket-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const OF_EACH = 260
const AT_ONCE = 16

/** Loopback addresses of this test that the server takes for those of tablets. */
const TABLETS = 200

interface MadeHouse {
  readonly data: string
  readonly cookie: string
  readonly tokens: Readonly<Record<Token, string | null>>
}

/** A house that was made, with a lead's device, a counter's, one that ran out and one removed. */
const makeHouse = (): MadeHouse => {
  const data = temporaryFolder()
  const database = openHouseDatabase({ path: join(data, 'house.db') })
  const house = createHouse(database)
  const now = Date.now()
  const device = (id: string, role: Role, seenAt: number, removedAt: number | null) => {
    const token = newToken(house.id)
    const station = demoStation.id
    const times = { joinedAt: seenAt, seenAt, removedAt }
    const made = { id, token: sha256(token), name: id, role, station, adult: null, ...times }
    return { token, made }
  }
  const lead = device('lead', 'lead', now, null)
  const counter = device('counter', 'counter', now, null)
  const expired = device('expired', 'lead', now - UNUSED_MS - 1, null)
  const removed = device('removed', 'lead', now, now)
  house.make(now, [], [], lead.made)
  for (const { made } of [counter, expired, removed]) house.addDevice(made)
  closeDurableDatabase(database)
  return {
    data,
    cookie: cookieName(house.id),
    tokens: {
      'its own': lead.token,
      none: null,
      expired: expired.token,
      removed: removed.token,
      'another house': newToken('0123456789ab'),
      counter: counter.token,
      'made up': newToken(house.id),
    },
  }
}

/** The house's server with a real service, to which tablets come from addresses of the network. */
const start = async () => {
  const { data, ...house } = makeHouse()
  await publishIn(data)
  const { url, httpServer } = await startComposedStation(data)
  // Before the edge counts it.
  httpServer.prependListener('connection', (socket) => {
    const tablet = /^127\.0\.1\.(\d+)$/.exec(socket.remoteAddress ?? '')?.[1]
    if (tablet !== undefined)
      Object.defineProperty(socket, 'remoteAddress', { value: `192.168.7.${tablet}` })
  })
  const auth = { protocol: PROTOCOL, role: 'lead', token: house.tokens['its own'] }
  const { give } = await connectScreen(url, 'lead', { auth })
  const open = { type: 'open', station: demoStation.id, kind: 'real' } as const
  expect(await give('open', open, { service: 's-real' })).toMatchObject({ answer: 'accepted' })
  return { ...house, port: Number(new URL(url).port) }
}

describe('a running server', () => {
  const chosen = knocks(OF_EACH)

  const askAll = async (): Promise<readonly string[]> => {
    const answers: string[] = []
    const { port, cookie, tokens } = await start()
    const waiting = [...chosen.entries()]
    const work = async (): Promise<void> => {
      for (let next = waiting.shift(); next; next = waiting.shift()) {
        const [place, knock] = next
        const at = knock.sender === 'here' ? '127.0.0.1' : `127.0.1.${1 + (place % TABLETS)}`
        answers[place] = await askKnock({ port, cookie, token: tokens[knock.token.of] }, knock, at)
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
    const single = (token: Token) =>
      hostile.filter(
        ({ knock: { host, origin, header, token: had } }) =>
          had.of === token && ![host, origin, header].some((one) => one.hostile),
      )
    for (const token of ['none', 'expired', 'removed', 'another house', 'counter'] as const)
      expect(single(token).length, token).toBeGreaterThan(5)
  })

  test('[EG6] no forwarding header changed what became of a combination', async () => {
    const answers = await answered()
    const same = new Map<string, Set<boolean>>()
    for (const [place, knock] of chosen.entries()) {
      if (knock.header.hostile) continue
      const { host, origin, transport, sender, token }: Knock = knock
      const key = [host.says, origin.says, transport, sender, token.says].join('; ')
      same.set(key, (same.get(key) ?? new Set()).add(isIn(answers[place] ?? '', knock)))
    }
    expect([...same].filter(([, of]) => of.size > 1).map(([key]) => key)).toEqual([])
    expect([...same.keys()].length).toBeGreaterThan(100)
  })

  test('[EG6] what only a program of this machine is told is told to none that passes something on', async () => {
    const { port } = await start()
    const told = async (lines: readonly string[]) =>
      rawHttp(
        port,
        [
          'GET /health HTTP/1.1',
          `Host: 127.0.0.1:${port}`,
          'Connection: close',
          ...lines,
          '',
          '',
        ].join('\r\n'),
      )
    for (const { says, of } of HEADERS.filter(({ hostile }) => !hostile)) {
      const { text } = await told(of(port, `127.0.0.1:${port}`))
      const passesOn = /forwarded|really|meant/.test(says)
      expect(text.includes('"pid"'), says).toBe(!passesOn)
    }
  })
})
