/** English words for the service: needs, states, marks, answers. Typed functions, one place. */

import type { Mark } from '#lib/service/mark.ts'
import type { Role } from '#lib/service/roles.ts'
import type { BuildState } from '#lib/service/state.ts'
import { isDiet, type NeedCode } from '#lib/station/codes/codes.ts'

/** Said otherwise than spelled, hyphens as spaces. */
const NEED_WORDS: Readonly<Record<NeedCode, string>> = {
  shellfish: 'crab, shrimp, lobster',
  molluscs: 'clams, oysters, squid',
  'gluten-cereals': 'wheat, rye, barley, oats',
  'brazil-nut': 'Brazil nut',
  'california-walnut': 'California walnut',
  sulphites: 'sulfites',
  'ovo-vegetarian': 'vegetarian without milk',
  'lacto-vegetarian': 'vegetarian without egg',
}

/**
 * A need as a guest says it: an allergen is what they keep away from, a diet what they eat. Codes
 * that a station adds are said as they are spelled.
 */
export const needName = (code: NeedCode): string => NEED_WORDS[code] ?? code.replaceAll('-', ' ')

/** The food that a need keeps away from; null for a diet that says what the food must be. */
export const foodOf = (code: NeedCode): string | null => {
  if (!isDiet(code)) return needName(code)
  return code.startsWith('no-') ? code.slice('no-'.length) : null
}

export const stateName: Readonly<Record<BuildState, string>> = {
  waiting: 'waiting',
  making: 'making',
  made: 'on the shelf',
  'handed-over': 'handed over',
  cancelled: 'cancelled',
}

export const roleName: Readonly<Record<Role, string>> = {
  counter: 'Counter',
  assembly: 'Assembly',
  'hand-over': 'Hand-over',
  lead: 'Lead',
  'in-charge': 'Person in charge',
  'pick-up': 'Pick-up',
}

/** For whom portions are saved: builds kept apart, a need, or an item by its name. */
export const savedForName = (id: string, name: (id: string) => string): string => {
  if (id === 'kept-apart') return 'keep-apart orders'
  const item = name(id)
  if (item !== id) return item
  return isDiet(id) ? `${needName(id)} orders` : `guests who keep from ${needName(id)}`
}

/** A diet that keeps one thing out, as `no-pork`: that thing; null for the others. */
const keptOut = (code: NeedCode): string | null =>
  isDiet(code) && code.startsWith('no-') ? code.slice('no-'.length) : null

/**
 * "KEEP FROM MILK", "WITHOUT EGG", "VEGAN", "HALAL, KEPT APART": never the allergen alone,
 * which reads as contains.
 */
const markNeeds = (mark: Mark): string[] => {
  const named = (codes: readonly NeedCode[]) =>
    codes.filter((code) => !isDiet(code) || keptOut(code) !== null)
  const diets = (codes: readonly NeedCode[]) =>
    codes.filter((code) => isDiet(code) && keptOut(code) === null).map(needName)
  const said = (code: NeedCode) => keptOut(code) ?? needName(code)
  const apart = named(mark.keepFrom).map(said)
  const out = named(mark.leaveOut).map(said)
  return [
    ...(apart.length > 0 ? [`keep from ${apart.join(', ')}`] : []),
    ...(out.length > 0 ? [`without ${out.join(', ')}`] : []),
    ...diets(mark.keepFrom).map((diet) => `${diet}, kept apart`),
    ...diets(mark.leaveOut),
  ]
}

/** Of a mark without a line: on its wrap stands the number alone. */
export const AS_IT_COMES = 'as it comes'

/**
 * The lines of a mark after its number, as they are written on the wrap; a cup goes beside it. At most
 * 25 letters in all for most builds.
 */
export const markLines = (mark: Mark): readonly string[] =>
  [
    ...mark.without.map((name) => `no ${name}`),
    ...mark.added.map((name) => `with ${name}`),
    ...mark.extra.map((name) => `more ${name}`),
    ...mark.onTheSide.map((name) => `cup ${name}`),
    ...markNeeds(mark),
  ].map((line) => line.toUpperCase())

/** An assembly screen by its name, as it stands after “at” or “from”. */
export const screenName = (screen: string | null): string =>
  screen === null
    ? 'another screen'
    : screen === 'left' || screen === 'right'
      ? screen
      : `screen ${screen}`
