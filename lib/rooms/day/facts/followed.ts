/**
 * A planned service and a newer document of its station: what its food was made of by the one before
 * goes on counting, so that nobody is told that it fits who was never asked.
 */
import { waysTo } from '#lib/needs/declared.ts'
import type { Circumstances } from '#lib/service/commands/decision.ts'
import type { LabelVersions } from '#lib/service/events/line-event.ts'
import type { PlanFollowed } from '#lib/service/events/plan-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findComponent } from '#lib/station/find.ts'
import { labelOf, withoutReaders } from '#lib/station/label.ts'
import { portionOf, portionsOf } from '#lib/station/portion.ts'
import { labelledAs } from '#lib/station/relabelled.ts'
import type { Component, Contact, StationDocument } from '#lib/station/station-document.ts'

type Newest = NonNullable<ReturnType<Circumstances['station']>>
type Copied = Omit<PlanFollowed, 'type'>

/** Components of which there is food. */
const foodOf = (state: RunningState): readonly string[] => [
  ...new Set(
    Object.values(state.batches)
      .filter(({ thrownOutAt }) => thrownOutAt === null)
      .map(({ component }) => component),
  ),
]

/** All that goes into a component, through recipes too. */
const madeOf = (station: StationDocument, component: Component): readonly string[] => [
  ...new Set([...waysTo(station, component)].flatMap((way) => way.slice(-1))),
]

/** A label that the house changed comes by its own event, which knows what the food of before holds. */
const asLabelled = (state: RunningState, { document, labels }: Newest) => {
  if (!labels) return { document, labels }
  const versions: Record<string, number> = { ...labels }
  const ingredients = document.ingredients.map((one) => {
    const before = state.station.ingredients.find(({ id }) => id === one.id)
    const known = state.labelVersions?.[one.id] ?? 0
    if (!before || known === (labels[one.id] ?? 0)) return one
    if (known === 0) delete versions[one.id]
    else versions[one.id] = known
    return labelledAs(one, labelOf(before))
  })
  return { document: { ...document, ingredients }, labels: versions as LabelVersions }
}

/** What it was made of that the newer document doesn't put into it. */
const withFoodOf = (
  state: RunningState,
  document: StationDocument,
  id: string,
): StationDocument => {
  const [before, now] = [findComponent(state.station, id), findComponent(document, id)]
  if (!before || !now) return document
  const known = madeOf(document, now)
  const lacking = madeOf(state.station, before).filter((one) => !known.includes(one))
  const rows = state.station.ingredients.filter(
    (one) => lacking.includes(one.id) && !document.ingredients.some((other) => other.id === one.id),
  )
  return lacking.length === 0
    ? document
    : {
        ...document,
        ingredients: [...document.ingredients, ...rows],
        components: document.components.map((one) =>
          one.id === id ? { ...one, ingredients: [...one.ingredients, ...lacking] } : one,
        ),
      }
}

/** What it touched as it was made. */
const withContactsOf = (
  state: RunningState,
  document: StationDocument,
  food: readonly string[],
): StationDocument => {
  const { contacts } = document
  if (contacts === null) return document
  // Nobody had confirmed what touches what as it was made.
  if (state.station.contacts === null && food.length > 0) return { ...document, contacts: null }
  const isSaid = (one: Contact): boolean =>
    contacts.some(
      ({ kind, components }) =>
        kind === one.kind && one.components.every((id) => components.includes(id)),
    )
  const kept = (state.station.contacts ?? [])
    .filter(({ components }) => components.some((id) => food.includes(id)))
    .map((one) => ({
      ...one,
      id: `${one.id.replace(/--before$/, '')}--before`,
      components: one.components.filter((id) => findComponent(document, id)),
    }))
    .filter((one) => one.components.length > 1 && !isSaid(one))
  return kept.length === 0 ? document : { ...document, contacts: [...contacts, ...kept] }
}

/**
 * The newest document as a planned service takes it.
 * @returns the component of which there is food, where the document doesn't have it or counts it in
 * another unit: then it can't be followed until that food is gone
 */
export const followedDocument = (
  state: RunningState,
  newest: Newest,
): Copied | { readonly foodOf: string } => {
  const food = foodOf(state)
  const { document, labels } = asLabelled(state, newest)
  const stuck = food.find((id) => {
    const [before, now] = [findComponent(state.station, id), findComponent(document, id)]
    return !now || (before && portionOf(before).unit !== portionOf(now).unit)
  })
  if (stuck !== undefined) return { foodOf: stuck }
  const made = food.reduce((so, id) => withFoodOf(state, so, id), document)
  const station = withoutReaders(withContactsOf(state, made, food))
  return {
    revision: newest.revision,
    station,
    ...(labels ? { labels } : {}),
    portions: portionsOf(station),
  }
}

/** What is noted of a planned service once there is a newer document; nothing where it can't follow yet. */
export const planFollows = (
  state: RunningState,
  newest: Newest | null,
): readonly PlanFollowed[] => {
  if (state.stage !== 'planned' || newest === null || newest.revision <= state.revision) return []
  const followed = followedDocument(state, newest)
  return 'foodOf' in followed ? [] : [{ type: 'planFollowed', ...followed }]
}
