import { describe, expect, it } from 'vitest'
import { COST, hashPassphrase, isPassphrase } from '#server/access/scrypt.ts'
import { accessRoom, from, IN_CHARGE } from '#tests/support/access-room.ts'

const RIGHT = 'left of the grill'
const WRONG = 'right of the grill'

describe('what is kept of a passphrase', () => {
  it('[I5] is hashed by scrypt with a salt of its own', async () => {
    const [one, other] = await Promise.all([hashPassphrase(RIGHT), hashPassphrase(RIGHT)])
    expect(COST).toEqual({ n: 2 ** 15, r: 8, p: 1 })
    expect(one).toMatchObject(COST)
    expect(one.salt).toHaveLength(16)
    expect(Buffer.compare(one.salt, other.salt)).not.toBe(0)
    expect(Buffer.compare(one.hash, other.hash)).not.toBe(0)
    expect(await isPassphrase(RIGHT, one)).toBe(true)
    expect(await isPassphrase(WRONG, one)).toBe(false)
  })

  it('[I5] agrees with a published vector of scrypt', async () => {
    // RFC 7914 section 12, third vector: N=16384, r=8, p=1, 64 bytes.
    const hash = Buffer.from(
      '7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887',
      'hex',
    )
    const salt = Buffer.from('SodiumChloride')
    expect(await isPassphrase('pleaseletmein', { n: 16_384, r: 8, p: 1, salt, hash })).toBe(true)
  })

  it('[I5] that was hashed more cheaply once is hashed anew when it is next right', async () => {
    const { access, house, make, token } = accessRoom()
    await make()
    const kept = () => house.adults().find(({ name }) => name === IN_CHARGE.name)
    const cheap = kept()
    if (!cheap) throw new Error('nobody is in charge')
    house.rehash(cheap, await hashPassphrase(IN_CHARGE.passphrase, { n: 8, r: 1, p: 1 }))
    const by = access.from(from('10.0.0.9', token('lead')))
    expect(await access.adults.proveInCharge(WRONG, by)).toEqual({ code: 'wrong-passphrase' })
    expect(kept()).toMatchObject({ n: 8 })
    expect(await access.adults.proveInCharge(IN_CHARGE.passphrase, by)).toMatchObject({
      code: 'right',
    })
    expect(kept()).toMatchObject({ n: 16 })
  })
})
