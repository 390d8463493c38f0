import { componentOf, pansOf } from '#lib/menu/find.ts'
import type { Asked, Need } from '#lib/needs/codes.ts'
import { strictest } from '#lib/needs/judge.ts'
import { takenComponents } from '#lib/service/build-choice.ts'
import type { Build, Hold, RunningState, Ticket } from '#lib/service/state.ts'

/** A pan that another component's scoop went into: names of both. */
export interface WrongScoop {
  readonly pan: string
  readonly by: string
}

/** Why a build may not go on, with what a screen says of it. */
export type WhyHeld =
  | { readonly reason: 'need'; readonly asked: Asked; readonly needs: readonly Need[] }
  | { readonly reason: 'label'; readonly ingredients: readonly string[] }
  | { readonly reason: 'contact'; readonly scoops: readonly WrongScoop[] }

const changedLabels = (state: RunningState, { at }: Hold): readonly string[] => {
  const before = state.labelChanges.filter((one) => one.at <= at)
  const newest = before.at(-1)?.at
  const ids = before.filter((one) => one.at === newest).map((one) => one.ingredient)
  return [...new Set(ids)].map(
    (id) => state.station.ingredients.find((one) => one.id === id)?.name ?? id,
  )
}

/** Wrong scoops in what the build takes; where there is none in those, every one on the line. */
const wrongScoops = (state: RunningState, build: Build): readonly WrongScoop[] => {
  const taken = takenComponents(build.choice)
  const all = pansOf(state.station).flatMap((pan) =>
    (state.pans[pan.id]?.soiledBy ?? []).map((by) => ({ component: pan.component, by })),
  )
  const own = all.filter((one) => taken.includes(one.component))
  return (own.length > 0 ? own : all).map(({ component, by }) => ({
    pan: componentOf(state.station, component).name,
    by: componentOf(state.station, by).name,
  }))
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
  }
}

/** The needs of a build's choice and those that were told after it was sent, the stricter of two. */
export const needsOf = ({ choice, hold }: Build): readonly Need[] =>
  strictest([...choice.needs, ...(hold?.told?.needs ?? [])])

/** Whether any guest of a ticket asked for anything, by then. */
export const hasNeeds = (ticket: Ticket): boolean =>
  ticket.builds.some((build) => needsOf(build).length > 0 || build.hold?.reason === 'need')
