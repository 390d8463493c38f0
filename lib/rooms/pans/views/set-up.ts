/** The whole line set up at once: what goes into each pan, how much, out of what, and what it waits for. */

import { washingMatters } from '#lib/rooms/care/facts/product-before.ts'
import { toldMark } from '#lib/rooms/food/facts/dated.ts'
import { heldAs, loadProblemOf, needsReading } from '#lib/rooms/food/facts/food-now.ts'
import { isRestAwaited, restsOf } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { holdsAtMost } from '#lib/rooms/pans/facts/capacity.ts'
import { asksDates, isFromPack } from '#lib/rooms/pans/views/dates-asked.ts'
import {
  firstSource,
  fittingPortions,
  type PutSource,
  putSources,
  sourceKey,
  toldOfSource,
} from '#lib/rooms/pans/views/put-sources.ts'
import {
  earliestOpened,
  isAsked,
  NOT_SAID,
  ofSource,
  type SetUpEntry,
  type SetUpLoad,
  type SetUpRow,
  type SetUpWait,
} from '#lib/rooms/pans/views/set-up-row.ts'
import { pastStamp } from '#lib/safety/date-stamp.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { ToldDates } from '#lib/safety/told-dates.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import { isKeptBack } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'
import type { Pan } from '#lib/station/station-document.ts'

export interface SetUpSheet {
  /** Every pan of the line, in its order. */
  readonly rows: readonly SetUpRow[]
  /** As they are sent: each is accepted or refused by itself. */
  readonly loads: readonly SetUpLoad[]
  /** Empty pans that stay as they are, each with why. */
  readonly waiting: readonly SetUpRow[]
}

/** What the pans before it take out of each batch and back-up pan, in the component's unit. */
type Spent = ReadonlyMap<string, number>

/** Sources of one pan, less what goes into the pans before it; what is used up by them is gone. */
const sourcesLeft = (
  state: RunningState,
  pan: Pan,
  spent: Spent,
  now: number,
): readonly PutSource[] => {
  const each = state.portions[pan.component]?.amount ?? 1
  const left = putSources(state, { component: pan.component, id: pan.id }, now).flatMap((one) => {
    const taken = spent.get(sourceKey(one)) ?? 0
    if (one.kind === 'plain' || taken === 0) return [one]
    const amount = one.amount - taken
    return one.kind === 'batch' && amount >= each ? [{ ...one, amount }] : []
  })
  const first = left.find((one) => one.kind === 'batch')
  return left.map((one) => (one.kind === 'batch' ? { ...one, isFirst: one === first } : one))
}

/** The newest reading of a batch, while it was cooked or stood: it is the pot's, and not the pan's. */
const readOfPot = (batch: BatchState | undefined): Reading | null =>
  batch
    ? [...batch.cooking, ...batch.readings].reduce<Reading | null>(
        (newest, one) => (newest === null || one.at >= newest.at ? one : newest),
        null,
      )
    : null

/** Whether its reading, as it was taken, lets it be loaded now: by the rule that the load is decided by. */
const waitsForReading = (
  state: RunningState,
  pan: Pan,
  source: PutSource,
  entry: SetUpEntry,
  now: number,
): SetUpWait | null => {
  if (!needsReading(source.heldBy)) return null
  if (entry.reading === null) return { why: 'reading' }
  const { tenths, scale, probe, where, at } = entry.reading
  const reading: Reading = {
    temperature: { tenths, scale },
    at,
    probe,
    where,
    initialled: entry.initials !== '',
  }
  const batch = source.kind === 'batch' ? (state.batches[source.id] ?? null) : null
  const { heldBy } = source
  const component = componentOf(state.station, pan.component)
  const problem = loadProblemOf(state, component, batch, { heldBy, readings: [reading], now })
  if (problem === null) return null
  if (problem.code === 'no-load-reading') return { why: 'read-again', at }
  return problem.code === 'load-out-of-limits'
    ? { why: 'out-of-limits' }
    : { why: 'barred', problem }
}

/** Of its days: said where they are asked, of two packs the earliest with a label made anew. */
const waitsForDates = (
  state: RunningState,
  { isPack, dates }: { readonly isPack: boolean; readonly dates: ToldDates },
  entry: SetUpEntry,
  now: number,
): SetUpWait | null => {
  const { alsoOpened, isLabelled } = entry
  if (isPack && (dates.preparedOn === undefined || alsoOpened === NOT_SAID))
    return { why: 'opened-on' }
  const told = toldMark(state, dates, now)
  if ('refusal' in told)
    return told.refusal.code === 'wrong-date'
      ? { why: 'date', problem: told.refusal.problem }
      : { why: 'opened-on' }
  if (told.mark && pastStamp(told.mark, now))
    return { why: 'past-date', lastDay: told.mark.lastDay }
  const isOfTwoDays = isPack && alsoOpened !== null && alsoOpened !== entry.dates?.preparedOn
  return isOfTwoDays && !isLabelled ? { why: 'label' } : null
}

const rowOf = (
  state: RunningState,
  pan: Pan,
  told: SetUpEntry,
  spent: Spent,
  now: number,
): SetUpRow => {
  const { id, component: of, usualPortions: usual } = pan
  const component = componentOf(state.station, of)
  const each = state.portions[of]?.amount ?? 1
  const held = state.pans[id]
  const holds = held && held.amount > 0 ? Math.round(held.amount / each) : null
  const sources = sourcesLeft(state, pan, spent, now)
  const source =
    sources.find((one) => sourceKey(one) === told.source) ?? firstSource(sources) ?? null
  const entry = ofSource(told, source && sourceKey(source))
  const heldBy = source?.heldBy ?? heldAs(component, undefined)
  const there = source && 'amount' in source ? Math.floor(source.amount / each) : Infinity
  const most = Math.max(1, Math.min(there, fittingPortions(state, pan, 0)))
  const isAll = source?.kind === 'backup'
  const portions = isAll ? there : Math.min(entry.portions ?? usual, most)
  const capacity = holdsAtMost(state, id)
  const isPack = isFromPack(source, heldBy)
  const isDated = asksDates(source, heldBy)
  const dates: ToldDates = isDated
    ? { ...(entry.dates ?? {}), ...(isPack ? earliestOpened(entry) : {}) }
    : {}
  const asksWashed = washingMatters(state, id)
  const waits = (): SetUpWait | null => {
    if (entry.isLeft) return { why: 'left' }
    if (isKeptBack(state, 'pan', id) || (held && isRestAwaited(state, id, held)))
      return { why: 'throw-out' }
    if (source === null) {
      const barred = sources.find((one) => one.kind === 'batch' && one.problem !== null)
      return barred?.kind === 'batch' && barred.problem
        ? { why: 'barred', problem: barred.problem }
        : { why: 'no-batch', isMaking: making.length > 0 }
    }
    if (source.kind === 'plain' && restsOf(state, of) > 0) return { why: 'throw-out' }
    if (source.kind === 'batch' && source.problem) return { why: 'barred', problem: source.problem }
    if (asksWashed && !entry.washed) return { why: 'washed' }
    return (
      (isDated ? waitsForDates(state, { isPack, dates }, entry, now) : null) ??
      waitsForReading(state, pan, source, entry, now)
    )
  }
  const making = Object.values(state.batches)
    .filter((one) => one.component === of && one.finishedAt === null && one.thrownOutAt === null)
    .map(({ startedAt }) => startedAt)
  const wait = holds === null ? waits() : null
  const amount = Math.min(portions * each, source && 'amount' in source ? source.amount : Infinity)
  // A reading out of limits is told: it isn't loaded, and what it came from waits for a decision.
  const isOut = wait?.why === 'out-of-limits'
  const said: SetUpLoad | null =
    holds !== null || (wait !== null && !isOut) || source === null
      ? null
      : {
          type: 'load',
          pan: id,
          ...(isAll ? {} : { amount }),
          ...toldOfSource(source, isPack),
          ...dates,
          ...(needsReading(heldBy) && entry.reading
            ? { reading: entry.reading, initials: entry.initials }
            : {}),
          ...(asksWashed ? { washed: true as const } : {}),
        }
  return {
    pan: id,
    component: of,
    holds,
    sources,
    source,
    making,
    heldBy,
    isAll,
    usual,
    portions,
    most,
    capacity: capacity === null ? null : Math.floor(capacity / each),
    needsReading: source !== null && needsReading(heldBy),
    isPack,
    asksDates: isDated,
    asksWashed,
    openedOn: dates.preparedOn ?? null,
    pot: readOfPot(source?.kind === 'batch' ? state.batches[source.id] : undefined),
    wait,
    load: isOut ? null : said,
    toTell: isOut ? said : null,
  }
}

/**
 * Every pan in line order, proposed as usual where nothing was said. What goes into one pan isn't there for
 * the next of its food. @param entryOf what was said of a pan so far
 */
export const setUpSheet = (
  state: RunningState,
  entryOf: (pan: string) => SetUpEntry,
  now: number,
): SetUpSheet => {
  const spent = new Map<string, number>()
  const rows = pansOf(state.station).map((pan) => {
    const row = rowOf(state, pan, entryOf(pan.id), spent, now)
    const { source, wait, holds, portions } = row
    if (source && holds === null && (wait === null || isAsked(wait))) {
      const each = state.portions[pan.component]?.amount ?? 1
      spent.set(sourceKey(source), (spent.get(sourceKey(source)) ?? 0) + portions * each)
    }
    return row
  })
  return {
    rows,
    loads: rows.flatMap(({ load }) => (load ? [load] : [])),
    waiting: rows.filter(({ wait }) => wait !== null),
  }
}

/** The next pan that something can be said of, after one and then from the line's beginning; null: none. */
export const nextAsked = ({ rows }: SetUpSheet, after: string | null): string | null => {
  const at = rows.findIndex(({ pan }) => pan === after)
  const round = [...rows.slice(at + 1), ...rows.slice(0, at + 1)]
  return round.find(({ wait, pan }) => pan !== after && wait && isAsked(wait))?.pan ?? null
}
