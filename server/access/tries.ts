/** Wrong codes and passphrases: counted where they come from, and told to the lead. */
import { RateLimiterMemory, type RateLimiterRes } from 'rate-limiter-flexible'
import type { DeviceList } from '#lib/access/http.ts'
import { MOST_WRONG, triesOf, WRONG_WITHIN_S } from '#lib/access/tries.ts'

/** Where a try comes from. */
export interface From {
  /** A device that was proved; null for a stranger. */
  readonly device: string | null
  /** Of the connection itself: what a header says of it is no matter. */
  readonly address: string
}

export interface Tries {
  /**
   * Counts a try before it is looked at, so that many at once are no more than one after the other.
   * @returns null, or in how many seconds there is another
   */
  take(from: From): Promise<number | null>
  /** It was right: it doesn't count. */
  giveBack(from: From): Promise<void>
  wrong(from: From): void
  /** Somebody was kept out otherwise: too many tries, another origin, no proof. */
  refused(): void
  told(): DeviceList['attempts']
}

/** Addresses are counted up to here, so that a stranger with many can't fill the memory. */
const MOST_ADDRESSES = 10_000

export const createTries = (): Tries => {
  const limiter = new RateLimiterMemory({ points: MOST_WRONG, duration: WRONG_WITHIN_S })
  const addresses = new Set<string>()
  let wrong = 0
  let refused = 0
  return {
    take: ({ device, address }) =>
      limiter.consume(triesOf(device, address)).then(
        () => null,
        (full: RateLimiterRes) => {
          refused += 1
          return Math.ceil(full.msBeforeNext / 1_000)
        },
      ),
    giveBack: async ({ device, address }) => {
      await limiter.reward(triesOf(device, address))
    },
    wrong: ({ address }) => {
      wrong += 1
      if (addresses.size < MOST_ADDRESSES) addresses.add(address)
    },
    refused: () => {
      refused += 1
    },
    told: () => ({ wrong, addresses: addresses.size, refused }),
  }
}
