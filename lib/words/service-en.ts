/** English words for the service: needs, states, marks, answers. Typed functions, one place. */
import { isDiet, type NeedCode } from '#lib/needs/codes.ts'
import type { Role } from '#lib/service/roles.ts'
import type { BuildState } from '#lib/service/state.ts'
import type { Mark } from '#lib/views/mark.ts'

export const needName: Readonly<Record<NeedCode, string>> = {
  milk: 'milk',
  egg: 'egg',
  fish: 'fish',
  shellfish: 'crab, shrimp, lobster',
  'tree-nuts': 'tree nuts',
  wheat: 'wheat',
  peanut: 'peanut',
  soy: 'soy',
  sesame: 'sesame',
  vegetarian: 'vegetarian',
  vegan: 'vegan',
}

export const stateName: Readonly<Record<BuildState, string>> = {
  waiting: 'waiting',
  making: 'making',
  made: 'made',
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

/** "KEEP FROM MILK", "MADE WITHOUT EGG", "VEGAN": never the allergen alone, which reads as contains. */
const markNeeds = (mark: Mark): string[] => {
  const apart = mark.keepFrom.filter((code) => !isDiet(code)).map((code) => needName[code])
  const out = mark.leaveOut.filter((code) => !isDiet(code)).map((code) => needName[code])
  const diets = [...mark.keepFrom, ...mark.leaveOut].filter(isDiet).map((code) => needName[code])
  return [
    ...(apart.length > 0 ? [`keep from ${apart.join(', ')}`] : []),
    ...(out.length > 0 ? [`made without ${out.join(', ')}`] : []),
    ...diets,
  ]
}

/** The lines of a mark after its number, as they are written on the wrap. */
export const markLines = (mark: Mark): readonly string[] =>
  [
    ...mark.without.map((name) => `no ${name}`),
    ...mark.added.map((name) => `with ${name}`),
    ...mark.extra.map((name) => `more ${name}`),
    ...mark.onTheSide.map((name) => `${name} on side`),
    ...markNeeds(mark),
  ].map((line) => line.toUpperCase())

/** "21A NO CHEDDAR · KEEP FROM MILK" */
export const sayMark = (mark: Mark): string =>
  markLines(mark).length === 0 ? mark.name : `${mark.name} ${markLines(mark).join(' · ')}`
