/** What is wrong with a document's labels, recipes and contacts, in words that name it. */
import type { AllergenSetId } from '#lib/station/codes/allergen-sets.ts'
import { declarable, groupOf } from '#lib/station/codes/askable.ts'
import { isDietCode } from '#lib/station/codes/diets.ts'

interface Made {
  readonly id: string
  readonly ingredients: readonly string[]
  readonly recipes: readonly string[]
}

interface Kitchen {
  readonly allergenSet: AllergenSetId
  readonly ownAllergens: readonly string[]
  readonly ingredients: readonly {
    readonly id: string
    readonly declarations: Readonly<Record<string, string>>
  }[]
  readonly recipes: readonly Made[]
  readonly components: readonly Made[]
  readonly contacts:
    | readonly { readonly id: string; readonly components: readonly string[] }[]
    | null
}

const twice = (ids: readonly string[]): string | undefined =>
  ids.find((one, index) => ids.indexOf(one) !== index)

const wrongLabels = (kitchen: Kitchen): string[] => {
  const known = declarable(kitchen)
  return kitchen.ingredients.flatMap(({ id, declarations }) =>
    Object.entries(declarations).flatMap(([code, said]) => {
      if (!known.has(code))
        return [
          `${id} declares ${code}, which is no allergen of ${kitchen.allergenSet}: add it to the station's own allergens, or correct the spelling`,
        ]
      const group = groupOf(kitchen, code)
      return group !== null && declarations[group] === 'free' && said !== 'free'
        ? [`${id} is declared free of ${group}, but not of ${code}, which is one`]
        : []
    }),
  )
}

const wrongOwn = ({ allergenSet, ownAllergens }: Kitchen): string[] => {
  const ofTheSet = declarable({ allergenSet, ownAllergens: [] })
  const double = twice(ownAllergens)
  return [
    ...(double === undefined ? [] : [`the station adds ${double} twice`]),
    ...ownAllergens
      .filter((one) => ofTheSet.has(one) || isDietCode(one))
      .map((one) => `${one} can be asked already: take it out of the station's own allergens`),
  ]
}

/** A recipe that contains itself, by way of others too; null where none does. */
const circle = (recipes: readonly Made[]): readonly string[] | null => {
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

const wrongRecipes = ({ ingredients, recipes, components }: Kitchen): string[] => {
  const problems: string[] = []
  const knownIngredients = new Set(ingredients.map((one) => one.id))
  const knownRecipes = new Set(recipes.map((one) => one.id))
  const double = twice(recipes.map((one) => one.id))
  if (double !== undefined) problems.push(`two recipes are called ${double}`)
  for (const { id } of recipes)
    if (knownIngredients.has(id)) problems.push(`recipe ${id} is called as an ingredient`)
  for (const made of recipes)
    for (const one of made.ingredients)
      if (!knownIngredients.has(one)) problems.push(`${made.id} has no known ingredient ${one}`)
  for (const made of [...recipes, ...components]) {
    for (const one of made.recipes)
      if (!knownRecipes.has(one)) problems.push(`${made.id} has no known recipe ${one}`)
    if (made.ingredients.length + made.recipes.length === 0)
      problems.push(`${made.id} is made of nothing: name its ingredients or its recipe`)
  }
  const round = circle(recipes)
  if (round) problems.push(`recipe ${round.join(' contains ')}: a recipe can't contain itself`)
  return problems
}

const wrongContacts = ({ components, contacts }: Kitchen): string[] => {
  const known = new Set(components.map((one) => one.id))
  const problems: string[] = []
  const double = twice((contacts ?? []).map((one) => one.id))
  if (double !== undefined) problems.push(`two contacts are called ${double}`)
  for (const contact of contacts ?? []) {
    for (const one of contact.components)
      if (!known.has(one)) problems.push(`contact ${contact.id} has no known component ${one}`)
    const same = twice(contact.components)
    if (same !== undefined) problems.push(`contact ${contact.id} names ${same} twice`)
  }
  return problems
}

/** In words that name the part and say what to do; none where nothing is wrong. */
export const wrongKitchen = (kitchen: Kitchen): readonly string[] => [
  ...wrongLabels(kitchen),
  ...wrongOwn(kitchen),
  ...wrongRecipes(kitchen),
  ...wrongContacts(kitchen),
]
