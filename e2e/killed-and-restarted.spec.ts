import type { Page } from '@playwright/test'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { live } from '#lib/words/house/live-en.ts'
import {
  assemblyRests,
  begin,
  beginning,
  finishButton,
  leadPan,
  order,
  pickUpNumber,
  start,
  tapUntil,
  ticketIsSent,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'

declare global {
  interface Window {
    openedOnce?: true
  }
}

const isLive = (page: Page) => expect(page.getByText(live.isLive, { exact: true })).toBeVisible()

test.use({ killed: true })

test('killed and restarted: nothing is lost, screens come back, an order goes once', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/WebSocket connection|ERR_CONNECTION_REFUSED|ERR_EMPTY_RESPONSE/)
  const [counterPage, assembly, pans, pickUp] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/pans'),
    job.open('/pick-up'),
  ])
  const screens = [counterPage, assembly, pans, pickUp]
  for (const page of screens)
    await page.evaluate(() => {
      window.openedOnce = true
    })
  await order(counterPage, 'Garden chicken', 1)
  await start(assembly, '1A')
  await order(counterPage, 'Harbor tuna', 2)
  await expect(leadPan(pans, 'Pita', 22, 2)).toBeVisible()

  await job.kill()

  await test.step('every screen says so, with the age of the server’s last word', async () => {
    for (const page of screens) {
      await expect(page.getByText(live.isLost, { exact: true })).toBeVisible()
      await expect(page.getByText(/^heard \d+ s ago$/)).toBeVisible()
    }
    await expect(finishButton(assembly)).toBeVisible()
    await expect(pickUpNumber(pickUp, 'waiting', '2A')).toBeVisible()
  })

  await test.step('an order that is sent now waits, and isn’t sold', async () => {
    await begin(counterPage, 'Bean and pepper')
    await counterPage.getByRole('button', { name: beginning(counter.sendLater) }).click()
    await expect(counterPage.getByText(counter.waitTitle)).toBeVisible()
    await expect(counterPage.getByText(live.pending(1))).toBeVisible()
    await counterPage.getByRole('button', { name: counter.nextGuest }).click()
    await expect(counterPage.getByText(counter.waiting(1))).toBeVisible()
    await expect(leadPan(pans, 'Black beans', 24, 0)).toBeVisible()
  })

  await job.startAgain()

  await test.step('started again, all come back by themselves and the order goes', async () => {
    for (const page of screens) await isLive(page)
    await ticketIsSent(counterPage, 3)
    await expect(counterPage.getByText(live.pending(1))).toHaveCount(0)
    await expect(pickUpNumber(pickUp, 'making', '1A')).toBeVisible()
    await expect(pickUpNumber(pickUp, 'waiting', '2A')).toBeVisible()
    await expect(pickUpNumber(pickUp, 'waiting', '3A')).toBeVisible()
    await expect(leadPan(pans, 'Pita', 22, 2)).toBeVisible()
    await expect(leadPan(pans, 'Black beans', 23, 1)).toBeVisible()
    await tapUntil(finishButton(assembly), pickUpNumber(pickUp, 'made', '1A'))
    await expect(leadPan(pans, 'Pita', 22, 1)).toBeVisible()
    await expect(assemblyRests(assembly)).toHaveCount(0)
  })

  for (const page of screens)
    expect(await page.evaluate(() => window.openedOnce), 'not loaded anew').toBe(true)
  const sent = (await job.log()).filter(({ type }) => type === 'ticketSent')
  expect(sent.map(({ ticket }) => ticket)).toEqual([1, 2, 3])
  expect(new Set(sent.map(({ command }) => command)).size).toBe(3)
})
