/** A line that was never loaded: its batches are begun, cooked and finished, and every pan is loaded. */
import type { Page } from '@playwright/test'
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { dateWords } from '#lib/rooms/food/words/dates-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { setUpWords } from '#lib/rooms/pans/words/set-up-en.ts'
import { done, INITIALS, job, pot } from './food-hands.ts'
import { beginning, saying } from './hands.ts'
import { button, fill, type Hands, tap, tapTo } from './menu-hands.ts'
import { expect } from './station.ts'

const main = (page: Page) => job(page).locator('[data-main]')
const mainSays = (page: Page, said: string) => main(page).filter({ hasText: beginning(said) })

/** Where it is read, the probe and initials, unless they are filled in; the figures are one field. */
const typeReading = async (page: Page, hands: Hands, figures: string): Promise<void> => {
  const place = job(page)
    .getByRole('group', { name: readingWords.where, exact: true })
    .getByRole('button')
    .first()
  const isAsked = (await place.count()) > 0
  if (isAsked && (await place.getAttribute('aria-pressed')) !== 'true') await tap(hands, place)
  for (const [label, text] of [
    [readingWords.probe, '1'],
    [readingWords.initials, INITIALS],
  ] as const) {
    const field = job(page).getByLabel(label, { exact: true })
    if (isAsked && (await field.inputValue()) === '') await fill(hands, field, text)
  }
  hands.fields += 1
  for (const figure of figures)
    await job(page).getByRole('button', { name: figure, exact: true }).click()
}

/** One batch of the food whose pan the sheet says has none. */
export const startFromSheet = async (
  page: Page,
  hands: Hands,
  name: string,
  waits: number,
): Promise<void> => {
  await expect(page.getByText(pansWords.loadBatches(waits))).toBeVisible()
  await tapTo(hands, button(page, pansWords.loadLine), page.locator('[data-job="set-up"]'))
  await tapTo(
    hands,
    job(page)
      .getByRole('button', { name: beginning(`${name}:`) })
      .first(),
    button(page, formWords.startBatch),
  )
  await tapTo(hands, button(page, formWords.startBatch), mainSays(page, formWords.startSend(1)))
  await tapTo(hands, main(page), done(page, formWords.startDone(name, 1)))
}

/** The next batch that is offered: of `name`, without looking for it. */
export const startNext = async (page: Page, hands: Hands, name: string): Promise<void> => {
  await tapTo(hands, button(page, formWords.startBatch), mainSays(page, formWords.startSend(1)))
  // Of what isn’t there nobody says how long it lasts.
  await expect(job(page).locator('[aria-pressed="true"]')).toHaveText(saying(name, setUpWords.none))
  await tapTo(hands, main(page), done(page, formWords.startDone(name, 1)))
}

/** Read in its pot, and finished: as many portions as its pans usually hold. */
export const cookAndFinish = async (
  page: Page,
  hands: Hands,
  name: string,
  degrees: string,
  gave: number,
): Promise<void> => {
  await tapTo(hands, pot(page, name), job(page))
  await typeReading(page, hands, degrees)
  await tapTo(hands, main(page), mainSays(page, batchWords.finishSend(gave)))
  await tapTo(hands, main(page), page.getByText(batchWords.ready))
  await tapTo(hands, button(page, formWords.back), button(page, formWords.startBatch))
}

/** Every pan on one sheet, in its order: what it reads, and of a pack when it was opened. */
export const loadAll = async (
  page: Page,
  hands: Hands,
  pans: readonly { readonly name: string; readonly degrees: string; readonly isPack: boolean }[],
): Promise<void> => {
  await tapTo(hands, button(page, pansWords.loadLine), page.locator('[data-job="set-up"]'))
  for (const [at, { name, degrees, isPack }] of pans.entries()) {
    await expect(job(page).locator('form').getByText(name, { exact: true })).toBeVisible()
    if (isPack) await tap(hands, job(page).getByRole('button', { name: dateWords.yesterday }))
    await typeReading(page, hands, degrees)
    const next = pans[at + 1]
    if (next !== undefined)
      await tapTo(
        hands,
        mainSays(page, setUpWords.next(next.name)),
        job(page).locator('form').getByText(next.name, { exact: true }),
      )
  }
  await tapTo(
    hands,
    mainSays(page, setUpWords.send(pans.length)),
    done(page, setUpWords.done(pans.length)),
  )
}
