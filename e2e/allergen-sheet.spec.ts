import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { labelWords } from '#lib/rooms/care/words/labels-en.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import { breaksNoRule } from './support/accessible.ts'
import { tapUntil } from './support/hands.ts'
import { expect, resize, TABLETS, test } from './support/stage.ts'

/** Page objects of a PDF; its tree of pages is another type. */
const pagesOf = (pdf: Buffer): number =>
  (pdf.toString('latin1').match(/\/Type\s*\/Page(?![a-z])/gi) ?? []).length

test('the allergen sheet is read by anyone, and prints on one page', async ({ open, play }) => {
  await play('quiet')
  const page = await open('/sheet')
  const table = page.getByRole('table')
  const row = (name: string) =>
    table.getByRole('row').filter({ has: page.getByRole('rowheader', { name, exact: true }) })

  await test.step('every item and component with a word for each allergen, and a date', async () => {
    await expect(row('Garden chicken').getByRole('cell')).toHaveCount(12)
    await expect(row('Cheddar').getByRole('cell').first()).toContainText(sheetWords.word.contains)
    await expect(row('Tuna salad')).toContainText(sheetWords.word.unknown)
    await expect(row('Pita')).toContainText(sheetWords.date('2026-11-20'))
    for (const word of Object.values(sheetWords.word))
      await expect(page.getByRole('region', { name: sheetWords.legend })).toContainText(word)
    for (const caution of sheetWords.cautions)
      await expect(page.getByText(caution, { exact: false })).toBeVisible()
  })

  await test.step('it can be read without colour, and nothing can be done on it', async () => {
    await breaksNoRule(page)
    await expect(page.getByRole('button')).toHaveCount(1)
    for (const size of TABLETS) {
      await resize(page, size)
      const wide = await page.evaluate(() => document.documentElement.scrollWidth)
      expect(wide).toBeLessThanOrEqual(size.width)
    }
  })

  await test.step('it prints on one page of either paper, either way', async () => {
    for (const format of ['Letter', 'A4'])
      for (const landscape of [true, false])
        expect(pagesOf(await page.pdf({ format, landscape })), format).toBe(1)
  })

  await test.step('a product that isn’t the same is on it, to be read', async () => {
    const pans = await open('/pans', undefined, true)
    await pans.getByRole('button', { name: firstWords.labelChanged, exact: true }).click()
    await pans.getByRole('searchbox').fill('pita')
    await pans.getByRole('button', { name: /^Pita bread/ }).click()
    const notSame = pans.getByRole('button', { name: labelWords.notSame })
    const sure = pans.getByRole('button', { name: labelWords.notSameSure('Pita bread') })
    await tapUntil(notSame, sure)
    await tapUntil(sure, pans.getByText(labelWords.reprint(['Pita'])).last())
    await expect(pans.getByText(labelWords.findNone).last()).toBeVisible()
    await expect(row('Pita')).toContainText(sheetWords.readLabel, { timeout: 15_000 })
    await expect(row('Pita').getByRole('cell').first()).toContainText(sheetWords.word.unknown)
    await expect(page.getByText(sheetWords.unreadOf(['Pita bread']))).toBeVisible()
  })
})
