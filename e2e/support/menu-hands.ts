import type { Locator, Page } from '@playwright/test'
import { labelFormWords as reading } from '#lib/editor/words/label-form-en.ts'
import { menuEn as words } from '#lib/editor/words/menu-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { tapUntil } from './hands.ts'
import { expect } from './station.ts'

/** What hands did while they set a station up. */
export interface Hands {
  taps: number
  fields: number
}

export const newHands = (): Hands => ({ taps: 0, fields: 0 })

/** What one part took of all that hands did. */
export const since = (hands: Hands, before: Hands): Hands => ({
  taps: hands.taps - before.taps,
  fields: hands.fields - before.fields,
})

/** Seconds that a person takes, at 2 s a tap and 5 s a field. */
export const secondsOf = ({ taps, fields }: Hands): number => taps * 2 + fields * 5

export const tap = async (hands: Hands, target: Locator): Promise<void> => {
  hands.taps += 1
  await target.click()
}

/** Taps until it is seen, as screens ignore what is too soon: one tap of a person who looks. */
export const tapTo = async (hands: Hands, target: Locator, shown: Locator): Promise<void> => {
  hands.taps += 1
  await tapUntil(target, shown)
}

export const fill = async (hands: Hands, field: Locator, text: string): Promise<void> => {
  hands.fields += 1
  await field.click()
  await field.fill('')
  await field.pressSequentially(text)
}

export const button = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('button', { name, exact: typeof name === 'string' })

/** Begins a station of a name; its set-up is open then. */
export const begin = async (
  page: Page,
  hands: Hands,
  name: string,
  from: string | null = null,
): Promise<void> => {
  await fill(hands, page.getByLabel(words.screen.stationName), name)
  if (from !== null) await tap(hands, button(page, new RegExp(`^${from}`)))
  await tap(hands, button(page, words.screen.beginIt))
  await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible({ timeout: 30_000 })
}

/** Goes to a section by its tab. */
export const section = async (
  page: Page,
  hands: Hands,
  which: keyof typeof words.screen.sections,
): Promise<void> =>
  tap(
    hands,
    page
      .getByRole('navigation', { name: words.screen.title })
      .getByRole('button', { name: words.screen.sections[which], exact: true }),
  )

/** All that was typed is on the server. */
export const untilSaved = async (page: Page): Promise<void> =>
  expect(page.getByText(words.screen.saved, { exact: true })).toBeVisible({ timeout: 30_000 })

/** Publishes by a passphrase, as revision `revision`. */
export const publish = async (
  page: Page,
  hands: Hands,
  passphrase: string,
  revision: number,
): Promise<void> => {
  await section(page, hands, 'publish')
  await fill(hands, page.getByLabel(words.publish.passphrase), passphrase)
  await tap(hands, button(page, words.publish.publish))
  await expect(page.getByText(words.publish.published(revision))).toBeVisible({ timeout: 30_000 })
}

/** Reads the label that is open, under US law: null is one plain food; back to where it came from. */
export const readLabel = async (
  page: Page,
  hands: Hands,
  { name, label }: { readonly name: string; readonly label: string | null },
): Promise<void> => {
  await expect(page.getByRole('heading', { name: reading.title(name) })).toBeVisible()
  if (label === null) await tap(hands, page.getByText(reading.plain, { exact: true }))
  else await fill(hands, page.getByRole('textbox', { name: reading.packageHint }), label)
  await tap(hands, button(page, reading.laws['us-9']))
  const confirm = button(page, /^Yes, as marked/)
  if (await confirm.isVisible()) await tap(hands, confirm)
  await tap(hands, button(page, /^The other \d/))
  await fill(hands, page.getByLabel(reading.passphrase), PASSPHRASE)
  await tap(hands, button(page, reading.write))
  await tap(hands, button(page, reading.back).last())
}
