/** The US nine major allergens: FALCPA 2004 and the FASTER Act 2021 (sesame from 2023-01-01). */
export const US_NINE = [
  'milk',
  'egg',
  'fish',
  'shellfish',
  'tree-nuts',
  'wheat',
  'peanut',
  'soy',
  'sesame',
] as const

export const DIETS = ['vegetarian', 'vegan'] as const

/** What an ingredient is or comes from; diets are rules over these. */
export const TRAITS = [
  'meat',
  'pork',
  'beef',
  'poultry',
  'fish',
  'shellfish',
  'stock',
  'lard',
  'gelatin',
  'animal-rennet',
  'egg',
  'dairy',
  'honey',
  'alcohol',
  'gluten-grain',
] as const

export type Allergen = (typeof US_NINE)[number]
export type Diet = (typeof DIETS)[number]
export type Trait = (typeof TRAITS)[number]
export type NeedCode = Allergen | Diet

export const NEED_CODES: readonly NeedCode[] = [...US_NINE, ...DIETS]

/** How a need is handled: `keep-apart` counts shared contact, `leave-out` does not. */
export type Handling = 'keep-apart' | 'leave-out'

export const REASONS = ['allergy', 'coeliac', 'faith', 'diet', 'dislike'] as const
export type Reason = (typeof REASONS)[number]

export interface Need {
  readonly code: NeedCode
  readonly handling: Handling
  readonly reason: Reason | null
}

/** What the guest answered when asked. `not-sure` counts as unknown. */
export type Asked = 'none' | 'needs' | 'not-sure'

export const isDiet = (code: NeedCode): code is Diet => code === 'vegetarian' || code === 'vegan'

const NOT_VEGETARIAN: readonly Trait[] = [
  'meat',
  'pork',
  'beef',
  'poultry',
  'fish',
  'shellfish',
  'stock',
  'lard',
  'gelatin',
  'animal-rennet',
]

/** Traits that a diet leaves out. Egg, dairy and honey pass vegetarian (ISO 23662:2021, ovo-lacto). */
export const LEFT_OUT_BY: Readonly<Record<Diet, readonly Trait[]>> = {
  vegetarian: NOT_VEGETARIAN,
  vegan: [...NOT_VEGETARIAN, 'egg', 'dairy', 'honey'],
}
