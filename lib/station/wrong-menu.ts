/** What is wrong with a document's line and with what is sold of it, in words that name the part. */

import { fitsOneWell } from '#lib/measure/well.ts'
import { calledTwice, type DocumentProblem, twice, wrong } from '#lib/station/document-problem.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'

/** Refusals and screens look names up by id alone. */
const ambiguous = (document: StationShape): readonly DocumentProblem[] => {
  const components = new Set(document.components.map((one) => one.id))
  const items = new Set(document.items.map((one) => one.id))
  const pans = document.line.wells.flatMap((well) => well.pans.map((pan) => pan.id))
  const same = (entity: 'item' | 'pan', ids: readonly string[], message: (id: string) => string) =>
    ids.map((id) => wrong('same-id', [entity, id, 'id'], message(id)))
  return [
    ...same(
      'item',
      [...items].filter((one) => components.has(one)),
      (one) => `item ${one} is a component`,
    ),
    ...same(
      'pan',
      pans.filter((one) => components.has(one)),
      (one) => `pan ${one} is called as a component`,
    ),
    ...same(
      'pan',
      pans.filter((one) => items.has(one)),
      (one) => `pan ${one} is called as an item`,
    ),
  ]
}

const wrongLine = ({ line, components }: StationShape): readonly DocumentProblem[] => {
  const known = new Set(components.map((one) => one.id))
  const pans = line.wells.flatMap((well) => well.pans)
  return [
    ...calledTwice(
      'pan',
      'pans',
      pans.map((one) => one.id),
    ),
    ...calledTwice(
      'well',
      'wells',
      line.wells.map((one) => one.id),
    ),
    ...pans
      .filter((pan) => !known.has(pan.component))
      .map((pan) =>
        wrong(
          'no-such-component',
          ['pan', pan.id, 'component'],
          `pan ${pan.id} holds no known component`,
          pan.component,
        ),
      ),
    ...line.wells
      .filter((well) => !fitsOneWell(well.pans.map((pan) => pan.size)))
      .map(({ id }) =>
        wrong('pans-dont-fit', ['well', id, 'pans'], `the pans of well ${id} don't fit into it`),
      ),
  ]
}

type Item = StationShape['items'][number]

const wrongItem = (document: StationShape, item: Item): readonly DocumentProblem[] => {
  const { id, parts, base, heart } = item
  const components = new Map(document.components.map((one) => [one.id, one]))
  const onTheLine = new Set(
    document.line.wells.flatMap((well) => well.pans.map((pan) => pan.component)),
  )
  const inParts = parts.map((part) => part.component)
  const taken = (of: readonly string[], field: string): readonly DocumentProblem[] =>
    of.flatMap((one) => {
      if (!components.has(one))
        return [
          wrong(
            'no-such-component',
            ['item', id, field],
            `${id} has no known component ${one}`,
            one,
          ),
        ]
      return onTheLine.has(one)
        ? []
        : [wrong('no-pan', ['item', id, field], `${id} takes ${one}, which has no pan`, one)]
    })
  const double = twice([...inParts, ...(base?.choices ?? [])])
  return [
    ...taken(inParts, 'parts'),
    ...taken(base?.choices ?? [], 'base'),
    ...(double === undefined
      ? []
      : [wrong('named-twice', ['item', id, 'parts'], `${id} names ${double} twice`, double)]),
    ...(parts.some((part) => part.component === heart && part.usual !== 'no')
      ? []
      : [
          wrong('no-heart', ['item', id, 'heart'], `${id} does not take its heart ${heart}`, heart),
        ]),
    ...(base === null || base.choices.includes(base.usual)
      ? []
      : [
          wrong(
            'base-not-a-choice',
            ['item', id, 'base'],
            `${id} has a usual base that can't be chosen`,
            base.usual,
          ),
        ]),
    ...parts
      .filter((part) => part.required && part.usual === 'no')
      .map(({ component }) =>
        wrong(
          'required-not-usual',
          ['item', id, 'parts'],
          `${id} can't leave out ${component}, which it usually doesn't have`,
          component,
        ),
      ),
    ...parts
      .filter((part) => part.usual === 'side' && components.get(part.component)?.side !== true)
      .map(({ component }) =>
        wrong(
          'no-cups',
          ['item', id, 'parts'],
          `${id} puts ${component} on the side, but there are no cups for it`,
          component,
        ),
      ),
  ]
}

/** None where nothing is wrong. */
export const wrongMenu = (document: StationShape): readonly DocumentProblem[] => [
  ...calledTwice(
    'item',
    'items',
    document.items.map((one) => one.id),
  ),
  ...wrongLine(document),
  ...document.items.flatMap((item) => wrongItem(document, item)),
  ...ambiguous(document),
]
