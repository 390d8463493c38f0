import type { Page } from '@playwright/test'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { ticketsEn } from '#lib/rooms/orders/words/tickets-en.ts'
import { live } from '#lib/words/house/live-en.ts'
import {
  begin,
  beginning,
  counterPan,
  order,
  pickUpNumber,
  sendButton,
  tapUntil,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'

test.use({ killed: true })

const { arrived } = ticketsEn

const sendLater = async (page: Page, item: string, waiting: number): Promise<void> => {
  await begin(page, item)
  await page.getByRole('button', { name: beginning(counter.sendLater) }).click()
  await page.getByRole('button', { name: counter.nextGuest, exact: true }).click()
  await expect(page.getByText(counter.waiting(waiting))).toBeVisible()
}

test('two orders through an outage keep their numbers, whatever is typed when they arrive', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/WebSocket connection|ERR_CONNECTION_REFUSED|ERR_EMPTY_RESPONSE/)
  const [page, pickUp] = await Promise.all([job.open('/counter'), job.open('/pick-up')])
  const told = (number: number, items: string) =>
    page.getByRole('button', { name: arrived.told(arrived.ticket(number), items), exact: true })
  await order(page, 'Garden chicken', 1)
  // All that comes after the first load is there.
  await page.waitForLoadState('networkidle')
  await job.kill()
  await expect(page.getByText(live.isLost, { exact: true })).toBeVisible()

  await test.step('two orders wait, and neither is sold', async () => {
    await sendLater(page, 'Harbor tuna', 1)
    await sendLater(page, 'Bean and pepper', 2)
    await expect(page.getByText(arrived.title)).toHaveCount(0)
  })

  await test.step('the link is back while a third is typed: both numbers stand over it', async () => {
    await begin(page, 'Garden chicken')
    await counterPan(page, 'Sesame slaw').click()
    await job.startAgain()
    await expect(told(2, 'Harbor tuna')).toBeVisible({ timeout: 20_000 })
    await expect(told(3, 'Bean and pepper')).toBeVisible()
    await expect(page.getByText('No sesame slaw, as you asked.')).toBeVisible()
    await expect(pickUpNumber(pickUp, 'waiting', '3A')).toBeVisible({ timeout: 20_000 })
  })

  await test.step('a page that is loaded anew keeps them, and the order that was half typed', async () => {
    await page.reload()
    await expect(told(3, 'Bean and pepper')).toBeVisible()
    await expect(page.getByText('No sesame slaw, as you asked.')).toBeVisible()
    // What isn't sold any more since the server was away is said again first.
    await tapUntil(
      page.getByRole('button', { name: beginning(counter.readAgain) }),
      sendButton(page),
    )
    await sendButton(page).click()
    await expect(page.getByText(counter.ticket([4]), { exact: true })).toBeVisible()
  })

  await test.step('each is shown until somebody told its guest', async () => {
    await told(2, 'Harbor tuna').click()
    await expect(told(2, 'Harbor tuna')).toHaveCount(0)
    await page.getByRole('button', { name: counter.needTile('egg'), exact: true }).click()
    await expect(told(3, 'Bean and pepper')).toBeVisible()
    await told(3, 'Bean and pepper').click()
    await expect(page.getByText(arrived.title)).toHaveCount(0)
  })

  await test.step('an order that was sent, or started over, isn’t kept', async () => {
    await page.reload()
    await expect(page.locator('[data-code="egg"]')).toHaveAttribute('aria-pressed', 'true')
    await page.getByRole('button', { name: counter.clearNeeds, exact: true }).click()
    await expect
      .poll(() => page.evaluate(() => sessionStorage.getItem('level-scoop/order')))
      .toBeNull()
  })
})
