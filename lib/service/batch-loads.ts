/** The loads of a batch: what is still being made, what was read of it, what is left. */
import type { BatchState, FoodState } from '#lib/service/food-state.ts'

/** The next of b1, b2, b3 … that no batch has. */
export const freeBatchId = ({
  batches,
  nextBatch,
}: Pick<FoodState, 'batches' | 'nextBatch'>): string => {
  let number = nextBatch
  while (batches[`b${number}`]) number += 1
  return `b${number}`
}

/** Loads of a batch that are still being made. */
export const loadsToCome = ({ loads, loadsDone, thrownOutAt }: BatchState): number =>
  thrownOutAt === null ? Math.max(0, loads - loadsDone) : 0

/** What was read of the load that is being made: what came before the last one was finished is of that. */
export const readOfLoad = ({ cooking, cookedFor, finishedAt, loadsDone, loads }: BatchState) =>
  finishedAt === null || loadsDone === 0 || loadsDone >= loads
    ? cooking
    : cookedFor === undefined
      ? cooking.filter((one) => one.at > finishedAt)
      : cooking.slice(cookedFor)

/** What of a batch isn't loaded yet, in the component's unit. */
export const leftOfBatch = (batch: BatchState): number => Math.max(0, batch.amount - batch.loaded)

/** Whether all its loads were made, and nothing of them is left in it. */
export const isUsedUp = (batch: BatchState): boolean =>
  batch.finishedAt !== null && loadsToCome(batch) === 0 && leftOfBatch(batch) === 0
