import { join } from 'node:path'
import Database from 'better-sqlite3'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { accessWords as words } from '#lib/words/house/access-en.ts'
import { live } from '#lib/words/house/live-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { begin, beginning, order } from './support/hands.ts'
import { askCode, comeIn, typeCode } from './support/house-hands.ts'
import { expect, test } from './support/job.ts'
import { joinContext } from './support/station.ts'

test.use({ proved: true, stations: [demoStation], killed: true })

const TWO_DAYS_MS = 172_800_000

/** While the server is down, as if nobody had used the tablet for two days. */
const letItRunOut = (data: string): void => {
  const house = new Database(join(data, 'house.db'))
  const { changes } = house
    .prepare(
      "UPDATE devices SET seen_at = seen_at - ?, joined_at = joined_at - ? WHERE role = 'counter'",
    )
    .run(TWO_DAYS_MS, TWO_DAYS_MS)
  house.close()
  expect(changes).toBe(1)
}

test('[JN6] the token ran out with an order waiting: it joins again, and the order is sent', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/WebSocket connection|ERR_CONNECTION_REFUSED|ERR_EMPTY_RESPONSE|status of 40/)
  const lead = await job.openStill('/devices')
  const tablet = await job.openStill(`/join#${await askCode(lead, 'counter')}`, false)
  await tablet.getByRole('link', { name: words.join.go('counter') }).click()
  await order(tablet, 'Garden chicken', 1)
  await tablet.waitForLoadState('networkidle')

  await test.step('the server is gone, and an order waits', async () => {
    await job.kill()
    await expect(tablet.getByText(live.isLost, { exact: true })).toBeVisible()
    await begin(tablet, 'Harbor tuna')
    await tablet.getByRole('button', { name: beginning(counter.sendLater) }).click()
  })

  await test.step('it is back, and doesn’t know the tablet any more: the order waits here', async () => {
    letItRunOut(job.data)
    await job.startAgain()
    await expect(tablet.getByRole('heading', { name: words.shut.title })).toBeVisible({
      timeout: 20_000,
    })
    await expect(tablet.getByText(words.shut.waits(1))).toBeVisible()
    await tablet.reload()
    await expect(tablet.getByText(words.shut.waits(1))).toBeVisible()
    expect(job.lead.state().nextTicket).toBe(2)
  })

  await test.step('joined again in place, it sends it', async () => {
    // The key of whoever owns the folder is new at each start.
    await joinContext(lead.context(), lead.url())
    await lead.reload()
    await typeCode(tablet, await askCode(lead, 'counter'))
    await comeIn(tablet)
    await expect(tablet.getByRole('dialog')).toHaveCount(0)
    await expect.poll(() => job.lead.state().nextTicket).toBe(3)
  })
})
