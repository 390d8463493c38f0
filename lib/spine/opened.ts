import { EMPTY_ACCOUNT } from '#lib/service/accounts.ts'
import type { ServiceOpened, Stamp } from '#lib/service/events/event.ts'
import { EMPTY_STOCK } from '#lib/service/food-state.ts'
import { emptyBackups } from '#lib/service/held-stock.ts'
import { NOT_OPENED, type RunningState } from '#lib/service/state.ts'
import { openedStock } from '#lib/spine/evolve-stock.ts'
import { isNewest } from '#lib/station/any-station-document.ts'
import { pansOf } from '#lib/station/find.ts'

/** A service as it is opened, with nothing in it. @throws where its document is of an older version */
export const opened = (event: ServiceOpened & Stamp): RunningState => {
  const { station } = event
  if (!isNewest(station)) throw new Error('a document of an older version isn’t folded')
  return {
    ...NOT_OPENED,
    ...openedStock(
      event,
      station.components.map(({ id }) => id),
    ),
    stage: 'open',
    service: event.service,
    kind: event.kind,
    revision: event.revision,
    station,
    portions: event.portions,
    ...(event.servedOn === undefined ? {} : { servedOn: event.servedOn }),
    openedAt: event.at,
    closesItselfAt: event.closesItselfAt,
    pans: Object.fromEntries(pansOf(station).map((pan) => [pan.id, EMPTY_STOCK])),
    backupPans: emptyBackups(station),
    rushes: event.rushes ?? [],
    ...(event.labels ? { labelVersions: event.labels } : {}),
    ...(event.followsProbes === true ? { probes: {} } : {}),
    accounts: Object.fromEntries(station.components.map((one) => [one.id, EMPTY_ACCOUNT])),
  }
}
