import { describe, expect, test } from 'vitest'
import { canonicalJson, carriedFile } from '#lib/carry/canonical.ts'
import { MOST_TABLE_BYTES } from '#lib/carry/csv/table.ts'
import { MOST_FILE_BYTES } from '#lib/carry/read-carried.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { STATION_SETS } from '#server/stations/sets.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { olderFolder } from '#tests/support/own-station.ts'
import { demoStation } from '#tests/support/service.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

type Told = Readonly<Record<string, unknown>> & { readonly code: string; readonly saw: number }

/** A house that is made, and what a lead's device asks of it. */
const made = async () => {
  const server = await startComposedStation(await olderFolder(temporaryFolder()))
  const secret = server.station.access.secret() ?? ''
  const answer = await fetch(`${server.url}/access/make`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ secret, lead: LEAD, inCharge: IN_CHARGE }),
  })
  const lead = /=([^;]*)/.exec(answer.headers.get('set-cookie') ?? '')?.[1] ?? ''
  const get = (path: string, token = lead) =>
    fetch(`${server.url}${path}`, { headers: { authorization: `Bearer ${token}` } })
  const post = (path: string, body: string | Uint8Array<ArrayBuffer>, type: string, token = lead) =>
    fetch(`${server.url}${path}`, {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': type },
      body,
    })
  const told = async (answer: Promise<Response>): Promise<Told> =>
    (await (await answer).json()) as Told
  return {
    ...server,
    lead,
    get,
    post,
    menu: (path: string, body?: unknown) =>
      told(
        body === undefined
          ? get(`/menu${path}`)
          : post(`/menu${path}`, JSON.stringify(body), 'application/json'),
      ),
    file: (path: string, text: string) =>
      told(post(`/menu/import${path}`, text, 'application/json')),
    table: (path: string, text: string | Uint8Array<ArrayBuffer>) =>
      told(post(`/menu/csv${path}`, text, 'text/csv')),
  }
}

const setOf = (from: string): StationDocument => {
  const found = STATION_SETS.find((one) => one.from === from)
  if (found === undefined) throw new Error(`no set ${from}`)
  return found.document
}

const bowls = setOf('grain-bowl')
const bowlsFile = carriedFile(bowls, [])

const otherId = (id: string): string =>
  bowls.ingredients.some((one) => one.id === id) ? `other-${id}` : id

const otherFood = <
  Made extends StationDocument['recipes'][number] | StationDocument['components'][number],
>(
  made: Made,
): Made => ({
  ...made,
  ingredients: made.ingredients.map(otherId),
  ...(made.lines && { lines: made.lines.map((line) => ({ ...line, of: otherId(line.of) })) }),
})

/** Of food that the demo, which is in the house too, has nothing of. */
const foreignFile = carriedFile(
  {
    ...bowls,
    invented: false,
    ingredients: bowls.ingredients.map((one) => ({
      ...one,
      id: otherId(one.id),
      name: `Other ${one.name}`,
    })),
    recipes: bowls.recipes.map(otherFood),
    components: bowls.components.map(otherFood),
  },
  [],
)

describe('a station’s file', () => {
  test('[CA12] becomes a draft and, published, is the same file again', async () => {
    const house = await made()
    const look = await house.file('/look?into=new', foreignFile)
    expect(look).toMatchObject({ code: 'done', station: bowls.id, open: false, same: null })
    expect(await house.menu('/draft?station=juniper-court')).toEqual({ code: 'no-such-station' })
    const taken = await house.file(`?into=new&saw=${look.saw}`, foreignFile)
    expect(taken).toMatchObject({ code: 'done', station: bowls.id, problems: [] })
    expect(await house.menu('/draft?station=juniper-court')).toMatchObject({ published: null })
    const draftFile = await (await house.get('/menu/export?station=juniper-court')).text()
    expect(draftFile).toBe(foreignFile)
    const published = await house.menu('/publish', {
      station: bowls.id,
      saw: taken.saw,
      proof: LEAD.passphrase,
    })
    expect(published).toMatchObject({ code: 'done', revision: 1 })
    const answer = await house.get('/menu/export?station=juniper-court')
    expect(await answer.text()).toBe(foreignFile)
    expect(answer.headers.get('content-disposition')).toBe(
      'attachment; filename="juniper-court.station.json"',
    )
  })

  test('[CA12] is brought into a station that is there, with its differences first', async () => {
    const house = await made()
    const begun = await house.menu('/begin', { from: 'grain-bowl', name: 'Our bowls' })
    const station = String(begun.station)
    const dearer = {
      ...bowls,
      items: bowls.items.map((one, index) => (index === 0 ? { ...one, priceCents: 990 } : one)),
    }
    const file = carriedFile(dearer, [])
    const look = await house.file(`/look?into=${station}`, file)
    expect(look).toMatchObject({ code: 'done', station, name: 'Our bowls', same: null })
    expect(look.changes).toEqual([
      {
        what: 'changed',
        entity: 'item',
        id: 'lemon-chicken-bowl',
        name: 'Lemon chicken bowl',
        field: 'priceCents',
        from: 925,
        to: 990,
      },
    ])
    expect(look.ingredients).toMatchObject(bowls.ingredients.map(() => ({ does: 'here' })))
    const before = await house.menu(`/draft?station=${station}`)
    const saved = await house.menu('/steps', {
      station,
      saw: before.saw,
      steps: [{ do: 'put', entity: 'item', id: 'market-bowl', fields: { priceCents: 700 } }],
    })
    expect(await house.file(`?into=${station}&saw=${look.saw}`, file)).toEqual({ code: 'stale' })
    expect(await house.file(`?into=${station}&saw=${saved.saw}`, file)).toMatchObject({
      code: 'done',
    })
    const { rows } = (await house.menu(`/draft?station=${station}`)) as unknown as {
      rows: Record<string, { priceCents: number; name: string }>
    }
    expect(rows['item:lemon-chicken-bowl']?.priceCents).toBe(990)
    expect(rows.house?.name).toBe('Our bowls')
  })

  test('[CA12] of the demo arrives with none of its labels read, and its own service goes on', async () => {
    const house = await made()
    const before = canonicalJson(await (await house.get('/health')).json())
    const file = carriedFile(demoStation, [])
    const look = await house.file('/look?into=new', file)
    expect(look).toMatchObject({
      code: 'done',
      station: 'alder-hall-2',
      same: { station: 'alder-hall' },
    })
    expect(look.unread).toBe(0)
    expect(await house.file('/look?into=alder-hall', file)).toMatchObject({ open: true })
    await house.file(`?into=new&saw=${look.saw}`, file)
    expect(canonicalJson(await (await house.get('/health')).json())).toBe(before)
  })

  test('[CA12] brings labels of what is new, unread, and leaves those of the house', async () => {
    const house = await made()
    const [rice, pita, ...others] = demoStation.ingredients
    if (rice === undefined || pita === undefined) throw new Error('no ingredients')
    const loaf = { ...pita, id: 'loaf', name: 'Sesame loaf' }
    const there = {
      ...demoStation,
      id: 'other-hall',
      components: demoStation.components.map((one) =>
        one.id === 'pita' ? { ...one, ingredients: ['loaf'] } : one,
      ),
      ingredients: [rice, loaf, ...others],
    }
    const file = carriedFile(there, [])
    const look = await house.file('/look?into=new', file)
    expect(look.unread).toBe(
      Object.values(loaf.declarations).filter((said) => said === 'free').length,
    )
    await house.file(`?into=new&saw=${look.saw}`, file)
    const { labels } = (await house.menu('/draft?station=other-hall')) as unknown as {
      labels: Record<string, { readOn: string | null; declarations: Record<string, string> }>
    }
    expect(labels.loaf).toMatchObject({
      readOn: null,
      declarations: { wheat: 'contains', sesame: 'may-contain', milk: 'unknown' },
    })
    expect(labels['brown-rice']?.readOn).toBe(rice.readOn)
  })

  test.each([
    ['cut off', bowlsFile.slice(0, 9_000), { why: 'cut-off' }],
    ['altered', bowlsFile.replace('925', '9'), { why: 'altered' }],
    [
      'too new',
      canonicalJson({ ...JSON.parse(bowlsFile), version: 7 }),
      { why: 'too-new', version: 7, known: 1 },
    ],
    [
      'of another allergen set',
      carriedFile({ ...bowls, allergenSet: 'eu-14' }, []),
      { why: 'other-allergen-set', there: 'eu-14', here: 'us-9' },
    ],
  ])('[CA13] that is %s is told, and nothing has changed', async (_, text, problem) => {
    const house = await made()
    const before = await house.menu('/stations')
    expect(await house.file('/look?into=new', text)).toEqual({ code: 'wrong-file', problem })
    expect(await house.file('?into=new&saw=0', text)).toEqual({ code: 'wrong-file', problem })
    expect(await house.menu('/stations')).toEqual(before)
  })

  test('[CA13] is taken of a device that leads only, and none is read of others', async () => {
    const house = await made()
    for (const path of [
      '/menu/schema',
      '/menu/export?station=alder-hall',
      '/menu/csv?station=a&what=recipes',
    ])
      expect((await house.get(path, 'nobody')).status).toBe(401)
    const large = 'x'.repeat(MOST_FILE_BYTES + 1)
    expect(
      (await house.post('/menu/import/look?into=new', 'x', 'application/json', 'nobody')).status,
    ).toBe(401)
    const refused = await house.post('/menu/import/look?into=new', large, 'application/json').then(
      ({ status }) => status,
      () => 413,
    )
    expect(refused).toBe(413)
    expect((await house.post('/menu/import/look?into=new', '{}', 'text/plain')).status).toBe(400)
  })

  test('[CA5] has its schema published', async () => {
    const house = await made()
    const answer = await house.get('/menu/schema')
    expect(answer.headers.get('content-type')).toBe('application/schema+json; charset=utf-8')
    expect(await answer.json()).toMatchObject({ required: expect.arrayContaining(['document']) })
  })
})

describe('a station’s tables', () => {
  const begin = async () => {
    const house = await made()
    const begun = await house.menu('/begin', { from: 'grain-bowl', name: 'Our bowls' })
    return { ...house, station: String(begun.station) }
  }

  test('[CA14] go out, and come in as the rows say', async () => {
    const { get, table, menu, station } = await begin()
    const out = await get(`/menu/csv?station=${station}&what=ingredients`)
    expect(out.headers.get('content-type')).toBe('text/csv; charset=utf-8')
    const text = `${await out.text()}Tahini,Ford & Daughter,2 lb,sesame,,milk,,,\r\n=cmd,,,,,,,,\r\n`
    const ask = `?station=${station}&what=ingredients`
    const look = await table(`/look${ask}`, text)
    const rows = look.rows as { does: string }[]
    expect(rows.map(({ does }) => does)).toEqual([
      ...bowls.ingredients.map(() => 'same'),
      'new',
      'refused',
    ])
    expect(look.readAs).toEqual({ encoding: 'utf-8', delimiter: ',', ignored: [] })
    const before = await menu(`/draft?station=${station}`)
    expect(before.saw).toBe(look.saw)
    expect(await table(`${ask}&saw=${look.saw}`, text)).toMatchObject({
      code: 'done',
      taken: 1,
      refused: 1,
    })
    expect(await table(`${ask}&saw=${look.saw}`, text)).toEqual({ code: 'stale' })
    const after = (await menu(`/draft?station=${station}`)) as unknown as { rows: object }
    expect(after.rows).toHaveProperty(['ingredient:tahini', 'maker'], 'Ford & Daughter')
  })

  test('[CA14] in other bytes are told, and read once somebody says so', async () => {
    const { table, station } = await begin()
    const bytes = Uint8Array.from([...'name\ncaf'].map((sign) => sign.charCodeAt(0)).concat(0xe9))
    const ask = `/look?station=${station}&what=ingredients`
    expect(await table(ask, bytes)).toEqual({
      code: 'wrong-file',
      problem: { why: 'unknown-encoding' },
    })
    expect(await table(`${ask}&encoding=windows-1252`, bytes)).toMatchObject({
      readAs: { encoding: 'windows-1252' },
      rows: [{ name: 'café', does: 'new' }],
    })
    expect(await table(`${ask}&encoding=latin-9`, bytes)).toEqual({ code: 'not-as-asked' })
    expect(await table('/look?station=none&what=recipes', 'name')).toEqual({
      code: 'no-such-station',
    })
    const large = 'x'.repeat(MOST_TABLE_BYTES + 1)
    expect(
      await table(ask, large).then(
        ({ code }) => code,
        () => 'too-large',
      ),
    ).toBe('too-large')
  })
})
