import { describe, expect, it } from 'vitest'
import type { KeptPassphrase, Passphrases } from '#server/in-charge/port.ts'

const kept = (fill: number): KeptPassphrase => ({
  n: 1_024 * fill,
  r: 8,
  p: 1,
  salt: new Uint8Array(16).fill(fill),
  hash: new Uint8Array(32).fill(fill),
})

const plain = (one: KeptPassphrase | null) =>
  one && { ...one, salt: Array.from(one.salt), hash: Array.from(one.hash) }

/** What every store of the passphrase does. `open` gives a new, empty one. */
export const registerPassphrasesContract = (kind: string, open: () => Passphrases): void => {
  describe(`the ${kind} passphrase`, () => {
    it('[L26] there is none, then one, with how it was hashed', async () => {
      const passphrases = open()
      expect(await passphrases.kept()).toBeNull()
      expect(await passphrases.replace(null, kept(1))).toBe(true)
      expect(plain(await passphrases.kept())).toEqual(plain(kept(1)))
    })

    it('[L26] another takes its place for whoever knows what is kept, and for nobody else', async () => {
      const passphrases = open()
      expect(await passphrases.replace(kept(1), kept(2))).toBe(false)
      expect(await passphrases.kept()).toBeNull()
      await passphrases.replace(null, kept(1))
      expect(await passphrases.replace(null, kept(2))).toBe(false)
      expect(await passphrases.replace(kept(2), kept(3))).toBe(false)
      expect(plain(await passphrases.kept())).toEqual(plain(kept(1)))
      expect(await passphrases.replace(kept(1), kept(2))).toBe(true)
      expect(plain(await passphrases.kept())).toEqual(plain(kept(2)))
    })
  })
}
