import type { Page } from '@playwright/test'
import type { Step } from '#lib/editor/step.ts'
import { menuEn } from '#lib/editor/words/menu-en.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { breaksNoRule } from './support/accessible.ts'
import { expect, resize, TABLETS, test } from './support/stage.ts'
import { untilHydrated } from './support/station.ts'

test.use({ houseOf: 'a-dearer-case' })

const cardOf = (station: string): string => `/menu/recipe?station=${station}&recipe=tuna-mix`

/** The card as somebody typed it on the set-up page. */
const STEPS: readonly Step[] = [
  {
    do: 'put',
    entity: 'recipe',
    id: 'tuna-mix',
    fields: {
      yields: '4 qt',
      lines: [
        { of: 'tuna', typed: '1 #10 can' },
        { of: 'relish', typed: '1/3 cup' },
        { of: 'dressed-mayonnaise', typed: 'a splash' },
      ],
    },
  },
]

/** All of the card is known, and an item that takes tuna beside its heart. */
const MENDED: readonly Step[] = [
  {
    do: 'put',
    entity: 'recipe',
    id: 'tuna-mix',
    fields: { ingredients: ['tuna'], recipes: [], lines: [{ of: 'tuna', typed: '1 #10 can' }] },
  },
  {
    do: 'put',
    entity: 'item',
    id: 'harbor-tuna',
    fields: {
      heart: 'cheddar',
      parts: [
        { component: 'tuna', usual: 'in', required: false },
        { component: 'cheddar', usual: 'in', required: true },
      ],
    },
  },
]

/** Takes steps on a station's draft; whether they were taken. */
const steps = (page: Page, station: string, all: readonly Step[]): Promise<boolean> =>
  page.evaluate(
    async ([id, text]) => {
      const seen = await (await fetch(`/menu/draft?station=${id}`)).json()
      const answer = await fetch('/menu/steps', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ station: id, saw: seen.saw, steps: JSON.parse(text) }),
      })
      return (await answer.json()).code === 'done'
    },
    [station, JSON.stringify(all)] as const,
  )

/** A station begun from the demo's, with the card typed; its id. */
const typeCard = (page: Page): Promise<string> =>
  page.evaluate(
    // As text, since the page's types of what it is given go through every kind of step.
    async (steps) => {
      const tell = async (path: string, body: object) =>
        (
          await fetch(path, {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify(body),
          })
        ).json()
      const { station, saw } = await tell('/menu/begin', { from: 'demo', name: 'Priced' })
      const saved = await tell('/menu/steps', { station, saw, steps: JSON.parse(steps) })
      return saved.code === 'done' ? String(station) : ''
    },
    JSON.stringify(STEPS),
  )

const priced = async (page: Page, date: string, paid: string): Promise<void> => {
  const form = page.getByRole('form', { name: recipeEn.invoice })
  await form.getByRole('combobox', { name: recipeEn.which, exact: true }).selectOption('tuna')
  await form.getByLabel(recipeEn.date, { exact: true }).fill(date)
  await form.getByLabel(recipeEn.packs, { exact: true }).fill('2')
  await form.getByLabel(recipeEn.packHolds, { exact: true }).fill('6 x #10 cans')
  await form.getByLabel(recipeEn.paid, { exact: true }).fill(paid)
  await form.getByRole('button', { name: recipeEn.add, exact: true }).click()
  await expect(form.getByText(recipeEn.kept)).toBeVisible()
}

test('a dearer case changes what a recipe costs, on every screen that shows it', async ({
  open,
}) => {
  const lead = await open('/devices', undefined, true)
  await untilHydrated(lead)
  const station = await typeCard(lead)
  expect(station).not.toBe('')
  await lead.goto(cardOf(station))
  const row = (page: Page, name: RegExp) =>
    page
      .getByRole('table', { name: recipeEn.lines })
      .getByRole('row')
      .filter({ has: page.getByRole('rowheader', { name }) })

  await test.step('the card is made at another yield, as a kitchen measures', async () => {
    await lead.getByLabel(recipeEn.make, { exact: true }).fill('10 qt')
    await expect(lead.getByText('2.5 × the card')).toBeVisible()
    await expect(row(lead, /tuna/i)).toContainText('2 1/2 #10 cans')
    await expect(row(lead, /tuna/i)).toContainText('about 8 1/4 qt')
    await expect(row(lead, /relish/i)).toContainText('3/4 cup')
    await expect(row(lead, /mayonnaise/i)).toContainText('a splash')
    await expect(row(lead, /mayonnaise/i)).toContainText('“splash” is no measure')
    await lead.getByLabel(recipeEn.fits, { exact: true }).fill('4 qt')
    await expect(lead.getByText(/3 even batches of/)).toBeVisible()
    await lead.getByLabel(recipeEn.make, { exact: true }).fill('2 to 3 qt')
    await expect(lead.getByText('“2 to 3” is two amounts: type one.')).toBeVisible()
    await lead.getByLabel(recipeEn.make, { exact: true }).fill('')
  })

  await test.step('a case is priced, and then costs more', async () => {
    const other = await open('/devices', undefined, true)
    await other.goto(cardOf(station))
    await untilHydrated(other)
    await priced(lead, '2026-11-02', '60.00')
    await expect(lead.getByText('at least $5.00')).toBeVisible()
    await priced(lead, '2026-11-20', '72.00')
    await expect(lead.getByText('at least $6.00')).toBeVisible()
    await expect(other.getByText('at least $6.00')).toBeVisible({ timeout: 20_000 })
  })

  await test.step('an item with it costs more, and without it what it did', async () => {
    const items = await open('/devices', undefined, true)
    expect(await steps(items, station, MENDED)).toBe(true)
    await items.goto(`/menu?station=${station}`)
    await untilHydrated(items)
    await items.getByRole('button', { name: menuEn.screen.sections.items, exact: true }).click()
    await items.getByRole('button', { name: /^Harbor tuna/ }).click()
    const food = items.getByRole('region', { name: menuEn.item.foodOf })
    const rowOf = (head: string) => food.locator('div').filter({ hasText: head })
    const { portion, no, extra } = menuEn.item.foodRows
    // Pita 30, tuna 32 of a can at $6.00, cheddar 30: 79 cents; $6.25 are asked, one more is $2.00.
    await expect(items.getByText('Food $0.79 · 13% of $6.25')).toBeVisible()
    await expect(rowOf(portion)).toContainText('$0.19')
    await expect(rowOf(no)).toContainText('$5.65')
    await expect(rowOf(extra)).toContainText('$7.28')
    await lead.reload()
    await untilHydrated(lead)
    await priced(lead, '2026-11-27', '96.00')
    await expect(items.getByText('Food $0.85 · 14% of $6.25')).toBeVisible({ timeout: 20_000 })
    await expect(rowOf(portion)).toContainText('$0.25')
    await expect(rowOf(no)).toContainText('$5.65')
    await expect(rowOf(extra)).toContainText('$7.15')
  })

  await test.step('it can be read by everybody, on every tablet, and prints', async () => {
    await breaksNoRule(lead)
    for (const size of [...TABLETS, { width: 390, height: 844 }]) {
      await resize(lead, size)
      const wide = await lead.evaluate(() => document.documentElement.scrollWidth)
      expect(wide).toBeLessThanOrEqual(size.width)
    }
    expect((await lead.pdf({ format: 'Letter' })).length).toBeGreaterThan(1_000)
  })
})
