/** What the lead can do something about now. Plain facts of the pans: nothing here is forecast. */

import {
  guestsToFind,
  type HeldBuild,
  heldBuilds,
  unreadLabels,
} from '#lib/rooms/care/facts/first-of-all.ts'
import { type HandedOverList, handedOverLists } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { amountOf, type PanPicture, panPictures } from '#lib/rooms/pans/facts/pans.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import type { HoldReason } from '#lib/service/events/event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'
import { pansOf } from '#lib/station/find.ts'
import { ingredientIn } from '#lib/station/ingredient-name.ts'

export interface PanLoad {
  readonly pan: string
  /** Milligrams or pieces. */
  readonly amount: number
}

export type ToDo =
  | {
      /** Guests who were handed something that no longer fits them, by what changed. */
      readonly kind: 'find'
      readonly reason: HoldReason
      readonly builds: readonly string[]
    }
  | {
      /** Builds that may not go on as they are. */
      readonly kind: 'hold'
      readonly reason: HoldReason
      readonly builds: readonly string[]
    }
  | ({
      /** Builds that were handed over with food which was found bad later. */
      readonly kind: 'handed-over'
    } & HandedOverList)
  | { readonly kind: 'read-label'; readonly ingredient: string; readonly name: string }
  | {
      /** A pan that holds a product from before its label changed. */
      readonly kind: 'product-before'
      readonly pan: string
      readonly component: string
      /** Names of the ingredients. */
      readonly ingredients: readonly string[]
    }
  | { readonly kind: 'confirm-clock'; readonly byMs: number }
  | { readonly kind: 'load'; readonly loads: readonly PanLoad[] }
  | {
      readonly kind: 'short'
      readonly pan: string
      readonly component: string
      /** Portions that are lacking. */
      readonly lacking: number
      /** Names of the builds it hits, newest first. */
      readonly builds: readonly string[]
    }
  | {
      readonly kind: 'sold-out'
      readonly pan: string
      readonly component: string
      readonly onTickets: number
    }
  | {
      readonly kind: 'nearly-empty'
      readonly pan: string
      readonly component: string
      /** Portions left to sell. */
      readonly left: number
    }

/** A load of its usual portions for every pan into which nothing was put yet. */
export const usualLoads = (state: RunningState): readonly PanLoad[] =>
  pansOf(state.station)
    .filter((pan) => state.pans[pan.id]?.load === 0 && state.pans[pan.id]?.amount === 0)
    .map((pan) => ({ pan: pan.id, amount: amountOf(state, pan.component, pan.usualPortions) }))

/** Builds that lack a component, by its id, newest first. */
export const shortByComponent = (state: RunningState): ReadonlyMap<string, readonly string[]> => {
  const lacks = shortBuilds(state)
  const found = new Map<string, string[]>()
  for (const { ticket, build } of [...openBuilds(state)].reverse()) {
    const name = buildName(ticket.number, build.letter)
    const component = lacks.get(name)
    if (component !== undefined) found.set(component, [...(found.get(component) ?? []), name])
  }
  return found
}

/** The emptiest pan of each component: the one to change. */
const emptiest = (pictures: readonly PanPicture[]): readonly PanPicture[] => {
  const found = new Map<string, PanPicture>()
  for (const one of pictures) {
    const before = found.get(one.component)
    if (!before || one.filled < before.filled) found.set(one.component, one)
  }
  return [...found.values()]
}

const byReason = <Kind extends 'find' | 'hold'>(
  kind: Kind,
  builds: readonly HeldBuild[],
): readonly { kind: Kind; reason: HoldReason; builds: readonly string[] }[] =>
  [...new Set(builds.map((one) => one.reason))].map((reason) => ({
    kind,
    reason,
    builds: builds.filter((one) => one.reason === reason).map((one) => one.name),
  }))

/** Confirming the clock helps, and that is told. */
const isOfClock = ({ trouble }: PanPicture): boolean => trouble === 'unread' || trouble === 'timed'

/** Labels that nobody has read: those that changed in this service, and those that never were. */
const toRead = (state: RunningState) => {
  const changed = new Set(state.labelChanges.map((one) => one.ingredient))
  const unread = unreadLabels(state.station).map(({ id, name }) => ({
    kind: 'read-label' as const,
    ingredient: id,
    name,
  }))
  return {
    changed: unread.filter((one) => changed.has(one.ingredient)),
    others: unread.filter((one) => !changed.has(one.ingredient)),
  }
}

/** Pans that count as two products until they are changed, in the order of the line. */
const toChange = ({ station, mixing }: RunningState) => {
  const name = ingredientIn(station)
  return pansOf(station).flatMap(({ id, component }) => {
    const ingredients = Object.keys(mixing).filter((one) => mixing[one]?.pans.includes(id))
    return ingredients.length === 0
      ? []
      : [
          {
            kind: 'product-before' as const,
            pan: id,
            component,
            ingredients: ingredients.map(name),
          },
        ]
  })
}

/**
 * All there is to do, most pressing first: guests to find, a clock that jumped, builds that are held,
 * builds handed over with food that was found bad, pans to load, builds that are short, labels that changed and aren't read, pans that
 * hold a product from before, what is sold out, pans under a quarter (the emptiest first), labels that nobody ever read. What isn't sold by
 * choice is only asked for where builds are short of it.
 */
export const toDos = (state: RunningState): readonly ToDo[] => {
  const pans = emptiest(Object.values(panPictures(state)))
  const short = shortByComponent(state)
  const loads = usualLoads(state)
  const of = (standing: PanPicture['standing']) =>
    pans.filter(
      (one) =>
        one.standing === standing &&
        (one.trouble === null || (standing === 'short' && !isOfClock(one))),
    )
  const labels = toRead(state)
  return [
    ...byReason('find', guestsToFind(state)),
    // It may be why a build is held, and confirming it lifts that.
    ...(state.clockJump ? [{ kind: 'confirm-clock' as const, byMs: state.clockJump.byMs }] : []),
    ...byReason('hold', heldBuilds(state)),
    ...handedOverLists(state).map((list) => ({ kind: 'handed-over' as const, ...list })),
    ...(loads.length > 0 ? [{ kind: 'load' as const, loads }] : []),
    ...of('short').map(({ pan, component, lacking }) => ({
      kind: 'short' as const,
      pan,
      component,
      lacking,
      builds: short.get(component) ?? [],
    })),
    ...labels.changed,
    ...toChange(state),
    ...of('sold-out')
      .filter((one) => one.selling)
      .map(({ pan, component }) => ({
        kind: 'sold-out' as const,
        pan,
        component,
        onTickets: Math.ceil(levelOf(state, component).onTickets / amountOf(state, component, 1)),
      })),
    ...Object.values(panPictures(state))
      .filter(
        (one) =>
          one.selling &&
          one.trouble === null &&
          (one.standing === 'nearly-empty' || one.standing === 'empty'),
      )
      .sort((one, other) => one.filled - other.filled)
      .map(({ pan, component, left }) => ({
        kind: 'nearly-empty' as const,
        pan,
        component,
        left,
      })),
    ...labels.others,
  ]
}
