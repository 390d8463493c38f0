import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { PROTOCOL } from '#lib/protocol/wire.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { filled, unlabelled } from '#lib/station/filled.ts'
import type { Label } from '#lib/station/label.ts'
import { labelOf, withoutReaders } from '#lib/station/label.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { SCRIPTS_TOKEN } from '#server/access/scripts-token.ts'
import { demoStation } from '#server/demo-station.ts'
import { openSqliteLog } from '#server/event-log/sqlite.ts'
import { createSqliteLabels } from '#server/labels/sqlite.ts'
import type { StoredAnswer } from '#server/rail/stored-answer.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { createSqliteStations } from '#server/stations/sqlite.ts'
import { closeDurableDatabase, type SqliteDatabase } from '#server/store/durable-database.ts'
import { openHouseDatabase } from '#server/store/house-database.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { LEADS_PASSPHRASE, makeHouse, PASSPHRASE as RIGHT } from '#tests/support/make-house.ts'
import { demoIn, olderFolder } from '#tests/support/own-station.ts'
import { connectScreen } from '#tests/support/socket-room.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const WRONG = 'right of the grill'
const DEMO = 's-demo'

/** A hello of whoever owns the data folder. */
const owner = async (url: string) => ({
  auth: { protocol: PROTOCOL, role: 'lead', token: await scriptsToken(url) },
})

const withHouse = async <Result>(data: string, act: (house: SqliteDatabase) => Promise<Result>) => {
  const house = openHouseDatabase({ path: join(demoIn(data), 'house.db') })
  try {
    return await act(house)
  } finally {
    closeDurableDatabase(house)
  }
}

/** The newest document of the station, as it is kept and with the house's labels. */
const keptIn = (data: string) =>
  withHouse(data, async (file) => {
    const parse = (json: unknown) => stationSchema.parse(json)
    const kept = await createSqliteStations({ house: file, parse }).latest(demoStation.id)
    const house = file.prepare<[], string>('SELECT id FROM house').pluck().get() ?? ''
    const labels = createSqliteLabels(file, house).newest()
    const find = (id: string) => labels.find((one) => one.ingredient === id) ?? null
    if (!kept) throw new Error('no station is kept')
    return { ...kept, bare: kept.document, document: filled(kept.document, find), labels }
  })

const demoOf = async (data: string) => {
  const log = openSqliteLog<Recorded, StoredAnswer>({ path: join(demoIn(data), 'log.db') })
  const events = await log.read(DEMO, 0)
  await log.close()
  return events.reduce(evolve, NOT_OPENED)
}

const INGREDIENT = demoStation.ingredients[0]?.id ?? ''

/** Initials that nothing else in a data folder happens to spell. */
const READER = 'QJXZKV'

type Halal = 'declared' | 'not'

const labelSaying = (halal: Halal): Label => {
  const found = demoStation.ingredients.find((one) => one.id === INGREDIENT)
  if (!found) throw new Error('the demo station has no ingredient')
  const label = labelOf(found)
  return { ...label, claims: { halal } }
}

/** A data folder in which the person in charge has changed a label of the demo service. */
const changedFolder = async (...labels: readonly Label[]) => {
  const data = temporaryFolder()
  const server = await startComposedStation(data)
  await makeHouse(server.url)
  const { give } = await connectScreen(server.url, 'lead', await owner(server.url))
  const proof = { service: DEMO, passphrase: RIGHT }
  expect(await give('on', { type: 'signOn' }, proof)).toMatchObject({ answer: 'accepted' })
  const answers = await Promise.all(
    labels.map((label, index) =>
      give(
        `label-${index}`,
        {
          type: 'changeLabel',
          ingredient: INGREDIENT,
          label,
          product: 'same',
          initials: READER,
        },
        proof,
      ),
    ),
  )
  expect(answers.map(({ answer }) => answer)).toEqual(labels.map(() => 'accepted'))
  return { data, server, give }
}

const claimsIn = (station: typeof demoStation | null | undefined) =>
  station?.ingredients.find((one) => one.id === INGREDIENT)?.claims

describe('a new data folder', () => {
  test('[R23] starts with a demo whose protected back-ups stand ready, and nobody in charge', async () => {
    const data = temporaryFolder()
    const server = await startComposedStation(data)
    expect(await (await fetch(`${server.url}/access`)).json()).toMatchObject({
      house: 'none',
      you: null,
    })
    await server.end()
    const wanted = demoStation.backups.filter((one) => one.protected).map((one) => one.component)
    expect(wanted.length).toBeGreaterThan(0)
    const state = await demoOf(data)
    expect(Object.keys(state.backups).sort()).toEqual([...wanted].sort())
    expect(state.inCharge).toBeNull()
  })

  test('[R23] a back-up that was put away stays so when the server starts again', async () => {
    const data = temporaryFolder()
    const first = await startComposedStation(data)
    const component = demoStation.backups.find((one) => one.protected)?.component ?? ''
    const { give } = await connectScreen(first.url, 'lead')
    expect(
      await give('away', { type: 'setBackup', component, ready: false }, { service: DEMO }),
    ).toMatchObject({ answer: 'accepted' })
    await first.end()
    await (await startComposedStation(data)).end()
    expect((await demoOf(data)).backups).not.toHaveProperty(component)
  })
})

describe('a data folder of before the demo was a house of its own', () => {
  test('[D28] opens as it was: its line and its demo service are the own ones, and no other is begun', async () => {
    const data = await olderFolder(temporaryFolder())
    const server = await startComposedStation(data)
    expect(await (await fetch(`${server.url}/access`)).json()).toMatchObject({
      page: 'own',
      station: demoStation.id,
      demoIsOpen: false,
      mayWalkDemo: true,
    })
    const { welcome, give } = await connectScreen(server.url, 'lead')
    expect(welcome).toMatchObject({ house: 'own', service: DEMO })
    expect(
      await give(
        'stop',
        { type: 'stopSelling', what: 'item', id: 'garden-chicken' },
        {
          service: DEMO,
        },
      ),
    ).toMatchObject({ answer: 'accepted' })
    expect(existsSync(demoIn(data))).toBe(false)
  })
})

describe('a label that changed', () => {
  test('[R21] is in the next service, and the house’s from then on: the station’s document has none', async () => {
    const { data, server, give } = await changedFolder(labelSaying('declared'), labelSaying('not'))
    expect(await give('close', { type: 'close' }, { service: DEMO })).toMatchObject({
      answer: 'accepted',
    })
    await give('open', { type: 'open', station: demoStation.id, kind: 'demo' }, { service: 's-2' })
    const { follow } = await connectScreen(server.url, 'lead', await owner(server.url))
    const followed = await follow(0, 's-2')
    if (followed.kind !== 'events') throw new Error(followed.kind)
    // The first forecast of the service may have said something since.
    expect(followed.events[0]).toMatchObject({
      type: 'serviceOpened',
      revision: 1,
      labels: { [INGREDIENT]: expect.any(Number) },
    })
    await server.end()
    const kept = await keptIn(data)
    expect(kept.revision).toBe(1)
    expect(claimsIn(kept.document)).toEqual({ halal: 'not' })
    expect(withoutReaders(kept.document)).toEqual((await demoOf(data)).station)
    expect(kept.bare).toEqual(unlabelled(demoStation))
  })

  test('[R22] and never reached the house before a crash is put there at the next start', async () => {
    const { data, server } = await changedFolder(labelSaying('declared'), labelSaying('not'))
    await server.end()
    const whole = await keptIn(data)
    await withHouse(data, async (house) => house.exec('DELETE FROM labels WHERE version > 0'))
    expect(await keptIn(data)).not.toEqual(whole)
    await (await startComposedStation(data)).end()
    expect(await keptIn(data)).toEqual(whole)
    await (await startComposedStation(data)).end()
    expect(await keptIn(data)).toEqual(whole)
  })
})

describe('who read a label', () => {
  test('[L40] is in the second file under its command, and nowhere in the log or the document', async () => {
    const OLD = 'WQXJVZ'
    const { data, server, give } = await changedFolder(labelSaying('declared'), {
      ...labelSaying('not'),
      readBy: OLD,
    })
    const named = () =>
      readdirSync(demoIn(data))
        .filter((name) =>
          [READER, OLD].some((one) => readFileSync(join(demoIn(data), name)).includes(one)),
        )
        .map((name) => name.replace(/-(wal|shm)$/, ''))
    const open = named()
    expect(open).toContain('guests.db')
    expect(await give('close', { type: 'close' }, { service: DEMO })).toMatchObject({
      answer: 'accepted',
    })
    await give('open', { type: 'open', station: demoStation.id, kind: 'demo' }, { service: 's-2' })
    const next = named()
    await server.end()
    const files = new Set([...open, ...next, ...named()])
    expect(files).toEqual(new Set(['guests.db']))
    const kept = await keptIn(data)
    expect(kept.labels.map(({ version }) => version > 0)).toContain(true)
    expect(new Set(kept.labels.map(({ label }) => label?.readBy))).toContain(null)
    expect(new Set(kept.bare.ingredients.map(({ readBy }) => readBy))).toEqual(new Set([null]))
  })
})

describe('who read the sanitizer', () => {
  test('[F75] is in the second file under the command, and nowhere in the log', async () => {
    const data = temporaryFolder()
    const server = await startComposedStation(data)
    const { give } = await connectScreen(server.url, 'assembly')
    const water = { tenths: 750, scale: 'F' } as const
    const read = { type: 'readSanitizer', mgPerL: 100, water, ph: null, initials: READER } as const
    expect(await give('strip', read, { service: DEMO })).toMatchObject({ answer: 'accepted' })
    await server.end()
    const naming = readdirSync(demoIn(data)).filter((name) =>
      readFileSync(join(demoIn(data), name)).includes(READER),
    )
    expect(new Set(naming.map((name) => name.replace(/-(wal|shm)$/, '')))).toEqual(
      new Set(['guests.db']),
    )
    expect((await demoOf(data)).sanitizer).toMatchObject({ mgPerL: 100, problem: null })
  })
})

describe('a passphrase that was used', () => {
  test('[I10] is in no file of the data folder and in nothing the server wrote', async () => {
    const { data, server, give } = await changedFolder(labelSaying('declared'))
    await give('wrong', { type: 'signOff' }, { service: DEMO, passphrase: WRONG })
    await give(
      'stop',
      { type: 'stopSelling', what: 'item', id: 'x' },
      {
        service: DEMO,
        passphrase: RIGHT,
      },
    )
    const filesNow = () =>
      readdirSync(data, { recursive: true, withFileTypes: true })
        .filter((one) => one.isFile() && one.name !== SCRIPTS_TOKEN)
        .map((one) => readFileSync(join(one.parentPath, one.name)))
    const token = (await scriptsToken(server.url)) ?? ''
    expect(token).toMatch(/^[0-9a-f]{12}\.[\w-]{43}$/)
    const running = filesNow()
    await server.end()
    const files = [...running, ...filesNow(), Buffer.from(server.logged.join('\n'))]
    expect(files.length).toBeGreaterThan(6)
    expect(files.some((file) => file.includes('labelChanged'))).toBe(true)
    for (const secret of [RIGHT, LEADS_PASSPHRASE, WRONG, token.split('.')[1] ?? ''])
      for (const form of [
        Buffer.from(secret),
        Buffer.from(secret, 'utf16le'),
        Buffer.from(Buffer.from(secret).toString('hex')),
        Buffer.from(Buffer.from(secret).toString('base64').replace(/=+$/, '')),
      ])
        expect(files.filter((file) => file.includes(form))).toEqual([])
  })
})
