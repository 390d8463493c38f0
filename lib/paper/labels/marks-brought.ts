/** What a scoop or a probe brought into a batch that goes into no pan yet, so that no pan's marks have it. */
import type { Soil } from '#lib/needs/contact.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import { findBatch, type Placed } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

/** Components, each once, sorted; none of what is in a pan: its marks are the kitchen's. */
export const marksOfBatches = (
  state: RunningState,
  places: readonly (Placed | null | undefined)[],
): readonly string[] => {
  const marks = places.flatMap((place) => {
    const batch = place?.what === 'batch' ? findBatch(state, place.id) : undefined
    return [...(batch?.soiledBy ?? []), ...(batch?.probedWith ?? [])]
  })
  return [...new Set(marks)].sort()
}

/** The kitchen as food of a component meets it that brings such marks along. */
export const withMarks = (
  kitchen: Kitchen,
  component: string,
  marks: readonly string[],
): Kitchen => {
  if (marks.length === 0) return kitchen
  const marked = (soiled: readonly Soil[]): readonly Soil[] => [
    ...soiled,
    ...marks
      .filter((by) => !soiled.some((one) => one.component === component && one.by === by))
      .map((by) => ({ component, by })),
  ]
  const { soiled, soiledBehind = [] } = kitchen
  return { ...kitchen, soiled: marked(soiled), soiledBehind: marked(soiledBehind) }
}
