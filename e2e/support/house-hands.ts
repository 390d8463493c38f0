/** What people do to let a tablet in, and to send one out. */
import type { Page } from '@playwright/test'
import type { Role } from '#lib/service/roles.ts'
import { accessWords as words } from '#lib/words/house/access-en.ts'
import { beginning } from './hands.ts'

/** A place on the lead's screen of devices, by what stands there. */
export const placeOf = (lead: Page, role: Role) =>
  lead.getByRole('button', { name: beginning(words.place[role]) })

/** The code that the lead's screen shows for a place, as somebody reads it off. */
export const codeShown = async (lead: Page): Promise<string> => {
  const shown = lead.getByText(/^[A-Z0-9]{4}-[A-Z0-9]{4}$/).first()
  return (await shown.textContent()) ?? ''
}

/** Opens a place on the lead's screen: its code. */
export const askCode = async (lead: Page, role: Role): Promise<string> => {
  await placeOf(lead, role).click()
  return codeShown(lead)
}

/** Types a code by the keys on the glass. */
export const typeCode = async (page: Page, code: string): Promise<void> => {
  for (const sign of code.replace('-', ''))
    await page.getByRole('button', { name: sign, exact: true }).click()
}

export const comeIn = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: words.join.come, exact: true }).click()
}
