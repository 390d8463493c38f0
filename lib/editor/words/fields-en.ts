/** What rows and their fields are called where a sentence names them, in English. */

import type { Draft, Entity, EntityKey } from '#lib/editor/draft.ts'
import { LIMITS, namedBy, rowOf, rowsOf, textIn, textsIn } from '#lib/editor/draft.ts'
import { menuItemEn } from '#lib/editor/words/item-en.ts'
import type { ContactKind } from '#lib/station/station-document.ts'

const entities: Readonly<Record<Entity, string>> = {
  house: 'the house',
  [LIMITS]: 'the limits',
  day: 'the day',
  well: 'a well',
  pan: 'a pan',
  backup: 'a back-up pan',
  tool: 'a tool',
  component: 'a component',
  recipe: 'a recipe',
  ingredient: 'an ingredient',
  item: 'an item',
  contact: 'what touches',
}

const FIELDS: Readonly<Record<string, string>> = {
  name: 'name',
  short: 'short name',
  mark: 'word for wraps',
  plural: 'whether it is many',
  ingredients: 'ingredients',
  recipes: 'recipes',
  lines: 'amounts',
  yields: 'yield',
  vessel: 'what it is made in',
  steps: 'method',
  vessels: 'pots and ovens',
  edible: 'how much of it is eaten',
  held: 'how it is held',
  portion: 'portion',
  density: 'what it weighs',
  side: 'lidded cups',
  extraCents: 'price of one more portion',
  costCents: 'cost',
  warm: 'warming',
  food: 'kind of food',
  remake: 'making it again',
  size: 'size',
  depthIn: 'depth',
  tareMg: 'empty weight',
  capacityFlOz: 'capacity',
  usualPortions: 'usual load',
  component: 'what it holds',
  protected: 'protection',
  kept: 'how it is kept',
  priceCents: 'price',
  heart: 'what it is named for',
  base: 'base',
  parts: 'parts',
  kind: 'kind',
  components: 'what touches',
  touches: 'whether it touches',
  of: 'where it doesn’t touch',
  timeZone: 'time zone',
  currency: 'currency',
  locale: 'numbers and dates',
  allergenSet: 'allergens asked about',
  ownAllergens: 'own allergens',
  cautions: 'cautions',
  notListed: 'what not listed means',
  readAgainDays: 'days until labels are read again',
  tax: 'tax',
  contactsSaid: 'confirmation of what touches',
  invented: 'whether it is invented',
  scale: 'thermometers',
  limits: 'limits',
  readings: 'readings',
  timeProcedure: 'procedure for time alone',
  reheatOn: 'where it is reheated',
  shelf: 'waiting on the shelf',
  sanitizer: 'sanitizer',
  closes: 'closing time',
  rushes: 'rushes',
  assemblers: 'how many build',
  doors: 'doors',
  bells: 'bell schedules',
  crew: 'crew',
  crewMeal: 'crew meal',
  maker: 'maker',
  pack: 'pack',
  products: 'products',
  usualFor: 'whose it is',
  tool: 'tool',
  gPerCup: 'what a level cup weighs',
  number: 'scoop number',
  level: 'levels',
  pieces: 'pieces',
  grams: 'weight',
  squeezes: 'squeezes',
  seconds: 'seconds',
  on: 'what it is warmed on',
  where: 'where it is made again',
  by: 'who makes it again',
  minutes: 'minutes',
  minutesPerLoad: 'minutes for each further load',
  portionsPerLoad: 'portions a load',
  mostLoads: 'loads at once',
  collectWithinMin: 'minutes on the shelf',
  everyMin: 'minutes between readings',
  askBeforeMin: 'minutes before a reading',
  rateBasisPoints: 'tax rate',
  from: 'beginning',
  to: 'end',
  open: 'opening',
  close: 'closing',
  initials: 'initials',
  typed: 'amount',
  document: 'the code that says so',
  paragraph: 'paragraph',
  leastMgPerL: 'least strength',
  mostMgPerL: 'most strength',
  mostPh: 'pH',
  certainty: 'how it is known',
  tenths: 'temperature',
  withinMs: 'time',
  days: 'days',
  combinations: 'temperatures and times',
  standSeconds: 'standing time',
}

/** "price" of `priceCents`; of `portion.pieces` "pieces", the innermost that has a name. */
export const fieldName = (field: string | null): string => {
  const keys = (field ?? '').split('.')
  return keys.toReversed().flatMap((key) => FIELDS[key] ?? [])[0] ?? keys[0] ?? ''
}

/** What a row is called; what it is where it has no name. */
export const rowNamed = (draft: Draft, entity: Entity, id: string): string => {
  const row = rowOf(draft, entity, id)
  const name = textIn(row, 'name')
  if (name !== '' && entity !== 'house') return name
  const componentName = (component: string) =>
    textIn(rowOf(draft, 'component', component), 'name') || component
  if (entity === 'pan') {
    const of = textIn(row, 'component')
    return of === '' ? entities.pan : `the pan of ${componentName(of)}`
  }
  if (entity === 'backup') return `the back-up pan of ${componentName(textIn(row, 'component'))}`
  if (entity === 'contact') {
    const kind = textIn(row, 'kind') as ContactKind
    const of = textsIn(row, 'components').map(componentName)
    return kind in menuItemEn.kinds ? menuItemEn.contact(kind, of) : entities.contact
  }
  if (entity === 'well') {
    const number = 1 + rowsOf(draft, 'well').findIndex((one) => one.id === id)
    return number === 0 ? entities.well : `well ${number}`
  }
  return entities[entity]
}

export const rowName = (draft: Draft, key: EntityKey): string => {
  const { entity, id } = namedBy(key)
  return rowNamed(draft, entity, id)
}
