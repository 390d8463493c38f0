import type { Soil } from '#lib/needs/contact.ts'
import { judgeComponent, strictest } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { takenComponents } from '#lib/service/events/build-choice.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { SHELF } from '#lib/service/shelf.ts'
import type { Build, Hold, RunningState, Ticket } from '#lib/service/state.ts'
import type { Asked, Need } from '#lib/station/codes/codes.ts'
import { componentOf, pansOf } from '#lib/station/find.ts'

/** A pan that another component's scoop went into, or was lent to: names of both. */
export interface WrongScoop {
  readonly pan: string
  readonly by: string
  /** It was meant to be there: it stands in, or stood in. */
  readonly lent: boolean
  /**
   * How it comes to a build that doesn't take from that pan: over what it takes, by name, which
   * touches the pan itself or is reached by it over others. null: it takes from the pan.
   */
  readonly over: {
    readonly component: string | null
    /** The name takes a verb of many. */
    readonly isPlural: boolean
    readonly touches: boolean
  } | null
}

/** Why a build may not go on, with what a screen says of it. */
export type WhyHeld =
  | { readonly reason: 'need'; readonly asked: Asked; readonly needs: readonly Need[] }
  | { readonly reason: 'label'; readonly ingredients: readonly string[] }
  | { readonly reason: 'contact'; readonly scoops: readonly WrongScoop[] }
  /** Names of what it took, or could have, that is off sale. */
  | {
      readonly reason: 'off-sale'
      readonly components: readonly string[]
      /** The shelf on which it stands is out of its limits. */
      readonly shelf?: true
    }

const changedLabels = (state: RunningState, { at }: Hold): readonly string[] => {
  const before = state.labelChanges.filter((one) => one.at <= at)
  const newest = before.at(-1)?.at
  const ids = before.filter((one) => one.at === newest).map((one) => one.ingredient)
  return [...new Set(ids)].map(
    (id) => state.station.ingredients.find((one) => one.id === id)?.name ?? id,
  )
}

/** What a build takes that what a scoop carried comes to; null where nothing tells. */
const reachedBy = (state: RunningState, build: Build, { component, by }: Soil) => {
  const isOver = (id: string) =>
    judgeComponent(kitchenOf(state), id, needsOf(build)).findings.some(
      (one) => one.why === 'contact' && one.reached.includes(by),
    )
  const isBeside = (id: string) =>
    state.station.contacts?.some(
      ({ components }) => components.includes(id) && components.includes(component),
    ) ?? false
  try {
    const over = takenComponents(build.choice).filter(isOver)
    const beside = over.find(isBeside)
    const found = beside ?? over[0]
    const component = found === undefined ? null : componentOf(state.station, found)
    return {
      component: component?.name ?? null,
      isPlural: component?.plural === true,
      touches: beside !== undefined,
    }
  } catch {
    return { component: null, isPlural: false, touches: false }
  }
}

/** Scoops that stand in, or stood in, from or to what the build takes. */
const lentScoops = (state: RunningState, taken: readonly string[]): readonly WrongScoop[] =>
  Object.values(state.lent)
    .filter(({ component, by }) => taken.includes(component) || taken.includes(by))
    .map(({ component, by }) => ({
      pan: componentOf(state.station, component).name,
      by: componentOf(state.station, by).name,
      lent: true,
      over: null,
    }))

/** Wrong scoops in what the build takes; where there is none in those, every one on the line. */
const wrongScoops = (state: RunningState, build: Build): readonly WrongScoop[] => {
  const taken = takenComponents(build.choice)
  const all = pansOf(state.station).flatMap((pan) =>
    (state.pans[pan.id]?.soiledBy ?? []).map((by) => ({ component: pan.component, by })),
  )
  const own = all.filter((one) => taken.includes(one.component))
  const scoops = (own.length > 0 ? own : all).map((soil) => ({
    pan: componentOf(state.station, soil.component).name,
    by: componentOf(state.station, soil.by).name,
    lent: false,
    over: own.length > 0 ? null : reachedBy(state, build, soil),
  }))
  const known = scoops.filter(({ over }) => over !== null && over.component !== null)
  const lent = lentScoops(state, taken)
  if (known.length > 0) return [...known, ...lent]
  return own.length === 0 && lent.length > 0 ? lent : [...scoops, ...lent]
}

const offSaleIn = ({ station }: RunningState, { pans = [] }: Hold): readonly string[] => {
  const ids = new Set(pans.flatMap((pan) => componentIn(station, pan) ?? []))
  return [...ids].map((id) => componentOf(station, id).name)
}

export const whyHeld = (state: RunningState, build: Build, hold: Hold): WhyHeld => {
  switch (hold.reason) {
    case 'need':
      return {
        reason: 'need',
        asked: hold.told?.asked ?? 'not-sure',
        needs: hold.told?.needs ?? [],
      }
    case 'label':
      return { reason: 'label', ingredients: changedLabels(state, hold) }
    case 'contact':
      return { reason: 'contact', scoops: wrongScoops(state, build) }
    case 'off-sale':
      return {
        reason: 'off-sale',
        components: offSaleIn(state, hold),
        ...(hold.pans?.includes(SHELF) ? { shelf: true } : {}),
      }
  }
}

/** The needs of a build's choice and those that were told after it was sent, the stricter of two. */
export const needsOf = ({ choice, hold }: Build): readonly Need[] =>
  strictest([...choice.needs, ...(hold?.told?.needs ?? [])])

/** Whether any guest of a ticket asked for anything, by then. */
export const hasNeeds = (ticket: Ticket): boolean =>
  ticket.builds.some((build) => needsOf(build).length > 0 || build.hold?.reason === 'need')
