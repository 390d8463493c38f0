import type { LabelVersions } from '#lib/service/events/line-event.ts'
import type { ServiceState } from '#lib/service/state.ts'

/** The house has newer labels than a service, of all that it has. */
export const newerLabels = ({ station, labelVersions }: ServiceState): LabelVersions =>
  Object.fromEntries(
    (station?.ingredients ?? []).map(({ id }) => [id, (labelVersions?.[id] ?? 0) + 1]),
  )
