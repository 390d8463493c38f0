import { describe, expect, test } from 'vitest'
import type { Rows } from '#lib/editor/draft.ts'
import type { Step } from '#lib/editor/step.ts'
import { IN_CHARGE, LEAD } from '#tests/support/access-room.ts'
import { startComposedStation } from '#tests/support/composed-station.ts'
import { temporaryFolder } from '#tests/support/temporary-folder.ts'

type Told = Readonly<Record<string, unknown>> & { readonly code: string }

const start = async (data = temporaryFolder()) => {
  const server = await startComposedStation(data)
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

describe('the menu is set up', () => {
  test('[ED9] by a device of the lead or of who is in charge only', async () => {
    const { ask, lead } = await made()
    expect(await ask('/menu/stations', 'nobody')).toEqual({ code: 'not-joined' })
    const { typed } = await ask('/access/codes', lead, { role: 'counter' })
    const joined = await ask('/access/join', 'nobody', { code: typed, name: 'Counter' })
    expect(joined.code).toBe('done')
  })

  test('[ED9] from the demo, published under its own name, and a service opens on it', async () => {
    const { menu, draft, save } = await made()
    const begun = await menu('/begin', { from: 'demo', name: 'Wrap line' })
    expect(begun).toMatchObject({ code: 'done', station: 'wrap-line' })
    const seen = await draft('wrap-line')
    expect(seen).toMatchObject({ code: 'done', problems: [], published: null, changed: true })
    const saved = await save('wrap-line', seen.saw, price(700))
    expect(saved).toMatchObject({ code: 'done', problems: [] })
    const wrong = { station: 'wrap-line', saw: saved.saw, proof: 'not the passphrase' }
    expect(await menu('/publish', wrong)).toEqual({ code: 'not-it' })
    const published = await menu('/publish', { ...wrong, proof: LEAD.passphrase })
    expect(published).toMatchObject({ code: 'done', revision: 1 })
    expect(await draft('wrap-line')).toMatchObject({ published: 1, changed: false })
  })
})
