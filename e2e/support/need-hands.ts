/** What people do about needs, by the words that stand there: asked, told late, kept apart. */
import type { Locator, Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import type { Statement } from '#lib/rooms/orders/facts/statement.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { readBackText, sayReadBack } from '#lib/rooms/orders/words/read-back-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { NeedCode } from '#lib/station/codes/codes.ts'
import { isPluralIn, nameIn } from '#lib/station/name-in.ts'
import { sayCents } from '#lib/words/amounts-en.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import {
  beginning,
  chooseTicket,
  payLater,
  readAloud,
  saying,
  shelfCard,
  start,
  tapUntil,
} from './hands.ts'

/** The tile of an allergen or a diet that a guest tells. */
export const needTile = (page: Page, code: NeedCode): Locator =>
  page
    .getByRole('button', { name: beginning(counter.needTile(code)) })
    .and(page.locator('[data-code]'))

/** An item among the answers that show while needs are tapped. */
export const whatFits = (page: Page, item: string): Locator =>
  page
    .getByRole('list', { name: counter.fits, exact: true })
    .getByRole('listitem')
    .filter({ hasText: item })

/** The sentence that stands there to be said to the guest. */
export const readBackOf = (page: Page): Locator =>
  page.getByRole('region', { name: counter.order, exact: true }).getByText(/^“/)

/** The sentence that these statements make, in its quotation marks. */
export const spoken = ({ station }: RunningState, statements: readonly Statement[]): string =>
  `“${readBackText(
    sayReadBack(
      statements,
      nameIn(station),
      (cents) => sayCents(cents, station.currency),
      isPluralIn(station),
    ),
  )}”`

/** A need is told after sending: its build is stopped, and stands there to be ordered anew. */
export const tellLate = async (page: Page, build: string, code: NeedCode): Promise<void> => {
  await chooseTicket(page, build)
  await page.getByRole('button', { name: needsEn.tellOf(build), exact: true }).click()
  await needTile(page, code).click()
  await tapUntil(
    page.getByRole('button', { name: needsEn.tell(build), exact: true }),
    page.getByText(counter.changing(build), { exact: true }),
  )
}

/** What assembly is told to stop, before all else on its screen. */
export const stopOf = (page: Page): Locator =>
  page.getByRole('alert').filter({ hasText: assemblyEn.stop })

/** Of a stopped build that isn't being made: it was seen, and nothing is asked of food in it. */
export const seeStop = async (page: Page, build: string, then: Locator): Promise<void> => {
  const stop = stopOf(page).filter({ hasText: assemblyEn.notBeingMade(build) })
  const words = saying(assemblyEn.stopSeen, assemblyEn.stopSeenThen)
  await tapUntil(stop.getByRole('button', { name: words }), then)
}

/** Answers whether food was in a stopped build; `then` is what the screen shows after it. */
export const answerStop = async (page: Page, foodInIt: boolean, then: Locator): Promise<void> => {
  const words = foodInIt
    ? [assemblyEn.foodYes, assemblyEn.foodYesThen]
    : [assemblyEn.foodNo, assemblyEn.foodNoThen]
  await tapUntil(stopOf(page).getByRole('button', { name: saying(...words) }), then)
}

/** The handling order is read aloud, and then the build is started. */
export const readAndStart = async (page: Page, build: string): Promise<void> => {
  await readAloud(page, build)
  await start(page, build)
}

/** A kept-apart build is picked, and its guest is asked. */
export const askItsGuest = async (page: Page, build: string): Promise<void> => {
  await tapUntil(shelfCard(page, build).getByRole('button'), page.getByText(handOverEn.question))
}

/** A kept-apart build is given to its guest, who said the same as its mark and pays later. */
export const giveAlone = async (page: Page, build: string, then?: Locator): Promise<void> => {
  await tapUntil(
    page.getByRole('button', { name: handOverEn.same(build), exact: true }),
    page.getByRole('button', { name: beginning(handOverEn.payLater) }),
  )
  await payLater(page, then ?? page.getByText(handOverEn.isHandedOver(build)).first())
}
