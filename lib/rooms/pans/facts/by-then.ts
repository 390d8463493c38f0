/** What a build that is started now couldn't be filled with any more when it is finished. */

import { backupsOf, type Wanted } from '#lib/rooms/pans/facts/behind.ts'
import { lastingIn, type Selling } from '#lib/rooms/pans/facts/selling.ts'
import type { RunningState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { linePansOf } from '#lib/station/find.ts'

export interface PastByThen {
  readonly component: string
  /** When the first of it is thrown out, epoch milliseconds. */
  readonly at: number
}

const owedToMaking = (state: RunningState, component: string): number =>
  openBuilds(state).reduce(
    (sum, { build }) => sum + (build.state === 'making' ? (build.takes[component] ?? 0) : 0),
    0,
  )

/**
 * The first component of which too little lasts beyond what is in the making, since the time or date
 * of some of it is over by then; null where enough of each does.
 */
export const pastByThen = (state: Selling, wanted: Wanted): PastByThen | null => {
  for (const isBehind of [false, true])
    for (const [component, amount] of Object.entries(isBehind ? wanted.behind : wanted.line)) {
      if (amount <= 0) continue
      const onLine = linePansOf(state.station, component)
      const { amount: lasting, endsAt } = isBehind
        ? lastingIn(state, 'backup', backupsOf(state, component))
        : lastingIn(
            state,
            'pan',
            onLine.map(({ id }) => id),
          )
      if (endsAt !== null && lasting < owedToMaking(state, component) + amount)
        return { component, at: endsAt }
    }
  return null
}
