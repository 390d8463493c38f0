/** What is believed of each component's pans, event by event. */

import { afterPanReading, afterReading, asRead } from '#lib/estimate/pan-reading.ts'
import {
  afterLoad,
  afterTakenAway,
  afterUse,
  readingSd,
  type StockBelief,
} from '#lib/estimate/scoop-bias.ts'
import { portioningOf } from '#lib/rooms/pans/facts/first-beliefs.ts'
import { byComponent } from '#lib/service/accounts.ts'
import type { Amounts } from '#lib/service/events/build-choice.ts'
import type { CountCorrected, Recorded, Stamp } from '#lib/service/events/event.ts'
import type { Taking } from '#lib/service/events/taking.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { StockState } from '#lib/service/stock-state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { findPan, linePansOf, pansOf } from '#lib/station/find.ts'
import type { Portion } from '#lib/station/portion.ts'

/** How far a load's real size strays from what was said of it, relative. Common practice, no source. */
export const LOAD_SD = 0.03
/** What is left of a full pan where an eye check says a scrape. Common practice, no source. */
export const SCRAPE = 0.06
/** A pan that lacks less than this part of its usual load looks full: half of a quarter. */
const LOOKS_FULL = 1 / 8
/** Of counted food some may be missing whenever one looks, in portions. Common practice, no source. */
const countedVar = (full: number): number => 1 + (0.05 * full) ** 2

const loadSd = (portion: Portion): number => (portion.unit === 'piece' ? 0 : LOAD_SD)

/** What a component's pans on the line are counted to hold, in its unit. */
const nominal = (state: RunningState, component: string): number => {
  let sum = 0
  for (const { id } of linePansOf(state.station, component)) sum += state.pans[id]?.amount ?? 0
  return sum
}

/** What a component's pans on the line usually hold when full, in portions. */
export const usuallyFull = (state: RunningState, component: string): number =>
  linePansOf(state.station, component).reduce((sum, pan) => sum + pan.usualPortions, 0)

type PanRead = Pick<CountCorrected, 'pan' | 'kind' | 'ends' | 'was'> &
  Required<Pick<CountCorrected, 'read'>> &
  Pick<Stamp, 'at'>

/**
 * After a reading of one pan; what the component's other pans hold counts as it is counted. A count is
 * taken as it is; the others are weighed against what was believed. A count to nothing may be a slip,
 * and teaches nothing of the scoop.
 */
const afterCorrection = (
  state: RunningState,
  { pan, read, kind = 'count', at, ends, was }: PanRead,
): StockBelief | null => {
  const place = findPan(state.station, pan)
  const component = place?.component ?? ''
  const portion = state.portions[component]
  const belief = state.beliefs[component]
  if (!place || !portion || !belief) return null
  const others = nominal(state, component) - (state.pans[pan]?.amount ?? 0)
  const full = Math.max(1, usuallyFull(state, component))
  const said = Math.max(0, (others + read) / portion.amount)
  const counted =
    portion.unit === 'piece'
      ? { ...belief, leftVar: Math.max(belief.leftVar, countedVar(full)) }
      : belief
  const sd = readingSd(kind, full)
  if (ends || was === 'slip') return asRead(belief, said, sd)
  if (kind === 'count')
    return {
      ...afterReading(counted, { read: said, sd }, full),
      left: said,
      leftVar: sd * sd,
      cov: 0,
    }
  const usual = place.usualPortions
  const isFull = kind === 'eye-check' && read >= usual * portion.amount - 0.5
  const atLeast = isFull ? { atLeast: said - usual * LOOKS_FULL } : {}
  return afterPanReading(counted, { pan, kind, amount: read, at, sd, read: said, ...atLeast }, full)
}

/** What a pan is counted to hold after a reading, in the component's unit: as it is believed then. */
export const countAfter = (
  state: RunningState,
  pan: string,
  read: number,
  kind: NonNullable<CountCorrected['kind']>,
): number => {
  const component = findPan(state.station, pan)?.component ?? ''
  const belief = kind === 'count' ? null : afterCorrection(state, { pan, read, kind, at: state.at })
  const portion = state.portions[component]
  if (!belief || !portion) return read
  const others = nominal(state, component) - (state.pans[pan]?.amount ?? 0)
  return Math.max(0, Math.round(belief.left * portion.amount) - others)
}

type Beliefs = Readonly<Record<string, StockBelief>>

/** Without minus zeros, which JSON doesn't keep. */
const plain = ({ left, leftVar, bias, biasVar, cov, doubted }: StockBelief): StockBelief => ({
  left: left + 0,
  leftVar: leftVar + 0,
  bias: bias + 0,
  biasVar: biasVar + 0,
  cov: cov + 0,
  ...(doubted ? { doubted: { ...doubted, off: doubted.off + 0 } } : {}),
})

const using = (state: RunningState, beliefs: Beliefs, amounts: Amounts, sign: 1 | -1): Beliefs => {
  const next: Record<string, StockBelief> = { ...beliefs }
  for (const [component, amount] of Object.entries(amounts)) {
    const belief = next[component]
    const portion = state.portions[component]
    if (!belief || !portion) continue
    const portions = amount / portion.amount
    next[component] = plain(
      sign === 1
        ? afterUse(belief, portions, portioningOf(portion))
        : {
            ...belief,
            left: belief.left + portions * (1 + belief.bias),
            cov: belief.cov + portions * belief.biasVar,
          },
    )
  }
  return next
}

/** Beliefs are about the line: what was taken out of back-up pans is counted there. */
const ofLine = (state: RunningState, took: readonly Taking[]): readonly Taking[] =>
  took.filter(({ pan }) => state.pans[pan] !== undefined)

const takenOf = (state: RunningState, took: readonly Taking[], uncounted: Amounts): Amounts => {
  const sums: Record<string, number> = { ...byComponent(state, ofLine(state, took)) }
  for (const [component, amount] of Object.entries(uncounted))
    sums[component] = (sums[component] ?? 0) + amount
  return sums
}

/** What came or went by itself, as loads, changed pans, waste and what is thrown out. */
const moved = (
  before: RunningState,
  after: RunningState,
  beliefs: Beliefs,
  changed: string | null,
): Beliefs => {
  const sums = new Map<string, { gone: number; came: number }>()
  for (const pan of pansOf(after.station)) {
    const was = before.pans[pan.id]
    const is = after.pans[pan.id]
    if (!was || !is || was === is) continue
    const sum = sums.get(pan.component) ?? { gone: 0, came: 0 }
    const gone = pan.id === changed ? was.amount : Math.max(0, was.amount - is.amount)
    sum.gone += gone
    sum.came += is.amount - (was.amount - gone)
    sums.set(pan.component, sum)
  }
  const next: Record<string, StockBelief> = { ...beliefs }
  for (const [component, { gone, came }] of sums) {
    const portion = after.portions[component]
    const belief = next[component]
    if (!portion || !belief || (gone === 0 && came === 0)) continue
    const all = nominal(before, component)
    // A pan that was counted down to nothing takes away what it held beyond that.
    const share = all > 0 ? Math.min(1, gone / all) : changed === null ? 0 : 1
    const { doubted, ...sure } = belief
    const left = afterTakenAway(doubted?.pan === changed ? sure : belief, belief.left * share)
    const portions = came / portion.amount
    next[component] = plain(came > 0 ? afterLoad(left, portions, loadSd(portion) * portions) : left)
  }
  return next
}

/** Beliefs after an event, and when pans were last looked at; nothing where it changes none. */
export const believed = (
  before: RunningState,
  after: RunningState,
  event: Recorded,
): Partial<Pick<StockState, 'beliefs' | 'lookedAt'>> => {
  switch (event.type) {
    case 'buildFinished':
      return {
        beliefs: using(after, after.beliefs, takenOf(after, event.took, event.uncounted), 1),
      }
    case 'stopAcknowledged':
      return event.foodInIt
        ? { beliefs: using(after, after.beliefs, takenOf(after, event.wasted, event.uncounted), 1) }
        : {}
    case 'finishTakenBack': {
      const took = findBuild(before, event.ticket, event.letter)?.took ?? []
      return { beliefs: using(after, after.beliefs, byComponent(after, ofLine(after, took)), -1) }
    }
    case 'countCorrected': {
      const component = findPan(after.station, event.pan)?.component ?? ''
      const belief = afterCorrection(before, { ...event, read: event.read ?? event.to })
      return {
        ...(belief ? { beliefs: { ...after.beliefs, [component]: plain(belief) } } : {}),
        lookedAt: { ...after.lookedAt, [component]: event.at },
      }
    }
    default:
      return before.pans === after.pans
        ? {}
        : {
            beliefs: moved(
              before,
              after,
              after.beliefs,
              event.type === 'panChanged' ? event.pan : null,
            ),
          }
  }
}
