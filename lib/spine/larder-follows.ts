/**
 * What of a service's events happens in the larder too. Whatever command caused them: who appends the
 * events of a service appends these with them, in one transaction.
 */
import type { LarderEvent } from '#lib/larder/event.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { isRunning } from '#lib/service/state.ts'

/** @param service id of the service; `after` its state once they happened */
export const larderFollows = (
  service: string,
  after: ServiceState,
  events: readonly ServiceEvent[],
): readonly LarderEvent[] => {
  if (!isRunning(after)) return []
  const station = after.station.id
  return events.flatMap((event): readonly LarderEvent[] => {
    if (event.type !== 'foodTaken') return []
    const { lot, amount, batch, why } = event
    const by = { service, station, batch }
    return [{ type: 'lotTaken', lot, amount, by, ...(why === undefined ? {} : { why }) }]
  })
}
