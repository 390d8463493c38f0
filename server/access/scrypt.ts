import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'

/** A passphrase as it is kept: a hash that can't be turned back, and how it was made. */
export interface KeptPassphrase {
  /** scrypt's cost, a power of two. */
  readonly n: number
  /** scrypt's block size. */
  readonly r: number
  /** scrypt's parallelization. */
  readonly p: number
  readonly salt: Uint8Array
  readonly hash: Uint8Array
}

export interface Cost {
  /** A power of two. */
  readonly n: number
  readonly r: number
  readonly p: number
}

/** RFC 7914's interactive use, twice as dear as its example: 32 MiB and about 0.1 s a try. */
export const COST: Cost = { n: 32_768, r: 8, p: 1 }

const SALT_BYTES = 16
const HASH_BYTES = 32

const derive = (
  passphrase: string,
  salt: Uint8Array,
  { n, r, p }: Cost,
  bytes: number,
): Promise<Buffer> =>
  new Promise((settle, fail) => {
    // scrypt needs 128·N·r bytes and a little; twice that bounds what a damaged row could ask for.
    const options = { N: n, r, p, maxmem: 256 * n * r }
    scrypt(passphrase, salt, bytes, options, (error, key) => (error ? fail(error) : settle(key)))
  })

/** Hashes a passphrase that was brought to its form, with a salt of its own. */
export const hashPassphrase = async (
  passphrase: string,
  cost: Cost = COST,
): Promise<KeptPassphrase> => {
  const salt = randomBytes(SALT_BYTES)
  return { ...cost, salt, hash: await derive(passphrase, salt, cost, HASH_BYTES) }
}

/** Compares in a time that doesn't tell how much of it is right. */
export const isPassphrase = async (passphrase: string, kept: KeptPassphrase): Promise<boolean> =>
  timingSafeEqual(await derive(passphrase, kept.salt, kept, kept.hash.length), kept.hash)
