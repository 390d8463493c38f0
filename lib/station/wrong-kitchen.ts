/** What is wrong with a document's recipes, components and contacts, in words that name the part. */
import { calledTwice, type DocumentProblem, twice, wrong } from '#lib/station/document-problem.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'

type Recipe = StationShape['recipes'][number]
type Component = StationShape['components'][number]

/** A recipe that contains itself, by way of others too; null where none does. */
const circle = (recipes: readonly Recipe[]): readonly string[] | null => {
  const byId = new Map(recipes.map((one) => [one.id, one]))
  const done = new Set<string>()
  const walk = (id: string, path: readonly string[]): readonly string[] | null => {
    if (path.includes(id)) return [...path.slice(path.indexOf(id)), id]
    if (done.has(id)) return null
    for (const inner of byId.get(id)?.recipes ?? []) {
      const found = walk(inner, [...path, id])
      if (found) return found
    }
    done.add(id)
    return null
  }
  for (const { id } of recipes) {
    const found = walk(id, [])
    if (found) return found
  }
  return null
}

const wrongMade = (
  { ingredients, recipes }: StationShape,
  entity: 'recipe' | 'component',
  made: Recipe | Component,
): readonly DocumentProblem[] => {
  const { id } = made
  const knownIngredients = new Set(ingredients.map((one) => one.id))
  const knownRecipes = new Set(recipes.map((one) => one.id))
  const inIt = [...made.ingredients, ...made.recipes]
  return [
    ...made.ingredients
      .filter((one) => !knownIngredients.has(one))
      .map((one) =>
        wrong(
          'no-such-ingredient',
          [entity, id, 'ingredients'],
          `${id} has no known ingredient ${one}`,
          one,
        ),
      ),
    ...made.recipes
      .filter((one) => !knownRecipes.has(one))
      .map((one) =>
        wrong('no-such-recipe', [entity, id, 'recipes'], `${id} has no known recipe ${one}`, one),
      ),
    ...(inIt.length === 0
      ? [
          wrong(
            'made-of-nothing',
            [entity, id, 'ingredients'],
            `${id} is made of nothing: name its ingredients or its recipe`,
          ),
        ]
      : []),
    ...(made.lines ?? [])
      .filter(({ of }) => !inIt.includes(of))
      .map(({ of }) =>
        wrong(
          'line-of-another',
          [entity, id, 'lines'],
          `${id} has an amount of ${of}, which isn't in it: add it, or take the line out`,
          of,
        ),
      ),
  ]
}

const wrongRecipes = (document: StationShape): readonly DocumentProblem[] => {
  const { ingredients, recipes, components } = document
  const knownIngredients = new Set(ingredients.map((one) => one.id))
  const round = circle(recipes)
  return [
    ...calledTwice(
      'recipe',
      'recipes',
      recipes.map((one) => one.id),
    ),
    ...recipes
      .filter(({ id }) => knownIngredients.has(id))
      .map(({ id }) =>
        wrong('same-id', ['recipe', id, 'id'], `recipe ${id} is called as an ingredient`),
      ),
    ...recipes.flatMap((one) => wrongMade(document, 'recipe', one)),
    ...components.flatMap((one) => wrongMade(document, 'component', one)),
    ...(round === null
      ? []
      : [
          wrong(
            'contains-itself',
            ['recipe', round[0] ?? null, 'recipes'],
            `recipe ${round.join(' contains ')}: a recipe can't contain itself`,
            ...round,
          ),
        ]),
  ]
}

const wrongDensities = ({ components }: StationShape): readonly DocumentProblem[] =>
  components
    .filter(({ density }) => density?.by === 'table' && density.source === undefined)
    .map(({ id }) =>
      wrong(
        'no-source',
        ['component', id, 'density'],
        `${id} has a density from a table that isn't named: name the table, or measure it`,
      ),
    )

const wrongContacts = ({ components, contacts }: StationShape): readonly DocumentProblem[] => {
  const known = new Set(components.map((one) => one.id))
  return [
    ...calledTwice(
      'contact',
      'contacts',
      (contacts ?? []).map((one) => one.id),
    ),
    ...(contacts ?? []).flatMap((contact) => {
      const at = ['contact', contact.id, 'components'] as const
      const same = twice(contact.components)
      return [
        ...contact.components
          .filter((one) => !known.has(one))
          .map((one) =>
            wrong(
              'no-such-component',
              at,
              `contact ${contact.id} has no known component ${one}`,
              one,
            ),
          ),
        ...(same === undefined
          ? []
          : [wrong('named-twice', at, `contact ${contact.id} names ${same} twice`, same)]),
      ]
    }),
  ]
}

/** None where nothing is wrong. */
export const wrongKitchen = (document: StationShape): readonly DocumentProblem[] => [
  ...calledTwice(
    'component',
    'components',
    document.components.map((one) => one.id),
  ),
  ...wrongRecipes(document),
  ...wrongDensities(document),
  ...wrongContacts(document),
]
