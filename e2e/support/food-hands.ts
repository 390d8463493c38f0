/** What the lead does on the Pans screen with food: batches, readings, weights, times. */
import type { Locator, Page } from '@playwright/test'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { beginning, tapUntil } from './hands.ts'

/** Whoever takes the readings of these stories. */
/** No tablet at assembly is named so: their two signs lack B and O. */
export const INITIALS = 'BO'
const PROBE = '1'

/** A pan on the lead's screen, whatever it says of itself. */
export const anyPan = (page: Page, name: string): Locator =>
  page
    .getByRole('list', { name: pansWords.line })
    .getByRole('button', { name: beginning(`${name}:`) })
    // What hangs on a pan to be done is called by its name, too.
    .and(page.locator('[data-standing]'))

/** The one job that is open under the line. */
export const job = (page: Page): Locator => page.locator('[data-job]:not([data-job="pan"])')

/** A batch as it stands behind its pan. */
export const pot = (page: Page, name: string): Locator =>
  page.locator(`button:is([data-kind="pot"], [data-kind="tub"])[aria-label^="${name} "]`)

/** From an open job back to the board. */
export const backToLine = (page: Page): Promise<void> =>
  page.getByRole('button', { name: formWords.back, exact: true }).click()

/** What the last act came to. */
export const done = (page: Page, words: string): Locator =>
  page.getByRole('status').filter({ hasText: words }).first()

/** Opens a pan and one of its jobs. */
export const openJob = async (page: Page, pan: string, task: string): Promise<void> => {
  const way = page.getByRole('button', { name: task, exact: true })
  await tapUntil(anyPan(page, pan), way)
  await tapUntil(way, job(page))
}

export const typeFigures = async (page: Page, figures: string): Promise<void> => {
  for (const figure of figures)
    await job(page)
      .getByRole('button', { name: figure === '.' ? readingWords.point : figure, exact: true })
      .click()
}

/** A reading off a probe in the place that the food has for it, with the initials of who took it. */
export const typeReading = async (page: Page, figures: string): Promise<void> => {
  await job(page)
    .getByRole('group', { name: readingWords.where, exact: true })
    .getByRole('button')
    .first()
    .click()
  await job(page).getByLabel(readingWords.probe, { exact: true }).fill(PROBE)
  await job(page).getByLabel(readingWords.initials, { exact: true }).fill(INITIALS)
  await typeFigures(page, figures)
}

/** A button of the open job, by the beginning of its words; the one that is chosen has a tick before. */
export const inJob = (page: Page, words: string): Locator =>
  job(page)
    .getByRole('button', { name: beginning(words) })
    .or(job(page).getByRole('button', { name: beginning(`✓ ${words}`) }))

/** Sends the open job and waits until it is done. */
export const sends = async (page: Page, words: string, said: string): Promise<void> => {
  await tapUntil(inJob(page, words), done(page, said))
}
