import type { Page } from '@playwright/test'
import { endFormWords } from '#lib/rooms/day/words/ends-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { beginning, tapUntil } from './support/hands.ts'
import { countTaps } from './support/round-hands.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

/** Two to open it, two for each place that is answered by itself, and for all hot; 26 as it was measured. */
const MOST_TAPS = 28
/** Longer than the guard that keeps a press from landing on what has only just come. */
const GUARD_MS = 500

const job = (page: Page) => page.locator('section[data-job]')
const inJob = (page: Page, name: string) => job(page).getByRole('button', { name: beginning(name) })
const main = (page: Page) => job(page).locator('[data-main]')

test.setTimeout(240_000)

test('closed in line order: ten pans and what is behind them, each with its lawful ends, in at most 28 taps', async ({
  see,
  play,
}) => {
  await play('quiet')
  const page = await see(view('pans, calm'))
  const taps = await countTaps(page)
  const title = page.getByRole('heading', { level: 1 })
  const initials = job(page).getByLabel(readingWords.initials, { exact: true })
  await tapUntil(
    page.getByRole('button', { name: pansWords.closeService, exact: true }).first(),
    inJob(page, endFormWords.start),
  )
  await tapUntil(inJob(page, endFormWords.start), initials)

  const comesTo = async (end: string) => {
    await page.waitForTimeout(GUARD_MS)
    await job(page).locator('button:not([data-main])').filter({ hasText: end }).first().click()
    if ((await initials.inputValue()) === '') await initials.fill('BO')
    const before = (await title.textContent()) ?? ''
    await main(page).click()
    await expect(title).not.toHaveText(before)
  }
  await test.step('pita is dry: it is set aside dry, or goes; cold isn’t offered', async () => {
    await expect(title).toHaveText(endFormWords.title('Pita', 'pan'))
    await expect(job(page).getByText(/it is dry food \(house rule\)/)).toBeVisible()
    await comesTo(endFormWords.end.dry)
    await expect(title).toHaveText(endFormWords.title('Pita', 'backup'))
    await comesTo(endFormWords.end.dry)
  })
  await test.step('brown rice is hot: all that is hot goes under one’s initials', async () => {
    await expect(title).toHaveText(endFormWords.title('Brown rice', 'pan'))
    await expect(job(page).getByText(/it isn’t cold yet \(3-501\.14\(A\)\)/)).toBeVisible()
    await comesTo(endFormWords.allHot)
  })
  await test.step('the cold ones go on to their last day, the others follow by themselves', async () => {
    for (let count = 0; count < 14; count += 1) {
      const heading = (await title.textContent()) ?? ''
      if (heading === pansWords.closeTitle) break
      // Hot food that went with the others is passed.
      if (await job(page).getByText(endFormWords.gone).isVisible()) break
      await comesTo(heading.includes('almonds') ? endFormWords.end.dry : endFormWords.end.cold)
    }
    await expect(title).toHaveText(pansWords.closeTitle)
  })
  expect(await taps()).toBeLessThanOrEqual(MOST_TAPS)
  await expect(main(page)).toBeEnabled()
})
