import type { KeptPassphrase, Passphrases } from '#server/in-charge/port.ts'

const copyOf = (one: KeptPassphrase): KeptPassphrase => ({
  ...one,
  salt: Uint8Array.from(one.salt),
  hash: Uint8Array.from(one.hash),
})

/** A passphrase that lasts as long as the process: for tests and simulations. */
export const createMemoryPassphrases = (): Passphrases => {
  let kept: KeptPassphrase | null = null
  return {
    kept: async () => (kept === null ? null : copyOf(kept)),
    replace: async (before, by) => {
      const same =
        kept === null || before === null
          ? kept === before
          : Buffer.compare(kept.hash, before.hash) === 0
      if (same) kept = copyOf(by)
      return same
    },
  }
}
