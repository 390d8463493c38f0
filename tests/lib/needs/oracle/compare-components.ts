/** Each component alone: its level, its findings, and whether what is told of them is true. */
import type { Finding } from '#lib/needs/judge.ts'
import type { Asking } from '#tests/lib/needs/oracle/asked.ts'
import type { Checker } from '#tests/lib/needs/oracle/checker.ts'
import type { Found } from '#tests/lib/needs/oracle/found.ts'
import {
  CLASSES,
  carriedBy,
  ingredientsOf,
  type Place,
  reachedFrom,
  wordOf,
  wordOfIngredient,
} from '#tests/lib/needs/oracle/oracle.ts'
import { sayCase, wrongWay } from '#tests/lib/needs/oracle/said-case.ts'

const componentIn = ({ station }: Place, id: string) => {
  const found = station.components.find((one) => one.id === id)
  if (!found) throw new Error(`no component ${id}`)
  return found
}

const IS_NOWHERE: readonly string[] = ['free', 'not-listed']

/** Whether the way leads from the component through recipes to an ingredient that says so. */
const leadsThere = ({ station }: Place, finding: Finding, from: string): boolean => {
  let made = station.components.find((one) => one.id === from) ?? null
  for (const [at, step] of finding.through.entries()) {
    if (!made) return false
    if (at === finding.through.length - 1) {
      const ingredient = station.ingredients.find((one) => one.id === step)
      return (
        ingredient !== undefined &&
        made.ingredients.includes(step) &&
        !IS_NOWHERE.includes(wordOfIngredient(station, ingredient, finding.need)) &&
        (finding.why === 'contact' ||
          finding.why === 'soiled' ||
          wordOfIngredient(station, ingredient, finding.need) === finding.why)
      )
    }
    const recipe = made.recipes.includes(step)
      ? station.recipes.find((one) => one.id === step)
      : undefined
    made = recipe ? { ...made, ingredients: recipe.ingredients, recipes: recipe.recipes } : null
  }
  return false
}

/** Names everything that reaches the component and isn't free of it, and nothing else. */
const reachesAll = (place: Place, { component, need, reached, contact }: Finding): boolean => {
  const from = reachedFrom(place, component, false)
  const isThere = (one: string) =>
    [...ingredientsOf(place.station, componentIn(place, one))].some(
      (ingredient) => !IS_NOWHERE.includes(wordOfIngredient(place.station, ingredient, need)),
    )
  return contact !== null && reached.every((one) => from.has(one) && isThere(one))
}

/** Says of the component, and of all that reaches it, how bad it is. */
const saysHowBad = (place: Place, { component, need, why, reached, states }: Finding): boolean => {
  const isAs = (id: string) => states[id] === wordOf(place.station, id, need)
  const isAsCarried = (id: string) => states[id] === carriedBy(place, id, need)
  return (
    isAs(component) &&
    reached.every(why === 'soiled' ? isAsCarried : isAs) &&
    Object.keys(states).every((id) => id === component || reached.includes(id))
  )
}

const isTrue = (place: Place, finding: Finding): boolean => {
  if (!saysHowBad(place, finding)) return false
  const { why, component, touches, contact } = finding
  if (why === 'contact-unknown') return touches === null && contact === null
  // That none of its labels lists it is no one label's doing.
  if (why === 'not-listed') return touches === null && finding.through.length === 0
  if (why !== 'contact' && why !== 'soiled')
    return touches === null && leadsThere(place, finding, component)
  if (touches === null || contact === null || !finding.reached.includes(touches)) return false
  if (why === 'soiled') {
    const wentIn = place.soiled.some((one) => one.component === component && one.by === touches)
    return wentIn && (finding.through.length === 0 || leadsThere(place, finding, touches))
  }
  return (
    reachesAll(place, finding) &&
    reachedFrom(place, component, false).has(touches) &&
    leadsThere(place, finding, touches)
  )
}

export const compareComponents = (
  place: Place,
  asking: Asking,
  checker: Checker,
  found: Found,
): void => {
  for (const { id } of place.station.components) {
    found.counts.components += 1
    const about = () => sayCase(place, asking.needs, id)
    const { level, findings, fromBackup } = checker.judgeComponent(place, id, asking.needs)
    const expected = asking.rank(id)
    const rank = CLASSES.indexOf(level)
    if (rank !== expected)
      found.disagree(
        wrongWay(rank, expected),
        () => `${about()}: ${level}, the oracle ${CLASSES[expected]}`,
      )
    const misnamed = asking.misnamed([id], findings)
    if (misnamed !== null) found.disagree('named otherwise', () => `${about()}: ${misnamed}`)
    const untrue = findings.find((one) => !isTrue(place, one))
    if (untrue)
      found.disagree('named otherwise', () => `${about()}: led by ${JSON.stringify(untrue)}`)
    if (fromBackup !== asking.isFromBackup(id))
      found.disagree('back-up otherwise', () => `${about()}: ${fromBackup}`)
  }
}
