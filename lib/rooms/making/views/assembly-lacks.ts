/** What a build lacks, and whether there is too little or what there is may not be taken. */
import { clockDoubtOf } from '#lib/rooms/food/facts/clock-doubt.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import type { Build, RunningState } from '#lib/service/state.ts'

export type WhyLacking = 'too-little' | 'off-sale' | 'throw-out' | 'clock'

/** What a build in the making may still take, though it may not be taken now; null for nothing. */
export const heldBackFrom = (state: RunningState, { takes }: Build): string | null =>
  Object.entries(takes).find(([id, amount]) => {
    const { inPan, heldBack } = levelOf(state, id)
    return amount > 0 && heldBack > 0 && inPan < amount
  })?.[0] ?? null

export const whyLacking = (state: RunningState, component: string): WhyLacking => {
  if (levelOf(state, component).heldBack <= 0) return 'too-little'
  const isOut = Object.values(state.toThrowOut).some(
    ({ what, id }) => what !== 'build' && componentIn(state.station, id) === component,
  )
  if (isOut) return 'throw-out'
  return clockDoubtOf(state, component) === null ? 'off-sale' : 'clock'
}
