import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Rows } from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import { hashOf } from '#lib/service/state-hash.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { closeDurableDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { olderFolder } from '#tests/support/own-station.ts'
import { connectScreen } from '#tests/support/socket-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

type Told = Readonly<Record<string, unknown>> & { readonly code: string }

const start = async (data = temporaryFolder()) => {
  const server = await startComposedStation(await olderFolder(data))
  const ask = async (path: string, token: string, body?: unknown): Promise<Told> => {
    const answer = await fetch(`${server.url}${path}`, {
      method: body === undefined ? 'GET' : 'POST',
      headers: {
        authorization: `Bearer ${token}`,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    })
    return (await answer.json()) as Told
  }
  return { ...server, ask, data }
}

/** A house that is made, a lead's device, and what it asks below /menu. */
const made = async (data?: string) => {
  const server = await start(data)
  const { access } = server.station
  const secret = access.secret() ?? ''
  const answer = await fetch(`${server.url}/access/make`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ secret, lead: LEAD, inCharge: IN_CHARGE }),
  })
  const lead = /=([^;]*)/.exec(answer.headers.get('set-cookie') ?? '')?.[1] ?? ''
  const menu = (path: string, body?: unknown) => server.ask(`/menu${path}`, lead, body)
  const save = (station: string, saw: number, ...steps: readonly Step[]) =>
    menu('/steps', { station, saw, steps })
  const draft = async (station: string) => {
    const told = await menu(`/draft?station=${station}`)
    return { ...told, saw: Number(told.saw), rows: told.rows as Rows }
  }
  return { ...server, lead, menu, save, draft }
}

const price = (cents: number): Step => ({
  do: 'put',
  entity: 'item',
  id: 'garden-chicken',
  fields: { priceCents: cents },
})

const NAME: Step = {
  do: 'put',
  entity: 'item',
  id: 'garden-chicken',
  fields: { name: 'Garden wrap' },
}

/** A copy of the demo that is published, and what it took. */
const published = async (data?: string) => {
  const server = await made(data)
  const { menu, draft } = server
  const begun = await menu('/begin', { from: 'demo', name: 'Wrap line' })
  expect(begun).toMatchObject({ code: 'done', station: 'wrap-line' })
  const publish = async (proof = LEAD.passphrase) => {
    const { saw } = await draft('wrap-line')
    return menu('/publish', { station: 'wrap-line', saw, proof })
  }
  expect(await publish()).toMatchObject({ code: 'done', revision: 1 })
  return { ...server, publish }
}

/** Revisions as they lie in the file, without what the program says of them. */
const bodies = async (data: string): Promise<readonly string[]> => {
  const file = openHouseDatabase({ path: join(data, 'house.db') })
  const rows = file
    .prepare<[], string>("SELECT body FROM stations WHERE station = 'wrap-line' ORDER BY revision")
    .pluck()
    .all()
  closeDurableDatabase(file)
  return rows.map((body) => hashOf(JSON.parse(body)))
}

describe('what is below /menu', () => {
  test('[ED9] answers nobody but a device that leads or is in charge', async () => {
    const { ask, lead, url, draft } = await made()
    expect(await ask('/menu/stations', 'nobody')).toEqual({ code: 'not-joined' })
    const { typed } = await ask('/access/codes', lead, { role: 'counter' })
    const joined = await fetch(`${url}/access/join`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code: typed, name: 'Counter' }),
    })
    const counter = /=([^;]*)/.exec(joined.headers.get('set-cookie') ?? '')?.[1] ?? ''
    for (const [path, body] of [
      ['/menu/stations', undefined],
      ['/menu/draft?station=alder-hall', undefined],
      ['/menu/revisions?station=alder-hall', undefined],
      ['/menu/steps', { station: 'alder-hall', saw: 9, steps: [price(1)] }],
      ['/menu/begin', { from: 'nothing', name: 'A' }],
      ['/menu/publish', { station: 'alder-hall', saw: 9, proof: LEAD.passphrase }],
      ['/menu/back', { station: 'alder-hall', saw: 9, revision: 1 }],
    ] as const)
      expect(await ask(path, counter, body)).toEqual({ code: 'not-yours' })
    expect((await draft('alder-hall')).code).toBe('done')
  })

  test('[ED12] proposes the browser’s time zone, and the server’s where it knows no such one', async () => {
    const { menu, draft } = await made()
    const zoneOf = async (timeZone?: unknown) => {
      const begun = await menu('/begin', { from: 'nothing', name: 'Zoned', timeZone })
      expect(begun.code).toBe('done')
      return (await draft(String(begun.station))).rows.house?.timeZone
    }
    const own = await zoneOf()
    expect(await zoneOf('Pacific/Chatham')).toBe('Pacific/Chatham')
    expect(await zoneOf('Atlantis/Capital')).toBe(own)
    expect(await zoneOf(7)).toBe(own)
    expect(own).not.toBe('Pacific/Chatham')
  })

  test('[ED9] refuses what isn’t as asked, and what is nowhere', async () => {
    const { menu } = await made()
    const deep = JSON.parse(`${'['.repeat(40)}${']'.repeat(40)}`)
    for (const body of [
      null,
      { station: 'a' },
      { station: 'a', saw: 1, steps: [{ do: 'wipe' }] },
      { station: 'a', saw: 1, steps: [{ ...price(1), fields: { priceCents: deep } }] },
    ])
      expect(await menu('/steps', body)).toEqual({ code: 'not-as-asked' })
    const nowhere = { station: 'nowhere', saw: 1 }
    expect(await menu('/draft?station=nowhere')).toEqual({ code: 'no-such-station' })
    expect(await menu('/steps', { ...nowhere, steps: [] })).toEqual({ code: 'no-such-station' })
    expect(await menu('/begin', { from: 'nowhere', name: 'A' })).toEqual({ code: 'no-such-set' })
    expect(await menu('/begin', { from: 'nothing', name: ' ' })).toEqual({ code: 'no-name' })
    expect(await menu('/back', { station: 'alder-hall', saw: 1, revision: 99 })).toEqual({
      code: 'no-such-revision',
    })
  })

  test('[ED12] begins from nothing, the demo, a set, or another station, each under its own id', async () => {
    const { menu, draft } = await made()
    const { sets } = await menu('/stations')
    for (const { from } of sets as readonly { readonly from: string }[]) {
      expect(await menu('/begin', { from, name: 'Lunch' })).toMatchObject({ code: 'done' })
    }
    expect(await menu('/begin', { from: 'lunch', name: 'Lunch again' })).toMatchObject({
      station: 'lunch-again',
    })
    expect(await menu('/begin', { from: 'nothing', name: '学食' })).toMatchObject({
      station: 'station',
    })
    const { stations } = await menu('/stations')
    const ids = (stations as readonly { readonly station: string }[]).map((one) => one.station)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids).toEqual(expect.arrayContaining(['lunch', 'lunch-2', 'lunch-again', 'station']))
    expect(await draft('lunch-again')).toMatchObject({ problems: [] })
    expect(await draft('station')).not.toMatchObject({ problems: [] })
  })
})

describe('publishing', () => {
  test('[ED13] takes the passphrase of a lead or in charge, and says what changed', async () => {
    const { publish, draft, save, menu } = await published()
    const { saw } = await draft('wrap-line')
    await save('wrap-line', saw, price(700))
    expect(await draft('wrap-line')).toMatchObject({ published: 1, changed: true })
    expect(await publish('not the passphrase')).toEqual({ code: 'not-it' })
    expect(await publish(IN_CHARGE.passphrase)).toEqual({
      code: 'done',
      revision: 2,
      changes: [
        {
          what: 'changed',
          entity: 'item',
          id: 'garden-chicken',
          name: 'Garden chicken',
          field: 'priceCents',
          from: 650,
          to: 700,
        },
      ],
    })
    expect(await draft('wrap-line')).toMatchObject({ published: 2, changed: false })
    const compared = await menu('/compare?station=wrap-line&from=2&to=1')
    expect(compared).toMatchObject({ changes: [{ from: 700, to: 650 }] })
    expect(await menu('/compare?station=wrap-line&from=2&to=draft')).toMatchObject({ changes: [] })
    const { revisions } = await menu('/revisions?station=wrap-line')
    expect(revisions).toEqual([
      { revision: 2, at: expect.any(Number) },
      { revision: 1, at: expect.any(Number) },
    ])
  })

  test('[ED13] is refused with its problems’ codes, and on what somebody changed since', async () => {
    const { publish, draft, save, menu } = await published()
    const { saw } = await draft('wrap-line')
    await save('wrap-line', saw, price(-1))
    expect(await publish()).toMatchObject({
      code: 'has-problems',
      problems: [{ code: 'too-little', id: 'garden-chicken', field: 'priceCents' }],
    })
    const late = { station: 'wrap-line', saw, proof: LEAD.passphrase }
    expect(await menu('/publish', late)).toMatchObject({
      code: 'stale',
      changed: ['item:garden-chicken'],
    })
    expect(await draft('wrap-line')).toMatchObject({ published: 1 })
  })

  test('[R42] that something never touched is the word of who is in charge, not of a lead', async () => {
    const { draft, save, menu } = await published()
    await save('wrap-line', (await draft('wrap-line')).saw, price(700))
    const { saw } = await draft('wrap-line')
    const wanted = { station: 'wrap-line', saw, neverTouched: true }
    expect(await menu('/publish', { ...wanted, proof: LEAD.passphrase })).toEqual({
      code: 'not-it',
    })
    expect(await draft('wrap-line')).toMatchObject({ published: 1 })
    expect(await menu('/publish', { ...wanted, proof: IN_CHARGE.passphrase })).toMatchObject({
      code: 'done',
      revision: 2,
    })
  })

  test('[ED13] leaves an open service its own document; the next one opens on the new', async () => {
    const { draft, save, url, menu } = await made()
    const station = 'alder-hall'
    const auth = { protocol: PROTOCOL, role: 'lead', token: await scriptsToken(url) }
    const { give, follow } = await connectScreen(url, 'lead', { auth })
    const proof = { service: 's-demo', passphrase: IN_CHARGE.passphrase }
    await give('on', { type: 'signOn' }, proof)
    const close = (service: string) => give(`close-${service}`, { type: 'close' }, { service })
    const open = (service: string) =>
      give(`open-${service}`, { type: 'open', station, kind: 'real' }, { service })
    /** Of the document that a service was opened on. */
    const openedOn = async (service: string) => {
      const followed = await follow(0, service)
      const [first] = followed.kind === 'events' ? followed.events : []
      if (first?.type !== 'serviceOpened') throw new Error(followed.kind)
      const item = first.station.items.find(({ id }) => id === 'garden-chicken')
      return { revision: first.revision, priceCents: item?.priceCents }
    }
    const publishAt = async (cents: number) => {
      await save(station, (await draft(station)).saw, price(cents))
      const { saw } = await draft(station)
      return menu('/publish', { station, saw, proof: LEAD.passphrase })
    }
    const before = await openedOn('s-demo')
    expect(await draft(station)).toMatchObject({ open: true })
    expect(await publishAt(700)).toMatchObject({ code: 'done', revision: before.revision + 1 })
    expect(await openedOn('s-demo')).toEqual(before)
    expect(await close('s-demo')).toMatchObject({ answer: 'accepted' })
    expect(await draft(station)).toMatchObject({ open: false })
    expect(await open('s-next')).toMatchObject({ answer: 'accepted' })
    expect(await openedOn('s-next')).toEqual({ revision: before.revision + 1, priceCents: 700 })
  })

  test('[ED14] brought back and published is the former document again, to its hash', async () => {
    const data = temporaryFolder()
    const { publish, draft, save, menu, end } = await published(data)
    const { saw } = await draft('wrap-line')
    const steps: readonly Step[] = [
      price(700),
      NAME,
      { do: 'move', entity: 'pan', id: 'pan-peppers', before: 'pan-chicken', well: 'hot' },
      { do: 'remove', entity: 'backup', id: 'back-up-chicken' },
      { do: 'put', entity: 'ingredient', id: 'leek', fields: { name: 'Leek' } },
    ]
    expect((await save('wrap-line', saw, ...steps)).code).toBe('done')
    expect(await publish()).toMatchObject({ code: 'done', revision: 2 })
    const seen = await draft('wrap-line')
    const back = { station: 'wrap-line', saw: seen.saw, revision: 1 }
    expect(await menu('/back', { ...back, saw })).toMatchObject({ code: 'stale' })
    expect(await menu('/back', back)).toMatchObject({ code: 'done', problems: [] })
    expect(await draft('wrap-line')).toMatchObject({ published: 2, changed: true })
    expect(await publish()).toMatchObject({ code: 'done', revision: 3 })
    await end()
    const [first, second, third] = await bodies(data)
    expect(third).toBe(first)
    expect(second).not.toBe(first)
  })

  test('[ED10] a draft, its revisions and who is told of them outlive the server', async () => {
    const data = temporaryFolder()
    const { draft, save, end, lead } = await published(data)
    await save('wrap-line', (await draft('wrap-line')).saw, price(725))
    const before = await draft('wrap-line')
    await end()
    const again = await start(data)
    expect(await again.ask('/menu/draft?station=wrap-line', lead)).toEqual(before)
  })
})
