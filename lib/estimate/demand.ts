/**
 * What guests will want of a component: builds to come, thinned by how often a build takes it, each
 * taking of one portion or more. How often it is taken is learned from past services and this one.
 */
import { buildsUntil, type Horizon } from '#lib/estimate/arrivals.ts'
import type { Spread } from '#lib/estimate/count-chances.ts'
import { type ServiceCounts, total } from '#lib/estimate/service-counts.ts'

/** How often a build takes a component, as past services say it. */
export interface TakenShare {
  /** Mean share of builds, 0 to 1. */
  readonly mean: number
  /** How many builds of today that mean weighs as much as. */
  readonly strength: number
  /** Builds of today beyond which more of them teach little: tastes change within a service. */
  readonly memory: number
  /** Chances that a taking has 1, 2 … portions. */
  readonly perTaking: readonly number[]
}

/** Share of builds to come that take a component: its mean and variance. */
export interface ShareNow {
  readonly mean: number
  readonly variance: number
}

/** The share by a beta prior and today's takings, forgotten as far as `memory` says. */
export const shareNow = (
  { mean, strength, memory }: TakenShare,
  builds: number,
  takings: number,
): ShareNow => {
  const heard = builds > 0 ? (builds * memory) / (builds + memory) : 0
  const own = builds > 0 ? Math.min(1, Math.max(0, takings / builds)) : 0
  const weight = strength + heard
  const share = (strength * mean + heard * own) / weight
  return { mean: share, variance: (share * (1 - share)) / (weight + 1) }
}

/** Takings among builds: binomial thinning of a spread count by an uncertain share. */
export const thinned = (builds: Spread, share: ShareNow): Spread => {
  const square = share.variance + share.mean ** 2
  return {
    mean: builds.mean * share.mean,
    variance:
      builds.mean * (share.mean - square) +
      builds.variance * square +
      builds.mean ** 2 * share.variance,
  }
}

/** Takings of a component from now until a minute of the day. */
export type TakingsUntil = (minute: number) => Spread

/** What is wanted of a component from now on. */
export interface ComponentDemand {
  readonly until: TakingsUntil
  readonly perTaking: readonly number[]
}

export const demandOf = (
  horizons: readonly Horizon[],
  counts: Pick<ServiceCounts, 'builds' | 'takings'>,
  component: string,
  taken: TakenShare,
): ComponentDemand => {
  const share = shareNow(taken, total(counts.builds), total(counts.takings[component]))
  return {
    until: (minute) => thinned(buildsUntil(horizons, minute), share),
    perTaking: taken.perTaking,
  }
}
