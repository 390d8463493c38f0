/** Who stays to read a lot that cools: asked by the stages of its own food. */
import type { LotShown } from '#lib/larder/shelf-view.ts'
import { coolingState, stagesToCome } from '#lib/safety/cooling.ts'
import { limitsWith } from '#lib/safety/limits.ts'

type Cools = Pick<LotShown, 'kept' | 'bound' | 'barred' | 'presentUntil' | 'next'> & {
  readonly label: Pick<LotShown['label'], 'cooling' | 'cooledFrom' | 'finishedAt' | 'limits'>
}

/**
 * By when somebody is to be there, each stage that no reading shows yet, epoch milliseconds: of cooked
 * food up to two (3-501.14(A)), of food from room temperature one (3-501.14(B)). None where it doesn't
 * cool, or somebody said to be there as its stage ends.
 */
export const stayAsked = (lot: Cools, now: number): readonly number[] => {
  const { kept, bound, barred, presentUntil, next, label } = lot
  if (kept !== 'cooling' || bound !== null || barred !== null || next?.what !== 'stage') return []
  if (presentUntil !== null && presentUntil >= next.at) return []
  const { cooling, cooledFrom, finishedAt } = label
  const limits = limitsWith(label.limits)
  const state = coolingState(cooling, cooledFrom, now, limits, finishedAt)
  return stagesToCome(state, cooledFrom, limits).map(({ by }) => by)
}
