/** Folds what is put into pans, on the line and behind it. */

import { afterCleaning } from '#lib/rooms/care/facts/lent-scoops.ts'
import { mixKey, movedMix, unmixedBy } from '#lib/rooms/care/facts/mixing.ts'
import { soiledFromBackup, withLeft } from '#lib/rooms/care/facts/soiling.ts'
import { withRest } from '#lib/rooms/food/facts/rest-of-pan.ts'
import { addToAccounts } from '#lib/service/accounts.ts'
import type { PanChanged, PanLoaded, Stamp } from '#lib/service/events/event.ts'
import type { LoadedFood, PanToppedUp } from '#lib/service/events/food-event.ts'
import type { BackupSet } from '#lib/service/events/line-event.ts'
import { backupsInStep } from '#lib/service/folding/backups-in-step.ts'
import { EMPTY_STOCK, type HeldStock } from '#lib/service/food-state.ts'
import { componentIn, emptied, findBackup, withStock } from '#lib/service/held-stock.ts'
import type { RunningState } from '#lib/service/state.ts'
import { without } from '#lib/service/without.ts'

const componentOfPan = (state: RunningState, id: string): string => {
  const component = componentIn(state.station, id)
  if (component === undefined) throw new Error(`the line has no pan ${id}`)
  return component
}

const countLoaded = (
  state: RunningState,
  { batch, into }: { readonly batch: string | null | undefined; readonly into: string },
  amount: number,
): RunningState => {
  const known = batch == null ? undefined : state.batches[batch]
  if (batch == null) return state
  if (!known) throw new Error(`there is no batch ${batch}`)
  const next = {
    ...state,
    batches: { ...state.batches, [batch]: { ...known, loaded: known.loaded + amount } },
  }
  // The batch keeps what is mixed in it.
  return { ...next, ...movedMix(next, mixKey({ what: 'batch', id: batch }), into, true) }
}

const filled = (
  before: HeldStock,
  event: LoadedFood & Stamp,
  amount: number,
  soiledBy: readonly string[],
  batches: readonly string[],
): HeldStock => ({
  ...EMPTY_STOCK,
  amount,
  full: amount,
  load: before.load + 1,
  counted: before.counted,
  loadedAt: event.at,
  loadedIn: event.position,
  soiledBy,
  batches,
  food: event.food ?? null,
  since: event.reading?.at ?? event.at,
  readings: event.reading ? [event.reading] : [],
})

/** Components whose scoop was in what is put in: in a back-up pan, or in a lot of the larder. */
const broughtBy = (
  { batches }: RunningState,
  batch: string | null | undefined,
  source: HeldStock | undefined,
): readonly string[] => [
  ...(source?.soiledBy ?? []),
  ...(batch == null ? [] : (batches[batch]?.soiledBy ?? [])),
]

/** A load, or another pan for the one on the line, of new food or of a back-up pan. */
export const loaded = (
  before: RunningState,
  event: (PanLoaded | PanChanged) & Stamp,
): RunningState => {
  const component = componentOfPan(before, event.pan)
  const isChange = event.type === 'panChanged'
  const isWashed = isChange || event.washed === true
  const source = event.from == null ? undefined : before.backupPans[event.from]
  const cleaned = isWashed
    ? {
        ...withLeft(before, event.leaves ?? []),
        ...unmixedBy(before, event.pan),
        lent: afterCleaning(before, event.pan),
      }
    : before
  const own = before.pans[event.pan]
  let state = withStock(cleaned, 'pan', event.pan, (pan) =>
    filled(
      pan,
      event,
      event.amount,
      [...new Set([...(isWashed ? [] : pan.soiledBy), ...broughtBy(before, event.batch, source)])],
      source ? source.batches : event.batch == null ? [] : [event.batch],
    ),
  )
  if (!own) throw new Error(`the line has no pan ${event.pan}`)
  const { [event.pan]: _, ...containers } = state.containers
  state = { ...state, containers: isChange ? containers : state.containers }
  if (event.type === 'panChanged') {
    const { takenAway, rest, at } = event
    state = {
      ...state,
      accounts: addToAccounts(state.accounts, 'takenAway', { [component]: takenAway }),
    }
    state = withRest(state, rest, { component, amount: takenAway, at })
  }
  if (event.from == null) {
    state = countLoaded(state, { batch: event.batch, into: event.pan }, event.amount)
    return {
      ...state,
      accounts: addToAccounts(state.accounts, 'loaded', { [component]: event.amount }),
    }
  }
  const place = findBackup(state.station, event.from)
  if (!source || !place) throw new Error(`there is no back-up pan ${event.from}`)
  const { size, depthIn, tareMg } = place
  state = {
    ...state,
    ...movedMix(state, event.from, event.pan),
    containers: { ...state.containers, [event.pan]: { size, depthIn, tareMg } },
    accounts: addToAccounts(state.accounts, 'corrected', {
      [component]: event.amount - source.amount,
    }),
  }
  return backupsInStep(cleared(state, event.from), [component])
}

/** A clean back-up pan is as the document says it again. */
const unguarded = (state: RunningState, id: string): RunningState => {
  const pan = state.backupPans[id]
  const place = findBackup(state.station, id)
  if (!pan || !place) throw new Error(`there is no back-up pan ${id}`)
  return {
    ...state,
    backupPans: { ...state.backupPans, [id]: { ...pan, guarded: place.protected } },
  }
}

/** A back-up pan of which all went is clean. */
const cleared = (state: RunningState, id: string): RunningState =>
  unguarded(
    withStock(state, 'backup', id, (one) => ({ ...emptied(one), soiledBy: [] })),
    id,
  )

/** Food added to food. */
export const toppedUp = (before: RunningState, event: PanToppedUp & Stamp): RunningState => {
  const component = componentOfPan(before, event.pan)
  const source = event.from === null ? undefined : before.backupPans[event.from]
  let state = withStock(before, 'pan', event.pan, (pan) => ({
    ...pan,
    amount: pan.amount + event.amount,
    full: Math.max(pan.full, pan.amount + event.amount),
    food: event.food,
    batches: [
      ...new Set([
        ...pan.batches,
        ...(source?.batches ?? []),
        ...(event.batch === null ? [] : [event.batch]),
      ]),
    ],
    soiledBy: [...new Set([...pan.soiledBy, ...broughtBy(before, event.batch, source)])],
  }))
  if (event.from === null) {
    state = countLoaded(state, { batch: event.batch, into: event.pan }, event.amount)
    return {
      ...state,
      accounts: addToAccounts(state.accounts, 'loaded', { [component]: event.amount }),
    }
  }
  if (!source) throw new Error(`there is no back-up pan ${event.from}`)
  const isAll = event.amount >= source.amount
  state = { ...state, ...movedMix(state, event.from, event.pan, !isAll) }
  state = isAll
    ? cleared(state, event.from)
    : withStock(state, 'backup', event.from, (one) => ({
        ...one,
        amount: one.amount - event.amount,
      }))
  return backupsInStep(state, [component])
}

const unprotected = (state: RunningState, id: string): RunningState => {
  const pan = state.backupPans[id]
  if (!pan) return state
  return { ...state, backupPans: { ...state.backupPans, [id]: { ...pan, guarded: false } } }
}

/** A back-up pan is filled, put away, or a foreign scoop went into it. */
export const backupSet = (before: RunningState, event: BackupSet & Stamp): RunningState => {
  const { component, backup, amount, soiledBy } = event
  const scooped =
    soiledBy === undefined
      ? before
      : { ...before, pans: soiledFromBackup(before, component, soiledBy) }
  if (backup === undefined)
    return {
      ...scooped,
      backups: event.ready
        ? { ...before.backups, [component]: event.at }
        : without(before.backups, component),
    }
  let state = scooped
  if (event.takenAway !== undefined) {
    state = {
      ...cleared(state, backup),
      ...unmixedBy(state, backup),
      accounts: addToAccounts(state.accounts, 'takenAway', { [component]: event.takenAway }),
    }
    state = withRest(state, event.rest, { component, amount: event.takenAway, at: event.at })
  }
  if (event.ready && amount !== undefined) {
    state = withStock(state, 'backup', backup, (one) =>
      filled(
        one,
        event,
        amount,
        [...new Set([...(event.carries ?? []), ...broughtBy(before, event.batch, undefined)])],
        event.batch == null ? [] : [event.batch],
      ),
    )
    // It is a clean one: food that was used up left nothing in it.
    state = { ...unguarded(state, backup), ...unmixedBy(state, backup) }
    if (event.carries) state = unprotected(state, backup)
    state = countLoaded(state, { batch: event.batch, into: backup }, amount)
    state = { ...state, accounts: addToAccounts(state.accounts, 'loaded', { [component]: amount }) }
  }
  if (soiledBy !== undefined)
    state = withStock(state, 'backup', backup, (one) => ({
      ...one,
      soiledBy: [...new Set([...one.soiledBy, soiledBy])],
    }))
  // It stays, with what it holds, but no keep-apart build takes from it any more.
  if (!event.ready && event.takenAway === undefined) state = unprotected(state, backup)
  return backupsInStep(state, [component])
}
