/** What people do on the screens, by the words that stand there. */
import type { Locator, Page } from '@playwright/test'
import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { ticketsEn } from '#lib/rooms/orders/words/tickets-en.ts'
import { turnedEn } from '#lib/rooms/orders/words/turned-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { pickUpWords } from '#lib/rooms/shelf/words/pick-up-en.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import type { Handling, NeedCode } from '#lib/station/codes/codes.ts'
import { expect } from './job.ts'

const plain = (words: string): string => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** Begins with these words, whatever else the name of the control says. */
export const beginning = (words: string): RegExp => new RegExp(`^${plain(words)}`)

/** These words and no others, in this order, however they are laid out. */
export const saying = (...words: readonly string[]): RegExp =>
  new RegExp(`^\\s*${words.map(plain).join('\\s*')}\\s*$`)

/** Longer than any screen ignores a tap after it changed. */
const TAPS_AGAIN_AFTER_MS = 550

/** Taps like a person: again when nothing came of it, since screens ignore a tap that is too soon. */
export const tapUntil = async (control: Locator, shown: Locator): Promise<void> => {
  await expect(async () => {
    // The same words may stand on what comes next: nobody taps those without looking.
    if (await shown.isVisible()) return
    if (await control.isEnabled({ timeout: 250 }).catch(() => false))
      await control.click({ timeout: 5_000 })
    await expect(shown).toBeVisible({ timeout: TAPS_AGAIN_AFTER_MS })
  }).toPass({ timeout: 20_000, intervals: [50] })
}

export const itemRow = (page: Page, item: string): Locator =>
  page
    .getByRole('list', { name: counter.menu, exact: true })
    .getByRole('button', { name: beginning(item) })
    .and(page.locator('[aria-pressed]'))

/** A pan on the counter, by its short name. */
export const counterPan = (page: Page, short: string): Locator =>
  page
    .getByRole('list', { name: counter.line, exact: true })
    .getByRole('button', { name: beginning(short) })

export const sendButton = (page: Page): Locator =>
  page.getByRole('button', { name: beginning(counter.send) })

/** What is kept apart is read to its guest, who agrees on the turned screen. */
export const turnAndAgree = async (page: Page, then = sendButton(page)): Promise<void> => {
  const agree = page.getByRole('button', { name: turnedEn.agree, exact: true })
  await tapUntil(page.getByRole('button', { name: beginning(counter.turn) }), agree)
  await tapUntil(agree, then)
}

export const ticketIsSent = async (page: Page, number: number): Promise<void> => {
  await expect(page.getByText(counter.ticket([number]), { exact: true })).toBeVisible()
}

/** Up to the read-back of an item as it comes, for a guest who keeps nothing away. */
export const begin = async (page: Page, item: string): Promise<void> => {
  await page.getByRole('button', { name: counter.askedNone }).click()
  await itemRow(page, item).click()
}

/** The guest tells an allergen, up to the menu: one tap keeps it apart, another only leaves it out. */
export const tellNeed = async (
  page: Page,
  code: NeedCode,
  handling: Handling = 'keep-apart',
): Promise<void> => {
  await page.getByRole('button', { name: counter.needTile(code), exact: true }).click()
  if (handling === 'leave-out')
    await page.getByRole('button', { name: counter.changeHandling(code, 'keep-apart') }).click()
  await page.getByRole('button', { name: counter.saidNeeds }).click()
}

export const order = async (page: Page, item: string, number: number): Promise<void> => {
  await begin(page, item)
  await sendButton(page).click()
  await ticketIsSent(page, number)
}

/** A build among the tickets at the counter. */
export const ticketRow = (page: Page, build: string): Locator =>
  page
    .getByRole('list', { name: ticketsEn.listed, exact: true })
    .getByRole('button', { name: beginning(sayBuild(build)) })

/** Opens the tickets and chooses one: what can be done is done to that. */
export const chooseTicket = async (page: Page, build: string): Promise<void> => {
  await page.getByRole('button', { name: /^Tickets \(/ }).click()
  const row = ticketRow(page, build)
  await row.click()
  await expect(row).toHaveAttribute('aria-pressed', 'true')
}

/** A pan on the assembly screen that stands wide, by its short name. */
export const assemblyPan = (page: Page, short: string): Locator =>
  page
    .getByRole('list', { name: assemblyEn.line, exact: true })
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: short, exact: true }) })
    .last()

export const finishButton = (page: Page): Locator =>
  page.getByRole('button', { name: beginning(assemblyEn.finish) })

export const startButton = (page: Page, build: string): Locator =>
  page.getByRole('button', { name: assemblyEn.start(build), exact: true })

export const start = async (page: Page, build: string): Promise<void> => {
  await tapUntil(startButton(page, build), finishButton(page))
}

/** Makes the build on the screen; `then` is what the screen shows after it. */
export const makeAndMark = async (page: Page, build: string, then: Locator): Promise<void> => {
  await start(page, build)
  await tapUntil(finishButton(page), then)
}

/** The handling order of what is kept apart is read aloud, before hands are washed. */
export const readAloud = async (page: Page, build: string): Promise<void> => {
  await tapUntil(
    page.getByRole('button', { name: assemblyEn.wasRead, exact: true }),
    startButton(page, build),
  )
}

export const assemblyRests = (page: Page): Locator =>
  page.getByRole('heading', { name: assemblyEn.idle })

/** A pan on the lead's screen: the whole of what it says. */
export const leadPan = (
  page: Page,
  name: string,
  left: number,
  onTickets: number,
  state = '',
): Locator =>
  page.getByRole('button', { name: beginning(pansWords.pan(name, left, state, onTickets)) })

/** Where a build is drawn on the guests' screen: its ticket's number, its open wrap, its letter. */
export const pickUpNumber = (
  page: Page,
  place: keyof typeof pickUpWords.place,
  build: string,
): Locator =>
  page
    .getByRole('region', { name: pickUpWords.place[place], exact: true })
    .locator(`[data-build~="${build}"]`)

/** A build on the shelf of the hand-over screen. */
export const shelfCard = (page: Page, build: string): Locator =>
  page
    .getByRole('list', { name: handOverEn.shelf, exact: true })
    .getByRole('listitem')
    .and(page.locator(`[data-build="${build}"]`))

/** What is done to the build that is picked at hand-over. */
export const givePanel = (page: Page, build: string): Locator =>
  page.getByRole('region', { name: handOverEn.panelOf(build), exact: true })

/** Picks a build where it stands on the shelf. */
export const pick = async (page: Page, build: string): Promise<void> => {
  await tapUntil(shelfCard(page, build).getByRole('button'), givePanel(page, build))
}

/** Hands over what isn't paid, to be paid later. */
export const payLater = async (page: Page, then: Locator): Promise<void> => {
  await tapUntil(page.getByRole('button', { name: beginning(handOverEn.payLater) }), then)
}

/** Picks a build that isn't paid and hands it over; its guest pays later. */
export const giveOut = async (page: Page, build: string, then?: Locator): Promise<void> => {
  await pick(page, build)
  await tapUntil(
    page.getByRole('button', { name: handOverEn.handOver(build), exact: true }),
    page.getByRole('button', { name: beginning(handOverEn.payLater) }),
  )
  await payLater(page, then ?? page.getByText(handOverEn.isHandedOver(build)).first())
}

/** At hand-over, once the guest said what was left out: the mark shows, and not before. */
export const guestAnswered = async (page: Page): Promise<void> => {
  await tapUntil(
    page.getByRole('button', { name: handOverEn.answered, exact: true }),
    page.getByRole('heading', { name: handOverEn.compare }),
  )
}

/** The dialog of a changed label on the lead's screen, at the food whose label it is. */
export const openLabel = async (page: Page, ingredient: string): Promise<Locator> => {
  await page.getByRole('button', { name: firstWords.labelChanged, exact: true }).click()
  const dialog = page.locator('[data-job="labels"]')
  await dialog.getByRole('searchbox').fill(ingredient)
  await dialog
    .getByRole('button', { name: beginning(ingredient) })
    .first()
    .click()
  return dialog
}
