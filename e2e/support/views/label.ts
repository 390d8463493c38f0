/** A label that is read, on a lead's device. The server's answers are told, so that nothing is written. */
import type { Page } from '@playwright/test'
import type { LabelledIngredient, MenuLabels } from '#lib/editor/label-http.ts'
import { labelFormWords as words } from '#lib/editor/words/label-form-en.ts'
import { on, type View } from './view.ts'

const ADDRESS = '/menu/label?station=potato-bar&ingredient=chili-powder'

const UNREAD = { version: 0, label: null, at: null, by: null }

const chili: LabelledIngredient = {
  ingredient: 'chili-powder',
  name: 'Chili powder',
  maker: 'Northmill',
  pack: '5 lb',
  label: UNREAD,
  products: [{ product: 'product-2', maker: 'Low Barn', pack: '1 kg', label: UNREAD }],
  goesInto: ['Turkey chili', 'Roast corn'],
  alsoAt: ['Soup line'],
}

const LABELS: MenuLabels & { readonly code: 'done' } = {
  code: 'done',
  station: 'potato-bar',
  allergens: { allergenSet: 'us-9', ownAllergens: [] },
  today: '2026-11-25',
  readAgainDays: 90,
  ingredients: [chili],
}

const LIST =
  'Ingredients: chili pepper, wheat flour, natural flavoring, almonds, salt. Free from egg and fish. May contain soy.'

const told = (view: View, then: (page: Page) => Promise<void> = async () => {}): View => ({
  ...view,
  asLead: true,
  reach: async (page) => {
    await page.route('**/menu/labels?*', (route) => route.fulfill({ json: LABELS }))
    await page.goto(ADDRESS)
    await page.getByRole('heading', { name: words.title(chili.name) }).waitFor()
    await then(page)
  },
  leaves: (page) => page.unroute('**/menu/labels?*'),
})

const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click()

const typed = async (page: Page): Promise<void> => {
  await page.getByRole('textbox', { name: words.packageHint }).fill(LIST)
  await tap(page, words.markWords)
}

const answered = async (page: Page): Promise<void> => {
  await typed(page)
  await tap(page, words.laws['us-9'])
  await tap(page, /^Yes, as marked/)
  await tap(page, /^The other \d/)
}

const label = on('/menu/label', 'label')

export const labelViews: readonly View[] = [
  told(label('nothing answered', 'quiet', words.package)),
  told(label('words marked', 'quiet', words.changeWords), typed),
  told(label('nearly answered', 'quiet', words.leftUnsaid(2)), answered),
  told(label('another product', 'quiet', words.anotherWhy), (page) => tap(page, words.another)),
]
