/** What the lead does where a day of the school's line is planned. */
import type { Page } from '@playwright/test'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import { prepEn } from '#lib/rooms/prep/words/prep-en.ts'
import { tapUntil } from './hands.ts'
import { expect } from './station.ts'

export { SCHOOL } from '#tests/support/school-line.ts'

export const planButton = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) })

/** From the day's form to its line. */
export const planTheDay = async (
  page: Page,
  said: {
    readonly on?: string
    readonly guests: string
    readonly dayBefore?: true
    /** Somebody who is in no set-up, there in a period of the day: initials, its name, its date. */
    readonly helper?: readonly [string, string, string]
  },
): Promise<void> => {
  const { form } = planEn
  await expect(page.getByLabel(form.on).first()).toBeVisible({ timeout: 60_000 })
  if (said.on) await page.getByLabel(form.on).first().fill(said.on)
  await page.getByLabel(form.walkIn).fill(said.guests)
  if (said.dayBefore) await planButton(page, form.dayBefore).click()
  if (said.helper) {
    const [initials, period, on] = said.helper
    await planButton(page, form.addCrew).click()
    await page.getByLabel(form.initials, { exact: true }).last().fill(initials)
    await planButton(page, form.cell(initials, period, on)).click()
  }
  await planButton(page, form.send).click()
  await expect(page.getByRole('list', { name: planEn.title })).toBeVisible({ timeout: 60_000 })
}

/** A pan of the plan, whatever stands on it. */
export const planPan = (page: Page, name: string) =>
  page.getByRole('button', { name: new RegExp(`^${name}:`) })

export const takeThePlan = async (page: Page): Promise<void> => {
  await planButton(page, new RegExp(`^${planEn.takePlan}`)).click()
  await expect(page.getByText(planEn.taken)).toBeVisible()
}

/** One tap of whose initials a task is ticked with; a screen ignores one that is too soon. */
export const sayInitials = async (page: Page, initials: string): Promise<void> => {
  const button = page
    .getByRole('group', { name: prepEn.initials, exact: true })
    .getByRole('button', { name: initials, exact: true })
  await tapUntil(button, button.and(page.locator('[aria-pressed="true"]')))
}
