/** The sanitizing solution: when it is read next, and what a reading of it may be. */

import { practiceOf } from '#lib/rooms/food/facts/food-now.ts'
import { nextReading } from '#lib/safety/holding.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import type { ReadingQuestion } from '#lib/safety/readings.ts'
import type { Sanitizer, SanitizerReading } from '#lib/safety/sanitizer.ts'
import {
  compareTemperatures,
  isTemperature,
  otherScale,
  type Temperature,
} from '#lib/safety/temperature.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

export interface SanitizerNext {
  /** From when on it is asked for, epoch milliseconds; null: at once, whatever the clock says. */
  readonly askAt: number | null
  readonly dueAt: number
}

/**
 * From the opening on, then so often as the document says since the newest reading, ahead of a rush;
 * at once where that was out of its limit. Null where the document doesn't ask.
 */
export const sanitizerNext = (state: RunningState): SanitizerNext | null => {
  const { station, sanitizer, openedAt, rushes } = state
  const asked = station.safety.sanitizer
  if (!asked) return null
  if (!sanitizer) return { askAt: null, dueAt: openedAt }
  if (sanitizer.problem !== null) return { askAt: null, dueAt: sanitizer.at }
  const practice = { ...practiceOf(station), everyMs: asked.everyMin * MINUTE_MS }
  return nextReading(sanitizer.at, rushes, practice)
}

/** From where water isn't ice to where a hand bears it. Common practice, no source: no limit, a slip. */
const COLDEST: Temperature = { tenths: 320, scale: 'F' }
const HOTTEST: Temperature = { tenths: 1400, scale: 'F' }

const isWater = (one: Temperature): boolean =>
  isTemperature(one) &&
  compareTemperatures(one, COLDEST) >= 0 &&
  compareTemperatures(one, HOTTEST) <= 0

/** What is asked where water can't be so warm or cold; null where it can. 75 °C was 75 °F. */
export const waterQuestion = (water: Temperature): ReadingQuestion | null => {
  if (isWater(water)) return null
  const meant = { tenths: water.tenths, scale: otherScale(water.scale) }
  return isWater(meant)
    ? { code: 'did-you-mean', scale: meant.scale, must: true }
    : { code: 'cannot-be' }
}

const USUAL: Readonly<Record<Sanitizer, { readonly mgPerL: number; readonly ph: number }>> = {
  chlorine: { mgPerL: 100, ph: 7 },
  iodine: { mgPerL: 15, ph: 5 },
  'quaternary-ammonium': { mgPerL: 200, ph: 7 },
}

/** What nobody read, for what is invented anyway; null where the document doesn't ask. */
export const inventedSolution = ({
  safety: { scale, sanitizer },
}: StationDocument): Omit<SanitizerReading, 'kind'> | null => {
  if (!sanitizer) return null
  const { label } = sanitizer
  const { mgPerL, ph } = USUAL[sanitizer.kind]
  return {
    mgPerL: label?.mostMgPerL ?? mgPerL,
    water: { tenths: scale === 'F' ? 750 : 240, scale },
    ph: Math.min(ph, label?.mostPh ?? ph),
  }
}
