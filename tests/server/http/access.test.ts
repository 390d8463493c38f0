import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { ROLES, type Role } from '#lib/service/roles.ts'
import { SCRIPTS_TOKEN } from '#server/access/scripts-token.ts'
import { scriptsToken } from '#server/shell/scripts-token.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

interface Answer {
  readonly status: number
  readonly json: Readonly<Record<string, unknown>>
  readonly cookie: string
  /** What the cookie holds. */
  readonly token: string
}

const start = async (data = temporaryFolder()) => {
  const server = await startComposedStation(data)
  const ask = async (
    path: string,
    body?: unknown,
    { token, headers = {} }: { token?: string; headers?: Record<string, string> } = {},
  ): Promise<Answer> => {
    const house = token?.split('.')[0]
    const answer = await fetch(`${server.url}/access${path}`, {
      method: body === undefined ? 'GET' : 'POST',
      headers: {
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...(token === undefined ? {} : { cookie: `a=b; level-scoop-${house}=${token}` }),
        ...headers,
      },
      ...(body === undefined
        ? {}
        : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    })
    const cookie = answer.headers.get('set-cookie') ?? ''
    const given = /^level-scoop-[0-9a-f]{12}=([^;]*)/.exec(cookie)?.[1] ?? ''
    const json = (await answer.json()) as Answer['json']
    return { status: answer.status, json, cookie, token: given }
  }
  const secret = server.station.access.secret() ?? ''
  const make = () => ask('/make', { secret, lead: LEAD, inCharge: IN_CHARGE })
  return { ...server, ask, make, data }
}

/** A house that is made, with a device of each role. */
const made = async () => {
  const server = await start()
  const { ask, make } = server
  const lead = (await make()).token
  const tokens = new Map<Role, string>([['lead', lead]])
  const on = await ask('/sign-on', IN_CHARGE)
  tokens.set('in-charge', on.token)
  for (const role of ROLES) {
    if (tokens.has(role)) continue
    const { json } = await ask('/codes', { role }, { token: lead })
    tokens.set(role, (await ask('/join', { code: json.typed, name: role })).token)
  }
  return { ...server, lead, token: (role: Role) => tokens.get(role) ?? '' }
}

describe('from an empty folder to a joined tablet', () => {
  test('[D8][D10][D14] the house is made, a code is given, and a tablet has a cookie of its own', async () => {
    const { ask, make } = await start()
    expect((await ask('')).json).toEqual({
      code: 'done',
      house: 'none',
      you: null,
      line: { name: 'Alder Hall lunch line', wells: [2, 3, 3, 2] },
      mayWalkDemo: true,
      page: 'demo',
      demoIsOpen: true,
      stations: [],
      station: 'alder-hall',
    })
    const lead = await make()
    expect(lead).toMatchObject({ status: 200, json: { code: 'done', you: { role: 'lead' } } })
    expect(lead.json).not.toHaveProperty('token')
    expect(lead.cookie).toMatch(
      /^level-scoop-[0-9a-f]{12}=[0-9a-f]{12}\.[\w-]{43}; HttpOnly; SameSite=Strict; Path=\/; Max-Age=2592000$/,
    )
    const given = await ask('/codes', { role: 'counter' }, { token: lead.token })
    expect(given.json).toMatchObject({
      code: 'done',
      typed: expect.stringMatching(/^\w{4}-\w{4}$/),
    })
    for (const address of given.json.addresses as string[])
      expect(address).toMatch(new RegExp(`^http://[\\d.]+:\\d+/join#${given.json.typed}$`))
    const joined = await ask('/join', { code: given.json.typed, name: 'Counter left' })
    expect(joined.json).toMatchObject({ you: { role: 'counter', name: 'Counter left' } })
    expect((await ask('', undefined, { token: joined.token })).json.you).toEqual(joined.json.you)
    const { json } = await ask('/devices', undefined, { token: lead.token })
    expect(json.devices).toMatchObject([
      { role: 'lead', isYou: true, isHere: false },
      { role: 'counter', name: 'Counter left', isYou: false },
    ])
    expect(json.adults).toMatchObject([
      { name: LEAD.name, role: 'lead' },
      { name: IN_CHARGE.name, role: 'in-charge' },
    ])
  })

  test('[D14] no token, code or secret lies in the data folder, and none is written of', async () => {
    const { lead, ask, data, logged, token, end } = await made()
    const { json } = await ask('/codes', { role: 'counter' }, { token: lead })
    const typed = String(json.typed)
    const secrets = [lead, token('counter'), typed, typed.replace('-', ''), IN_CHARGE.passphrase]
    const found = () =>
      readdirSync(data, { recursive: true, encoding: 'utf8' })
        .filter((name) => name !== SCRIPTS_TOKEN && statSync(join(data, name)).isFile())
        .filter((name) => {
          const bytes = readFileSync(join(data, name))
          return secrets.some((one) => bytes.includes(one.split('.').at(-1) ?? one))
        })
    expect(found()).toEqual([])
    await end()
    expect(found()).toEqual([])
    for (const one of secrets) expect(logged.join('\n')).not.toContain(one)
  })
})

describe('what is asked below /access', () => {
  const OF_LEADS = [
    ['/codes', { role: 'counter' }],
    ['/remove', { device: 'd-none' }],
    ['/adults', { name: 'a', passphrase: 'b', role: 'lead', proof: 'c' }],
    ['/adults/remove', { adult: 'a-none', proof: 'c' }],
    ['/devices', undefined],
  ] as const

  test('[D22] of a lead is answered to a lead, and to nobody else', async () => {
    const { ask, token } = await made()
    for (const [path, body] of OF_LEADS) {
      for (const role of ROLES) {
        const { json } = await ask(path, body, { token: token(role) })
        const isLead = role === 'lead' || role === 'in-charge'
        expect(json.code === 'not-yours', `${path} ${role}`).toBe(!isLead)
      }
      expect(await ask(path, body), path).toMatchObject({
        status: 401,
        json: { code: 'not-joined' },
      })
    }
  })

  test.each([
    '/make',
    '/sign-on',
    '/join',
    '/codes',
    '/remove',
    '/adults',
    '/adults/remove',
    '/passphrase',
    '/sign-off',
  ])('[D22] otherwise than it should be is told by one code: %s', async (path) => {
    const { ask, lead } = await made()
    const headers = { 'content-type': 'text/plain' }
    const bodies = ['{', '[]', 'null', '"x"', '{"role":"owner"}', '{"more":1}']
    for (const body of bodies)
      expect(await ask(path, body, { token: lead }), body).toMatchObject({
        status: 400,
        json: { code: 'not-as-asked' },
      })
    expect((await ask(path, {}, { token: lead, headers })).status).toBe(400)
    const foreign = { origin: 'http://evil.example' }
    expect(await ask(path, {}, { token: lead, headers: foreign })).toMatchObject({
      status: 403,
      json: { code: 'other-origin' },
    })
  })

  test('[D11] by a code that was used, never was, or by a name that isn’t there is one answer', async () => {
    const { ask, lead } = await made()
    const { json } = await ask('/codes', { role: 'counter' }, { token: lead })
    await ask('/join', { code: json.typed, name: 'one' })
    const answers = [
      await ask('/join', { code: json.typed, name: 'two' }),
      await ask('/join', { code: 'ACDE-3479', name: 'two' }),
      await ask('/sign-on', { name: 'Nobody', passphrase: IN_CHARGE.passphrase }),
      await ask('/sign-on', { name: IN_CHARGE.name, passphrase: 'grill of the right' }),
    ]
    for (const answer of answers)
      expect(answer).toEqual({ status: 403, json: { code: 'not-it' }, cookie: '', token: '' })
  })

  test('[D15] a device that signs off is none any more, and keeps no cookie', async () => {
    const { ask, token } = await made()
    const off = await ask('/sign-off', {}, { token: token('counter') })
    expect(off.cookie).toContain('Max-Age=0')
    expect((await ask('', undefined, { token: token('counter') })).json.you).toBeNull()
  })
})

describe('an adult', () => {
  const NEW = 'walnut harbour mitten'
  const change = { name: LEAD.name, before: LEAD.passphrase, passphrase: NEW }

  test('[D24] changes a passphrase on any device that is proved, and on no other', async () => {
    const { ask, lead, token } = await made()
    expect(await ask('/passphrase', change)).toMatchObject({
      status: 401,
      json: { code: 'not-joined' },
    })
    const by = { token: token('pick-up') }
    expect(await ask('/passphrase', change, by)).toMatchObject({
      status: 200,
      json: { code: 'done' },
    })
    expect((await ask('', undefined, { token: lead })).json.you).toBeNull()
    expect((await ask('/sign-on', { name: LEAD.name, passphrase: NEW })).status).toBe(200)
  })

  test('[D25] is taken out by a lead’s device, unless nobody else could do it', async () => {
    const { ask, lead } = await made()
    const proof = IN_CHARGE.passphrase
    const more = { name: 'Second', passphrase: NEW, role: 'lead', proof }
    expect((await ask('/adults', more, { token: lead })).status).toBe(200)
    const ids = (await ask('/devices', undefined, { token: lead })).json.adults as {
      id: string
    }[]
    const out = (place: number) =>
      ask('/adults/remove', { adult: ids[place]?.id, proof }, { token: lead })
    expect(await out(1)).toMatchObject({ status: 409, json: { code: 'last-one' } })
    expect(await out(2)).toMatchObject({ status: 200, json: { code: 'done' } })
    expect(await out(0)).toMatchObject({ status: 409, json: { code: 'last-one' } })
  })
})

describe('the token for scripts', () => {
  test('[D20] lies where only the folder’s owner can read it, and is new at each start', async () => {
    const data = temporaryFolder()
    const first = await start(data)
    const path = join(data, SCRIPTS_TOKEN)
    expect(statSync(path).mode & 0o777).toBe(0o600)
    const before = readFileSync(path, 'utf8').trim()
    expect(await scriptsToken(first.url)).toBe(before)
    expect((await first.ask('', undefined, { token: before })).json.you).toMatchObject({
      role: 'lead',
    })
    const bearer = { headers: { authorization: `Bearer ${before}` } }
    expect((await first.ask('', undefined, bearer)).json.you).toMatchObject({ role: 'lead' })
    await first.end()
    const second = await start(data)
    expect(await scriptsToken(second.url)).not.toBe(before)
    expect((await second.ask('', undefined, { token: before })).json.you).toBeNull()
    expect(statSync(path).mode & 0o777).toBe(0o600)
  })

  test('[D20] its place is told to this machine, and to nobody that a proxy speaks for', async () => {
    const { url, data } = await start()
    const health = async (headers: Record<string, string> = {}) =>
      (await (await fetch(`${url}/health`, { headers })).json()) as object
    expect(await health()).toMatchObject({ scriptsToken: join(data, SCRIPTS_TOKEN) })
    const forwarded = await health({ 'x-forwarded-for': '127.0.0.1' })
    expect(forwarded).not.toHaveProperty('scriptsToken')
    expect(forwarded).not.toHaveProperty('pid')
  })
})
