import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { demoStation } from '#server/demo-station.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

const NOON = { ...demoStation, id: 'noon-line', name: 'Noon line' }
const CREW = ['pick-up', 'counter', 'assembly', 'hand-over'] as const
/** Who doesn't belong to the house: none of them is in anywhere. */
const STRANGERS = ['nobody', 'forged', 'of another house'] as const

type Least = 'anybody' | 'any device' | 'counter' | 'lead' | 'at the laptop'

/** Every address that takes more than a look, and the least that may ask it. */
const TABLE: Readonly<Record<string, Least>> = {
  'GET /access': 'anybody',
  'GET /access/devices': 'lead',
  'GET /access/privacy': 'lead',
  'POST /access/make': 'anybody',
  'POST /access/sign-on': 'anybody',
  'POST /access/join': 'anybody',
  'POST /access/codes': 'lead',
  'POST /access/remove': 'lead',
  'POST /access/station': 'lead',
  'POST /access/adults': 'lead',
  'POST /access/adults/remove': 'lead',
  'POST /access/passphrase': 'any device',
  'POST /access/sign-off': 'any device',
  'POST /access/forget': 'lead',
  'POST /access/reasons': 'counter',
  'POST /access/retention': 'lead',
  'POST /access/demo': 'at the laptop',
  'GET /menu/stations': 'lead',
  'GET /menu/draft': 'lead',
  'GET /menu/revisions': 'lead',
  'GET /menu/compare': 'lead',
  'GET /menu/labels': 'lead',
  'GET /menu/photos': 'lead',
  'GET /menu/schema': 'lead',
  'GET /menu/export': 'lead',
  'GET /menu/csv': 'lead',
  'POST /menu/steps': 'lead',
  'POST /menu/begin': 'lead',
  'POST /menu/publish': 'lead',
  'POST /menu/back': 'lead',
  'POST /menu/labels': 'lead',
  'POST /menu/photos': 'lead',
  'POST /menu/import/look': 'lead',
  'POST /menu/import': 'lead',
  'POST /menu/csv/look': 'lead',
  'POST /menu/csv': 'lead',
  'GET /plan/ahead': 'lead',
  'GET /tasting/now': 'lead',
  'GET /tasting/yields': 'lead',
  'POST /tasting/do': 'lead',
  'POST /tasting/yield': 'lead',
  'GET /services': 'any device',
  'GET /services/crew': 'any device',
  'GET /larder/now': 'lead',
  'POST /larder/do': 'lead',
  'GET /larder/deliveries': 'lead',
  'GET /larder/lots': 'lead',
}

const mayAsk = (who: string, least: Least): boolean => {
  if (least === 'anybody' || who === 'lead') return true
  const isCrew = CREW.some((role) => role === who)
  return isCrew && (least === 'any device' || (least === 'counter' && who === 'counter'))
}

test('[D29] the table names every address of the house that asks who one is', () => {
  const folder = 'server/http'
  const named = readdirSync(folder).flatMap((file) =>
    [
      ...readFileSync(join(folder, file), 'utf8').matchAll(
        /'(\/(?:access|menu|larder|plan|services|tasting)[a-z/-]*)'/g,
      ),
    ].map(([, path = '']) => path),
  )
  /** Pages, which anybody may open. */
  const pages = [
    '/menu',
    '/menu/label',
    '/menu/carry',
    '/menu/recipe',
    '/larder',
    '/plan',
    '/tasting',
  ]
  const asked = new Set(Object.keys(TABLE).map((row) => row.split(' ')[1] ?? ''))
  expect([...new Set(named)].filter((path) => !pages.includes(path)).sort()).toEqual(
    [...asked].sort(),
  )
})

/** A house that is made, with a token of each of its roles. */
const made = async () => {
  const data = temporaryFolder()
  await publishIn(data, NOON)
  const server = await startComposedStation(data)
  const call = (way: string, path: string, token: string, body: object = {}) =>
    fetch(`${server.url}${path}`, {
      method: way,
      headers: {
        ...(way === 'POST' ? { 'content-type': 'application/json' } : {}),
        ...(token === '' ? {} : { authorization: `Bearer ${token}` }),
      },
      ...(way === 'POST' ? { body: JSON.stringify(body) } : {}),
    })
  const tokenIn = (answer: Response) =>
    /=([^;]*)/.exec(answer.headers.get('set-cookie') ?? '')?.[1] ?? ''
  const secret = server.station.access.secret() ?? ''
  const house = { secret, lead: LEAD, inCharge: IN_CHARGE }
  const lead = tokenIn(await call('POST', '/access/make', '', house))
  const tablet = async (role: string) => {
    const given = await call('POST', '/access/codes', lead, { role })
    const { typed } = (await given.json()) as { readonly typed: string }
    return tokenIn(await call('POST', '/access/join', '', { code: typed, name: `${role} tablet` }))
  }
  return { call, lead, tablet }
}

test('[D29] each address is answered to whom the table names, of the own house and the demo, and to no stranger', async () => {
  const [own, other] = [await made(), await made()]
  expect(await own.call('POST', '/access/demo', own.lead, { open: true })).toMatchObject({
    status: 200,
  })
  const tokens: Record<string, string> = { nobody: '', forged: 'x'.repeat(43), lead: own.lead }
  tokens['of another house'] = other.lead
  for (const role of CREW) tokens[role] = await own.tablet(role)
  expect(new Set(Object.values(tokens)).size).toBe(STRANGERS.length + CREW.length + 1)
  const wrong: string[] = []
  for (const [row, least] of Object.entries(TABLE))
    for (const [who, token] of Object.entries(tokens))
      for (const query of ['', '?house=own', '?house=demo']) {
        const [way = '', path = ''] = row.split(' ')
        const isAllowed = mayAsk(who, least)
        // Whoever may sign off would be gone for the rows that come after.
        if (path === '/access/sign-off' && isAllowed) continue
        // Who stands at the laptop may open the demo, as a stranger on it does here.
        if (least === 'at the laptop' && STRANGERS.some((one) => one === who)) continue
        const body = path === '/access/demo' ? { open: true } : {}
        const answer = await own.call(way, `${path}${query}`, token, body)
        const isIn = answer.status !== 401 && answer.status !== 403
        const isShutOut = !isAllowed && STRANGERS.some((one) => one === who)
        if (isIn !== isAllowed || (isShutOut && answer.status !== 401))
          wrong.push(`${row}${query} ${who}: ${answer.status}`)
      }
  expect(wrong).toEqual([])
}, 120_000)
