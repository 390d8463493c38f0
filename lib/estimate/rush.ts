/** When it is busy: the lead is left alone then, and asked before. */
import type { Profile } from '#lib/estimate/arrivals.ts'
import { type ServiceCounts, slotAt } from '#lib/estimate/service-counts.ts'

export interface Rush {
  /** Whether a minute of the day lies in a rush. */
  readonly isAt: (service: Pick<ServiceCounts, 'opens'>, minute: number) => boolean
}

/** A slot is a rush where so many times the builds of a usual one are expected. */
const BUSY = 1.75

/** Rush windows by the builds that are expected of each five minutes. */
export const rushOf = (profile: Profile): Rush => {
  const usual = profile.reduce((sum, builds) => sum + builds, 0) / Math.max(1, profile.length)
  const busy = profile.map((builds) => builds > BUSY * usual)
  return {
    isAt: (service, minute) => minute >= service.opens && busy[slotAt(service, minute)] === true,
  }
}
