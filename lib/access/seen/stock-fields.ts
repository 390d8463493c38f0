/** The class of every field of a state about demand, what is believed of the pans, and advice. */
import { each, type Fields, kept, list } from '#lib/access/seen/classed.ts'
import { ADVICE_REASON, BIAS } from '#lib/access/seen/food-fields.ts'
import { PORTION } from '#lib/access/seen/station-fields.ts'
import type { StockState } from '#lib/service/stock-state.ts'

const WASTES: Fields<StockState['wastes'][string]> = {
  spill: 'always',
  dropped: 'always',
  sample: 'always',
  'staff-meal': 'always',
  spoiled: 'always',
  other: 'always',
  'past-time': 'always',
  'past-date': 'always',
  'out-of-limits': 'always',
  'not-cooled': 'always',
  'not-cooked': 'always',
  quality: 'always',
  'left-over': 'always',
}

export const STOCK: Fields<StockState> = {
  openedMinute: 'always',
  servedOn: 'always',
  expected: 'always',
  closesAt: 'always',
  assemblers: 'always',
  counts: kept({
    opens: 'always',
    doors: 'always',
    closes: 'always',
    expected: 'always',
    builds: list('always'),
    items: each(list('always')),
    takings: each(list('always')),
    portions: each(list('always')),
    taps: each(list('always')),
  }),
  beliefs: each({
    left: 'always',
    leftVar: 'always',
    bias: 'always',
    biasVar: 'always',
    cov: 'always',
    doubted: {
      pan: 'always',
      kind: 'always',
      amount: 'always',
      at: 'always',
      off: 'always',
      sd: 'always',
    },
  }),
  lookedAt: each('always'),
  keeps: each({
    portions: 'always',
    for: list('needs'),
    fromTicket: 'always',
    taken: 'always',
    at: 'always',
  }),
  standIns: each({
    measures: list({ id: 'always', count: 'always' }),
    usual: PORTION,
    ownBias: BIAS,
    at: 'always',
  }),
  toolsIn: each(list('always')),
  lent: each({
    component: 'always',
    by: 'always',
    pans: list('always'),
    since: 'always',
    sinceIn: 'always',
  }),
  wastes: each(WASTES),
  adviceLog: list(
    kept({
      key: 'always',
      kind: 'always',
      at: 'always',
      saves: ['cost', 0],
      answer: 'always',
      answeredAt: 'always',
      reason: ADVICE_REASON,
    } as const),
  ),
  buildTimes: { count: 'always', sum: 'always', squares: 'always' },
  waits: each({ component: 'always', at: 'always' }),
}
