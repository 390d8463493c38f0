/** What of the pans may still be sold in a build that is finished later. */

import { pansOf } from '#lib/menu/find.ts'
import { mayTake } from '#lib/safety/time-control.ts'
import type { Amounts } from '#lib/service/build-choice.ts'
import { lastsUntil } from '#lib/service/food-limits.ts'
import { type StockKind, stockOf, usableIn } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { backupsOf, owedBehind, type Wanted } from '#lib/stock/behind.ts'
import { levelOf } from '#lib/stock/levels.ts'

export interface PastByThen {
  readonly component: string
  /** When the first of it is thrown out, epoch milliseconds. */
  readonly at: number
}

interface Span {
  readonly now: number
  readonly finishedAt: number
}

const over = (
  state: RunningState,
  component: string,
  places: readonly { readonly what: StockKind; readonly id: string }[],
  needed: number,
  { now, finishedAt }: Span,
): PastByThen | null => {
  let lasting = 0
  let first: number | null = null
  for (const { what, id } of places) {
    const stock = stockOf(state, what, id)
    const amount = usableIn(state, what, id)
    const until = stock && amount > 0 ? lastsUntil(state, stock) : null
    if (until === null || mayTake(until, now, finishedAt)) lasting += amount
    else first = first === null ? until : Math.min(first, until)
  }
  return first === null || lasting >= needed ? null : { component, at: first }
}

const owedToMaking = (state: RunningState, component: string): number =>
  openBuilds(state).reduce(
    (sum, { build }) => sum + (build.state === 'making' ? (build.takes[component] ?? 0) : 0),
    0,
  )

/**
 * The first component that a build which is finished later couldn't be filled with any more, since
 * its time or date is over by then; null where all of it lasts. It needs `wanted` beyond what is
 * owed to others: `making` where only what is in the making comes before it.
 */
export const pastByThen = (
  state: RunningState,
  wanted: Wanted,
  span: Span,
  before: 'making' | 'all' = 'all',
): PastByThen | null => {
  const owedTo = (component: string, isBehind: boolean): number => {
    if (before === 'making') return owedToMaking(state, component)
    const level = levelOf(state, component)
    return isBehind ? owedBehind(state, component) : level.inPan - level.remaining
  }
  const found = (amounts: Amounts, isBehind: boolean): PastByThen | null => {
    for (const [component, amount] of Object.entries(amounts)) {
      if (amount <= 0) continue
      const places = isBehind
        ? backupsOf(state, component).map((id) => ({ what: 'backup' as const, id }))
        : pansOf(state.station)
            .filter((pan) => pan.component === component)
            .map(({ id }) => ({ what: 'pan' as const, id }))
      const needed = owedTo(component, isBehind) + amount
      const past = over(state, component, places, needed, span)
      if (past) return past
    }
    return null
  }
  return found(wanted.line, false) ?? found(wanted.behind, true)
}
