import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { SECRET_LENGTH } from '#lib/access/code.ts'
import { hashPassphrase } from '#server/access/scrypt.ts'
import { closeDurableDatabase, openDurableDatabase } from '#server/store/durable-database.ts'
import { HOUSE_ID, houseVersions } from '#server/store/house-database.ts'
import { accessRoom, from, HERE, IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { CHEAP } from '#tests/support/cheap-hash.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'

const TABLET = from('10.0.0.7')
const BOTH = { lead: LEAD, inCharge: IN_CHARGE }

describe('making the house', () => {
  test('[D8] by the secret that the terminal shows, once; whoever did holds the lead’s device', async () => {
    const { access } = accessRoom()
    const secret = access.secret() ?? ''
    expect(secret).toHaveLength(SECRET_LENGTH)
    expect(access.now(TABLET).house).toBe('none')
    expect(await access.make(TABLET, { ...BOTH, secret: 'ACDE-ACDE-ACDE-ACDE' })).toEqual({
      code: 'not-it',
    })
    const made = await access.make(TABLET, { ...BOTH, secret: secret.toLowerCase() })
    if (made.code !== 'done') throw new Error(made.code)
    expect(made.you).toMatchObject({ role: 'lead', adult: { name: LEAD.name }, name: LEAD.name })
    expect(access.now(from('10.0.0.7', made.token)).you).toEqual(made.you)
    expect(access.secret()).toBeNull()
    expect(access.now(TABLET).house).toBe('made')
    expect(await access.make(TABLET, { ...BOTH, secret })).toEqual({ code: 'made-already' })
  })

  test('[D8] by one of two who do it at once', async () => {
    const { access, house } = accessRoom()
    const secret = access.secret() ?? ''
    const both = await Promise.all([
      access.make(TABLET, { ...BOTH, secret }),
      access.make(HERE, { ...BOTH, secret }),
    ])
    expect(both.map(({ code }) => code).sort()).toEqual(['done', 'made-already'])
    expect(house.adults()).toHaveLength(2)
  })

  test('[D8] by the token for scripts, which the data folder’s owner alone can read', async () => {
    const { access } = accessRoom()
    const made = await access.make(HERE, { ...BOTH, secret: access.scriptsToken })
    expect(made).toMatchObject({ code: 'done' })
  })

  test.each([
    ['too-short', { lead: { ...LEAD, passphrase: 'short' } }],
    ['too-common', { inCharge: { ...IN_CHARGE, passphrase: 'Password2026!' } }],
    ['too-common', { lead: { name: 'Walnut Harbour', passphrase: 'walnut  harbour' } }],
    ['same-passphrase', { inCharge: { ...IN_CHARGE, passphrase: LEAD.passphrase } }],
    ['name-taken', { inCharge: { ...IN_CHARGE, name: LEAD.name.toUpperCase() } }],
    ['no-name', { lead: { ...LEAD, name: '  ' } }],
  ])('[D4][D5][D8] is refused as %s, and the secret stays', async (code, wrong) => {
    const { access, house } = accessRoom()
    const secret = access.secret() ?? ''
    expect(await access.make(TABLET, { ...BOTH, ...wrong, secret })).toEqual({ code })
    expect(house.adults()).toEqual([])
    expect(await access.make(TABLET, { ...BOTH, secret })).toMatchObject({ code: 'done' })
  })
})

describe('a house of before', () => {
  const houseOf = async (passphrase: string) => {
    const path = join(temporaryFolder(true), 'house.db')
    const versions = houseVersions.slice(0, 3)
    const database = openDurableDatabase({ path, applicationId: HOUSE_ID, versions })
    const { n, r, p, salt, hash } = await hashPassphrase(passphrase, CHEAP)
    database
      .prepare("INSERT INTO passphrases VALUES ('in-charge', ?, ?, ?, ?, ?)")
      .run(n, r, p, salt, hash)
    closeDurableDatabase(database)
    return accessRoom({ path })
  }

  test('[D9] keeps its passphrase, as that of an adult, and isn’t made yet', async () => {
    const { access, house, token } = await houseOf(IN_CHARGE.passphrase)
    expect(house.adults()).toMatchObject([{ name: 'Person in charge', role: 'in-charge' }])
    expect(access.secret()).not.toBeNull()
    const by = access.from(from('10.0.0.7', token('lead')))
    expect(await access.adults.proveInCharge(IN_CHARGE.passphrase, by)).toMatchObject({
      code: 'right',
    })
  })

  test('[D9] whoever makes it by that passphrase goes by a name from then on', async () => {
    const { house, make } = await houseOf(IN_CHARGE.passphrase)
    await make()
    expect(house.adults().map(({ name }) => name)).toEqual([LEAD.name, IN_CHARGE.name])
    const other = await houseOf('another one of before')
    await other.make()
    expect(other.house.adults()).toHaveLength(3)
  })
})

describe('one more adult', () => {
  const MORE = {
    name: 'Second adult',
    passphrase: 'walnut harbour mitten',
    role: 'in-charge',
  } as const

  test('[D8] is kept by the proof of somebody in charge, with a passphrase that is nobody’s', async () => {
    const { access, make } = accessRoom()
    const caller = from('10.0.0.7', await make())
    const add = (change: object) =>
      access.addAdult(caller, { ...MORE, proof: IN_CHARGE.passphrase, ...change })
    expect(await add({ proof: LEAD.passphrase })).toEqual({ code: 'not-it' })
    expect(await add({ passphrase: LEAD.passphrase })).toEqual({ code: 'same-passphrase' })
    expect(await add({ name: LEAD.name })).toEqual({ code: 'name-taken' })
    expect(await add({})).toEqual({ code: 'done' })
    expect(
      await add({ name: 'Third', proof: MORE.passphrase, passphrase: 'grill of the left' }),
    ).toEqual({
      code: 'done',
    })
  })

  test('[D8] of two that are added at once with one passphrase, or one name, one is kept', async () => {
    const { access, house, make } = accessRoom()
    const caller = from('10.0.0.7', await make())
    const add = (change: object) =>
      access.addAdult(caller, { ...MORE, proof: IN_CHARGE.passphrase, ...change })
    const codes = async (...changes: readonly object[]) =>
      (await Promise.all(changes.map(add))).map(({ code }) => code).sort()
    expect(await codes({}, { name: 'Third adult' })).toEqual(['done', 'same-passphrase'])
    const [one, other] = ['kettle and anchor', 'anchor and kettle']
    const name = 'Fourth adult'
    expect(await codes({ name, passphrase: one }, { name, passphrase: other })).toEqual([
      'done',
      'name-taken',
    ])
    expect(house.adults()).toHaveLength(4)
  })

  test('[D8] signs on by name and passphrase, and by neither alone', async () => {
    const { access, make } = accessRoom()
    expect(await access.signOn(TABLET, IN_CHARGE)).toEqual({ code: 'no-house' })
    await make()
    const name = IN_CHARGE.name.toUpperCase()
    const on = await access.signOn(TABLET, { name, passphrase: IN_CHARGE.passphrase })
    expect(on).toMatchObject({
      code: 'done',
      you: { role: 'in-charge', adult: { name: IN_CHARGE.name } },
    })
    const wrong = [
      { name: LEAD.name, passphrase: IN_CHARGE.passphrase },
      { name: 'Nobody', passphrase: IN_CHARGE.passphrase },
      { name: IN_CHARGE.name, passphrase: '' },
    ]
    for (const one of wrong) expect(await access.signOn(TABLET, one)).toEqual({ code: 'not-it' })
  })
})
