import type { Page } from '@playwright/test'
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import {
  anyPan,
  done,
  inJob,
  job,
  openJob,
  pot,
  sends,
  typeFigures,
  typeReading,
} from './support/food-hands.ts'
import { beginning } from './support/hands.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

/** Longer than the guard that keeps a tap from what has only just come. */
const GUARD_MS = 500

/** Counts taps that land on something, figures of a pad apart. */
const counting = (page: Page): Promise<void> =>
  page.evaluate(() => {
    document.documentElement.dataset.taps = '0'
    const count = ({ isTrusted, target }: Event) => {
      const button = target instanceof Element ? target.closest('button, a, input') : null
      if (!isTrusted || !button || /^\d$/.test(button.textContent ?? '')) return
      const { dataset } = document.documentElement
      dataset.taps = String(Number(dataset.taps) + 1)
    }
    addEventListener('click', count, true)
  })

const tapped = async (page: Page): Promise<number> =>
  Number(await page.locator('html').getAttribute('data-taps'))

test('a pan is changed in 3 taps beside the digits, looked into in 2, and a batch is on the line in 8', async ({
  see,
  play,
}) => {
  await play('quiet')
  const page = await see(view('pans, calm'))
  const tap = async (name: string | RegExp) => {
    await page.waitForTimeout(GUARD_MS)
    await page.getByRole('button', { name }).first().click()
  }
  const since = async (before: number) => (await tapped(page)) - before

  // Whose hands and which probe: typed once, kept from then on.
  await openJob(page, 'Black beans', pansWords.readTemperature)
  await typeReading(page, '150')
  await sends(page, formWords.readSend('150 °F'), formWords.readDone('Black beans', '150 °F'))
  await counting(page)

  await test.step('eye check: 2', async () => {
    await anyPan(page, 'Cheddar').click()
    await tap(pansWords.looks[3])
    await expect(done(page, pansWords.done.looked('Cheddar', pansWords.looks[3]))).toBeVisible()
    expect(await tapped(page)).toBe(2)
  })

  await test.step('change a pan: at most 4', async () => {
    const before = await tapped(page)
    await anyPan(page, 'Roast peppers').click()
    await tap(pansWords.changePan)
    await typeFigures(page, '150')
    await page.waitForTimeout(GUARD_MS)
    await inJob(page, formWords.put.change).click()
    await expect(done(page, formWords.isLoaded('Roast peppers'))).toBeVisible()
    expect(await since(before)).toBeLessThanOrEqual(4)
  })

  await test.step('a batch from its start to the line: at most 12', async () => {
    const before = await tapped(page)
    await tap(batchWords.start)
    await inJob(page, 'Herb chicken').click()
    // How many loads are proposed is the forecast's, by the hour at which this runs.
    const starts = job(page).getByRole('button', { name: /^Start \d+ loads?$/ })
    await expect(starts).toBeVisible()
    while (!/^Start 1 load$/.test((await starts.textContent()) ?? '')) await tap('1 fewer')
    await tap(/^Start 1 load$/)
    await expect(done(page, formWords.startDone('Herb chicken', 1))).toBeVisible()
    await pot(page, 'Herb chicken').click()
    await typeFigures(page, '166')
    await tap(formWords.readSend('166 °F'))
    await expect(done(page, batchWords.cookDone('Herb chicken', '166 °F'))).toBeVisible()
    await tap(/^Finished: /)
    await expect(job(page).getByText(batchWords.ready)).toBeVisible()
    await tap(batchWords.step.load)
    await inJob(page, 'Batch, made').click()
    await typeFigures(page, '158')
    await page.waitForTimeout(GUARD_MS)
    await inJob(page, formWords.put.change).click()
    await expect(done(page, formWords.isLoaded('Herb chicken'))).toBeVisible()
    expect(await since(before)).toBeLessThanOrEqual(12)
  })
  await expect(
    page.getByRole('button', { name: beginning('Herb chicken: 12') }),
    'what the batch gave is on the line',
  ).toBeVisible()
  await play('quiet')
})
