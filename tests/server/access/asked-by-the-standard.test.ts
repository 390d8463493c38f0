/** What lib/access/ASVS.md asks of proofs, codes and passphrases. */
import { expect, test } from 'vitest'
import { CODE_LENGTH, CODE_LETTERS } from '#lib/access/code.ts'
import { CODE_MS, UNUSED_MS, WHOLE_MS } from '#lib/access/life.ts'
import { passphraseProblem } from '#lib/access/passphrase.ts'
import { MOST_WRONG, MOST_WRONG_A_DAY, nextOfDay } from '#lib/access/tries.ts'
import { setCookie } from '#server/access/caller.ts'
import { sha256 } from '#server/access/house.ts'
import { accessRoom, from, HERE, IN_CHARGE, LEAD } from '#tests/support/access-room.ts'

const TABLET = '10.0.0.9'

/** A made house on a told clock, its lead, and a way to give a code and to join by it. */
const room = async () => {
  let told = Date.UTC(2026, 10, 30, 8)
  const { access, house, make } = accessRoom({ now: () => told, monotonic: () => told })
  const secret = access.secret() ?? ''
  const lead = from('10.0.0.2', await make())
  const code = (): string => {
    const by = access.deviceOf(lead)
    const given = by ? access.code(by, { role: 'counter' }) : null
    if (given?.code !== 'done') throw new Error('no code')
    return given.typed
  }
  const join = (typed: string, address = TABLET) =>
    access.join(from(address), { code: typed, name: 'Counter' })
  const joined = async (): Promise<string> => {
    const let_ = await join(code())
    if (let_.code !== 'done') throw new Error(let_.code)
    return let_.token
  }
  const isProved = (token: string) => access.deviceOf(from(TABLET, token)) !== null
  const pass = (ms: number): void => {
    told += ms
  }
  return { access, house, secret, lead, code, join, joined, isProved, pass }
}

test('[EG11] a code works once, for ten minutes, is kept as a hash, and has more than 20 bits', async () => {
  const { house, code, join, pass } = await room()
  expect(CODE_LETTERS.length ** CODE_LENGTH).toBeGreaterThan(2 ** 20)
  const first = code()
  expect(house.codes().some(({ hash }) => hash.equals(sha256(first.replace('-', ''))))).toBe(true)
  expect((await join(first)).code).toBe('done')
  expect((await join(first)).code).toBe('not-it')
  const late = code()
  pass(CODE_MS)
  expect((await join(late)).code).toBe('not-it')
  expect(CODE_MS).toBeLessThanOrEqual(600_000)
})

test('[EG11] a token is of 256 random bits, new for each device, and kept as a hash', async () => {
  const { house, joined } = await room()
  const tokens = [await joined(), await joined()]
  expect(new Set(tokens).size).toBe(2)
  for (const token of tokens) {
    expect(Buffer.from(token.split('.')[1] ?? '', 'base64url')).toHaveLength(32)
    expect(house.deviceByToken(sha256(token))).not.toBeNull()
    expect(JSON.stringify(house.devices())).not.toContain(token)
  }
})

test('[EG11] a proof runs out unused, and in all, and is looked at each time', async () => {
  const { access, joined, isProved, pass } = await room()
  const unused = await joined()
  pass(UNUSED_MS - 1)
  expect(isProved(unused)).toBe(true)
  pass(1)
  expect(isProved(unused)).toBe(false)
  const used = await access.signOn(from(TABLET), LEAD)
  if (used.code !== 'done') throw new Error(used.code)
  let days = 0
  while (access.now(from(TABLET, used.token)).you && days < 60) {
    pass(UNUSED_MS / 2)
    days += 0.5
  }
  expect(days).toBe(WHOLE_MS / UNUSED_MS)
})

test('[EG11] a proof is void when its device is removed, signs off, or is proved anew', async () => {
  const { access, joined, isProved } = await room()
  const [removed, off, before] = [await joined(), await joined(), await joined()]
  access.remove(access.deviceOf(from(TABLET, removed))?.id ?? '')
  expect(isProved(removed)).toBe(false)
  const device = access.deviceOf(from(TABLET, off))
  if (device) access.signOff(device)
  expect(isProved(off)).toBe(false)
  expect((await access.signOn(from(TABLET, before), IN_CHARGE)).code).toBe('done')
  expect(isProved(before)).toBe(false)
})

test('[EG11] the lead sees each device and can end it', async () => {
  const { access, lead, joined, isProved } = await room()
  const token = await joined()
  const by = access.deviceOf(lead)
  const { device } =
    (by ? access.list(by).devices : []).find(({ name }) => name === 'Counter') ?? {}
  expect(device).toBeDefined()
  expect(access.remove(device ?? '')).toBe(true)
  expect(isProved(token)).toBe(false)
})

test('[EG11] no adult is there by default, the first need a secret for once, another a passphrase', async () => {
  const fresh = accessRoom()
  expect(fresh.access.adults.hasInCharge()).toBe(false)
  expect(await fresh.access.signOn(from(TABLET), LEAD)).toMatchObject({ code: 'no-house' })
  const { access, secret, lead } = await room()
  const again = await access.make(HERE, { secret, lead: LEAD, inCharge: IN_CHARGE })
  expect(again.code).toBe('made-already')
  const other = { name: 'Other', passphrase: 'kettle and anchor', role: 'lead' } as const
  expect((await access.addAdult(lead, { ...other, proof: 'not the passphrase' })).code).toBe(
    'not-it',
  )
  expect((await access.addAdult(lead, { ...other, proof: IN_CHARGE.passphrase })).code).toBe('done')
})

test('[EG11] a passphrase has 8 to 200 of any characters, is none of the common ones, and is compared whole', async () => {
  expect(passphraseProblem('short 1')).toBe('too-short')
  expect(passphraseProblem('x1 left of the grill, right of '.repeat(6))).toBeNull()
  expect(passphraseProblem('паровоз и чай 🫖')).toBeNull()
  for (const common of ['password1', 'Password!', 'levelscoop', '12345678', 'qwertyui'])
    expect(passphraseProblem(common), common).toBe('too-common')
  const { access } = await room()
  const { name, passphrase } = IN_CHARGE
  const signOn = async (typed: string) =>
    (await access.signOn(from(TABLET), { name, passphrase: typed })).code
  expect(await signOn(passphrase)).toBe('done')
  for (const other of [` ${passphrase}`, passphrase.toUpperCase(), passphrase.slice(0, -1)])
    expect(await signOn(other)).toBe('not-it')
})

test('[EG11] a passphrase is changed by the one until then, which ends every other proof of its adult', async () => {
  const { access, lead, isProved } = await room()
  const other = await access.signOn(from(TABLET), LEAD)
  if (other.code !== 'done') throw new Error(other.code)
  const { name, passphrase: before } = LEAD
  const change = async (typed: string) =>
    (await access.changePassphrase(lead, { name, before: typed, passphrase: 'kettle and anchor' }))
      .code
  expect(await change(IN_CHARGE.passphrase)).toBe('not-it')
  expect(isProved(other.token)).toBe(true)
  expect(await change(before)).toBe('done')
  expect(isProved(other.token)).toBe(false)
  expect(access.deviceOf(lead)).not.toBeNull()
  expect((await access.signOn(from(TABLET), LEAD)).code).toBe('not-it')
})

test('[EG11] wrong tries are limited, and a proved device has a count that no stranger fills', async () => {
  const { access, join, joined } = await room()
  const token = await joined()
  for (let tried = 0; tried < MOST_WRONG; tried += 1)
    expect((await join('ACDE-FGHJ')).code).toBe('not-it')
  expect((await join('ACDE-FGHJ')).code).toBe('too-many-tries')
  const proved = access.from(from(TABLET, token))
  expect((await access.adults.proveInCharge(IN_CHARGE.passphrase, proved)).code).toBe('right')
  const times = Array.from({ length: MOST_WRONG_A_DAY }, (_, place) => place)
  expect(nextOfDay(times, 1_000)).toBe(86_400_000)
  expect(nextOfDay(times.slice(1), 1_000)).toBeNull()
  expect(nextOfDay(times, 86_400_000)).toBeNull()
})

test('[EG11] the token’s cookie is HttpOnly, SameSite=Strict, and Secure under TLS', () => {
  expect(setCookie('0123456789ab', 'token', true)).toMatch(
    /HttpOnly; SameSite=Strict; Path=\/.*Secure/,
  )
  expect(setCookie('0123456789ab', 'token', false)).not.toContain('Secure')
  expect(setCookie('0123456789ab', 'token', true)).not.toContain('Domain')
})
