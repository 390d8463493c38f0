import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { CODE_MS, UNUSED_MS } from '#lib/access/life.ts'
import {
  MOST_CODES,
  MOST_WRONG,
  MOST_WRONG_OF_DEVICES_A_DAY,
  WRONG_WITHIN_S,
} from '#lib/access/tries.ts'
import { newToken } from '#server/access/devices.ts'
import {
  accessRoom,
  from,
  IN_CHARGE,
  LEAD,
  STATION,
  testClock,
} from '#tests/support/access-room.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'

const HOUR = 3_600_000
const NEVER = 'ACDE-3479'
const NAME = 'Tablet'

const room = async (path?: string) => {
  const clock = testClock()
  const one = accessRoom({ ...clock, ...(path === undefined ? {} : { path }) })
  const lead = await one.make()
  const device = () => {
    const found = one.access.deviceOf(from('10.0.0.2', lead))
    if (!found) throw new Error('the lead’s device is gone')
    return found
  }
  const code = (role: 'counter' | 'assembly' | 'lead' = 'counter'): string => {
    const given = one.access.code(device(), { role })
    if (given.code !== 'done') throw new Error(given.code)
    return given.typed
  }
  const join_ = (typed: string, address = '10.0.0.7', token?: string) =>
    one.access.join(from(address, token), { code: typed, name: NAME })
  return { ...one, clock, lead, device, code, join: join_ }
}

const tokenOf = (answer: { readonly code: string; readonly token?: string }): string => {
  if (answer.token === undefined) throw new Error(answer.code)
  return answer.token
}

describe('a code', () => {
  test('[D10] lets one device join, once, for its role at its station', async () => {
    const { code, join, access } = await room()
    const typed = code('assembly')
    const joined = await join(typed)
    expect(joined).toMatchObject({
      code: 'done',
      you: { role: 'assembly', station: STATION, name: NAME, adult: null },
    })
    expect(access.now(from('10.0.0.7', tokenOf(joined))).you).toMatchObject({ role: 'assembly' })
    expect(await join(typed)).toEqual({ code: 'not-it' })
    expect(await join(typed, '10.0.0.8')).toEqual({ code: 'not-it' })
  })

  test('[D10][D11] that ran out, was used, is void or never was is refused in the same words', async () => {
    const { code, join, clock } = await room()
    const late = code()
    clock.pass(CODE_MS - 1)
    const used = code()
    await join(used)
    clock.pass(1)
    const first = code()
    for (let more = 0; more < MOST_CODES; more += 1) {
      clock.pass(1)
      code()
    }
    const answers = []
    for (const typed of [late, used, first, NEVER, 'nonsense', ''])
      answers.push(await join(typed, '10.0.0.9'))
    expect(answers).toEqual(Array(6).fill({ code: 'not-it' }))
  })

  test('[D10] that two say at once lets one in', async () => {
    const { code, join } = await room()
    const typed = code()
    const both = await Promise.all([join(typed), join(typed, '10.0.0.8')])
    expect(both.map((one) => one.code).sort()).toEqual(['done', 'not-it'])
  })

  test('[D6][D10] is given for no more than the role of whoever asks, and never for being in charge', async () => {
    const { access, device } = await room()
    expect(access.code(device(), { role: 'in-charge' })).toEqual({ code: 'not-yours' })
    expect(access.code({ ...device(), role: 'counter' }, { role: 'lead' })).toEqual({
      code: 'not-yours',
    })
  })

  test('[D3] a clock that is set back makes no code last longer', async () => {
    const { code, join, clock } = await room()
    const typed = code()
    clock.pass(CODE_MS / 2)
    clock.set(clock.now() - 10 * HOUR)
    clock.pass(CODE_MS / 2)
    expect(await join(typed)).toEqual({ code: 'not-it' })
  })
})

describe('wrong tries', () => {
  test('[D12] keep out the address that they come from, and nobody else', async () => {
    const { code, join, lead } = await room()
    const many = await Promise.all(Array.from({ length: 40 }, () => join(NEVER, '10.0.0.66')))
    expect(many.filter((one) => one.code === 'not-it')).toHaveLength(MOST_WRONG)
    const refused = many.find((one) => one.code === 'too-many-tries')
    expect(refused).toMatchObject({ again: expect.any(Number) })
    expect(await join(code(), '10.0.0.66')).toMatchObject({ code: 'too-many-tries' })
    expect(await join(code(), '10.0.0.67')).toMatchObject({ code: 'done' })
    // A device that was proved has its own count, also behind the same address.
    expect(await join(code('lead'), '10.0.0.66', lead)).toMatchObject({ code: 'done' })
    expect(WRONG_WITHIN_S).toBe(900)
  })

  test('[D12] of forty tablets that guess a code keep out none of them but their own', async () => {
    const { code, join, access } = await room()
    const typed = code()
    const guessed = await Promise.all(
      Array.from({ length: 40 * 30 }, (_, index) => join(NEVER, `10.0.1.${index % 40}`)),
    )
    expect(guessed.filter((one) => one.code === 'not-it')).toHaveLength(40 * MOST_WRONG)
    expect(guessed.filter((one) => one.code === 'done')).toEqual([])
    expect(await join(typed, '10.0.2.1')).toMatchObject({ code: 'done' })
    expect(access.tries.told()).toMatchObject({ wrong: 400, addresses: 40, refused: 800 })
  })

  test('[D12] of a device’s passphrases leave those of others, and a right one counts for nothing', async () => {
    const { access, token } = await room()
    const counter = access.from(from('10.0.0.7', token('counter')))
    const lead = access.from(from('10.0.0.7', token('lead')))
    for (let right = 0; right < 2 * MOST_WRONG; right += 1)
      expect(await access.adults.proveInCharge(IN_CHARGE.passphrase, lead)).toMatchObject({
        code: 'right',
      })
    for (let wrong = 0; wrong < MOST_WRONG; wrong += 1)
      await access.adults.proveInCharge('grill of the right', counter)
    const prove = (by: typeof lead) => access.adults.proveInCharge(IN_CHARGE.passphrase, by)
    expect(await prove(counter)).toMatchObject({ code: 'too-many-tries' })
    expect(await prove(lead)).toMatchObject({ code: 'right' })
  })

  test('[D12] of devices that one lead lets in, one after the other, are no more than so many a day', async () => {
    const { access, code, join } = await room()
    let looked = 0
    for (let joined = 0; joined < 2 * (MOST_WRONG_OF_DEVICES_A_DAY / MOST_WRONG); joined += 1) {
      const by = access.from(from('10.0.0.7', tokenOf(await join(code('lead')))))
      for (let wrong = 0; wrong < MOST_WRONG; wrong += 1) {
        const { code: told } = await access.adults.proveInCharge('grill of the right', by)
        if (told === 'wrong-passphrase') looked += 1
      }
      access.remove(by.device ?? '')
    }
    expect(looked).toBe(MOST_WRONG_OF_DEVICES_A_DAY)
  })

  test('[D19] and who was kept out are counted, and told to the lead with the devices', async () => {
    const { access, join, device } = await room()
    expect(access.list(device()).attempts).toEqual({ wrong: 0, addresses: 0, refused: 0 })
    await join(NEVER, '10.0.0.66')
    await join('nonsense', '10.0.0.67')
    await access.signOn(from('10.0.0.66'), { ...LEAD, passphrase: 'grill of the right' })
    access.admit(from('10.0.0.68'), { role: 'lead' })
    expect(access.list(device()).attempts).toEqual({ wrong: 3, addresses: 2, refused: 1 })
  })
})

describe('a device', () => {
  test('[D2] that is unused for a day has to join again; one that is used, after 30 days', async () => {
    const { access, clock, code, join } = await room()
    const token = tokenOf(await join(code()))
    const caller = from('10.0.0.7', token)
    const { you } = access.now(caller)
    expect(you?.until).toBe(clock.now() + UNUSED_MS)
    for (let hours = 0; hours < 29 * 24; hours += 23) {
      clock.pass(23 * HOUR)
      expect(access.admit(caller, { role: 'counter' }), `${hours}`).toMatchObject({
        kind: 'proved',
      })
    }
    clock.pass(24 * HOUR)
    expect(access.admit(caller, { role: 'counter' })).toEqual({ refusal: 'expired' })
    expect(access.now(caller).you).toBeNull()
  })

  test('[D3] lasts no longer where the clock is set back, also by a server that ended meanwhile', async () => {
    const path = join(temporaryFolder(true), 'house.db')
    const { access, clock, code, join: enter, close } = await room(path)
    const caller = from('10.0.0.7', tokenOf(await enter(code())))
    clock.pass(20 * HOUR)
    access.now(from('10.0.0.8'))
    clock.set(clock.now() - 300 * HOUR)
    clock.pass(3 * HOUR)
    expect(access.admit(caller, { role: 'counter' })).toMatchObject({ kind: 'proved' })
    clock.pass(20 * HOUR)
    close()
    const again = accessRoom({ ...clock, path })
    expect(again.access.admit(caller, { role: 'counter' })).toMatchObject({ kind: 'proved' })
    clock.pass(24 * HOUR)
    expect(again.access.admit(caller, { role: 'counter' })).toEqual({ refusal: 'expired' })
  })

  test('[D15] that is removed is told so, and its connections are', async () => {
    const { access, code, join } = await room()
    const joined = await join(code())
    const caller = from('10.0.0.7', tokenOf(joined))
    const gone: string[] = []
    access.devices.onGone((one) => gone.push(one))
    const id = access.deviceOf(caller)?.id ?? ''
    expect(access.remove('d-nobody')).toBe(false)
    expect(access.remove(id)).toBe(true)
    expect(access.remove(id)).toBe(false)
    expect(gone).toEqual([id])
    expect(access.deviceOf(caller)).toBeNull()
    expect(access.admit(caller, { role: 'counter' })).toEqual({ refusal: 'removed' })
  })

  test('[D10] that joins again is one device, not two', async () => {
    const { access, code, join, device } = await room()
    const first = tokenOf(await join(code()))
    const before = access.list(device()).devices.length
    const second = tokenOf(await join(code('assembly'), '10.0.0.7', first))
    expect(access.list(device()).devices).toHaveLength(before)
    expect(access.admit(from('10.0.0.7', first), { role: 'counter' })).toEqual({
      refusal: 'not-joined',
    })
    expect(access.admit(from('10.0.0.7', second), { role: 'assembly' })).toMatchObject({
      kind: 'proved',
    })
  })

  test('[D6] acts as no role of more, whatever its hello says', async () => {
    const { access, token } = await room()
    const as = (proved: 'counter' | 'lead', role: 'lead' | 'in-charge' | 'pick-up') =>
      access.admit(from('10.0.0.7', token(proved)), { role })
    expect(as('counter', 'lead')).toEqual({ refusal: 'role-not-yours' })
    expect(as('lead', 'in-charge')).toEqual({ refusal: 'role-not-yours' })
    expect(as('counter', 'pick-up')).toMatchObject({ kind: 'proved', role: 'pick-up' })
  })

  test('[D18] of another house is a stranger, and so is a token that nobody was given', async () => {
    const { access, house } = await room()
    const other = await room()
    const tokens = [other.token('lead'), other.lead, newToken(house.id), 'x', `${house.id}.`]
    for (const token of tokens)
      expect(access.admit(from('10.0.0.7'), { role: 'pick-up', token })).toEqual({
        refusal: 'not-joined',
      })
  })
})

describe('walking through the demo', () => {
  const FORWARDED = [
    'forwarded',
    'via',
    'x-forwarded-for',
    'x-forwarded-host',
    'x-real-ip',
    'true-client-ip',
  ]

  test('[D17] without a proof, from this machine alone, while a demo is what there is', () => {
    let isDemo = true
    const { access } = accessRoom({ isDemo: () => isDemo })
    const here = (headers: object = {}) => ({
      headers: { ...headers },
      socket: { remoteAddress: '::ffff:127.0.0.1' },
    })
    expect(access.admit(here(), { role: 'lead' })).toEqual({ kind: 'demo', role: 'lead' })
    expect(access.now(here()).mayWalkDemo).toBe(true)
    for (const name of FORWARDED) {
      const headers = { [name]: '127.0.0.1' }
      expect(access.admit(here(headers), { role: 'pick-up' }), name).toEqual({
        refusal: 'not-joined',
      })
      expect(access.now(here(headers)).mayWalkDemo).toBe(false)
    }
    expect(access.admit(from('10.0.0.7'), { role: 'pick-up' })).toEqual({ refusal: 'not-joined' })
    isDemo = false
    expect(access.admit(here(), { role: 'pick-up' })).toEqual({ refusal: 'not-joined' })
  })
})
