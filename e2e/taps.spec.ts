import type { Page } from '@playwright/test'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { isRunning } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { connectCrew, whenView } from '#server/shell/crew-connection.ts'
import { beginning } from './support/hands.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

const LEFT_OUT = [
  { component: 'cheddar', pan: /^Cheddar/ },
  { component: 'slaw', pan: /^Sesame slaw/ },
  { component: 'peppers', pan: /^Roast peppers/ },
]

/** Counts what is really tapped on a page from now on. */
const counting = async (page: Page): Promise<() => Promise<number>> => {
  await page.evaluate(() => {
    document.documentElement.dataset.taps = '0'
    const count = ({ isTrusted }: Event) => {
      const { dataset } = document.documentElement
      if (isTrusted) dataset.taps = String(Number(dataset.taps) + 1)
    }
    addEventListener('click', count, true)
  })
  return async () => Number(await page.locator('html').getAttribute('data-taps'))
}

test('3 taps from an idle counter to sent, and one more for each no', async ({
  see,
  play,
  server,
}) => {
  await play('quiet')
  const page = await see(view('counter, ask'))
  const tapped = await counting(page)
  const question = page.getByRole('region', { name: /^“Do you have any allergies/ })
  const tiles = () =>
    question
      .getByRole('button')
      .filter({ hasNotText: /^Tickets/ })
      .allInnerTexts()
  const atRest = await tiles()
  const { client, close } = connectCrew(server.url, 'lead')
  await whenView(client, ({ state }) => isRunning(state))

  for (const noes of [0, 1, 2, 3]) {
    const before = await tapped()
    await page.getByRole('button', { name: 'They said: none' }).click()
    await page.getByRole('button', { name: /^Garden chicken/ }).click()
    for (const { pan } of LEFT_OUT.slice(0, noes)) {
      await page.getByRole('button', { name: pan }).click()
    }
    await page.getByRole('button', { name: /^I said it: send/ }).click()
    const ticket = noes + 1
    await expect(page.getByText(`Ticket ${ticket}`, { exact: true })).toBeVisible()
    expect(await tapped()).toBe(before + 3 + noes)

    await whenView(
      client,
      ({ state }) => isRunning(state) && findBuild(state, ticket, 'A') !== undefined,
    )
    const { state } = client.view()
    const choice = isRunning(state) ? findBuild(state, ticket, 'A')?.choice : undefined
    const gone = LEFT_OUT.filter(({ component }) => choice?.parts[component]?.placement === 'no')
    expect(gone).toEqual(LEFT_OUT.slice(0, noes))
    expect(choice).toMatchObject({ item: 'garden-chicken', base: 'pita', asked: 'none', needs: [] })

    expect(await tiles(), 'the next order begins where this one did').toEqual(atRest)
    await expect(question.locator('[aria-pressed="true"]')).toHaveCount(0)
  }
  close()
  await play('quiet')
})

test('a food chosen over the line answers for a told need: 2 taps to its read-back', async ({
  see,
}) => {
  const page = await see(view('counter, ask'))
  await page.getByRole('button', { name: 'Milk', exact: true }).click()
  const rows = page.getByRole('list', { name: counter.fits, exact: true })
  await rows.getByRole('button', { name: /^Garden chicken/ }).click()
  const order = page.getByRole('region', { name: counter.order, exact: true })
  await expect(order.getByText(/^“One garden chicken with pita/)).toBeVisible()
  await expect(order.getByRole('button', { name: counter.turn })).toBeEnabled()
})

test('2 taps from the tickets to a short double that is a single', async ({ see, play }) => {
  const page = await see(view('counter, short, double'))
  const tapped = await counting(page)
  await page.getByRole('button', { name: /: Single herb chicken$/ }).click()
  await page.getByRole('button', { name: beginning(counter.sendChange) }).click()
  await expect(page.getByText(counter.changedSent(['2A']), { exact: true })).toBeVisible()
  expect(await tapped()).toBe(2)
  await play('quiet')
})

/** Longer than a button that only just came ignores a tap. */
const LOOKS_MS = 450

test('1 tap hands over, 3 what is kept apart, and one more what isn’t paid', async ({
  see,
  play,
}) => {
  await play('rush')
  const page = await see(view('hand-over, shelf'))
  const tapped = await counting(page)
  const tap = async (name: RegExp | string) => {
    const button = page.getByRole('button', { name })
    await button.waitFor()
    await page.waitForTimeout(LOOKS_MS)
    await button.click()
  }
  const isOut = (build: string) =>
    page.getByRole('status').filter({ hasText: handOverEn.isHandedOver(build) })

  await tap(handOverEn.handOver('2A'))
  await isOut('2A').waitFor()
  expect(await tapped(), 'the oldest, paid').toBe(1)

  await tap(/^3-\u2060A/)
  await tap(handOverEn.answered)
  await tap(handOverEn.same('3A'))
  expect(await tapped(), 'kept apart').toBe(1 + 3)
  await tap(/^Hand over, pay later/)
  await isOut('3A').waitFor()
  expect(await tapped(), 'and not paid').toBe(1 + 3 + 1)
})
