/** A reading as it is typed on a number pad, and what is said of it before it is sent. */

import { numberOf, tenthsOf } from '#lib/measure/number-pad.ts'
import { cookingLimit } from '#lib/safety/cooking.ts'
import type { CoolingState } from '#lib/safety/cooling.ts'
import type { HeatLimit, SafetyLimits, TemperatureLimit, Written } from '#lib/safety/limits.ts'
import { meets } from '#lib/safety/limits.ts'
import {
  type ProbeAt,
  questionReading,
  type ReadingContext,
  type ReadingQuestion,
} from '#lib/safety/readings.ts'
import { type ReheatingPlace, reheatLimit } from '#lib/safety/reheating.ts'
import { keeps, type Scale, type Temperature } from '#lib/safety/temperature.ts'
import { foodKindOf, limitsOf } from '#lib/service/food-limits.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** How food is probed, in the words of the round. */
export type HowProbed = 'stir' | 'piece' | 'cup'

/**
 * From how it is portioned: what a scoop or a ladle takes is diced or wet, also where it was pieces. While
 * it is cooked, meat is pieces still.
 */
export const howProbed = (
  { portion, food }: Component,
  context: ReadingContext = 'hot-holding',
): HowProbed => {
  const isMeat = food.kind === 'fish-or-meat' || food.kind === 'poultry-or-stuffed'
  if (isMeat && context === 'cooking') return 'piece'
  switch (portion.tool) {
    case 'cup':
      return 'cup'
    case 'piece':
    case 'tongs-pieces':
      return 'piece'
    case 'tongs':
      return isMeat ? 'piece' : 'stir'
    default:
      return 'stir'
  }
}

/** Where a probe can be in this food: a piece has a thickest part, what is stirred has a middle. */
export const probePlaces = (
  component: Component | undefined,
  context?: ReadingContext,
): readonly ProbeAt[] => {
  if (!component) return ['thickest-part', 'middle-stirred', 'surface']
  return howProbed(component, context) === 'piece'
    ? ['thickest-part', 'surface']
    : ['middle-stirred', 'surface']
}

export interface ReadingEntry {
  readonly text: string
  readonly scale: Scale
  readonly probe: string
  /** null until it is said. */
  readonly where: ProbeAt | null
  readonly initials: string
  /** Seconds for which it was held, typed. */
  readonly held: string
  /** Seconds for which it stood covered afterwards, typed; left away where no limit asks for any. */
  readonly stood?: string
  /** It was asked whether the other scale was meant, and it wasn't. */
  readonly confirmed: boolean
  /** Whether the probe was cleaned since the food before; left away until that is said. */
  readonly cleaned?: boolean
}

/** What a reading is judged by: one temperature, or combinations with their seconds. */
export type EntryLimit =
  | { readonly kind: 'temperature'; readonly limit: TemperatureLimit }
  | { readonly kind: 'heat'; readonly limit: HeatLimit }

/** Where each limit is written, for the small print beside it. */
export const writtenOf = ({ limit }: EntryLimit): Written => limit

export const holdingLimit = (
  station: StationDocument,
  component: Component,
  heldBy: 'hot' | 'cold',
): EntryLimit => {
  const limits = limitsOf(station)
  const limit =
    heldBy === 'cold'
      ? limits.coldHolding
      : component.food.roast
        ? limits.hotHoldingRoast
        : limits.hotHolding
  return { kind: 'temperature', limit }
}

/** Of made food on a hot or cold shelf: no roast stands there whole. */
export const shelfLimit = (station: StationDocument, heldBy: 'hot' | 'cold'): EntryLimit => {
  const { hotHolding, coldHolding } = limitsOf(station)
  return { kind: 'temperature', limit: heldBy === 'hot' ? hotHolding : coldHolding }
}

/** What a batch of it is cooked to; null where it isn't cooked here. */
export const cookLimit = (station: StationDocument, component: Component): EntryLimit | null => {
  const limit = cookingLimit(foodKindOf(component), component.food.cookedIn, limitsOf(station))
  return limit ? { kind: 'heat', limit } : null
}

export const heatAgainLimit = (station: StationDocument, place: ReheatingPlace): EntryLimit => ({
  kind: 'heat',
  limit: reheatLimit('cooked-here', place, limitsOf(station)),
})

export const clockLimit = (limits: SafetyLimits, from: 'hot' | 'cold' | 'room'): EntryLimit => ({
  kind: 'temperature',
  limit: {
    hot: limits.timeOnlyStartHot,
    cold: limits.timeOnlyStartCold,
    room: limits.timeOnlyStartRoom,
  }[from],
})

/**
 * What the next reading of a cooling has to show: where it starts, or what its stage goes down to. What
 * cools from room temperature has one stage, down to 41 °F (3-501.14(B)).
 */
export const coolLimit = (
  limits: SafetyLimits,
  cooling: CoolingState | null,
  from: 'cooked' | 'room' = 'cooked',
): EntryLimit => ({
  kind: 'temperature',
  limit:
    from === 'room'
      ? limits.coolingTo
      : cooling === null || cooling.state === 'no-start'
        ? limits.coolingFrom
        : cooling.state === 'first-stage'
          ? limits.coolingFirstTo
          : limits.coolingTo,
})

export type EntryVerdict = 'met' | 'not-met' | 'not-long-enough' | 'not-stood'

const heatVerdict = (
  temperature: Temperature,
  { held, stood = '' }: Pick<ReadingEntry, 'held' | 'stood'>,
  limit: HeatLimit,
): EntryVerdict => {
  const reached = limit.combinations.filter((one) => keeps(temperature, 'at-least', one.tenths))
  if (reached.length === 0) return 'not-met'
  const seconds = numberOf(held) ?? 0
  if (!reached.some((one) => seconds >= one.seconds)) return 'not-long-enough'
  return (numberOf(stood) ?? 0) >= limit.standSeconds ? 'met' : 'not-stood'
}

export type EntryLack = 'temperature' | 'where' | 'probe' | 'initials' | 'surface'

export interface JudgedEntry {
  readonly temperature: Temperature | null
  /** Asked before it is sent; null where there is nothing to ask, or it was answered. */
  readonly question: ReadingQuestion | null
  /** null: there is nothing to judge it by, or nothing typed. */
  readonly verdict: EntryVerdict | null
  /** What it still lacks to count. */
  readonly lacks: EntryLack | null
  /** It may be sent. */
  readonly isReady: boolean
}

/**
 * What is said of what stands on the pad. Without a limit it is only asked about its scale. What it
 * comes to is decided by the server again.
 */
export const judgeEntry = (
  entry: ReadingEntry,
  context: ReadingContext,
  kitchen: Scale,
  limit: EntryLimit | null,
): JudgedEntry => {
  const tenths = tenthsOf(entry.text)
  if (tenths === null)
    return {
      temperature: null,
      question: null,
      verdict: null,
      lacks: 'temperature',
      isReady: false,
    }
  const temperature = { tenths, scale: entry.scale }
  const asked = questionReading(temperature, context, kitchen)
  const isAnswered = entry.confirmed && asked?.code === 'did-you-mean' && !asked.must
  const question = isAnswered ? null : asked
  const verdict =
    limit === null || question
      ? null
      : limit.kind === 'heat'
        ? heatVerdict(temperature, entry, limit.limit)
        : meets(temperature, limit.limit)
          ? 'met'
          : 'not-met'
  const lacks =
    entry.where === null
      ? 'where'
      : entry.where === 'surface'
        ? 'surface'
        : entry.probe.trim() === ''
          ? 'probe'
          : entry.initials.trim() === ''
            ? 'initials'
            : null
  return { temperature, question, verdict, lacks, isReady: question === null && lacks === null }
}

/** The temperature that stands on the pad; null while it is no number. */
export const typedTemperature = ({ text, scale }: ReadingEntry): Temperature | null => {
  const tenths = tenthsOf(text)
  return tenths === null ? null : { tenths, scale }
}

/** Whether a limit asks how long it stood covered: what a microwave heated does. */
export const asksStood = (limit: EntryLimit | null): boolean =>
  limit?.kind === 'heat' && limit.limit.standSeconds > 0

/** As a command carries it; null while nothing is typed, or where it was read isn't said. */
export const readingOf = (entry: ReadingEntry) => {
  const tenths = tenthsOf(entry.text)
  if (tenths === null || entry.where === null) return null
  return {
    tenths,
    scale: entry.scale,
    probe: entry.probe.trim(),
    where: entry.where,
    ...(entry.confirmed ? { scaleConfirmed: true } : {}),
    ...(entry.cleaned === undefined ? {} : { cleaned: entry.cleaned }),
  }
}

/** As above, with the seconds for which it was held, and for which it stood covered. */
export const heatReadingOf = (entry: ReadingEntry) => {
  const reading = readingOf(entry)
  const held = numberOf(entry.held)
  const stood = numberOf(entry.stood ?? '')
  return (
    reading && {
      ...reading,
      ...(held === null ? {} : { heldSeconds: Math.round(held) }),
      ...(stood === null ? {} : { stoodSeconds: Math.round(stood) }),
    }
  )
}
