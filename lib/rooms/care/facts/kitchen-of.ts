/** The kitchen of a service, as what judges needs reads it. */

import type { Soil } from '#lib/needs/contact.ts'
import type { Kitchen } from '#lib/needs/kitchen.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findPan } from '#lib/station/find.ts'
import { asReadOn } from '#lib/station/read-again.ts'
import type { StationDocument } from '#lib/station/station-document.ts'

/** Kitchens by what else is in them than the document: few at any time. */
const kitchens = new WeakMap<StationDocument, Map<string, Kitchen>>()

const MOST_KITCHENS = 24

const kitchenWith = (kitchen: Kitchen): Kitchen => {
  const { station, soiled, soiledBehind, lent, ready } = kitchen
  const key = JSON.stringify([soiled, soiledBehind, lent, ready])
  const all = kitchens.get(station) ?? new Map<string, Kitchen>()
  kitchens.set(station, all)
  const known = all.get(key)
  if (known) return known
  if (all.size >= MOST_KITCHENS) all.clear()
  all.set(key, kitchen)
  return kitchen
}

type Stock = RunningState['pans'][string]

const NONE: readonly Soil[] = []

const isSameMark = (one: Soil, other: Soil): boolean =>
  one.component === other.component && one.by === other.by

const marksIn = (
  stock: Readonly<Record<string, Stock>>,
  componentOf: (id: string) => string | undefined,
  madeIn: number,
): readonly Soil[] =>
  Object.keys(stock).flatMap((id) => {
    const one = stock[id]
    const component = one?.soiledBy.length ? componentOf(id) : undefined
    if (component === undefined || !one || (one.loadedIn ?? 0) > madeIn) return NONE
    return one.soiledBy.flatMap((by) =>
      (one.probedIn?.[by] ?? 0) > madeIn ? NONE : [{ component, by }],
    )
  })

/** Where in the log food was made: begun, and finished; left away where that isn't known, or to come. */
export interface Making {
  readonly begunIn?: number
  readonly madeIn?: number
}

/** Any food that was ever taken, and may yet be. */
const ANY: Making = {}

const kitchenIn = (state: RunningState, making: Making | null): Kitchen => {
  const { begunIn = 0, madeIn = Number.POSITIVE_INFINITY } = making ?? ANY
  const wiped = making
    ? (state.wiped ?? []).filter(({ from, until }) => from <= madeIn && until >= begunIn)
    : []
  const of = (where: (typeof wiped)[number]['where'], marks: readonly Soil[]): readonly Soil[] => {
    const all = [...marks]
    for (const { component, by, ...one } of wiped)
      if (one.where === where && !all.some((other) => isSameMark({ component, by }, other)))
        all.push({ component, by })
    return all
  }
  const { station, pans, backupPans } = state
  const onLine = marksIn(pans, (id) => findPan(station, id)?.component, madeIn)
  const behind = marksIn(backupPans, (id) => backupPans[id]?.component, madeIn)
  const lent = Object.values(state.lent)
    .filter(({ sinceIn = 0 }) => sinceIn <= madeIn)
    .map(({ component, by }) => ({ component, by }))
  return kitchenWith({
    station: asReadOn(station, state.servedOn),
    soiled: of('line', onLine),
    soiledBehind: of('behind', behind),
    lent: of('lent', lent),
    ready: Object.keys(state.backups),
  })
}

/** Of a state, which never changes: worked out once. */
const kitchenNow = new WeakMap<RunningState, Kitchen>()

/** The kitchen of a service as it is now; the same object while nothing of it changes. */
export const kitchenOf = (state: RunningState): Kitchen => {
  const known = kitchenNow.get(state) ?? kitchenIn(state, null)
  kitchenNow.set(state, known)
  return known
}

/**
 * The kitchen as food that was made from one place in the log to another may have met it. What went
 * into a pan that was loaded since isn't in it, nor what a scoop brings that was lent since; of the
 * others nobody knows when it went in. What was in a pan as food was made stays in that food, though
 * the pan was changed since.
 */
export const kitchenMet = (state: RunningState, making: Making): Kitchen => {
  const now = kitchenOf(state)
  const { soiled, soiledBehind = NONE, lent } = now
  const isClean = soiled.length === 0 && soiledBehind.length === 0 && lent.length === 0
  return isClean && !state.wiped ? now : kitchenIn(state, making)
}
