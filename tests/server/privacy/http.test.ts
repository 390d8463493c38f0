import { describe, expect, test } from 'vitest'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import type { Command } from '#lib/spine/registry.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { makeHouse, PASSPHRASE } from '#tests/support/make-house.ts'
import { usual } from '#tests/support/orders.ts'
import { connectScreen } from '#tests/support/socket-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const SERVICE = 's-demo'

const told: Command = {
  type: 'send',
  name: 'Ada',
  paid: false,
  readBack: true,
  builds: [
    usual('garden-chicken'),
    {
      ...usual('garden-chicken'),
      asked: 'needs',
      needs: [{ code: 'peanut', handling: 'leave-out', reason: 'faith' }],
    },
  ],
}

const room = async () => {
  const server = await startComposedStation(temporaryFolder())
  await makeHouse(server.url)
  const token = await scriptsToken(server.url)
  const auth = { protocol: PROTOCOL, role: 'lead', token }
  const { give, of } = await connectScreen(server.url, 'lead', { auth })
  expect(await give('order', told, { service: SERVICE })).toMatchObject({ answer: 'accepted' })
  const ask = async (path: string, body?: object, bearer: string | null = token) => {
    const answer = await fetch(`${server.url}/access/${path}`, {
      method: body ? 'POST' : 'GET',
      headers: {
        ...(body ? { 'content-type': 'application/json' } : {}),
        ...(bearer === null ? {} : { authorization: `Bearer ${bearer}` }),
      },
      ...(body ? { body: JSON.stringify(body) } : {}),
    })
    return (await answer.json()) as Record<string, unknown>
  }
  return { ask, server, of }
}

const REASONS = { service: SERVICE, passphrase: PASSPHRASE }

describe('what is kept, asked over http', () => {
  test('[G9] reasons are told to who proves to be in charge, and to nobody else', async () => {
    const { ask, server } = await room()
    const reasons = [{ ticket: 1, letter: 'B', need: 'peanut', reason: 'faith' }]
    expect(await ask('reasons', REASONS)).toEqual({ code: 'done', reasons })
    expect(await ask('reasons', { ...REASONS, ticket: 1 })).toEqual({ code: 'done', reasons })
    expect(await ask('reasons', { ...REASONS, ticket: 2 })).toEqual({ code: 'done', reasons: [] })
    const wrong = await ask('reasons', { ...REASONS, passphrase: 'not the one at all' })
    expect(wrong).toEqual({ code: 'not-it' })
    expect(await ask('reasons', REASONS, null)).toEqual({ code: 'not-joined' })
    expect(await ask('reasons', { service: SERVICE })).toEqual({ code: 'not-as-asked' })
    expect(server.logged.join('')).not.toMatch(/faith|Ada|kettle/)
  })

  test('[G6] a guest is forgotten by a lead, and has no reason any more', async () => {
    const { ask, server } = await room()
    expect(await ask('forget', { service: SERVICE, ticket: 1 }, null)).toEqual({
      code: 'not-joined',
    })
    expect(await ask('forget', { service: SERVICE, ticket: 2 })).toEqual({ code: 'done', gone: 0 })
    expect(await ask('forget', { service: SERVICE, ticket: 1 })).toEqual({ code: 'done', gone: 2 })
    expect(await ask('reasons', REASONS)).toEqual({ code: 'done', reasons: [] })
    expect(await ask('forget', { service: 's-none', ticket: 1 })).toEqual({ code: 'done', gone: 0 })
    expect(server.logged.join('')).not.toContain('Ada')
  })

  test('[G9] the table is told with what is there now, in numbers and days', async () => {
    const { ask } = await room()
    const now = async () => {
      const { rows, ...rest } = await ask('privacy')
      const all = rows as readonly { id: string; now: { count: number; oldest: number } | null }[]
      return { rest, of: (id: string) => all.find((row) => row.id === id)?.now }
    }
    const before = await now()
    expect(before.rest).toEqual({ code: 'done', days: 30, nextGoesAt: null, clockInDoubt: false })
    expect(['names', 'reasons', 'texts', 'streams'].map((id) => before.of(id)?.count)).toEqual([
      1, 1, 0, 1,
    ])
    expect(before.of('names')?.oldest).toBeGreaterThan(1_700_000_000_000)
    expect([before.of('waiting'), before.of('adults')?.count]).toEqual([null, 2])
    await ask('forget', { service: SERVICE, ticket: 1 })
    expect((await now()).of('names')).toEqual({ count: 0, oldest: null })
    expect(await ask('privacy', undefined, null)).toEqual({ code: 'not-joined' })
  })

  test('[G7] days of retention are set by who proves to be in charge, from 1 to 366', async () => {
    const { ask } = await room()
    const set = (days: number, passphrase = PASSPHRASE) => ask('retention', { days, passphrase })
    expect(await set(14, 'not the one at all')).toEqual({ code: 'not-it' })
    for (const days of [0, 367, 1.5, -3])
      expect(await set(days), `${days}`).toEqual({ code: 'not-as-asked' })
    expect(await ask('privacy')).toMatchObject({ days: 30 })
    expect(await set(14)).toEqual({ code: 'done' })
    expect(await ask('privacy')).toMatchObject({ days: 14 })
  })
})
