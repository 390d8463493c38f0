import type { Page } from '@playwright/test'
import { LABEL_STOCK, perSheet, type StockId } from '#lib/paper/labels/label-stock.ts'
import { LEAST_PT, MM_PER_PT } from '#lib/paper/page/papers.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { NOTHING_NAMED } from '#lib/paper/words/labels-en.ts'
import { labelsEn as words } from '#lib/paper/words/labels-screen-en.ts'
import { pansOf } from '#lib/station/find.ts'
import { stationSchema } from '#lib/station/schema.ts'
import { demoStation } from '#server/demo-station.ts'
import { inkOf, nothingIsOutside } from './support/paper-ink.ts'
import { pdfPages } from './support/pdf-text.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

const label = (page: Page, id: string) => page.locator(`article[data-label="${id}"]`)

const chooseStock = async (page: Page, id: StockId): Promise<void> => {
  const { name, size } = words.stock[id]
  const button = page.getByRole('button', { name: `${name} ${size}`, exact: true })
  await button.click()
  await expect(button).toHaveAttribute('aria-pressed', 'true')
}

const printedPages = async (page: Page) => pdfPages(await page.pdf({ preferCSSPageSize: true }))

const drawnLines = async (page: Page): Promise<readonly string[]> =>
  (await page.locator('section[data-paper] [data-text] > span').allInnerTexts()).map((one) =>
    one.trim(),
  )

/** Every sheet says its minute: printed and drawn within one. */
const printedAsDrawn = async (page: Page) => {
  for (;;) {
    const before = await drawnLines(page)
    const pages = await printedPages(page)
    const drawn = await drawnLines(page)
    if (before.join() === drawn.join()) return { pages, drawn }
  }
}

/** Every text and blank of a label is inside its own label, as it is drawn. */
const outOfLabels = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('article[data-label]')].flatMap((article) => {
      const own = article.querySelector('[data-label-box]')?.getBoundingClientRect()
      if (!own) return ['a label without its box']
      return [...article.querySelectorAll('[data-text] > span, [data-blank]')].flatMap(
        (element) => {
          const range = document.createRange()
          range.selectNodeContents(element)
          const ink = element.hasAttribute('data-blank')
            ? element.getBoundingClientRect()
            : range.getBoundingClientRect()
          const out = Math.max(
            own.left - ink.left,
            own.top - ink.top,
            ink.right - own.right,
            ink.bottom - own.bottom,
          )
          return out > 0.6
            ? [`${article.getAttribute('data-label')}: ${element.textContent} ${out}`]
            : []
        },
      )
    }),
  )

test('[PA32] [PA35] labels of the open service: one for each pan, read back as they are drawn', async ({
  open,
  see,
}) => {
  await see({ ...view('pans, unloaded'), scene: 'ready to load' })
  const page = await open('/paper/labels')
  for (const { id, component } of pansOf(demoStation)) {
    const isTray = component === 'yogurt-sauce'
    await expect(label(page, `${isTray ? 'tray' : 'pan'}/${id}`)).toHaveCount(1, {
      timeout: 30_000,
    })
  }
  await expect(label(page, 'pan/pan-cheddar')).toContainText('CONTAINS MILK')
  await expect(label(page, 'pan/pan-rice')).toContainText(NOTHING_NAMED)
  await expect(label(page, 'pan/pan-rice')).toContainText('pan 2 of 10')

  for (const id of ['letter-10', 'letter-30', 'a4-21', 'roll-2x2', 'roll-62'] as const)
    await test.step(id, async () => {
      await chooseStock(page, id)
      const stock = LABEL_STOCK[id]
      const count = await page.locator('article[data-label]').count()
      const { pages, drawn } = await printedAsDrawn(page)
      expect(pages).toHaveLength(Math.ceil(count / perSheet(stock)))
      expect(pages.flatMap(({ lines }) => lines)).toEqual(drawn)
      if (stock.kind === 'roll')
        for (const one of pages)
          expect(Math.abs(one.width * MM_PER_PT - stock.width), 'wide as the roll').toBeLessThan(
            0.5,
          )
      await page.emulateMedia({ media: 'print' })
      await nothingIsOutside(page, id)
      expect(await outOfLabels(page)).toEqual([])
      await page.emulateMedia({ media: null })
    })

  await test.step('one left out, one more printed, and a sheet that begins at the fourth', async () => {
    await chooseStock(page, 'letter-10')
    const before = await page.locator('article[data-label]').count()
    await page.getByRole('button', { name: 'Brown rice', exact: true }).first().click()
    await expect(page.locator('article[data-label]')).toHaveCount(before - 1)
    const first = page.locator('article[data-label] [data-label-box]').first()
    const at = await first.boundingBox()
    for (let tap = 0; tap < 3; tap += 1)
      await page.getByRole('button', { name: words.more, exact: true }).click()
    await expect(page.getByText(words.firstOf(4, 10), { exact: true })).toBeVisible()
    const moved = await first.boundingBox()
    expect((moved?.x ?? 0) - (at?.x ?? 0)).toBeGreaterThan(100)
    await page.getByRole('button', { name: words.none, exact: true }).click()
    await expect(page.locator('article[data-label]')).toHaveCount(0)
    await expect(page.getByRole('button', { name: frameEn.print })).toBeDisabled()
    await page.getByRole('button', { name: words.all, exact: true }).click()
  })
})

/** 40 letters, and all nine contained. */
const nine = () => {
  const declarations = Object.fromEntries(
    ['milk', 'egg', 'fish', 'shellfish', 'tree-nuts', 'wheat', 'peanut', 'soy', 'sesame'].map(
      (code) => [code, 'contains'],
    ),
  )
  return stationSchema.parse({
    ...demoStation,
    invented: false,
    ingredients: demoStation.ingredients.map((one) => ({
      ...one,
      declarations: { ...one.declarations, ...declarations },
      // Nobody said: traits that contradict what is contained are refused.
      traits: null,
    })),
    components: demoStation.components.map((one, at) => ({
      ...one,
      name: `Slowroasted paprika chicken thighs boned${at % 10}`.slice(0, 40),
    })),
  })
}

test('[PA30] [PA42] names of 40 letters and nine allergens: nothing is cut on the allergen sheet', async ({
  open,
}) => {
  const page = await open('/paper/allergens')
  await page.route(
    ({ pathname }) => pathname === '/allergens',
    (route) =>
      route.fulfill({
        json: {
          at: Date.parse('2026-11-29T16:00:00Z'),
          facts: { station: nine(), revision: 12, soiled: [], lent: [], asOf: null },
        },
      }),
  )
  await page.reload()
  await expect(page.getByText(/Slowroasted/).first()).toBeVisible({ timeout: 30_000 })
  const pages = await printedPages(page)
  const letters = pages
    .flatMap(({ lines }) => lines)
    .join('')
    .replace(/\s/g, '')
  for (const { name } of nine().components) expect(letters).toContain(name.replace(/\s/g, ''))
  await page.emulateMedia({ media: 'print' })
  await nothingIsOutside(page, 'letter')
  for (const ink of (await inkOf(page)).flat())
    expect(ink.fontPx / (96 / 25.4) / MM_PER_PT).toBeGreaterThan(LEAST_PT - 0.01)
})
