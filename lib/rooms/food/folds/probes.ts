/** Folds where probes were, and the protection that one ends. */

import { anyFood, probeKey, probeTrail } from '#lib/rooms/food/facts/probe-trail.ts'
import type { Reading } from '#lib/safety/readings.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import type { Place } from '#lib/service/events/food-event.ts'
import { backupsInStep } from '#lib/service/folding/backups-in-step.ts'
import type { ProbedFood } from '#lib/service/food-state.ts'
import { componentIn, stockOf, withStock } from '#lib/service/held-stock.ts'
import { componentAt } from '#lib/service/place.ts'
import type { RunningState } from '#lib/service/state.ts'

interface Probing {
  readonly reading: Reading
  /** null: made food on the shelf, which is of any component. */
  readonly place: Place | null
}

const at = (what: Place['what'], id: string): Place => ({ what, id })

/** Which food a reading that an event tells of is of; null where it tells of none. */
const probingOf = (event: Recorded): Probing | null => {
  if (!('reading' in event) || !event.reading) return null
  const { reading } = event
  // What goes along with food on time alone is an older reading, but for the one that starts its clock.
  const isOfNow = 'startsClock' in event && event.startsClock === true
  if ('food' in event && event.food?.heldBy === 'time' && !isOfNow) return null
  switch (event.type) {
    case 'panLoaded':
    case 'panChanged':
    case 'panToppedUp':
      return { reading, place: at('pan', event.pan) }
    case 'backupSet':
      return event.backup === undefined ? null : { reading, place: at('backup', event.backup) }
    case 'batchCooked':
    case 'coolingRead':
    case 'batchReheated':
      return { reading, place: at('batch', event.batch) }
    case 'timeClockStarted':
    case 'temperatureRead':
    case 'offSaleResolved':
      return { reading, place: event }
    case 'shelfRead':
      return { reading, place: null }
    default:
      return null
  }
}

/** What a probe has on it that was in a place: its food, and what scoops left in that. */
const foodAt = (state: RunningState, place: Place | null): readonly ProbedFood[] => {
  const component = place && componentAt(state, place.what, place.id)
  if (!place || component == null) return anyFood(state)
  const { what, id } = place
  const behind = what === 'batch' || (what === 'backup' && state.backupPans[id]?.guarded === true)
  const soiled =
    what === 'batch'
      ? (state.batches[id]?.probedWith ?? [])
      : (stockOf(state, what, id)?.soiledBy ?? [])
  return [{ component, behind }, ...soiled.map((by) => ({ component: by, behind: false }))]
}

const isSame = (one: ProbedFood, other: ProbedFood): boolean =>
  one.component === other.component && one.behind === other.behind

const followed = (state: RunningState, { reading, place }: Probing): RunningState => {
  const { probe, cleaned } = reading
  if (!state.probes || probe === null) return state
  const key = probeKey(probe)
  const before = cleaned === true ? [] : probeTrail(state, probe)
  const more = foodAt(state, place).filter((one) => !before.some((had) => isSame(had, one)))
  return { ...state, probes: { ...state.probes, [key]: [...before, ...more] } }
}

/**
 * A probe went in that carried these: the pan is marked so, and protected no longer.
 * @param since where in the log; null where that was told later, so that food of before may have met it
 */
const ended = (
  state: RunningState,
  id: string,
  brought: readonly string[],
  since: number | null,
): RunningState => {
  const marked = withStock(state, 'backup', id, (one) => {
    const fresh = brought.filter((by) => !one.soiledBy.includes(by))
    if (fresh.length === 0) return one
    const probed = since === null ? [] : fresh.map((by) => [by, since] as const)
    return {
      ...one,
      soiledBy: [...one.soiledBy, ...fresh],
      ...(probed.length === 0
        ? {}
        : { probedIn: { ...one.probedIn, ...Object.fromEntries(probed) } }),
    }
  })
  const pan = marked.backupPans[id]
  const component = componentIn(state.station, id)
  if (!pan || component === undefined) throw new Error(`there is no back-up pan ${id}`)
  const backupPans = { ...marked.backupPans, [id]: { ...pan, guarded: false } }
  return backupsInStep({ ...marked, backupPans }, [component])
}

const intoBatch = (state: RunningState, id: string, brought: readonly string[]): RunningState => {
  const batch = state.batches[id]
  if (!batch) throw new Error(`there is no batch ${id}`)
  const probedWith = [...new Set([...(batch.probedWith ?? []), ...brought])].sort()
  return { ...state, batches: { ...state.batches, [id]: { ...batch, probedWith } } }
}

/** Folded after every event, with what it told. */
export const withProbes = (state: RunningState, event: Recorded): RunningState => {
  const probing = probingOf(event)
  if (!probing) return state
  const { place, reading } = probing
  if (!('brought' in event) || !event.brought || !place || place.what === 'pan')
    return followed(state, probing)
  if (place.what === 'batch') return followed(intoBatch(state, place.id, event.brought), probing)
  const since = reading.at === event.at ? event.position : null
  return followed(ended(state, place.id, event.brought, since), probing)
}
