/** A round of readings as a lead takes it, tapping; every tap that isn't a figure is counted. */
import type { Locator, Page } from '@playwright/test'
import { roundTaskWords } from '#lib/rooms/advice/words/round-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { roundWords } from '#lib/rooms/food/words/round-en.ts'
import { beginning, tapUntil } from './hands.ts'
import { expect } from './job.ts'

const INITIALS = 'BO'
/** Longer than the guard that keeps a press from landing on what has only just come. */
const GUARD_MS = 500

/** The job below the line. */
export const below = (page: Page): Locator => page.locator('section[data-job]')

const within = (page: Page, name: string | RegExp): Locator =>
  below(page).getByRole('button', { name, exact: typeof name === 'string' })

export const title = (page: Page): Locator => page.getByRole('heading', { level: 1 })

export const startRound = async (page: Page): Promise<void> =>
  tapUntil(
    page.getByRole('button', { name: roundTaskWords.button, exact: true }),
    below(page).getByRole('group', { name: readingWords.pad }),
  )

/** Probe, place and initials, said once. */
export const sayHands = async (page: Page, probe: string): Promise<void> => {
  await below(page)
    .getByRole('group', { name: readingWords.where, exact: true })
    .getByRole('button')
    .first()
    .click()
  await below(page).getByLabel(readingWords.probe, { exact: true }).fill(probe)
  await below(page).getByLabel(readingWords.initials, { exact: true }).fill(INITIALS)
}

export const typeDegrees = async (page: Page, figures: string): Promise<void> => {
  for (const figure of figures) await within(page, figure).click()
}

/** Whether the screen asks if the probe was cleaned, and what is answered. */
export const answerCleaned = async (page: Page, isClean: boolean): Promise<void> => {
  const asked = within(page, isClean ? roundWords.cleaned : roundWords.notCleaned)
  if (await asked.isVisible()) await asked.click()
}

/** The main button, whatever it records. */
export const record = (page: Page): Locator => below(page).locator('[data-main]')

/** Records what is typed, and the next place is asked for: what has only just come takes no tap yet. */
export const records = async (page: Page): Promise<void> => {
  const before = await title(page).textContent()
  await page.waitForTimeout(GUARD_MS)
  await expect(record(page)).toBeEnabled()
  await expect(async () => {
    if ((await title(page).textContent()) === before) await record(page).click({ timeout: 2_000 })
    await expect(title(page)).not.toHaveText(before ?? '', { timeout: 3_000 })
  }).toPass({ timeout: 30_000, intervals: [600] })
}

/** One reading with a clean probe. */
export const takeReading = async (page: Page, figures: string): Promise<void> => {
  await answerCleaned(page, true)
  await typeDegrees(page, figures)
  await records(page)
}

/** Counts trusted taps that aren't on a figure. */
export const countTaps = async (page: Page): Promise<() => Promise<number>> => {
  await page.evaluate(() => {
    document.documentElement.dataset.taps = '0'
    const count = ({ isTrusted, target }: Event) => {
      const { dataset } = document.documentElement
      const button = target instanceof Element ? target.closest('button') : null
      const isFigure = /^[0-9.]$/.test(button?.textContent ?? '')
      if (isTrusted && !isFigure) dataset.taps = String(Number(dataset.taps) + 1)
    }
    addEventListener('click', count, true)
  })
  return async () => Number(await page.locator('html').getAttribute('data-taps'))
}

export const onward = (page: Page): Locator =>
  below(page).getByRole('button', { name: beginning(roundWords.onward('').trim()) })
