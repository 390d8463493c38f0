import { expect, test } from 'vitest'
import type { LarderCommand } from '#lib/larder/command.ts'
import { foodsInOrder, type ReceivingShown } from '#lib/larder/receiving-view.ts'
import { demoStation } from '#server/demo-station.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const SOUP = {
  ...demoStation,
  id: 'soup-line',
  name: 'Soup line',
  ingredients: demoStation.ingredients.map((one) =>
    one.id === 'cumin' ? { ...one, name: 'Cumin of the soup line' } : one,
  ),
}

const COMES: LarderCommand = {
  type: 'receiveDelivery',
  initials: 'KT',
  delivery: {
    ...{ ingredient: 'cumin', same: 'other', comes: 'dry', needsNoCold: true },
    ...{ useBy: null, lot: 'CU 31/7' },
  },
}

test('[DV19] deliveries over http: by station, in a lead’s words, found by their lot, and shapes refused', async () => {
  const data = temporaryFolder()
  await publishIn(data, demoStation, SOUP)
  const server = await startComposedStation(data)
  const call = async (way: string, path: string, token: string, body?: object) => {
    const response = await fetch(`${server.url}${path}`, {
      method: way,
      headers: {
        ...(body ? { 'content-type': 'application/json' } : {}),
        ...(token === '' ? {} : { authorization: `Bearer ${token}` }),
      },
      ...(body ? { body: JSON.stringify(body) } : {}),
    })
    return { status: response.status, response, json: await response.json() }
  }
  const secret = server.station.access.secret() ?? ''
  const made = await call('POST', '/access/make', '', { secret, lead: LEAD, inCharge: IN_CHARGE })
  const lead = /=([^;]*)/.exec(made.response.headers.get('set-cookie') ?? '')?.[1] ?? ''

  const cuminAt = async (query: string) => {
    const { json } = await call('GET', `/larder/deliveries${query}`, lead)
    return foodsInOrder(json as ReceivingShown).find(({ ingredient }) => ingredient === 'cumin')
  }
  expect(await cuminAt('')).toMatchObject({ name: 'Cumin, ground', label: 'read', comes: null })
  expect(await cuminAt('?station=soup-line')).toMatchObject({ name: 'Cumin of the soup line' })
  expect(await call('GET', '/larder/deliveries?station=none', lead)).toMatchObject({ status: 404 })

  const taken = { status: 200, json: { answer: { answer: 'accepted' } } }
  const does = (command: object, id = 'd1') => call('POST', '/larder/do', lead, { id, command })
  expect(await does(COMES)).toMatchObject(taken)
  expect(await does(COMES)).toMatchObject(taken)
  // One label for the house: both stations have it unread.
  for (const query of ['', '?station=soup-line'])
    expect(await cuminAt(query)).toMatchObject({
      label: 'unread',
      comes: 'dry',
      deliveries: [{ lot: 'CU 31/7', same: 'other', sentBack: null }],
    })
  const found = await call('GET', '/larder/lots?lot=cu-317', lead)
  expect(found.json.deliveries).toMatchObject([{ ingredient: 'cumin' }])
  expect((await call('GET', '/larder/lots?lot=', lead)).json.deliveries).toEqual([])
  expect(JSON.stringify(found.json)).not.toContain('KT')
  for (const path of ['/larder/lots?lot=cu-317', '/larder/deliveries'])
    expect(await call('GET', path, '')).toMatchObject({ status: 401 })

  const { delivery } = COMES as Extract<LarderCommand, { readonly type: 'receiveDelivery' }>
  const warm = { tenths: 500, scale: 'F', probe: 'blue' }
  expect(
    await does({ ...COMES, delivery: { ...delivery, comes: 'milk', reading: warm } }, 'd2'),
  ).toMatchObject({
    json: { answer: { refusal: { code: 'delivery-turned-away', because: { code: 'too-warm' } } } },
  })
  for (const [index, wrong] of [
    { ...delivery, useBy: '2026-02-30' },
    { ...delivery, comes: 'by mail' },
    { ...delivery, packs: 0.5 },
    { ...delivery, lot: 'x'.repeat(401) },
    { ...delivery, driver: 'somebody' },
  ].entries())
    expect(await does({ ...COMES, delivery: wrong }, `w${index}`)).toMatchObject({
      status: 400,
      json: { code: 'not-as-asked' },
    })
  await server.end()
}, 60_000)
