/** What a station is opened with where nobody is there to read and load: for the demo and for trials. */

import { civilDate } from '#lib/measure/civil.ts'
import { needsBatch } from '#lib/rooms/food/facts/food-now.ts'
import {
  cookedReading,
  INVENTED_INITIALS,
  readingInLimits,
} from '#lib/rooms/food/facts/invented-readings.ts'
import { inventedSolution } from '#lib/rooms/food/facts/sanitizer.ts'
import { MINUTE_MS } from '#lib/safety/limits.ts'
import { findBackup } from '#lib/service/held-stock.ts'
import type { Command } from '#lib/spine/registry.ts'
import { findPan, pansOf } from '#lib/station/find.ts'
import { portionOf } from '#lib/station/portion.ts'
import type { Component, StationDocument } from '#lib/station/station-document.ts'

/** The id of the batch that a component is opened with. */
export const openingBatch = (component: string): string => `opening-${component}`.slice(0, 40)

/**
 * A finished batch of what is made here, of so much; nothing of what isn't.
 * @param told `isDated` marks cold food with the day on which it was made; without a mark its day ends
 * at midnight, which may be minutes away
 */
export const batchCommands = (
  station: StationDocument,
  component: Component,
  amount: number,
  told: { readonly now: number; readonly batch?: string; readonly isDated?: boolean },
): readonly Command[] => {
  const { now, batch = openingBatch(component.id), isDated = false } = told
  const reading = cookedReading(station, component, now - 20 * MINUTE_MS)
  const startedAt = now - 60 * MINUTE_MS
  const dated =
    isDated && component.held === 'cold'
      ? { preparedOn: civilDate(startedAt, station.timeZone) }
      : {}
  if (!needsBatch(component)) return []
  return [
    {
      type: 'startBatch',
      batch,
      component: component.id,
      loads: 1,
      startedAt,
    },
    ...(reading
      ? [{ type: 'recordCooking', batch, reading, initials: INVENTED_INITIALS } as const]
      : []),
    { type: 'finishBatch', batch, amount, finishedAt: now - 15 * MINUTE_MS, ...dated },
  ]
}

/**
 * What a load of a component says beside its pan and amount: its batch, or a pack opened today.
 * @param cleaned whether its probe was cleaned before: said of what is put into a back-up pan
 */
export const loadFields = (
  station: StationDocument,
  component: Component,
  {
    now,
    batch = openingBatch(component.id),
    cleaned,
  }: { readonly now: number; readonly batch?: string; readonly cleaned?: boolean | undefined },
) => {
  const read = readingInLimits(station, component)
  const reading = read && (cleaned === undefined ? read : { ...read, cleaned })
  const bought = { bought: true, preparedOn: civilDate(now, station.timeZone) } as const
  return {
    ...(needsBatch(component) ? { batch } : component.held === 'dry' ? {} : bought),
    ...(reading ? { reading, initials: INVENTED_INITIALS } : {}),
  }
}

/** What a back-up pan usually holds: as much as the pan of its component, or as fits. */
const backupPortions = (station: StationDocument, component: string): number =>
  pansOf(station).find((pan) => pan.component === component)?.usualPortions ?? 1

/**
 * Batches with readings that nobody took, every pan loaded as usual, and the back-up pans standing
 * ready: only for what is invented anyway.
 */
export const openingCommands = (
  station: StationDocument,
  now: number,
  over: {
    /** Ids of the back-up pans that are filled; all of them where left away. */
    readonly backups?: readonly string[]
    /** Portions that each batch gave beyond what the pans take. */
    readonly spare?: number
    /** Cold food is marked with the day on which it was made. */
    readonly isDated?: boolean
  } = {},
): readonly Command[] => {
  const { backups = station.backups.map((one) => one.id), spare = 0, isDated = false } = over
  const places = [
    ...pansOf(station).map((pan) => ({
      id: pan.id,
      component: pan.component,
      portions: pan.usualPortions,
    })),
    ...backups.flatMap((id) => {
      const backup = findBackup(station, id)
      const portions = backup && backupPortions(station, backup.component)
      return backup && portions ? [{ id, component: backup.component, portions }] : []
    }),
  ]
  const solution = inventedSolution(station)
  const loaded = station.components.flatMap((component): Command[] => {
    const own = places.filter((one) => one.component === component.id)
    const { amount: portion } = portionOf(component)
    const all = own.reduce((sum, one) => sum + one.portions, spare) * portion
    return own.length === 0
      ? []
      : [
          ...batchCommands(station, component, all, { now, isDated }),
          ...own.map(({ id, portions }): Command => {
            const isOnLine = findPan(station, id) !== undefined
            const told = isOnLine ? { now } : { now, cleaned: true }
            const food = { amount: portions * portion, ...loadFields(station, component, told) }
            return isOnLine
              ? { type: 'load', pan: id, ...food }
              : {
                  type: 'setBackup',
                  component: component.id,
                  backup: id,
                  ready: true,
                  ...food,
                }
          }),
        ]
  })
  return [
    ...loaded,
    ...(solution
      ? [{ type: 'readSanitizer', ...solution, initials: INVENTED_INITIALS } as const]
      : []),
  ]
}
