/** Where the parts of a document don't know or contradict each other, in words that name the part. */

import { fitsOneWell } from '#lib/measure/well.ts'
import { kindsOf } from '#lib/station/codes/askable.ts'
import type { Trait } from '#lib/station/codes/diets.ts'
import { isStated } from '#lib/station/gluten.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'
import { type SourceProblem, sourceProblem } from '#lib/station/sources.ts'

const twice = (ids: readonly string[]): string | undefined =>
  ids.find((one, index) => ids.indexOf(one) !== index)

/** Allergens that come from what a diet leaves out, with the trait that says so. */
const TRAIT_OF: readonly (readonly [string, Trait])[] = [
  ['milk', 'dairy'],
  ['egg', 'egg'],
  ['fish', 'fish'],
  ['shellfish', 'shellfish'],
  ['molluscs', 'shellfish'],
]

/** Declarations and traits are read from one label: where they contradict, one of them is wrong. */
const contradictions = (document: StationShape): string[] =>
  document.ingredients.flatMap(({ id: name, declarations, traits }) =>
    TRAIT_OF.flatMap(([allergen, trait]) => {
      if (traits === null) return []
      const has = traits.includes(trait)
      const contained = [allergen, ...kindsOf(document, allergen)].find(
        (code) => declarations[code] === 'contains',
      )
      if (contained !== undefined && !has)
        return [`${name} contains ${contained}, but its traits don't name ${trait}`]
      // A mollusc and a crustacean are one trait: either alone may be declared free.
      return has && declarations[allergen] === 'free' && trait !== 'shellfish'
        ? [`${name} is declared free of ${allergen}, but its traits name ${trait}`]
        : []
    }),
  )

const wrongSource = (problem: SourceProblem): string => {
  switch (problem.why) {
    case 'source-of-nothing':
      return `names what ${problem.trait} comes of, but its traits don't name ${problem.trait}`
    case 'no-such-source':
      return `has ${problem.trait} of ${problem.source}, which it can't come of`
    case 'source-not-contained':
      return `has ${problem.trait} of ${problem.source}, but doesn't contain ${problem.code}`
  }
}

/** Of documents of before gluten is judged only: they may declare it free beside wheat. */
const wrongStatements = (document: StationShape): string[] =>
  document.ingredients.flatMap((one) => {
    const source = sourceProblem(document, one)
    return [
      ...(source === null ? [] : [`${one.id} ${wrongSource(source)}`]),
      ...(one.glutenStatement === true && !isStated(one)
        ? [
            `${one.id} has the statement beside wheat, which goes with wheat that it contains, no barley or rye, and gluten declared free`,
          ]
        : []),
    ]
  })

/** Refusals and screens look names up by id alone. */
const ambiguous = (document: StationShape): string[] => {
  const components = new Set(document.components.map((one) => one.id))
  const items = new Set(document.items.map((one) => one.id))
  const pans = document.line.wells.flatMap((well) => well.pans.map((pan) => pan.id))
  return [
    ...[...items].filter((one) => components.has(one)).map((one) => `item ${one} is a component`),
    ...pans
      .filter((one) => components.has(one))
      .map((one) => `pan ${one} is called as a component`),
    ...pans.filter((one) => items.has(one)).map((one) => `pan ${one} is called as an item`),
  ]
}

const dangling = (document: StationShape): string[] => {
  const problems: string[] = []
  const ingredients = new Set(document.ingredients.map((one) => one.id))
  const components = new Set(document.components.map((one) => one.id))
  const pans = document.line.wells.flatMap((well) => well.pans)
  const onTheLine = new Set(pans.map((pan) => pan.component))
  for (const [what, ids] of [
    ['ingredient', document.ingredients.map((one) => one.id)],
    ['component', document.components.map((one) => one.id)],
    ['item', document.items.map((one) => one.id)],
    ['pan', pans.map((one) => one.id)],
    ['well', document.line.wells.map((one) => one.id)],
  ] as const) {
    const double = twice(ids)
    if (double !== undefined) problems.push(`two ${what}s are called ${double}`)
  }
  for (const component of document.components)
    for (const one of component.ingredients)
      if (!ingredients.has(one)) problems.push(`${component.id} has no known ingredient ${one}`)
  for (const pan of pans)
    if (!components.has(pan.component)) problems.push(`pan ${pan.id} holds no known component`)
  for (const well of document.line.wells)
    if (!fitsOneWell(well.pans.map((pan) => pan.size)))
      problems.push(`the pans of well ${well.id} don't fit into it`)
  for (const item of document.items) {
    const own = [...item.parts.map((part) => part.component), ...(item.base?.choices ?? [])]
    for (const one of own) {
      if (!components.has(one)) problems.push(`${item.id} has no known component ${one}`)
      else if (!onTheLine.has(one)) problems.push(`${item.id} takes ${one}, which has no pan`)
    }
    const double = twice(own)
    if (double !== undefined) problems.push(`${item.id} names ${double} twice`)
    if (!item.parts.some((part) => part.component === item.heart && part.usual !== 'no'))
      problems.push(`${item.id} does not take its heart ${item.heart}`)
    if (item.base && !item.base.choices.includes(item.base.usual))
      problems.push(`${item.id} has a usual base that can't be chosen`)
    for (const part of item.parts) {
      if (part.required && part.usual === 'no')
        problems.push(`${item.id} can't leave out ${part.component}, which it usually doesn't have`)
      if (
        part.usual === 'side' &&
        !document.components.find((one) => one.id === part.component)?.side
      )
        problems.push(`${item.id} puts ${part.component} on the side, but there are no cups for it`)
    }
  }
  return problems
}

/** None where nothing is wrong. */
export const wrongMenu = (document: StationShape): readonly string[] => [
  ...dangling(document),
  ...ambiguous(document),
  ...contradictions(document),
  ...wrongStatements(document),
]
