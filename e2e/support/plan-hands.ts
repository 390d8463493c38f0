/** What the lead does where a day of the school's line is planned. */
import type { Page } from '@playwright/test'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import { expect } from './station.ts'

export { SCHOOL } from '#tests/support/school-line.ts'

export const planButton = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, ...(typeof name === 'string' ? { exact: true } : {}) })

/** From the day's form to its line. */
export const planTheDay = async (
  page: Page,
  said: { readonly on?: string; readonly guests: string; readonly dayBefore?: true },
): Promise<void> => {
  const { form } = planEn
  await expect(page.getByLabel(form.on).first()).toBeVisible({ timeout: 60_000 })
  if (said.on) await page.getByLabel(form.on).first().fill(said.on)
  await page.getByLabel(form.walkIn).fill(said.guests)
  if (said.dayBefore) await planButton(page, form.dayBefore).click()
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
