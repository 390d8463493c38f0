import type { FoodWords } from '#components/job/use-food-words.ts'
import { batchReadBy } from '#lib/rooms/food/facts/batch-watch.ts'
import { coolBy } from '#lib/rooms/food/facts/cooling/cool-by.ts'
import { coolingStay } from '#lib/rooms/food/facts/cooling/who-stays.ts'
import { coolingOf } from '#lib/rooms/food/facts/food-now.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'

/** What is written down of a batch, in the order in which it happened. */
export const batchFacts = (
  words: FoodWords,
  state: RunningState,
  id: string,
  batch: BatchState,
  now: number,
): readonly string[] => {
  const time = (at: number) => words.sayTime(at, state.station.timeZone)
  const portion = state.portions[batch.component]
  const each = portion?.amount ?? 1
  const cooling = coolingOf(state.station, batch, now)
  const cools = coolBy(state, id, now)
  const limits = limitsOf(state.station)
  const stay = coolingStay(state.station, batch, now)
  const nextBy = batch.offSale === null ? batchReadBy(state, id, now) : null
  const { scale } = state.station.safety
  return [
    words.batches.startedAt(time(batch.startedAt), words.batches.loads(batch.loads)),
    // Once it cools, what it was cooked to is past.
    ...(cooling ? [] : batch.cooking).map((one) =>
      words.batches.cookedAt(words.sayDegrees(one.temperature), one.heldSeconds, time(one.at)),
    ),
    ...(batch.finishedAt === null
      ? []
      : [
          words.batches.finishedAt(
            time(batch.finishedAt),
            words.amount(batch.amount, portion?.unit ?? 'mg'),
            Math.floor(batch.amount / each),
          ),
          ...(batch.loaded > 0 ? [words.batches.loaded(Math.round(batch.loaded / each))] : []),
        ]),
    ...(cooling
      ? [words.safety.cooling(cooling, limits, scale, time)]
      : cools
        ? [words.batches.coolPot(cools, limits, scale, time)]
        : []),
    ...(stay
      ? [(stay.isTooShort ? words.batches.coolAlone : words.batches.coolStays)(time(stay.until))]
      : []),
    ...batch.readings
      .slice(-3)
      .map((one) => words.read(words.sayDegrees(one.temperature), time(one.at))),
    ...(nextBy === null ? [] : [words.readNext(time(nextBy))]),
    ...(batch.clock ? [words.safety.throwOutAt(time(batch.clock.throwOutAt))] : []),
    ...(batch.dateMark ? [words.dates.lastUse(words.sayDate(batch.dateMark.lastDay))] : []),
  ]
}
