import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import type { MenuLabels } from '#lib/editor/label-http.ts'
import { type Label, labelOf } from '#lib/station/label.ts'
import { demoStation } from '#server/demo-station.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { olderFolder } from '#tests/support/own-station.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

type Told = Readonly<Record<string, unknown>> & { readonly code: string }

const beans = demoStation.ingredients.find((one) => one.id === 'black-beans')
if (!beans) throw new Error('the demo has no beans')
const BEANS: Label = labelOf(beans)
const STATION = demoStation.id

/** A house that is made, and what a lead's device asks below /menu. */
const made = async () => {
  const server = await startComposedStation(await olderFolder(temporaryFolder()))
  const secret = server.station.access.secret() ?? ''
  const answer = await fetch(`${server.url}/access/make`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ secret, lead: LEAD, inCharge: IN_CHARGE }),
  })
  const lead = /=([^;]*)/.exec(answer.headers.get('set-cookie') ?? '')?.[1] ?? ''
  const ask = async (path: string, init: RequestInit = {}, token = lead) =>
    fetch(`${server.url}/menu${path}`, {
      ...init,
      headers: { ...init.headers, authorization: `Bearer ${token}` },
    })
  const told = async (response: Response) => (await response.json()) as Told
  const labels = async () =>
    (await told(await ask(`/labels?station=${STATION}`))) as unknown as MenuLabels
  const labelled = async (ingredient = 'black-beans') => {
    const found = (await labels()).ingredients.find((one) => one.ingredient === ingredient)
    if (!found) throw new Error(`no ${ingredient}`)
    return found
  }
  const save = async (over: object = {}) =>
    told(
      await ask('/labels', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({
          station: STATION,
          ingredient: 'black-beans',
          saw: 0,
          label: BEANS,
          is: 'same',
          proof: { passphrase: IN_CHARGE.passphrase },
          ...over,
        }),
      }),
    )
  const photo = (body: BodyInit, type = 'image/jpeg', token = lead) =>
    ask('/photos', { method: 'POST', headers: { 'content-type': type }, body }, token)
  return { ...server, ask, labels, labelled, save, photo, told }
}

describe('the labels of a station', () => {
  test('[LH1] are told with their versions and what each goes into, to leads only', async () => {
    const { ask, labels, told } = await made()
    const shown = await labels()
    expect(shown).toMatchObject({
      code: 'done',
      station: STATION,
      allergens: { allergenSet: 'us-9' },
      readAgainDays: 90,
    })
    expect(shown.today).toMatch(/^\d{4}-\d\d-\d\d$/)
    const of = (id: string) => shown.ingredients.find((one) => one.ingredient === id)
    expect(of('black-beans')).toMatchObject({
      name: 'Black beans, dry',
      label: { version: 0, label: { readOn: '2026-11-20' }, at: null, by: null },
      products: [],
      goesInto: ['Black beans'],
      alsoAt: [],
    })
    expect(of('canola-oil')?.goesInto.length).toBeGreaterThan(1)
    expect((await labels()).ingredients.map(({ ingredient }) => ingredient).sort()).toEqual(
      demoStation.ingredients.map(({ id }) => id).sort(),
    )
    const stranger = await ask(`/labels?station=${STATION}`, {}, 'nobody')
    expect([stranger.status, (await told(stranger)).code]).toEqual([401, 'not-joined'])
    expect((await ask('/labels?station=nowhere')).status).toBe(404)
  })

  test('[LH2] are saved by the passphrase of who is in charge, as read today, and the service is told', async () => {
    const { save, labelled, labels } = await made()
    const soy: Label = { ...BEANS, declarations: { ...BEANS.declarations, soy: 'contains' } }
    expect(await save({ proof: { passphrase: 'of somebody else' } })).toEqual({ code: 'not-it' })
    expect(await save({ proof: { passphrase: LEAD.passphrase } })).toEqual({ code: 'not-it' })
    expect((await labelled()).label.version).toBe(0)
    const done = await save({ label: { ...soy, readOn: '1999-01-01', readBy: 'AB' } })
    expect(done).toMatchObject({ code: 'done', told: [STATION] })
    const { today } = await labels()
    expect((await labelled()).label).toMatchObject({
      version: done.version,
      label: { ...soy, readOn: today, readBy: null },
      by: IN_CHARGE.name,
    })
    const stale = await save({ label: BEANS })
    expect(stale).toMatchObject({ code: 'stale', now: { version: done.version } })
    expect(await save({ saw: done.version })).toMatchObject({ code: 'done' })
  })

  test('[LH6] sent once more, since its answer was lost, is known as one’s own and written once', async () => {
    const { save, labelled } = await made()
    const soy: Label = { ...BEANS, declarations: { ...BEANS.declarations, soy: 'contains' } }
    const done = await save({ label: soy })
    expect(await save({ label: soy })).toEqual({ code: 'done', version: done.version, told: [] })
    expect(await save({ label: soy, proof: { passphrase: LEAD.passphrase } })).toEqual({
      code: 'not-it',
    })
    expect((await labelled()).label.version).toBe(done.version)
    // Anything else than what stands is somebody's other word.
    expect(await save({ label: soy, is: 'other' })).toMatchObject({ code: 'stale' })
    expect(await save({ label: { ...soy, plain: true } })).toMatchObject({ code: 'stale' })
  })

  const declared = (more: object, over: object = {}) => ({
    label: { ...BEANS, ...over, declarations: { ...BEANS.declarations, ...more } },
  })

  test.each([
    ['no-such-station', { station: 'nowhere' }, {}],
    ['no-such-ingredient', { ingredient: 'moon-dust' }, {}],
    ['no-such-product', { product: 'another' }, {}],
    ['stale', { saw: 4 }, { now: { version: 0 } }],
    ['not-as-asked', { is: 'perhaps' }, {}],
    ['not-as-asked', { label: { ...BEANS, declarations: { milk: 'surely not' } } }, {}],
    ['unknown-need', declared({ celery: 'free' }), { need: 'celery' }],
    ['not-listed-unread', declared({ milk: 'not-listed' }), { need: 'milk' }],
    ['free-and-contains', declared({ almond: 'contains' }), { need: 'tree-nuts', kind: 'almond' }],
    ['traits-contradict', declared({ milk: 'contains' }), { need: 'milk', trait: 'dairy' }],
    ['label-problem', declared({ barley: 'contains' }), { problem: { why: 'always-gluten' } }],
    ['no-such-photo', { label: { ...BEANS, photo: '0'.repeat(64) } }, {}],
  ])('[LH3] %s is told, and nothing is written', async (code, over, more) => {
    const { save, labelled } = await made()
    expect(await save(over)).toMatchObject({ code, ...more })
    expect((await labelled()).label.version).toBe(0)
  })

  test('[LH3] not listed is taken with the list that was read, or of one plain food', async () => {
    const { save } = await made()
    const listed = declared({ milk: 'not-listed' }, { law: 'us-9', list: 'Black beans.' })
    const first = await save(listed)
    expect(first.code).toBe('done')
    const plain = declared({ milk: 'not-listed' }, { law: 'us-9', plain: true })
    expect((await save({ ...plain, saw: first.version })).code).toBe('done')
  })

  test('[LH4] guessing the passphrase runs out of tries, for the right one too', async () => {
    const { save } = await made()
    const codes: string[] = []
    for (let time = 0; time < 12; time += 1)
      codes.push((await save({ proof: { passphrase: `wrong ${time}` } })).code)
    expect(codes.at(-1)).toBe('too-many-tries')
    expect(await save()).toMatchObject({ code: 'too-many-tries', again: expect.any(Number) })
  }, 60_000)
})

describe('the pictures of labels', () => {
  const picture = () =>
    sharp({ create: { width: 80, height: 60, channels: 3, background: '#808080' } })
      .jpeg()
      .toBuffer()

  test('[LH5] are kept, shown by their hash, and saved with a label', async () => {
    const { photo, ask, save, labelled } = await made()
    const answer = await photo(new Uint8Array(await picture()))
    const kept = (await answer.json()) as { hash: string; bytes: number }
    expect(answer.status).toBe(200)
    const shown = await ask(`/photos?hash=${kept.hash}`)
    expect(shown.headers.get('content-type')).toBe('image/jpeg')
    expect(shown.headers.get('cache-control')).toContain('immutable')
    expect((await shown.arrayBuffer()).byteLength).toBe(kept.bytes)
    expect((await ask(`/photos?hash=${'0'.repeat(64)}`)).status).toBe(404)
    expect((await ask(`/photos?hash=${kept.hash}`, {}, 'nobody')).status).toBe(401)
    expect((await save({ label: { ...BEANS, photo: kept.hash } })).code).toBe('done')
    expect((await labelled()).label.label?.photo).toBe(kept.hash)
  })

  test('[LH5] of 40 MB, of another type, or of a stranger are refused before they are read', async () => {
    const { photo, told } = await made()
    const large = await photo(new Uint8Array(40_000_000))
    expect([large.status, (await told(large)).code]).toEqual([413, 'too-large'])
    expect((await photo('hello', 'text/plain')).status).toBe(400)
    const stranger = await photo(new Uint8Array(11_000_000), 'image/jpeg', 'nobody')
    expect([stranger.status, (await told(stranger)).code]).toEqual([401, 'not-joined'])
    const text = await photo('hello')
    expect([text.status, (await told(text)).code]).toEqual([415, 'not-a-picture'])
  })
})
