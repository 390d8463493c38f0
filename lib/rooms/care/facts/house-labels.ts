/** What an open service is told of the labels of its house that it doesn't have yet. */
import { pansHolding } from '#lib/rooms/care/facts/mixing.ts'
import type { LabelChanged, LabelVersions } from '#lib/service/events/line-event.ts'
import { behindIn } from '#lib/service/known.ts'
import type { RunningState } from '#lib/service/state.ts'
import { labelHere } from '#lib/station/filled.ts'
import type { Label } from '#lib/station/label.ts'

export interface LaterLabel {
  readonly version: number
  /** null: nobody has read it. */
  readonly label: Label | null
  /** The same product as before, read again. */
  readonly same: boolean
}

/**
 * Its newest label of each ingredient that changed. What its own pans hold of a product of before
 * goes on counting beside it, also where only one of several changes was of another product.
 * @param since the labels of an ingredient that came after a version, in order
 */
export const labelsToTake = (
  state: RunningState,
  newest: LabelVersions,
  since: (ingredient: string, version: number) => readonly LaterLabel[],
): readonly LabelChanged[] =>
  behindIn(state, newest).flatMap((ingredient): LabelChanged[] => {
    const later = since(ingredient, state.labelVersions?.[ingredient] ?? 0)
    const last = later.at(-1)
    if (!last) return []
    const same = later.every((one) => one.same)
    return [
      {
        type: 'labelChanged',
        ingredient,
        label: last.label && labelHere(state.station, last.label),
        pans: same ? [] : pansHolding(state, ingredient),
        revision: state.revision,
        version: last.version,
        ...(same ? { same } : {}),
      },
    ]
  })
