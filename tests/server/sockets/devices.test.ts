import { describe, expect, onTestFinished, test } from 'vitest'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { newToken } from '#server/access/devices.ts'
import { sha256 } from '#server/access/house.ts'
import { demoStation } from '#server/demo-station.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { from, IN_CHARGE } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { LEADS_PASSPHRASE, makeHouse, PASSPHRASE } from '#tests/support/make-house.ts'
import { order } from '#tests/support/orders.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { connectScreen, createSocketRoom, isLetIn, knock } from '#tests/support/socket-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const DAY = 86_400_000
const LATER = 'lantern in the reeds'
const CORRECT = { type: 'correct', pan: 'pan-rice', amount: 0 } as const

describe('a device that isn’t let in', () => {
  test('[D15] when it is removed its connections close within a second, and no other', async () => {
    const { url, access, token } = await createSocketRoom()
    const [lost, also, stays] = await Promise.all([
      connectScreen(url, 'counter'),
      connectScreen(url, 'pick-up', {
        auth: { protocol: PROTOCOL, role: 'pick-up', token: token('counter') },
      }),
      connectScreen(url, 'assembly'),
    ])
    const closed = Promise.all(
      [lost, also].map(({ socket }) => new Promise((settle) => socket.once('disconnect', settle))),
    )
    const since = performance.now()
    expect(access.remove('d-counter')).toBe(true)
    await closed
    const took = performance.now() - since
    console.log(`connections of a removed device closed after ${took.toFixed(0)} ms`)
    expect(stays.socket.connected).toBe(true)
    expect(await isLetIn(knock(url, 'counter'))).toBe('removed')
  })

  test('[D24] where an adult signed on, its connections close when the passphrase is changed elsewhere', async () => {
    const { url, access, make } = await createSocketRoom()
    const lead = from('10.0.0.2', await make())
    const on = await access.signOn(from('10.0.0.5'), IN_CHARGE)
    if (on.code !== 'done') throw new Error(on.code)
    const auth = { protocol: PROTOCOL, role: 'lead', token: on.token }
    const [theirs, stays] = await Promise.all([
      connectScreen(url, 'lead', { auth }),
      connectScreen(url, 'assembly'),
    ])
    const closed = new Promise((settle) => theirs.socket.once('disconnect', settle))
    const asked = { name: IN_CHARGE.name, before: IN_CHARGE.passphrase, passphrase: LATER }
    expect(await access.changePassphrase(lead, asked)).toEqual({ code: 'done' })
    await closed
    expect(stays.socket.connected).toBe(true)
    expect(await isLetIn(knock(url, 'lead', { auth }))).toBe('not-joined')
  })

  test('[D15] what it said before it was removed is not done once its passphrase was compared', async () => {
    const { url, access, make, given } = await createSocketRoom()
    await make()
    const { give, socket } = await connectScreen(url, 'counter')
    const gone = new Promise((settle) => socket.once('disconnect', settle))
    const { adults } = access
    const proving = adults.proveInCharge
    const tried = new Promise((settle) => {
      adults.proveInCharge = async (passphrase, from) => {
        const compared = proving(passphrase, from)
        access.remove('d-counter')
        settle(compared)
        return compared
      }
    })
    void give('pan', CORRECT, { passphrase: IN_CHARGE.passphrase }).catch(() => undefined)
    expect(await tried).toMatchObject({ code: 'wrong-passphrase' })
    await gone
    expect(given).toEqual([])
  })

  test('[D16] ran out with an order waiting: it is told so, and the order is sent once it has joined again', async () => {
    const { url, room, token, make, access } = await createSocketRoom()
    const lead = await make()
    let mine = token('counter')
    const crew = connectCrew(url, 'counter', async () => mine)
    onTestFinished(crew.close)
    await whenView(crew.client, (view) => view.link === 'live')
    crew.socket.disconnect()
    const answered = crew.client.send(order(), 'waiting')
    room.time.pass(DAY)
    crew.socket.connect()
    await whenView(crew.client, (view) => view.refused === 'expired')
    expect(crew.client.view().pending).toHaveLength(1)
    expect(access.admit({ headers: {}, socket: {} }, { role: 'lead', token: lead })).toEqual({
      refusal: 'expired',
    })
    mine = access.scriptsToken
    expect(await answered).toMatchObject({ answer: 'accepted' })
    await whenView(crew.client, (view) => view.refused === null && view.pending.length === 0)
  })

  test('[D6][D18] has no token, one of another house, or asks for a role of more', async () => {
    const { url, token } = await createSocketRoom()
    const other = await createSocketRoom()
    const as = (role: string, proof?: string) =>
      isLetIn(
        knock(url, 'counter', {
          auth: { protocol: PROTOCOL, role, ...(proof ? { token: proof } : {}) },
        }),
      )
    expect(await as('pick-up')).toBe('not-joined')
    expect(await as('counter', other.token('counter'))).toBe('not-joined')
    expect(await as('lead', token('counter'))).toBe('role-not-yours')
    expect(await as('in-charge', token('lead'))).toBe('role-not-yours')
    expect(await as('counter', token('lead'))).toBe(true)
  })
})

describe('a device of another station', () => {
  test('[D7] is told of none of its services, and gives it no command', async () => {
    const { url, given, house, room } = await createSocketRoom()
    const token = newToken(house.id)
    const now = room.time.clock.now()
    const birch = { name: 'Birch', role: 'lead', station: 'birch-hall', adult: null } as const
    const times = { joinedAt: now, seenAt: now, removedAt: null }
    house.addDevice({ id: 'd-birch', token: sha256(token), ...birch, ...times })
    const auth = { protocol: PROTOCOL, role: 'lead', token }
    const screen = await connectScreen(url, 'lead', { auth })
    expect(screen.welcome.service).toBeNull()
    expect(await screen.follow()).toEqual({ kind: 'no-such-service' })
    const none = { answer: 'not taken', because: { code: 'no-such-service' } }
    expect(await screen.give('pan', CORRECT)).toMatchObject(none)
    const open = { type: 'open', station: demoStation.id, kind: 'real' } as const
    expect(await screen.give('open', open, { service: 's-open' })).toMatchObject(none)
    expect(given).toEqual([])
  })
})

const inDemo = (url: string) =>
  knock(url, 'pick-up', { auth: { protocol: PROTOCOL, role: 'pick-up', house: 'demo' } })

describe('who walks through the demo', () => {
  test('[D17] opens nothing real, proves nothing, and hears of nothing real', async () => {
    const { url } = await startComposedStation(temporaryFolder())
    await makeHouse(url)
    const walker = await connectScreen(url, 'lead')
    expect(walker.welcome).toMatchObject({ service: 's-demo', device: null })
    expect(await walker.follow(0, 's-demo')).toMatchObject({ kind: 'events' })
    const of = { service: 's-demo' }
    expect(await walker.give('pan', { ...CORRECT, amount: 1_000 }, of)).toMatchObject({
      answer: 'accepted',
    })
    const notProved = { answer: 'not taken', because: { code: 'not-proved' } }
    const proof = { ...of, passphrase: PASSPHRASE }
    expect(await walker.give('on', { type: 'signOn' }, proof)).toMatchObject(notProved)
    const open = { type: 'open', station: demoStation.id, kind: 'real' } as const
    expect(await walker.give('open', open, { service: 's-1' })).toMatchObject(notProved)

    const token = await scriptsToken(url)
    const lead = await connectScreen(url, 'lead', {
      auth: { protocol: PROTOCOL, role: 'lead', token },
    })
    const there = { answer: 'not taken', because: { code: 'no-such-service' } }
    expect(await lead.give('open', open, { service: 's-1' })).toMatchObject(there)
    expect(JSON.stringify(walker.heard)).not.toContain('s-1')
  })

  test('[D17][D28] is let in no more once an own station is there, but where the demo is open beside it', async () => {
    const data = temporaryFolder()
    await publishIn(data)
    const { url } = await startComposedStation(data)
    await makeHouse(url)
    expect(await isLetIn(knock(url, 'pick-up'))).toBe('not-joined')
    expect(await isLetIn(inDemo(url))).toBe('demo-closed')
    const set = (open: boolean) =>
      fetch(`${url}/access/demo`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ open }),
      })
    expect((await set(true)).status).toBe(200)
    expect(await isLetIn(knock(url, 'pick-up'))).toBe('not-joined')
    expect(await isLetIn(inDemo(url))).toBe(true)
    expect((await set(false)).status).toBe(200)
    expect(await isLetIn(inDemo(url))).toBe('demo-closed')
  })

  test('[D7] changes no label, which the next real service would have', async () => {
    const { url } = await startComposedStation(temporaryFolder())
    const walker = await connectScreen(url, 'assembly')
    const notSame = { type: 'notSameProduct', ingredient: 'pita' } as const
    expect(await walker.give('label', notSame, { service: 's-demo' })).toMatchObject({
      answer: 'not taken',
      because: { code: 'not-proved' },
    })
    const { facts } = (await (await fetch(`${url}/allergens`)).json()) as {
      readonly facts: { readonly revision: number }
    }
    expect(facts.revision).toBe(1)
  })
})

describe('a passphrase that proved a command', () => {
  test('[D21] leaves the adult’s id on what it caused, and nothing on what nobody proved', async () => {
    const { url, room, make } = await createSocketRoom()
    await make()
    const { give } = await connectScreen(url, 'lead')
    await give('on', { type: 'signOn' }, { passphrase: IN_CHARGE.passphrase })
    await give('pan', CORRECT)
    const entries = await room.ports.log.read('s-lunch', 0)
    const of = (command: string) => entries.filter((one) => one.command === command)
    expect(of('on')).toMatchObject([
      { type: 'inChargeSignedOn', adult: expect.stringMatching(/^a-/) },
    ])
    expect(of('pan')).toHaveLength(1)
    expect(of('pan')[0]).not.toHaveProperty('adult')
  })

  test('[D21] is that of somebody in charge: a lead’s proves nothing', async () => {
    const { url } = await startComposedStation(temporaryFolder())
    await makeHouse(url)
    const token = await scriptsToken(url)
    const { give } = await connectScreen(url, 'lead', {
      auth: { protocol: PROTOCOL, role: 'lead', token },
    })
    const proof = { service: 's-demo', passphrase: LEADS_PASSPHRASE }
    expect(await give('on', { type: 'signOn' }, proof)).toMatchObject({
      because: { code: 'wrong-passphrase' },
    })
  })
})
