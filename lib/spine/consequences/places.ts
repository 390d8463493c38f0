/** Pans and back-up pans of which something is found, between two states. */

import type { Happened } from '#lib/service/consequence.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { DiscardReason, DiscardSignedOff } from '#lib/service/events/food-event.ts'
import type { HeldStock, OffSale } from '#lib/service/food-state.ts'
import {
  allStock,
  boundAt,
  isOfStock,
  type StockKind,
  type Suspect,
  stockOf,
} from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Nobody eats on with what was thrown out for these. */
const UNSAFE: readonly DiscardReason[] = [
  'past-time',
  'past-date',
  'out-of-limits',
  'not-cooled',
  'not-cooked',
]

/** For these it was never good since it was loaded. */
export const NEVER_GOOD: readonly DiscardReason[] = ['not-cooled', 'not-cooked']

/** A clock that is set back moves the moments of a finding, and finds nothing. */
const isFound = (now: OffSale, then: OffSale | null): boolean =>
  now.why === 'out-of-limits' &&
  (then?.why !== now.why ||
    then.since !== now.since ||
    (then.lastGoodAt === null) !== (now.lastGoodAt === null))

const badIn = (
  what: StockKind,
  then: Readonly<Record<string, HeldStock>>,
  now: Readonly<Record<string, HeldStock>>,
): readonly Suspect[] =>
  then === now
    ? []
    : Object.keys(now).flatMap((id): Suspect[] => {
        const offSale = now[id]?.offSale
        return offSale && isFound(offSale, then[id]?.offSale ?? null)
          ? [{ what, id, lastGoodAt: offSale.lastGoodAt }]
          : []
      })

/** What was read out of its limits, or was never good. */
export const readBad = ({ before, after }: Happened): readonly Suspect[] => [
  ...badIn('pan', before.pans, after.pans),
  ...badIn('backup', before.backupPans, after.backupPans),
]

interface Gone extends Suspect {
  /** What stands made of it goes with it, for this; null where that keeps a time of its own. */
  readonly takesAlong: 'too-warm' | 'out-of-limits' | null
}

const lastGood = ({ offSale, readings }: HeldStock): number | null =>
  offSale ? offSale.lastGoodAt : (readings.at(-1)?.at ?? null)

/** What is to be thrown out from now on. */
const bound = ({ before, after }: Happened): readonly Gone[] => {
  if (before.toThrowOut === after.toThrowOut) return []
  return allStock(after).flatMap(({ what, id }): Gone[] => {
    const entry = boundAt(after, what, id)
    if (!entry || boundAt(before, what, id)) return []
    const stock = stockOf(before, what, id)
    const lastGoodAt = stock ? lastGood(stock) : null
    const { because } = entry
    const takesAlong = because === 'too-warm' || because === 'out-of-limits' ? because : null
    return [{ what, id, lastGoodAt, takesAlong }]
  })
}

const isOfPan = (event: ServiceEvent): event is DiscardSignedOff & { readonly what: StockKind } =>
  event.type === 'discardSignedOff' && isOfStock(event)

/** What somebody threw out that nobody had found to be thrown out. */
const thrownOut = (
  before: RunningState,
  { what, id, reason }: DiscardSignedOff & { readonly what: StockKind },
): readonly Gone[] => {
  const stock = stockOf(before, what, id)
  const isKnown = boundAt(before, what, id) !== undefined
  if (!stock || isKnown || !(UNSAFE.includes(reason) || stock.offSale !== null)) return []
  // What is past its time or date binds what was made of it by that time itself.
  const isNever = NEVER_GOOD.includes(reason)
  const isBad = isNever || reason === 'out-of-limits' || stock.offSale !== null
  const lastGoodAt = isNever ? null : lastGood(stock)
  return [{ what, id, lastGoodAt, takesAlong: isBad ? 'out-of-limits' : null }]
}

/** What goes into the bin: what is being made of it stops. */
export const gone = (happened: Happened): readonly Gone[] => [
  ...bound(happened),
  ...happened.events.filter(isOfPan).flatMap((event) => thrownOut(happened.before, event)),
]
