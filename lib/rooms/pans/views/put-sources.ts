/** What may be put into a pan: batches, back-up pans, or food as it came, each with why not. */

import { batchBarred } from '#lib/rooms/food/facts/batch-watch.ts'
import {
  batchesInOrder,
  heldAs,
  loadProblemOf,
  needsBatch,
} from '#lib/rooms/food/facts/food-now.ts'
import { type FoodTimes, lastUseOf } from '#lib/rooms/food/facts/food-times.ts'
import { holdsAtMost, mostInPan } from '#lib/rooms/pans/facts/capacity.ts'
import type { HeldBy } from '#lib/safety/holding.ts'
import type { LoadProblem } from '#lib/safety/load.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import { findBackup, isUsable } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { componentOf, findPan } from '#lib/station/find.ts'

export type PutSource =
  | {
      readonly kind: 'batch'
      readonly id: string
      /** What of it isn't loaded, in the component's unit. */
      readonly amount: number
      readonly finishedAt: number
      /** How it would be held: a batch on a clock is held by time. */
      readonly heldBy: HeldBy
      /** Why it can't be loaded, its reading apart; null where it can. */
      readonly problem: LoadProblem | null
      readonly useBy: FoodTimes['useBy']
      /** Of those that can be loaded it is the one to use first. */
      readonly isFirst: boolean
    }
  | {
      readonly kind: 'backup'
      readonly id: string
      readonly amount: number
      readonly heldBy: HeldBy
      readonly kept: 'hot' | 'cold' | 'boxed'
      readonly guarded: boolean
      readonly useBy: FoodTimes['useBy']
    }
  /** Ready to eat as it came: no batch is asked for. */
  | { readonly kind: 'plain'; readonly heldBy: HeldBy }

/** Its reading is typed beside it, so that its want is no reason against it yet. */
const apart = (problem: LoadProblem | null): LoadProblem | null =>
  problem?.code === 'no-load-reading' ? null : problem

/** Sources of a component for one pan, in the order in which they should be used. */
export const putSources = (
  state: RunningState,
  into: { readonly component: string; readonly id: string },
  now: number,
): readonly PutSource[] => {
  const component = componentOf(state.station, into.component)
  const batches = batchesInOrder(state, into.component).flatMap((id, place): PutSource[] => {
    const batch = state.batches[id]
    if (!batch) return []
    const heldBy = heldAs(component, batch.clock ? 'time' : undefined)
    const problem =
      heldBy === 'dry'
        ? null
        : (apart(loadProblemOf(state, component, batch, { heldBy, readings: [], now })) ??
          batchBarred(state, id, now))
    return [
      {
        kind: 'batch',
        id,
        amount: leftOfBatch(batch),
        finishedAt: batch.finishedAt ?? batch.startedAt,
        heldBy,
        problem,
        useBy: lastUseOf(batch),
        isFirst: place === 0,
      },
    ]
  })
  const backups = Object.entries(state.backupPans).flatMap(([id, pan]): PutSource[] =>
    pan.component === into.component &&
    id !== into.id &&
    pan.food !== null &&
    isUsable(state, 'backup', id)
      ? [
          {
            kind: 'backup',
            id,
            amount: pan.amount,
            heldBy: pan.food.heldBy,
            kept: pan.kept,
            guarded: pan.guarded,
            useBy: lastUseOf(pan.food),
          },
        ]
      : [],
  )
  const plain: readonly PutSource[] = needsBatch(component)
    ? []
    : [{ kind: 'plain', heldBy: heldAs(component, undefined) }]
  return [...batches, ...backups, ...plain]
}

/** Tells the sources of one pan apart. */
export const sourceKey = (source: PutSource): string => ('id' in source ? source.id : source.kind)

/** Whether an older batch would stay behind. */
export const isOutOfTurn = (chosen: PutSource): boolean =>
  chosen.kind === 'batch' && !chosen.isFirst

/** The fields of a command that say out of what it comes. `isPack`: straight from a pack that is kept cold. */
export const toldOfSource = (source: PutSource, isPack: boolean) => ({
  ...(source.kind === 'batch' ? { batch: source.id } : {}),
  ...(isPack ? { bought: true as const } : {}),
  ...(source.kind === 'backup' ? { from: source.id } : {}),
  ...(source.kind === 'batch' && source.heldBy === 'time' ? { heldBy: 'time' as const } : {}),
  ...(isOutOfTurn(source) ? { notFirst: true as const } : {}),
})

/** The one that is offered first: what can be loaded, in its turn. */
export const firstSource = (sources: readonly PutSource[]): PutSource | null =>
  sources.find((one) => one.kind !== 'batch' || one.problem === null) ?? null

/** Most whole portions that fit into a pan that holds so much already, at least 1. */
export const fittingPortions = (
  state: RunningState,
  into: { readonly component: string; readonly id: string },
  holds: number,
): number => {
  const place = findPan(state.station, into.id) ?? findBackup(state.station, into.id)
  const most = holdsAtMost(state, into.id) ?? (place ? mostInPan(state, place) : 0)
  const each = state.portions[into.component]?.amount ?? 1
  return Math.max(1, Math.floor((most - holds) / each))
}
