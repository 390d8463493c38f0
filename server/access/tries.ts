/** Wrong codes and passphrases: counted where they come from, and told to the lead. */
import { RateLimiterMemory, type RateLimiterRes } from 'rate-limiter-flexible'
import type { DeviceList } from '#lib/access/http.ts'
import {
  MOST_WRONG,
  MOST_WRONG_OF_DEVICES_A_DAY,
  nextOfDay,
  triesOf,
  WRONG_WITHIN_S,
  withinDay,
} from '#lib/access/tries.ts'

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

interface OfDay {
  /** In how many seconds there is another try; null where there is one now. */
  wait(key: string, most?: number): number | null
  add(key: string): void
  takeBack(key: string): void
}

/** Wrong tries of the last day, to the moment: no day holds more because it begins elsewhere. */
const createOfDay = (): OfDay => {
  const byKey = new Map<string, readonly number[]>()
  return {
    wait: (key, most) => {
      const now = Date.now()
      const next = nextOfDay(byKey.get(key) ?? [], now, most)
      return next === null ? null : Math.ceil((next - now) / 1_000)
    },
    add: (key) => {
      const now = Date.now()
      const times = [...withinDay(byKey.get(key) ?? [], now), now]
      byKey.delete(key)
      byKey.set(key, times)
      // Whoever was wrong longest ago is forgotten first.
      const [first] = byKey.keys()
      if (byKey.size > MOST_ADDRESSES && first !== undefined) byKey.delete(first)
    },
    takeBack: (key) => {
      byKey.set(key, (byKey.get(key) ?? []).slice(0, -1))
    },
  }
}

const ALL_DEVICES = 'devices'

export const createTries = (): Tries => {
  const limiter = new RateLimiterMemory({ points: MOST_WRONG, duration: WRONG_WITHIN_S })
  const ofDay = createOfDay()
  const ofDevices = createOfDay()
  const addresses = new Set<string>()
  let wrong = 0
  let refused = 0

  const count = (device: string | null, key: string): void => {
    ofDay.add(key)
    if (device !== null) ofDevices.add(ALL_DEVICES)
  }
  const uncount = (device: string | null, key: string): void => {
    ofDay.takeBack(key)
    if (device !== null) ofDevices.takeBack(ALL_DEVICES)
  }

  return {
    take: async ({ device, address }) => {
      const key = triesOf(device, address)
      const ofAll =
        device === null ? null : ofDevices.wait(ALL_DEVICES, MOST_WRONG_OF_DEVICES_A_DAY)
      const ofToday = ofDay.wait(key) ?? ofAll
      // At once, before anything is waited for: many at a time are no more than one by one.
      if (ofToday === null) count(device, key)
      const again =
        ofToday ??
        (await limiter.consume(key).then(
          () => null,
          (full: RateLimiterRes) => Math.ceil(full.msBeforeNext / 1_000),
        ))
      if (again === null) return null
      if (ofToday === null) uncount(device, key)
      refused += 1
      return again
    },
    giveBack: async ({ device, address }) => {
      const key = triesOf(device, address)
      uncount(device, key)
      await limiter.reward(key)
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
