/** Readings as commands tell them: questioned, dated and complete, or refused. */
import type { HeatReading } from '#lib/safety/cooking.ts'
import {
  momentProblem,
  questionReading,
  type Reading,
  type ReadingContext,
  readingLacks,
} from '#lib/safety/readings.ts'
import { isTemperature, type Temperature } from '#lib/safety/temperature.ts'
import type { GivenHeatReading, GivenReading } from '#lib/service/commands/food-fields.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { RunningState } from '#lib/service/state.ts'

interface Asked {
  readonly context: ReadingContext
  readonly initials: string | undefined
  readonly now: number
  /** Of the same food, epoch milliseconds; null where nothing was recorded yet. */
  readonly newestAt: number | null
}

const questioned = (
  state: RunningState,
  read: Temperature,
  given: GivenReading,
  context: ReadingContext,
): Refusal | null => {
  const question = questionReading(read, context, state.station.safety.scale)
  if (question === null) return null
  const isConfirmed =
    question.code === 'did-you-mean' && !question.must && given.scaleConfirmed === true
  return isConfirmed ? null : { code: 'reading-asked', question, read }
}

/** A reading that may be recorded, or why not. */
export const takenReading = (
  state: RunningState,
  given: GivenReading,
  asked: Asked,
): { readonly reading: Reading } | { readonly refusal: Refusal } => {
  const { context, initials, now, newestAt } = asked
  const temperature: Temperature = { tenths: given.tenths, scale: given.scale }
  if (!isTemperature(temperature))
    return {
      refusal: { code: 'reading-asked', question: { code: 'cannot-be' }, read: temperature },
    }
  const at = given.at ?? now
  const problem = momentProblem(at, newestAt, now)
  if (problem) return { refusal: { code: 'wrong-moment', problem } }
  const refusal = questioned(state, temperature, given, context)
  if (refusal) return { refusal }
  const { probe, where, cleaned } = given
  const reading: Reading = {
    temperature,
    at,
    probe,
    where,
    initialled: initials !== undefined,
    ...(cleaned === undefined ? {} : { cleaned }),
  }
  const lack = readingLacks(reading)
  return lack ? { refusal: { code: 'reading-lacks', lack } } : { reading }
}

/** As `takenReading`, with how long it was held there. */
export const takenHeatReading = (
  state: RunningState,
  given: GivenHeatReading,
  asked: Asked,
): { readonly reading: HeatReading } | { readonly refusal: Refusal } => {
  const taken = takenReading(state, given, asked)
  if ('refusal' in taken) return taken
  const { heldSeconds = null, stoodSeconds = null } = given
  return { reading: { ...taken.reading, heldSeconds, stoodSeconds } }
}
