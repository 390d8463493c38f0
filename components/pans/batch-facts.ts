import { batchReadBy } from '#lib/service/batch-watch.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import { coolingOf } from '#lib/service/food-now.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { batchWords as words } from '#lib/words/batches-en.ts'
import { sayTime } from '#lib/words/clock-en.ts'
import { dateWords } from '#lib/words/dates-en.ts'
import { sayDate } from '#lib/words/day-en.ts'
import { pansWords } from '#lib/words/pans-en.ts'
import { sayDegrees } from '#lib/words/reading-en.ts'
import { safetyWords } from '#lib/words/safety-en.ts'

/** What is written down of a batch, in the order in which it happened. */
export const batchFacts = (
  state: RunningState,
  id: string,
  batch: BatchState,
  now: number,
): readonly string[] => {
  const time = (at: number) => sayTime(at, state.station.timeZone)
  const portion = state.portions[batch.component]
  const each = portion?.amount ?? 1
  const cooling = coolingOf(state.station, batch, now)
  const nextBy = batch.offSale === null ? batchReadBy(state, id, now) : null
  const { scale } = state.station.safety
  return [
    words.startedAt(time(batch.startedAt), words.loads(batch.loads)),
    ...batch.cooking.map((one) =>
      words.cookedAt(sayDegrees(one.temperature), one.heldSeconds, time(one.at)),
    ),
    ...(batch.finishedAt === null
      ? []
      : [
          words.finishedAt(
            time(batch.finishedAt),
            pansWords.amount(batch.amount, portion?.unit ?? 'mg'),
            Math.floor(batch.amount / each),
          ),
          words.loaded(Math.round(batch.loaded / each)),
        ]),
    ...(cooling ? [safetyWords.cooling(cooling, limitsOf(state.station), scale, time)] : []),
    ...batch.readings
      .slice(-3)
      .map((one) => pansWords.read(sayDegrees(one.temperature), time(one.at))),
    ...(nextBy === null ? [] : [pansWords.readNext(time(nextBy))]),
    ...(batch.clock ? [safetyWords.throwOutAt(time(batch.clock.throwOutAt))] : []),
    ...(batch.dateMark ? [dateWords.lastUse(sayDate(batch.dateMark.lastDay))] : []),
  ]
}
