/**
 * What of a service's events happens in the larder too. Whatever command caused them: who appends the
 * events of a service appends these with them, in one transaction.
 */
import type { LarderEvent } from '#lib/larder/event.ts'
import type { LotFood, LotKept } from '#lib/larder/lot.ts'
import type { FoodEnded, GoesAlong } from '#lib/service/events/end-event.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { isRunning, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'
import { isOfBefore } from '#lib/station/relabelled.ts'

const KEPT = { cold: 'cold', dry: 'dry', cool: 'cooling', freeze: 'frozen' } as const

/** Dry food that nobody dated is dry food in the freezer too. */
const keptAs = (end: keyof typeof KEPT, { frozen }: GoesAlong): LotKept =>
  end === 'freeze' && frozen?.daysLeft == null ? 'dry' : KEPT[end]

const foodOf = (
  service: string,
  { station }: RunningState,
  event: FoodEnded,
  { end, along }: { readonly end: keyof typeof KEPT; readonly along: GoesAlong },
): LotFood => {
  const { what, id, component, how } = event
  const kept = keptAs(end, along)
  const started = along.batches.map(({ startedAt }) => startedAt)
  const { frozen } = along
  const daysLeft = frozen?.daysLeft ?? null
  return {
    component,
    name: findComponent(station, component)?.name ?? component,
    unit: along.unit,
    from: { service, station: station.id, what, id },
    how,
    kept,
    cooledFrom: along.coolingFrom,
    cooling: along.cooling,
    cooledAgain: along.cooledAgain,
    reheated: along.reheated,
    cooking: along.cooking,
    readings: kept === 'cold' && along.reading ? [along.reading] : [],
    startedAt: started.length === 0 ? null : Math.min(...started),
    finishedAt: along.finishedAt,
    dateMark: along.dateMark,
    frozen:
      kept === 'frozen' && frozen && daysLeft !== null
        ? { on: frozen.on, daysLeft, useBy: frozen.useBy ?? null }
        : null,
    soiledBy: along.soiledBy,
    touched: along.touched,
    batches: along.batches.map(({ batch }) => batch),
    stoodOpen: along.stoodOpen,
    madeOf: along.madeOf.filter((one) => !isOfBefore(one)),
    labels: along.labels ?? null,
    before: along.before,
    presentUntil: along.presentUntil ?? null,
    under: {
      limits: station.safety.limits,
      timeZone: station.timeZone,
      scale: station.safety.scale,
    },
  }
}

/** @param service id of the service; `after` its state once they happened */
export const larderFollows = (
  service: string,
  after: ServiceState,
  events: readonly ServiceEvent[],
): readonly LarderEvent[] => {
  if (!isRunning(after)) return []
  return events.flatMap((event): readonly LarderEvent[] => {
    if (event.type === 'foodTaken') {
      const { lot, amount, batch, why } = event
      const by = { service, station: after.station.id, batch }
      return [{ type: 'lotTaken', lot, amount, by, ...(why === undefined ? {} : { why }) }]
    }
    if (event.type !== 'foodEnded' || event.end === 'crew') return []
    const { lot, along, end, amount } = event
    if (lot === undefined || along === undefined || amount === 0) return []
    return [
      { type: 'lotSetAside', lot, amount, food: foodOf(service, after, event, { end, along }) },
    ]
  })
}
