import { expect, type Locator, type Page } from '@playwright/test'
import type { SameProduct } from '#lib/larder/delivery.ts'
import type { Arrival } from '#lib/safety/receiving.ts'
import { receivingWords as words } from '#lib/words/receiving/receiving-en.ts'
import { beginning } from './hands.ts'

/** What is said of one food, as a hand types it off the pack. */
export interface Packed {
  readonly same?: SameProduct
  /** Where it comes as it came last, nothing is tapped. */
  readonly comes?: Arrival
  readonly degrees?: string
  readonly solid?: boolean
  /** Figures; left away: it has none. */
  readonly date?: string
  /** Left away: it has none. */
  readonly lot?: string
}

const YEAR_DAYS = 365
const DAY_MS = 86_400_000

/** Figures of the civil date so many days from a moment, as Chicago writes it. */
export const figures = (from: number, days: number): string => {
  const [month = '', day = '', year = ''] = new Intl.DateTimeFormat('en-US', {
    timeZone: 'America/Chicago',
    year: '2-digit',
    month: '2-digit',
    day: '2-digit',
  })
    .format(from + days * DAY_MS)
    .split('/')
  return Math.abs(days) < YEAR_DAYS / 12 ? `${month}${day}` : `${month}${day}${year}`
}

export const panelOf = (page: Page, food: string): Locator =>
  page.getByRole('region', { name: words.panel(food), exact: true })

export const crate = (page: Page, food: string): Locator =>
  page.getByRole('region', { name: words.line }).getByRole('button', { name: beginning(food) })

const key = async (panel: Locator, typed: string): Promise<void> => {
  for (const figure of typed)
    await panel
      .getByRole('button', { name: figure === '.' ? words.keys.point : figure, exact: true })
      .click()
}

/** Says all of a food but that it is received; its panel is open. */
export const sayOf = async (page: Page, food: string, packed: Packed): Promise<void> => {
  const panel = panelOf(page, food)
  const tap = (name: string | RegExp) =>
    panel.getByRole('button', { name, exact: typeof name === 'string' }).click()
  const { same = 'same', comes, degrees, solid, date, lot } = packed
  // What never came is compared with the label that was read.
  await tap(
    same === 'same' ? new RegExp(`^(${words.same.same}|${words.first.same})$`) : words.same[same],
  )
  if (comes) await tap(words.comes.ways[comes])
  const needsNoCold = panel.getByRole('button', { name: words.cold.no, exact: true })
  if (await needsNoCold.isVisible()) await needsNoCold.click()
  if (degrees !== undefined) await key(panel, degrees)
  if (solid !== undefined) await tap(solid ? words.solid.yes : words.solid.no)
  if (date === undefined) await tap(words.noDate)
  else {
    const slot = panel.getByRole('button', { name: beginning(words.slots.date) })
    if ((await slot.getAttribute('aria-pressed')) !== 'true') await slot.click()
    await key(panel, date)
  }
  if (lot === undefined) await tap(words.noLot)
  else {
    const field = panel.getByLabel(words.lot, { exact: true })
    await field.click()
    await field.fill(lot)
  }
}

export const signsAs = async (page: Page, food: string): Promise<void> => {
  await panelOf(page, food).getByLabel(words.initials).fill('KT')
  await panelOf(page, food).getByLabel(words.probe).fill('blue')
}

export const receives = (page: Page, food: string): Locator =>
  panelOf(page, food).getByRole('button', { name: beginning(words.receive) })

/** Received once it is said so. */
export const isReceived = async (page: Page, food: string): Promise<void> => {
  await receives(page, food).click()
  await expect(page.getByRole('status').filter({ hasText: food }).first()).toBeVisible()
}
