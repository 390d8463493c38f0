import type { Page } from '@playwright/test'
import { dateWords } from '#lib/rooms/food/words/dates-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { setUpWords } from '#lib/rooms/pans/words/set-up-en.ts'
import { isRunning } from '#lib/service/state.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { beginning, tapUntil } from './support/hands.ts'
import { countTaps } from './support/round-hands.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

const MOST_TAPS = 60
/** Longer than the guard that keeps a press from landing on what has only just come. */
const GUARD_MS = 500

const sheet = (page: Page) => page.locator('section[data-job="set-up"]')
const main = (page: Page) => sheet(page).locator('[data-main]')
const inSheet = (page: Page, name: string | RegExp) =>
  sheet(page).getByRole('button', { name, exact: typeof name === 'string' })

const typeDegrees = async (page: Page, figures: string) => {
  for (const figure of figures) await inSheet(page, figure).click()
}

const typeInto = async (page: Page, label: string, text: string) => {
  await sheet(page).getByLabel(label, { exact: true }).click()
  await page.keyboard.type(text)
}

const onward = async (page: Page, name: string) => {
  await page.waitForTimeout(GUARD_MS)
  await expect(main(page)).toHaveText(setUpWords.next(name))
  await main(page).click()
}

test('ten pans before the doors open: the whole line from nothing in at most 60 taps beside the figures', async ({
  see,
  play,
  server,
}) => {
  await play('ready to load')
  const page = await see({ ...view('pans, unloaded'), scene: 'ready to load' })
  const tapped = await countTaps(page)
  await tapUntil(page.getByRole('button', { name: pansWords.loadLine, exact: true }), sheet(page))

  await test.step('work is filled in, a claim never is', async () => {
    await expect(main(page)).toHaveText(readingWords.lack.temperature)
    await expect(main(page)).toBeDisabled()
    await expect(sheet(page).getByText(/^Pot read .+ Read the pan now\.$/)).toBeVisible()
  })
  await sheet(page)
    .getByRole('group', { name: readingWords.where, exact: true })
    .getByRole('button')
    .first()
    .click()
  await typeInto(page, readingWords.probe, '1')
  await typeInto(page, readingWords.initials, 'BO')
  await typeDegrees(page, '151')
  await onward(page, 'Herb chicken')
  for (const next of ['Black beans', 'Roast peppers', 'Tuna salad']) {
    await expect(main(page)).toBeDisabled()
    await typeDegrees(page, '151')
    await onward(page, next)
  }
  for (const next of ['Sesame slaw', 'Cheddar']) {
    await typeDegrees(page, '38')
    await onward(page, next)
  }
  await test.step('a pack says since when it is open', async () => {
    await typeDegrees(page, '38')
    await expect(main(page)).toBeDisabled()
    await inSheet(page, dateWords.yesterday).click()
    await onward(page, 'Lemon yogurt sauce')
  })
  await typeDegrees(page, '38')
  await page.waitForTimeout(GUARD_MS)
  await expect(main(page)).toHaveText(beginning(setUpWords.send(10)))
  await main(page).click()
  await expect(page.getByRole('status').filter({ hasText: setUpWords.done(10) })).toBeVisible()
  const taps = await tapped()
  test.info().annotations.push({ type: 'taps', description: String(taps) })
  expect(taps).toBeLessThanOrEqual(MOST_TAPS)

  const { client, close } = connectCrew(server.url, 'lead')
  const { state } = await whenView(client, (one) => isRunning(one.state)).then(() => client.view())
  if (!isRunning(state)) throw new Error('no service is open')
  const pans = Object.entries(state.pans)
  expect(pans.filter(([, { amount }]) => amount > 0)).toHaveLength(10)
  expect(
    pans.filter(([, { food, readings }]) => food?.heldBy !== 'dry' && readings.length !== 1),
    'each pan that is hot or cold has a reading of its own',
  ).toEqual([])
  close()
  await play('quiet')
})

test('what waits stays, each pan with why, and the rest is loaded', async ({
  see,
  play,
  server,
}) => {
  await play('partly ready to load')
  const page = await see({ ...view('pans, unloaded'), scene: 'partly ready to load' })
  await tapUntil(page.getByRole('button', { name: pansWords.loadLine, exact: true }), sheet(page))
  await page.waitForTimeout(GUARD_MS)
  await inSheet(page, setUpWords.send(2)).click()
  await expect(page.getByRole('status').filter({ hasText: setUpWords.done(2) })).toBeVisible()
  const { client, close } = connectCrew(server.url, 'lead')
  const { state } = await whenView(client, (one) => isRunning(one.state)).then(() => client.view())
  const loaded = isRunning(state)
    ? Object.entries(state.pans).flatMap(([id, { amount }]) => (amount > 0 ? [id] : []))
    : []
  expect(loaded.sort()).toEqual(['pan-almonds', 'pan-pita'])
  close()
  await play('quiet')
})
