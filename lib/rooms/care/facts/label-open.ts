/** What is still open of labels that changed: worked out of what stands now, whichever change made it. */
import { isInIt } from '#lib/needs/allergen-word.ts'
import { declaredIn, waysTo } from '#lib/needs/declared.ts'
import { type Finding, isFine, judgeTaken } from '#lib/needs/judge.ts'
import { needsOf } from '#lib/rooms/care/facts/held.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { takenComponents } from '#lib/service/events/build-choice.ts'
import type { HoldReason } from '#lib/service/events/event.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import { buildName, findBuild, openBuilds } from '#lib/service/tickets.ts'

export interface StillOpen {
  /** Builds that are held, by number. */
  readonly held: readonly string[]
  /** Handed-over builds whose guests are still to be found. */
  readonly find: readonly string[]
}

interface OpenBuild {
  readonly name: string
  readonly reason: HoldReason
  readonly at: number
  readonly build: Build | undefined
}

/** Whether a finding comes through an ingredient, or a product of before that still counts as it. */
const isThrough = (state: RunningState, ingredient: string, finding: Finding): boolean => {
  const { mixing } = state
  const { station } = kitchenOf(state)
  const ids = [ingredient, ...(mixing[ingredient]?.before ?? [])]
  const isOpen = station.ingredients.some(
    (one) => ids.includes(one.id) && isInIt(declaredIn(station, one, finding.need)),
  )
  if (!isOpen || isFine(finding.level)) return false
  const from = [finding.component, ...finding.reached]
  return station.components.some(
    (one) =>
      from.includes(one.id) &&
      [...waysTo(station, one)].some((way) => ids.includes(way.at(-1) ?? '')),
  )
}

/** Ingredients whose labels changed, through which a build doesn't fit as it stands now. */
const throughNow = (
  state: RunningState,
  changed: readonly string[],
  { build }: OpenBuild,
): readonly string[] => {
  if (!build) return []
  try {
    const taken = takenComponents(build.choice)
    const { findings } = judgeTaken(kitchenOf(state), taken, needsOf(build))
    return changed.filter((id) => findings.some((one) => isThrough(state, id, one)))
  } catch {
    return []
  }
}

/** The change by which it was held, where nothing that stands now says through what. */
const byChange = (state: RunningState, { reason, at }: OpenBuild): readonly string[] => {
  if (reason !== 'label') return []
  const before = state.labelChanges.filter((one) => one.at <= at)
  const newest = (before.at(-1) ?? state.labelChanges[0])?.ingredient
  return newest === undefined ? [] : [newest]
}

/**
 * What is open of each ingredient whose label changed, by its id: every build held for a label or
 * for contact, and every guest to be found, through it. What was held for a label is of one at
 * least, so that none is told to be done while something is open.
 */
export const openByLabel = (state: RunningState): Readonly<Record<string, StillOpen>> => {
  const changed = [...new Set(state.labelChanges.map((one) => one.ingredient))]
  const through = (one: OpenBuild): readonly string[] => {
    const now = throughNow(state, changed, one)
    return now.length > 0 ? now : byChange(state, one)
  }
  const held = openBuilds(state).flatMap(({ ticket, build }): OpenBuild[] => {
    const { hold, letter } = build
    return hold && (hold.reason === 'label' || hold.reason === 'contact')
      ? [{ name: buildName(ticket.number, letter), reason: hold.reason, at: hold.at, build }]
      : []
  })
  const find = Object.values(state.toFind)
    .map(({ ticket, letter, reason, at }): OpenBuild => {
      const build = findBuild(state, ticket, letter)
      return { name: buildName(ticket, letter), reason, at, build }
    })
    .sort((one, other) => one.at - other.at)
  const [ofHeld, ofFind] = [held, find].map((list) =>
    list.map((one) => ({ name: one.name, ingredients: through(one) })),
  )
  const of = (list: typeof ofHeld, id: string) =>
    (list ?? []).filter((one) => one.ingredients.includes(id)).map((one) => one.name)
  return Object.fromEntries(
    changed.map((id) => [id, { held: of(ofHeld, id), find: of(ofFind, id) }]),
  )
}

/** Builds that are held and guests to find beside those of some labels. */
export const openBeside = (state: RunningState, shown: readonly StillOpen[]): StillOpen => {
  const rest = (names: readonly string[], of: keyof StillOpen) =>
    names.filter((name) => !shown.some((one) => one[of].includes(name)))
  return {
    held: rest(
      openBuilds(state)
        .filter(({ build }) => build.hold !== null)
        .map(({ ticket, build }) => buildName(ticket.number, build.letter)),
      'held',
    ),
    find: rest(
      Object.values(state.toFind).map(({ ticket, letter }) => buildName(ticket, letter)),
      'find',
    ),
  }
}
