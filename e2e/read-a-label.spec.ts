import type { Locator, Page } from '@playwright/test'
import { labelFormWords as words } from '#lib/editor/words/label-form-en.ts'
import { labelWords } from '#lib/rooms/care/words/labels-en.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { breaksNoRule } from './support/accessible.ts'
import { beginning } from './support/hands.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true, stations: [demoStation] })

/** Of a label whose words only name allergens, and that was read before. */
const MOST_TAPS = 8

const LIST =
  'Ingredients: rosemary, thyme, salt, whey powder, wheat flour, cocoa butter.\nMay contain soy.'

/** What a hand does, each touch counted; typing isn't one. */
const hand = (page: Page) => {
  let taps = 0
  const tap = async (one: Locator): Promise<void> => {
    taps += 1
    await one.click()
  }
  return {
    tap,
    taps: () => taps,
    press: (name: string | RegExp) => tap(page.getByRole('button', { name })),
    paste: async (into: Locator, text: string): Promise<void> => {
      await tap(into)
      await into.evaluate((element, pasted) => {
        element.dispatchEvent(new ClipboardEvent('paste', { bubbles: true }))
        document.execCommand('insertText', false, pasted)
      }, text)
    },
  }
}

const tile = (page: Page, name: string): Locator =>
  page.getByRole('listitem').getByRole('button', { name: beginning(name) })

test('a label is read: what its words name is confirmed, the rest isn’t listed, and the sheet says so', async ({
  job,
}) => {
  const page = await job.openStill('/menu/label?station=alder-hall')
  const { tap, taps, press, paste } = hand(page)
  await page.getByRole('button', { name: /^Herb rub/ }).click()
  await expect(page.getByRole('heading', { name: words.title('Herb rub') })).toBeVisible()
  const sheet = await job.openStill('/sheet')
  const row = sheet
    .getByRole('row')
    .filter({ has: sheet.getByRole('rowheader', { name: 'Herb chicken', exact: true }) })
  await expect(row.getByRole('cell').first()).not.toContainText(sheetWords.word.contains)

  await test.step('nothing is answered by default, and words answer nothing', async () => {
    await expect(tile(page, 'Milk')).toContainText(words.noAnswer)
    await paste(page.getByRole('textbox', { name: words.packageHint }), LIST)
    await expect(page.locator('mark')).toHaveText(['whey', 'wheat', 'flour', 'soy'])
    await expect(tile(page, 'Milk')).toContainText(words.proposed.contains)
    await expect(tile(page, 'Soy')).toContainText(words.proposed['may-contain'])
    await expect(tile(page, 'Egg')).toContainText(words.noAnswer)
  })

  await test.step('the reader confirms, and says that the whole list was read', async () => {
    await press(words.laws['us-9'])
    await press(/^Yes, as marked/)
    await expect(tile(page, 'Milk')).toContainText(words.word.contains)
    await expect(tile(page, 'Gluten')).toContainText(words.word.contains)
    await press(/^The other 6 aren’t listed/)
    await expect(tile(page, 'Egg')).toContainText(words.word['not-listed'])
    await expect(tile(page, 'Rye')).toContainText(words.word.unknown)
    await breaksNoRule(page)
  })

  await test.step('what it is made of, and that it is the product in the pans', async () => {
    await tap(page.getByText(labelWords.noOtherTraits, { exact: true }))
    await press(words.isWays.same)
  })

  await test.step('the person in charge writes it down', async () => {
    const field = page.getByLabel(words.passphrase, { exact: true })
    await tap(field)
    await field.fill(PASSPHRASE)
    await press(words.write)
    await expect(page.getByText(words.written('Herb rub'))).toBeVisible()
  })

  console.info(`a label took ${taps()} taps`)
  expect(taps()).toBeLessThanOrEqual(MOST_TAPS)

  await test.step('every screen goes by it: the sheet, and the next who reads it', async () => {
    await expect(row.getByRole('cell').first()).toContainText(sheetWords.word.contains, {
      timeout: 15_000,
    })
    await page.getByRole('button', { name: words.back }).last().click()
    await page.getByRole('button', { name: /^Herb rub/ }).click()
    await expect(page.getByText(/^read on/)).toBeVisible({ timeout: 15_000 })
    await expect(tile(page, 'Milk')).toContainText(words.noAnswer, { timeout: 15_000 })
    await page.getByRole('button', { name: words.fromBefore }).click()
    await expect(tile(page, 'Milk')).toContainText(words.word.contains)
  })
})

test('a wrong passphrase writes nothing down, and nothing that was answered is lost', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/status of 40[13]/)
  const page = await job.openStill('/menu/label?station=alder-hall&ingredient=herb-rub')
  const { press, tap } = hand(page)
  await tap(page.getByRole('checkbox', { name: beginning(words.plain) }))
  await press(words.laws['us-9'])
  await press(/^The other 9 aren’t listed/)
  await tap(page.getByText(labelWords.noTraits, { exact: true }))
  await press(words.isWays.other)
  const field = page.getByLabel(words.passphrase, { exact: true })
  await field.fill('not the passphrase')
  await press(words.write)
  await expect(page.getByText('That isn’t it', { exact: false })).toBeVisible()
  await expect(tile(page, 'Milk')).toContainText(words.word['not-listed'])
})
