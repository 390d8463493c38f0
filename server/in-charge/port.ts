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

/** The passphrase of the person in charge: none, or one. */
export interface Passphrases {
  kept(): Promise<KeptPassphrase | null>
  /**
   * Keeps one in the place of `before` (null: of none), durable when the promise settles.
   * @returns false, and nothing is changed, where `before` isn't what is kept
   */
  replace(before: KeptPassphrase | null, by: KeptPassphrase): Promise<boolean>
}
