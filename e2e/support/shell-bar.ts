/** An invented line of three items and eight components in ten pans, as somebody sets it up from nothing. */
import type { menuEn as words } from '#lib/editor/words/menu-en.ts'
import type { PanSize } from '#lib/measure/pans.ts'

interface Pan {
  readonly name: string
  readonly well: number
  /** null: as it is proposed. */
  readonly size: PanSize | null
  readonly kind: keyof typeof words.pan.kinds
  /** What ten level scoops weigh; null: it is taken by pieces. */
  readonly weighs: string | null
  /** What is printed on its pack; null: it is one plain food. */
  readonly label: string | null
}

type Rest = Partial<Pick<Pan, 'weighs' | 'size' | 'label'>>

const pan = (name: string, well: number, kind: Pan['kind'], rest: Rest): Pan => ({
  ...{ name, well, kind, weighs: null, size: null, label: null },
  ...rest,
})

const half = { size: 'half' } as const

/** From the left. */
export const WELLS = ['hot', 'hot', 'hot', 'cold'] as const

/** Each component's first pan. */
export const PANS: readonly Pan[] = [
  pan('Corn shells', 1, 'plant', { ...half, label: 'Ingredients: corn, water, lime.' }),
  pan('Yellow rice', 1, 'plant', { ...half, weighs: '1 lb 4 oz', label: 'Rice, turmeric, salt.' }),
  pan('Pulled chicken', 2, 'poultry-or-stuffed', {
    weighs: '1 lb 2 oz',
    label: 'Chicken, water, soy sauce (water, soybeans, wheat, salt). Contains soy and wheat.',
  }),
  pan('Pinto beans', 2, 'plant', { weighs: '1 lb 6 oz', label: 'Pinto beans, water, salt.' }),
  pan('Roast squash', 2, 'plant', { weighs: '1 lb 1 oz' }),
  pan('Green salsa', 4, 'ready', { weighs: '1 lb 5 oz', label: 'Tomatillos, onions, salt.' }),
  pan('Shredded cabbage', 4, 'ready', { weighs: '8 oz' }),
  pan('Lime cream', 4, 'ready', {
    weighs: '1 lb 4 oz',
    label: 'Cream (milk), lime juice, salt. Contains milk.',
  }),
]

/** What goes fast stands in a second pan. */
export const SECOND_PANS = [
  { name: 'Pulled chicken', well: 3 },
  { name: 'Yellow rice', well: 3 },
] as const

export const ITEMS = [
  { name: 'Chicken shell', price: '6.50', takes: ['Pulled chicken', 'Corn shells', 'Lime cream'] },
  { name: 'Bean bowl', price: '5.75', takes: ['Pinto beans', 'Yellow rice', 'Green salsa'] },
  { name: 'Squash bowl', price: '5.75', takes: ['Roast squash', 'Yellow rice', 'Lime cream'] },
] as const

/** What has milk in it stands behind a divider. */
export const APART = 'Lime cream'
