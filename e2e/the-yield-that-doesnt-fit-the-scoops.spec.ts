import type { Page } from '@playwright/test'
import type { Step } from '#lib/editor/step.ts'
import { menuEn } from '#lib/editor/words/menu-en.ts'
import { recipeEn as words } from '#lib/words/recipe/recipe-en.ts'
import { breaksNoRule } from './support/accessible.ts'
import { expect, resize, TABLETS, test } from './support/stage.ts'
import { untilHydrated } from './support/station.ts'

test.use({ houseOf: 'the-yield-that-doesnt-fit-the-scoops' })

/** 30 eggs for 20, scrambled at the USDA weight of 61 g each, by level #16 scoops of 55 g. */
const STEPS: readonly Step[] = [
  { do: 'put', entity: 'ingredient', id: 'eggs', fields: { name: 'Eggs' } },
  {
    do: 'put',
    entity: 'recipe',
    id: 'scrambled',
    fields: {
      name: 'Scrambled eggs',
      ingredients: ['eggs'],
      recipes: [],
      yields: '1830 g',
      lines: [{ of: 'eggs', typed: '30 eggs' }],
    },
  },
  {
    do: 'put',
    entity: 'component',
    id: 'tuna',
    fields: {
      name: 'Eggs',
      short: ['Eggs'],
      plural: true,
      recipes: ['scrambled'],
      portion: {
        tool: 'scoop',
        number: 16,
        level: 1,
        gPerCup: 220,
        source: 'USDA SR28, NDB 01132',
      },
    },
  },
]

/** A station begun from the demo's with the card and a pan of 20; its id. */
const typeCard = (page: Page): Promise<string> =>
  page.evaluate(async (text) => {
    const tell = async (path: string, body: object) =>
      (
        await fetch(path, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(body),
        })
      ).json()
    const { station, saw } = await tell('/menu/begin', { from: 'demo', name: 'Breakfast' })
    const { rows } = await (await fetch(`/menu/draft?station=${station}`)).json()
    const pan = Object.keys(rows).find(
      (key) => key.startsWith('pan:') && rows[key].component === 'tuna',
    )
    const usual = { do: 'put', entity: 'pan', id: pan?.slice(4), fields: { usualPortions: 20 } }
    const saved = await tell('/menu/steps', { station, saw, steps: [...JSON.parse(text), usual] })
    return saved.code === 'done' ? String(station) : ''
  }, JSON.stringify(STEPS))

test('a yield that doesn’t fit the scoops: another scoop, or another amount, each by one tap', async ({
  open,
}) => {
  const lead = await open('/devices', undefined, true)
  await untilHydrated(lead)
  const station = await typeCard(lead)
  expect(station).not.toBe('')
  const other = await open('/devices', undefined, true)
  await other.goto(`/menu?station=${station}`)
  await untilHydrated(other)
  await other.getByRole('button', { name: /^Eggs, / }).click()
  await other.getByRole('button', { name: menuEn.pan.leaves.portion, exact: true }).click()
  const size = (number: number) =>
    other
      .getByRole('region', { name: menuEn.pan.portion })
      .getByRole('button', { name: new RegExp(`#${number}\\b`) })
  await expect(size(16)).toHaveAttribute('aria-pressed', 'true')

  const enough = lead.getByRole('region', { name: words.yield })
  const way = (name: string) => enough.getByRole('button', { name: new RegExp(`^${name}`) })

  await test.step('30 eggs are 33 level #16 scoops, and 20 are wanted', async () => {
    await lead.goto(`/menu/recipe?station=${station}&recipe=scrambled`)
    await expect(enough.getByText('It makes 1.85 kg: 33 portions.')).toBeVisible()
    await expect(enough.getByText('level #16: 20 × 1/4 cup = 1 qt 1 cup')).toBeVisible()
    await expect(enough.getByText(words.wantedBy.usual)).toBeVisible()
    await expect(enough.getByText('66% more than 20 portions take.')).toBeVisible()
    await breaksNoRule(lead)
  })

  await test.step('another scoop: one tap, and the set-up page has it', async () => {
    await way(words.way.scoop(10)).click()
    await expect(enough.getByText(words.fitsIt)).toBeVisible()
    await expect(enough.getByText(/^level #10: 20 × /)).toBeVisible()
    await expect(enough.getByText(words.scoopTaken(10))).toBeVisible()
    await expect(enough.getByRole('button')).toHaveCount(0)
    await expect(size(10)).toHaveAttribute('aria-pressed', 'true', { timeout: 20_000 })
  })

  await test.step('back to #16 on the set-up page, and it doesn’t fit again', async () => {
    await size(16).click()
    await expect(size(16)).toHaveAttribute('aria-pressed', 'true')
    await expect(enough.getByText('66% more than 20 portions take.')).toBeVisible({
      timeout: 20_000,
    })
  })

  await test.step('just enough of it: one tap, and the eggs are counted whole', async () => {
    await way('Make 0.602').click()
    await expect(enough.getByText(words.fitsIt)).toBeVisible()
    await expect(lead.getByLabel(words.make, { exact: true })).toHaveValue('x 0.602')
    const eggs = lead.getByRole('table', { name: words.lines }).getByRole('row').nth(1)
    await expect(eggs).toContainText('18 eggs')
    await expect(eggs.getByRole('button', { name: words.whole('18 eggs') })).toBeVisible()
  })

  await test.step('three times the guests: the card twice', async () => {
    await lead.getByLabel(words.make, { exact: true }).fill('')
    await enough.getByLabel(words.forHowMany, { exact: true }).fill('60')
    await expect(enough.getByText('45% less than 60 portions take.')).toBeVisible()
    await way(words.way.batches(2)).click()
    await expect(enough.getByText('It makes 3.65 kg: 66 portions.')).toBeVisible()
    await expect(enough.getByText('11% more than 60 portions take.').first()).toBeVisible()
  })

  await test.step('nothing typed is lost where it isn’t understood, and every tablet holds it', async () => {
    await enough.getByLabel(words.forHowMany, { exact: true }).fill('many')
    await expect(enough.getByText(words.notCount)).toBeVisible()
    await expect(enough.getByLabel(words.forHowMany, { exact: true })).toHaveValue('many')
    for (const one of [...TABLETS, { width: 390, height: 844 }]) {
      await resize(lead, one)
      const wide = await lead.evaluate(() => document.documentElement.scrollWidth)
      expect(wide).toBeLessThanOrEqual(one.width)
    }
  })
})
