/** What of a stopped build's food is thrown out, and what may go back on sale. */

import { sharingWith } from '#lib/rooms/care/facts/lent-scoops.ts'
import { boundAt, clockDoubt, stockOf, stockPlacesOf } from '#lib/service/held-stock.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { Build, RunningState } from '#lib/service/state.ts'

/** Why all of it goes: it is made, or it is kept apart and another scoop was in one of its pans. */
export type WholeBecause = Extract<Refusal, { readonly code: 'thrown-out-whole' }>['because']

export interface FoodInIt {
  /** null where what wasn't in it is back on sale. */
  readonly whole: WholeBecause | null
  /** Components whose lidded cup may not be put back: those are counted as in it. */
  readonly staysOut: readonly string[]
}

const isKeptApart = ({ choice, hold }: Build): boolean =>
  [...choice.needs, ...(hold?.told?.needs ?? [])].some(({ handling }) => handling === 'keep-apart')

const taken = ({ takes }: Build): readonly string[] =>
  Object.keys(takes).filter((id) => (takes[id] ?? 0) > 0)

/** The clock was set back since it was started: what came after that isn't told by its time. */
const isUnsure = ({ since, setBackSince }: Build): boolean => setBackSince === since

/** A pan that was changed since tells nothing of the one before it: a scoop may have been in that. */
const hadWrongScoop = (state: RunningState, build: Build): boolean =>
  isUnsure(build) ||
  taken(build).some((id) => sharingWith(state, id).length > 0) ||
  taken(build)
    .flatMap((id) => stockPlacesOf(state, id))
    .some(({ what, id }) => {
      const stock = stockOf(state, what, id)
      return stock !== undefined && (stock.soiledBy.length > 0 || stock.loadedAt > build.since)
    })

/** Whether the food that stands there is the food of then, known, and sold on. */
const standsAsThen = (
  state: RunningState,
  { what, id }: ReturnType<typeof stockPlacesOf>[number],
  then: number,
): boolean => {
  const stock = stockOf(state, what, id)
  if (!stock || stock.offSale !== null || stock.loadedAt > then) return false
  if (boundAt(state, what, id) !== undefined) return false
  // Emptied, or thrown out: nobody knows which.
  if (stock.food === null && stock.amount <= 0 && stock.load > 0) return false
  return clockDoubt(state, what, id) === null
}

/** What is known of it: pure, the same for the decision and for the screen. */
export const foodInIt = (state: RunningState, build: Build): FoodInIt => {
  if (build.state === 'made' || build.state === 'handed-over')
    return { whole: 'made', staysOut: [] }
  if (build.hold && isKeptApart(build) && hadWrongScoop(state, build))
    return { whole: 'wrong-scoop', staysOut: [] }
  const onTheSide = taken(build).filter((id) => build.choice.parts[id]?.placement === 'side')
  // What was taken back may be food of any time before.
  const isOlder = build.boundTo !== undefined || isUnsure(build)
  return {
    whole: null,
    staysOut: onTheSide.filter(
      (id) =>
        isOlder ||
        !stockPlacesOf(state, id).every((place) => standsAsThen(state, place, build.since)),
    ),
  }
}

/** Why it can't be that only these were in it; null where it can. */
export const refusedInIt = (
  state: RunningState,
  build: Build,
  name: string,
  inIt: readonly string[],
): Refusal | null => {
  const takes = taken(build)
  const foreign = inIt.find((id) => !takes.includes(id))
  if (foreign !== undefined) return { code: 'not-in-build', build: name, component: foreign }
  if (inIt.length === 0 || new Set(inIt).size < inIt.length)
    return { code: 'food-in-it-unclear', build: name }
  const { whole, staysOut } = foodInIt(state, build)
  if (whole) return { code: 'thrown-out-whole', build: name, because: whole }
  const cup = staysOut.find((id) => !inIt.includes(id))
  return cup === undefined ? null : { code: 'cup-stays-out', build: name, component: cup }
}
