import { menuEn } from '#lib/editor/words/menu-en.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { setUpSheetEn as words } from '#lib/paper/words/set-up-sheet-en.ts'
import { begin, newHands, untilSaved } from './support/menu-hands.ts'
import { expect, test } from './support/station.ts'

test.use({ houseOf: 'draft-on-paper' })

test('[PA7] the line as it is being set up is printed as a draft, and not while something is wrong with it', async ({
  open,
}) => {
  const page = await open('/menu', { viewport: { width: 1024, height: 768 } }, true)
  await begin(page, newHands(), 'Noon line', menuEn.screen.fromDemo)
  await page.getByRole('link', { name: menuEn.screen.onPaper }).click()
  const rows = page.locator('article[data-row]')
  await expect(rows).toHaveCount(10)
  await expect(page.locator('section[data-paper]').getByText(words.draft)).toBeVisible()
  await expect(page.locator('section[data-paper]').getByText('Noon line')).toBeVisible()
  await page.getByRole('link', { name: frameEn.toPublished }).click()
  await expect(page.getByText(frameEn.noStation)).toBeVisible()
  await expect(page.getByRole('button', { name: frameEn.print })).toBeDisabled()

  await page.getByRole('link', { name: frameEn.toSetUp }).click()
  await page.getByRole('button', { name: /^Brown rice, half pan/ }).click()
  await page.getByRole('button', { name: menuEn.pan.leaves.portion, exact: true }).click()
  await page.getByLabel(menuEn.pan.usual, { exact: true }).fill('400')
  await page.keyboard.press('Tab')
  await untilSaved(page)
  await page.goto(`${page.url().replace('/menu', '/paper/set-up')}&of=draft`)
  await expect(page.getByText(frameEn.notWhole(1))).toBeVisible()
  await expect(rows).toHaveCount(0)
})
