/** What is wrong with a document's back-up pans, tools, food and limits, in words that name it. */

import { limitsWith } from '#lib/safety/limits.ts'
import { looserThanModel } from '#lib/safety/local-variants.ts'
import { calledTwice, type DocumentProblem, wrong } from '#lib/station/document-problem.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'

const wrongBackups = (document: StationShape): readonly DocumentProblem[] => {
  const components = new Set(document.components.map((one) => one.id))
  const others = new Set([
    ...components,
    ...document.items.map((one) => one.id),
    ...document.line.wells.flatMap((well) => well.pans.map((pan) => pan.id)),
  ])
  return [
    ...document.backups
      .filter(({ component }) => !components.has(component))
      .map(({ id, component }) =>
        wrong(
          'no-such-component',
          ['backup', id, 'component'],
          `a back-up pan holds no known component ${component}`,
          component,
        ),
      ),
    ...calledTwice(
      'backup',
      'back-up pans',
      document.backups.map((one) => one.id),
    ),
    ...document.backups
      .filter(({ id }) => others.has(id))
      .map(({ id }) =>
        wrong(
          'same-id',
          ['backup', id, 'id'],
          `back-up pan ${id} is called as a pan of the line, a component or an item`,
        ),
      ),
  ]
}

const wrongTools = ({ tools, components }: StationShape): readonly DocumentProblem[] => {
  const known = new Set(components.map((one) => one.id))
  return [
    ...calledTwice(
      'tool',
      'tools',
      tools.map((one) => one.id),
    ),
    ...tools.flatMap(({ id, usualFor }) =>
      usualFor === null || known.has(usualFor)
        ? []
        : [
            wrong(
              'no-such-component',
              ['tool', id, 'usualFor'],
              `tool ${id} is for no known component ${usualFor}`,
              usualFor,
            ),
          ],
    ),
  ]
}

const wrongFood = ({ components, safety, line }: StationShape): readonly DocumentProblem[] => [
  ...components
    .filter(({ held, food }) => held === 'dry' && food.kind !== null && food.kind !== 'ready')
    .map(({ id }) =>
      wrong(
        'dry-and-cooked',
        ['component', id, 'food'],
        `${id} is held dry, so it is nothing that is cooked or mixed here`,
      ),
    ),
  ...components
    .filter(({ food }) => food.kind === 'eggs-to-order')
    .map(({ id }) =>
      wrong(
        'cooked-to-order',
        ['component', id, 'food'],
        `${id} is cooked to order: what stands in a pan is cooked as a batch`,
      ),
    ),
  ...(safety.reheatOn.includes('hot-well')
    ? [
        wrong(
          'reheats-in-hot-well',
          ['house', null, 'reheatOn'],
          'a hot well holds food and never heats it: take it out of where it is reheated',
        ),
      ]
    : []),
  ...(safety.readings.askBeforeMin >= safety.readings.everyMin
    ? [
        wrong(
          'asks-too-early',
          ['house', null, 'readings'],
          'readings are asked for before the one before them is due: ask later, or read less often',
        ),
      ]
    : []),
  ...line.wells
    .filter(({ held }) => held === 'time' && !safety.timeProcedure)
    .map(({ id }) =>
      wrong(
        'time-without-procedure',
        ['well', id, 'held'],
        `well ${id} is on time alone, which takes a written procedure on site (3-501.19(A)): have one, or hold it hot or cold`,
      ),
    ),
]

/** Wells in which food of a component's kind doesn't stand; dry food needs neither hot nor cold. */
const NOT_IN: Readonly<Record<'hot' | 'cold' | 'dry', readonly string[]>> = {
  hot: ['cold', 'dry'],
  cold: ['hot', 'dry'],
  dry: ['time'],
}

/** Food that its well holds otherwise than it needs: nobody would be asked for the right reading. */
const wrongHolding = ({ line, components }: StationShape): readonly DocumentProblem[] =>
  line.wells.flatMap((well) =>
    well.pans.flatMap(({ component: id }) => {
      const component = components.find((one) => one.id === id)
      return component && NOT_IN[component.held].includes(well.held)
        ? [
            wrong(
              'held-otherwise',
              ['component', id, 'held'],
              `component ${id} is held ${component.held}, and well ${well.id} is ${well.held}: move its pan, or hold it as the well does`,
              well.held,
            ),
          ]
        : []
    }),
  )

/** A limit that asks less than the model code names where local code says so. */
const wrongLimits = ({ safety }: StationShape): readonly DocumentProblem[] =>
  looserThanModel(limitsWith(safety.limits))
    .filter((name) => safety.limits[name]?.certainty !== 'seen')
    .map((name) =>
      wrong(
        'looser-than-model',
        ['house', null, 'limits'],
        `limit ${name} asks less than the model code: read it in the local code first`,
        name,
      ),
    )

export const wrongDay = (document: StationShape): readonly DocumentProblem[] => [
  ...wrongBackups(document),
  ...wrongTools(document),
  ...wrongFood(document),
  ...wrongHolding(document),
  ...wrongLimits(document),
]
