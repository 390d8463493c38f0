/** The class of every field of a forecast. */
import { each, type Fields, list } from '#lib/access/seen/classed.ts'
import { ADVICE_REASON, BY_WHEN, RUSH } from '#lib/access/seen/food-fields.ts'
import type { StationForecast, Suggestion } from '#lib/estimate/station-forecast.ts'

const SUGGESTION: Fields<Suggestion> = {
  key: 'always',
  kind: 'always',
  saves: ['cost', 0],
  reason: ADVICE_REASON,
}

const SPREAD = { mean: 'always', sd: 'always' } as const

export const FORECAST: Fields<StationForecast> = {
  service: 'always',
  position: 'always',
  at: 'always',
  closesAt: 'always',
  closesSaid: 'always',
  rushUntil: 'always',
  rushAhead: RUSH,
  components: each({
    lasting: 'always',
    chance: 'always',
    beforeNextBatch: 'always',
    by: BY_WHEN,
    left: SPREAD,
    wanted: SPREAD,
    underway: list({ at: 'always', portions: 'always' }),
    batch: {
      verdict: 'always',
      loads: 'always',
      portions: 'always',
      readyAt: 'always',
      latestStart: 'always',
      gapIfNow: 'always',
      gapIfLater: 'always',
      leftWith: 'always',
      leftWithout: 'always',
      saves: ['cost', 0],
      where: 'always',
      who: 'always',
      minutes: 'always',
    },
    keep: {
      forItems: list('always'),
      withoutIt: list('always'),
      keep: 'always',
      free: 'always',
    },
    bias: { percent: 'always', fewer: 'always' },
  }),
  wait: { seconds: 'always', early: 'always', late: 'always', minutes: list('always') },
  candidates: list(SUGGESTION),
  doNext: list(SUGGESTION),
}
