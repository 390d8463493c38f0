/** What is wrong with a document's back-up pans, tools, limits and times, in words that name it. */

import { limitsWith } from '#lib/safety/limits.ts'
import { looserThanModel } from '#lib/safety/local-variants.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'

const twice = (ids: readonly string[]): string | undefined =>
  ids.find((one, index) => ids.indexOf(one) !== index)

const wrongBackups = (document: StationShape): string[] => {
  const components = new Set(document.components.map((one) => one.id))
  const others = new Set([
    ...components,
    ...document.items.map((one) => one.id),
    ...document.line.wells.flatMap((well) => well.pans.map((pan) => pan.id)),
  ])
  const double = twice(document.backups.map((one) => one.id))
  return [
    ...document.backups
      .filter(({ component }) => !components.has(component))
      .map(({ component }) => `a back-up pan holds no known component ${component}`),
    ...(double === undefined ? [] : [`two back-up pans are called ${double}`]),
    ...document.backups
      .filter(({ id }) => others.has(id))
      .map(({ id }) => `back-up pan ${id} is called as a pan of the line, a component or an item`),
  ]
}

const wrongTools = ({ tools, components }: StationShape): string[] => {
  const known = new Set(components.map((one) => one.id))
  const double = twice(tools.map((one) => one.id))
  return [
    ...(double === undefined ? [] : [`two tools are called ${double}`]),
    ...tools.flatMap(({ id, usualFor }) =>
      usualFor === null || known.has(usualFor)
        ? []
        : [`tool ${id} is for no known component ${usualFor}`],
    ),
  ]
}

/** A clock time counts minutes since midnight. */
const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))

const wrongRushes = ({ day }: StationShape): string[] =>
  day.rushes
    .filter(({ from, to }) => minutesOf(from) >= minutesOf(to))
    .map(({ from, to }) => `a rush from ${from} ends at ${to}: say them the other way round`)

const wrongFood = ({ components, safety }: StationShape): string[] => [
  ...components
    .filter(({ held, food }) => held === 'dry' && food.kind !== null && food.kind !== 'ready')
    .map(({ id }) => `${id} is held dry, so it is nothing that is cooked or mixed here`),
  ...components
    .filter(({ food }) => food.kind === 'eggs-to-order')
    .map(({ id }) => `${id} is cooked to order: what stands in a pan is cooked as a batch`),
  ...(safety.reheatOn.includes('hot-well')
    ? ['a hot well holds food and never heats it: take it out of where it is reheated']
    : []),
  ...(safety.readings.askBeforeMin >= safety.readings.everyMin
    ? ['readings are asked for before the one before them is due: ask later, or read less often']
    : []),
]

/** A limit that asks less than the model code names where local code says so. */
const wrongLimits = ({ safety }: StationShape): string[] =>
  looserThanModel(limitsWith(safety.limits))
    .filter((name) => safety.limits[name]?.certainty !== 'seen')
    .map((name) => `limit ${name} asks less than the model code: read it in the local code first`)

export const wrongDay = (document: StationShape): readonly string[] => [
  ...wrongBackups(document),
  ...wrongTools(document),
  ...wrongRushes(document),
  ...wrongFood(document),
  ...wrongLimits(document),
]
