/** How many lidded cups there are, and what they go with. */
import type { PrepChoice } from '#lib/prep/food-of.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** What the plan has of a food; undefined where it has no load of it. */
export const plannedOf = (
  { prep }: Pick<RunningState, 'prep'>,
  component: string,
): PrepChoice | undefined =>
  prep?.foods.find((choice) => choice.component === component && choice.loads > 0)

/** On one tray: what one load of the plan is, or what is usual where nothing is planned. */
export const cupsOfLoad = (usual: number, planned: PrepChoice | undefined): number =>
  planned === undefined ? usual : Math.ceil(planned.portions / planned.loads)

/** Names of the items that take it; none where all of them do. */
export const goesWith = ({ items }: StationDocument, { id }: Component): readonly string[] => {
  const those = items.filter(({ parts }) => parts.some(({ component }) => component === id))
  return those.length === items.length ? [] : those.map(({ name }) => name)
}
