/** A school's line whose day is planned: its bells, who is there by them, and what the lead does. */
import type { Page } from '@playwright/test'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { expect } from './station.ts'

const PERIODS = [
  ['p2', 'Period 2', '08:40', '09:30'],
  ['p3', 'Period 3', '09:34', '10:24'],
  ['p4', 'Period 4', '10:28', '11:18'],
  ['p5', 'Lunch', '11:20', '12:20'],
] as const

/** KT is certified; AB and CD are students. Nobody is there in the afternoon. */
const CREW = [
  ['KT', true],
  ['AB', false],
  ['CD', false],
] as const

/** The demo's line as an own one, in a school with four periods. */
export const SCHOOL: StationDocument = {
  ...demoStation,
  id: 'school-line',
  name: 'School line',
  day: {
    ...demoStation.day,
    doors: { open: '11:20', close: '12:20' },
    bells: [
      {
        id: 'usual',
        name: 'Usual',
        periods: PERIODS.map(([id, name, from, to]) => ({ id, name, from, to })),
      },
    ],
    crew: CREW.flatMap(([initials, certified]) =>
      PERIODS.map(([period]) => ({ bell: 'usual', period, initials, certified })),
    ),
  },
}

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
