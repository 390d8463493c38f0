import { describe, expect, it, vi } from 'vitest'
import { createInCharge } from '#server/in-charge/in-charge.ts'
import { COST, hashPassphrase, isPassphrase } from '#server/in-charge/scrypt.ts'
import { CHEAP } from '#tests/support/cheap-hash.ts'
import { createMemoryPassphrases } from '#tests/support/memory-in-charge.ts'

const RIGHT = 'left of the grill'
const WRONG = 'right of the grill'

const room = async (passphrase: string | null = RIGHT) => {
  const passphrases = createMemoryPassphrases()
  const inCharge = createInCharge({ passphrases, cost: CHEAP })
  if (passphrase !== null) expect(await inCharge.setFirst(passphrase)).toBe('set')
  return { passphrases, inCharge }
}

describe('the passphrase of the person in charge', () => {
  it('[I1] is right, wrong, or was never set', async () => {
    const { inCharge } = await room(null)
    expect(await inCharge.isSet()).toBe(false)
    expect(await inCharge.prove(RIGHT, 'tablet')).toBe('no-passphrase')
    await inCharge.setFirst(RIGHT)
    expect(await inCharge.isSet()).toBe(true)
    expect(await inCharge.prove(RIGHT, 'tablet')).toBe('right')
    for (const other of [WRONG, '', RIGHT.toUpperCase(), ` ${RIGHT}`, RIGHT.slice(0, -1)])
      expect(await inCharge.prove(other, other), other).toBe('wrong-passphrase')
  })

  it('[I2] has 8 to 200 characters, counted as people do', async () => {
    const { inCharge } = await room(null)
    expect(await inCharge.setFirst('7 chars')).toBe('too-short')
    expect(await inCharge.setFirst('🥗'.repeat(7))).toBe('too-short')
    expect(await inCharge.setFirst('x'.repeat(201))).toBe('too-long')
    expect(await inCharge.isSet()).toBe(false)
    expect(await inCharge.setFirst('🥗'.repeat(200))).toBe('set')
    expect(await inCharge.prove('🥗'.repeat(200), 'tablet')).toBe('right')
  })

  it('[I2] is the same however a keyboard composes its letters', async () => {
    const { inCharge } = await room('crème brûlée'.normalize('NFD'))
    expect(await inCharge.prove('crème brûlée'.normalize('NFC'), 'tablet')).toBe('right')
    expect(await inCharge.prove('ｃｒème brûlée', 'tablet')).toBe('right')
    expect(await inCharge.prove('creme brulee', 'tablet')).toBe('wrong-passphrase')
  })

  it('[I3] is set first once, and changed only by who knows the one before', async () => {
    const { inCharge } = await room()
    expect(await inCharge.setFirst(WRONG)).toBe('set-already')
    expect(await inCharge.change('below the grill', WRONG, 'tablet')).toBe('wrong-passphrase')
    expect(await inCharge.prove(RIGHT, 'tablet')).toBe('right')
    expect(await inCharge.change('short', RIGHT, 'tablet')).toBe('too-short')
    expect(await inCharge.change('below the grill', RIGHT, 'tablet')).toBe('set')
    expect(await inCharge.prove(RIGHT, 'tablet')).toBe('wrong-passphrase')
    expect(await inCharge.prove('below the grill', 'tablet')).toBe('right')
    const none = await room(null)
    expect(await none.inCharge.change(WRONG, RIGHT, 'tablet')).toBe('no-passphrase')
  })

  it('[I3] of two that are set first at once, one is', async () => {
    const { inCharge } = await room(null)
    const answers = await Promise.all([inCharge.setFirst(RIGHT), inCharge.setFirst(WRONG)])
    expect(answers).toEqual(['set', 'set-already'])
    expect(await inCharge.prove(RIGHT, 'tablet')).toBe('right')
  })

  it('[I4] is asked for no more after five wrong tries a minute from one address', async () => {
    vi.useFakeTimers({ toFake: ['Date', 'setTimeout', 'clearTimeout'] })
    try {
      const { inCharge } = await room()
      const tries = Array.from({ length: 7 }, () => inCharge.prove(WRONG, 'tablet'))
      expect(await Promise.all(tries)).toEqual([
        ...Array<string>(5).fill('wrong-passphrase'),
        'too-many-tries',
        'too-many-tries',
      ])
      expect(await inCharge.prove(RIGHT, 'tablet')).toBe('too-many-tries')
      expect(await inCharge.change(WRONG, RIGHT, 'tablet')).toBe('too-many-tries')
      expect(await inCharge.prove(RIGHT, 'other tablet')).toBe('right')
      vi.advanceTimersByTime(61_000)
      expect(await inCharge.prove(RIGHT, 'tablet')).toBe('right')
    } finally {
      vi.useRealTimers()
    }
  })

  it('[I4] however often it is right, that is no wrong try', async () => {
    const { inCharge } = await room()
    const tries = Array.from({ length: 20 }, () => inCharge.prove(RIGHT, 'tablet'))
    expect(new Set(await Promise.all(tries))).toEqual(new Set(['right']))
  })

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
    const { passphrases, inCharge } = await room()
    const dearer = createInCharge({ passphrases, cost: { n: 64, r: 1, p: 1 } })
    expect(await dearer.prove(WRONG, 'tablet')).toBe('wrong-passphrase')
    expect(await passphrases.kept()).toMatchObject({ n: 16 })
    expect(await dearer.prove(RIGHT, 'tablet')).toBe('right')
    expect(await passphrases.kept()).toMatchObject({ n: 64 })
    expect(await inCharge.prove(RIGHT, 'tablet')).toBe('right')
    expect(await passphrases.kept()).toMatchObject({ n: 64 })
  })
})
