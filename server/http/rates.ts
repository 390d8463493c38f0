/** How often is asked: by each address, and by all together. */
import { RateLimiterMemory, type RateLimiterRes } from 'rate-limiter-flexible'
import { isLoopback } from '#server/http/allowed.ts'
import { addressOf } from '#server/http/peer.ts'

export interface RateLimits {
  readonly windowS: number
  readonly ofOne: number
  readonly ofLoopback: number
  readonly inAll: number
  readonly fewOf: number
}

export interface Rates {
  /** Counts one request. @returns 0 where it may be answered, else milliseconds until it may */
  take(remoteAddress: string | undefined): Promise<number>
}

/** The limiter's answer, which it throws where the limit is passed. */
const consumed = (limiter: RateLimiterMemory, key: string): Promise<RateLimiterRes> =>
  limiter.consume(key).catch((over: RateLimiterRes) => over)

export const createRates = (limits: RateLimits): Rates => {
  const duration = limits.windowS
  const ofOne = new RateLimiterMemory({ points: limits.ofOne, duration })
  const ofLoopback = new RateLimiterMemory({ points: limits.ofLoopback, duration })
  const inAll = new RateLimiterMemory({ points: limits.inAll, duration })
  return {
    take: async (remoteAddress) => {
      const address = addressOf(remoteAddress)
      const own = isLoopback(address) ? ofLoopback : ofOne
      const asked = await consumed(own, address)
      if (asked.consumedPoints > own.points) return Math.max(1, asked.msBeforeNext)
      const all = await consumed(inAll, 'all')
      if (all.consumedPoints <= limits.inAll || asked.consumedPoints <= limits.fewOf) return 0
      return Math.max(1, all.msBeforeNext)
    },
  }
}
