/** What is wrong with a document's labels, of the products in use and of their substitutes. */
import { type Allergens, declarable, groupOf, kindsOf } from '#lib/station/codes/askable.ts'
import { isDietCode, type Trait } from '#lib/station/codes/diets.ts'
import { calledTwice, type DocumentProblem, twice, wrong } from '#lib/station/document-problem.ts'
import { isStated } from '#lib/station/gluten.ts'
import type { Label } from '#lib/station/label.ts'
import type { StationShape } from '#lib/station/shapes/station-parts-schema.ts'
import { type SourceProblem, sourceProblem } from '#lib/station/sources.ts'

/** What of a document its labels are checked with. */
type Labelling = Allergens & Pick<StationShape, 'ingredients'>

/** A label, and whose it is. */
interface Labelled {
  readonly ingredient: string
  /** null: of the product in use. */
  readonly product: string | null
  /** As messages call it. */
  readonly name: string
  readonly label: Pick<Label, 'declarations' | 'traits' | 'sources' | 'glutenStatement'>
}

const labelsOf = ({ ingredients }: Labelling): readonly Labelled[] =>
  ingredients.flatMap((ingredient) => [
    { ingredient: ingredient.id, product: null, name: ingredient.id, label: ingredient },
    ...(ingredient.products ?? []).map((product) => ({
      ingredient: ingredient.id,
      product: product.id,
      name: `${product.id} of ${ingredient.id}`,
      label: product,
    })),
  ])

/** Of a substitute, its own id is the first that is named. */
const wrongAt = (
  { ingredient, product }: Labelled,
  code: DocumentProblem['code'],
  field: string,
  message: string,
  ...named: readonly string[]
): DocumentProblem =>
  product === null
    ? wrong(code, ['ingredient', ingredient, field], message, ...named)
    : wrong(code, ['ingredient', ingredient, `products.${field}`], message, product, ...named)

const wrongDeclarations = (document: Labelling): readonly DocumentProblem[] => {
  const known = declarable(document)
  return labelsOf(document).flatMap((of) => {
    const { name, label } = of
    return Object.entries(label.declarations).flatMap(([code, said]) => {
      if (!known.has(code))
        return [
          wrongAt(
            of,
            'no-such-allergen',
            'declarations',
            `${name} declares ${code}, which is no allergen of ${document.allergenSet}: add it to the station's own allergens, or correct the spelling`,
            code,
          ),
        ]
      const group = groupOf(document, code)
      if (group === null) return []
      if (label.declarations[group] === 'free' && said !== 'free')
        return [
          wrongAt(
            of,
            'kind-of-a-free-group',
            'declarations',
            `${name} is declared free of ${group}, but not of ${code}, which is one`,
            group,
            code,
          ),
        ]
      return label.declarations[group] === 'not-listed' && said === 'contains'
        ? [
            wrongAt(
              of,
              'kind-of-a-group-not-listed',
              'declarations',
              `${name} doesn't list ${group}, but contains ${code}, which is one`,
              group,
              code,
            ),
          ]
        : []
    })
  })
}

/** Allergens that come from what a diet leaves out, with the trait that says so. */
const TRAIT_OF: readonly (readonly [string, Trait])[] = [
  ['milk', 'dairy'],
  ['egg', 'egg'],
  ['fish', 'fish'],
  ['shellfish', 'shellfish'],
  ['molluscs', 'shellfish'],
]

const DENIED = { free: 'is declared free of', 'not-listed': "doesn't list" } as const

/** Declarations and traits are read from one label: where they contradict, one of them is wrong. */
const contradictions = (document: Labelling): readonly DocumentProblem[] =>
  labelsOf(document).flatMap((of) =>
    TRAIT_OF.flatMap(([allergen, trait]) => {
      const { declarations, traits } = of.label
      if (traits === null) return []
      const has = traits.includes(trait)
      const contained = [allergen, ...kindsOf(document, allergen)].find(
        (code) => declarations[code] === 'contains',
      )
      if (contained !== undefined && !has)
        return [
          wrongAt(
            of,
            'trait-missing',
            'traits',
            `${of.name} contains ${contained}, but its traits don't name ${trait}`,
            contained,
            trait,
          ),
        ]
      const said = declarations[allergen]
      // A mollusc and a crustacean are one trait: either alone may be declared free, or not listed.
      return has && (said === 'free' || said === 'not-listed') && trait !== 'shellfish'
        ? [
            wrongAt(
              of,
              'trait-denied',
              'traits',
              `${of.name} ${DENIED[said]} ${allergen}, but its traits name ${trait}`,
              allergen,
              trait,
            ),
          ]
        : []
    }),
  )

const wrongSource = (of: Labelled, problem: SourceProblem): DocumentProblem => {
  const at = (message: string, ...named: readonly string[]) =>
    wrongAt(of, problem.why, 'sources', `${of.name} ${message}`, ...named)
  switch (problem.why) {
    case 'source-of-nothing':
      return at(
        `names what ${problem.trait} comes of, but its traits don't name ${problem.trait}`,
        problem.trait,
      )
    case 'no-such-source':
      return at(
        `has ${problem.trait} of ${problem.source}, which it can't come of`,
        problem.trait,
        problem.source,
      )
    case 'source-not-contained':
      return at(
        `has ${problem.trait} of ${problem.source}, but doesn't contain ${problem.code}`,
        problem.trait,
        problem.source,
        problem.code,
      )
  }
}

/** Of documents of before gluten is judged only: they may declare it free beside wheat. */
const wrongStatements = (document: Labelling): readonly DocumentProblem[] =>
  labelsOf(document).flatMap((of) => {
    const source = sourceProblem(document, of.label)
    return [
      ...(source === null ? [] : [wrongSource(of, source)]),
      ...(of.label.glutenStatement === true && !isStated(of.label)
        ? [
            wrongAt(
              of,
              'statement-alone',
              'glutenStatement',
              `${of.name} has the statement beside wheat, which goes with wheat that it contains, no barley or rye, and gluten declared free`,
            ),
          ]
        : []),
    ]
  })

const wrongProducts = ({ ingredients }: Labelling): readonly DocumentProblem[] =>
  ingredients.flatMap(({ id, products = [] }) => {
    const double = twice(products.map((one) => one.id))
    return double === undefined
      ? []
      : [
          wrong(
            'twice-the-id',
            ['ingredient', id, 'products'],
            `${id} has two products that are called ${double}`,
            double,
          ),
        ]
  })

const wrongOwn = ({ allergenSet, ownAllergens }: Labelling): readonly DocumentProblem[] => {
  const ofTheSet = declarable({ allergenSet, ownAllergens: [] })
  const double = twice(ownAllergens)
  const at = ['house', null, 'ownAllergens'] as const
  return [
    ...(double === undefined
      ? []
      : [wrong('own-twice', at, `the station adds ${double} twice`, double)]),
    ...ownAllergens
      .filter((one) => ofTheSet.has(one) || isDietCode(one))
      .map((one) =>
        wrong(
          'own-is-known',
          at,
          `${one} can be asked already: take it out of the station's own allergens`,
          one,
        ),
      ),
  ]
}

export const wrongLabels = (document: Labelling): readonly DocumentProblem[] => [
  ...calledTwice(
    'ingredient',
    'ingredients',
    document.ingredients.map((one) => one.id),
  ),
  ...contradictions(document),
  ...wrongStatements(document),
  ...wrongDeclarations(document),
  ...wrongProducts(document),
  ...wrongOwn(document),
]
