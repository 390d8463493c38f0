import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { demoStation } from '#server/demo-station.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { demoIn, publishIn } from '#tests/support/own-station.ts'
import { connectScreen, isLetIn, knock } from '#tests/support/socket-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

type Told = Readonly<Record<string, unknown>> & { readonly code: string }

const WRAPS = { ...demoStation, id: 'wrap-line', name: 'Wrap line' }
const NOON = { ...demoStation, id: 'noon-line', name: 'Noon line' }

/** A house that is made, over a folder, and what its devices ask. */
const made = async (data: string) => {
  const server = await startComposedStation(data)
  const call = (path: string, body?: unknown, token?: string) =>
    fetch(`${server.url}${path}`, {
      method: body === undefined ? 'GET' : 'POST',
      headers: {
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...(token === undefined ? {} : { authorization: `Bearer ${token}` }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    })
  const tokenIn = (answer: Response) =>
    /=([^;]*)/.exec(answer.headers.get('set-cookie') ?? '')?.[1] ?? ''
  const ask = async (path: string, body?: unknown, token?: string) =>
    (await (await call(path, body, token)).json()) as Told
  const secret = server.station.access.secret() ?? ''
  const lead = tokenIn(await call('/access/make', { secret, lead: LEAD, inCharge: IN_CHARGE }))
  /** A tablet that came in by a code, of a station where one is said. */
  const tablet = async (role: string, station?: string) => {
    const { typed } = await ask('/access/codes', { role, ...(station && { station }) }, lead)
    const token = tokenIn(await call('/access/join', { code: typed, name: `${role} tablet` }))
    const you = (await ask('/access', undefined, token)).you as { readonly device: string }
    return { token, device: you.device }
  }
  const stationOf = async (token: string, query = '') =>
    (await ask(`/access${query}`, undefined, token)).station
  return { ...server, ask, lead, tablet, stationOf }
}

const twoStations = async () => {
  const data = temporaryFolder()
  await publishIn(data, WRAPS, NOON)
  return made(data)
}

describe('a house of two stations', () => {
  test('[D7] a code lets a tablet in at its station, or at the one of who gave it; at none that isn’t there', async () => {
    const { ask, lead, tablet, stationOf } = await twoStations()
    const [here, there] = [await tablet('counter'), await tablet('counter', NOON.id)]
    expect([await stationOf(here.token), await stationOf(there.token)]).toEqual([WRAPS.id, NOON.id])
    for (const station of ['birch-hall', demoStation.id, ''])
      expect(await ask('/access/codes', { role: 'counter', station }, lead)).toEqual({
        code: 'not-it',
      })
  })

  test('[D7] a lead’s page turns to any station by its address; a tablet of the crew stays where it is', async () => {
    const { url, lead, tablet, stationOf } = await twoStations()
    const counter = await tablet('counter', WRAPS.id)
    expect(await stationOf(lead)).toBe(WRAPS.id)
    expect(await stationOf(lead, `?station=${NOON.id}`)).toBe(NOON.id)
    expect(await stationOf(lead, '?station=birch-hall')).toBe(WRAPS.id)
    expect(await stationOf(counter.token, `?station=${NOON.id}`)).toBe(WRAPS.id)
    const at = (token: string, role: 'lead' | 'counter') =>
      connectScreen(url, role, { auth: { protocol: PROTOCOL, role, token, station: NOON.id } })
    const [leads, crews] = [await at(lead, 'lead'), await at(counter.token, 'counter')]
    const open = { type: 'open', station: NOON.id, kind: 'real' } as const
    expect(await leads.give('open', open, { service: 's-noon' })).toMatchObject({
      answer: 'accepted',
    })
    expect(await leads.follow(0, 's-noon')).toMatchObject({ kind: 'events' })
    expect(await crews.follow(0, 's-noon')).toEqual({ kind: 'no-such-service' })
    expect(JSON.stringify(crews.heard)).not.toContain('s-noon')
  })

  test('[D7] a tablet is moved to another station by a lead alone, and its connections open anew', async () => {
    const { url, ask, lead, tablet, stationOf } = await twoStations()
    const counter = await tablet('counter')
    const move = (body: object, token?: string) => ask('/access/station', body, token)
    const wanted = { device: counter.device, station: NOON.id }
    expect(await move(wanted)).toEqual({ code: 'not-joined' })
    expect(await move(wanted, counter.token)).toEqual({ code: 'not-yours' })
    expect(await move({ ...wanted, station: 'birch-hall' }, lead)).toEqual({ code: 'not-it' })
    expect(await move({ ...wanted, device: 'd-none' }, lead)).toEqual({ code: 'not-it' })
    expect(await move({ ...wanted, more: 1 }, lead)).toEqual({ code: 'not-as-asked' })
    expect(await stationOf(counter.token)).toBe(WRAPS.id)
    const auth = { protocol: PROTOCOL, role: 'counter', token: counter.token }
    const screen = await connectScreen(url, 'counter', { auth })
    const closed = new Promise((settle) => screen.socket.once('disconnect', settle))
    expect(await move(wanted, lead)).toEqual({ code: 'done' })
    await closed
    expect(await stationOf(counter.token)).toBe(NOON.id)
    expect(await isLetIn(knock(url, 'counter', { auth }))).toBe(true)
  })
})

describe('the demo and the own stations', () => {
  test('[D28] who came by default leaves the demo at the first publish, and who asked for the demo stays', async () => {
    const { url, ask, lead } = await made(temporaryFolder())
    const auth = { protocol: PROTOCOL, role: 'lead', token: lead }
    const byDefault = await connectScreen(url, 'lead', { auth })
    const asked = await connectScreen(url, 'lead', { auth: { ...auth, house: 'demo' } })
    expect([byDefault.welcome.service, asked.welcome.service]).toEqual(['s-demo', 's-demo'])
    const closed = new Promise((settle) => byDefault.socket.once('disconnect', settle))
    expect(await ask('/menu/begin', { from: 'demo', name: 'Own line' }, lead)).toMatchObject({
      code: 'done',
    })
    const { saw } = await ask('/menu/draft?station=own-line', undefined, lead)
    const wanted = { station: 'own-line', saw, proof: LEAD.passphrase }
    expect(await ask('/menu/publish', wanted, lead)).toMatchObject({ code: 'done', revision: 1 })
    await closed
    expect(asked.socket.connected).toBe(true)
    expect(await ask('/access', undefined, lead)).toMatchObject({
      page: 'own',
      station: 'own-line',
      demoIsOpen: true,
    })
    const again = await connectScreen(url, 'lead', { auth })
    expect(again.welcome.service).toBeNull()
    expect(await again.follow(0, 's-demo')).toEqual({ kind: 'no-such-service' })
  })

  test('[D28] a demo that is closed is gone with its files, and what else lies there stays', async () => {
    const data = temporaryFolder()
    await publishIn(data, WRAPS)
    const { url, ask, lead } = await made(data)
    const folder = demoIn(data)
    const set = (open: boolean) => ask('/access/demo', { open }, lead)
    const left = () =>
      ['log.db', 'guests.db', 'house.db'].filter((one) => existsSync(join(folder, one)))
    expect(left()).toEqual([])
    expect(await set(true)).toEqual({ code: 'done' })
    expect(left()).toHaveLength(3)
    const auth = { protocol: PROTOCOL, role: 'lead', token: lead, house: 'demo' }
    const screen = await connectScreen(url, 'lead', { auth })
    const { service } = screen.welcome
    expect(service).toMatch(/^s-demo/)
    writeFileSync(join(folder, 'note.txt'), 'of somebody')
    const closed = new Promise((settle) => screen.socket.once('disconnect', settle))
    expect(await set(false)).toEqual({ code: 'done' })
    await closed
    expect(left()).toEqual([])
    expect(existsSync(join(folder, 'note.txt'))).toBe(true)
    expect(await isLetIn(knock(url, 'lead', { auth }))).toBe('demo-closed')
    expect(existsSync(join(data, 'house.db'))).toBe(true)
  })
})
