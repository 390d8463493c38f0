import { accessWords as words } from '#lib/words/house/access-en.ts'
import { live } from '#lib/words/house/live-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { order, ticketIsSent } from './support/hands.ts'
import { askCode, comeIn, placeOf, typeCode } from './support/house-hands.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true, stations: [demoStation] })

test('a tablet joins: by the camera or by eight signs, and then it is the counter', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/status of 40[13]/)
  const lead = await job.openStill('/devices')
  const code = await askCode(lead, 'counter')
  const tablet = await job.openStill('/join', false)

  await test.step('a code that never was is refused, in the words of one that is over', async () => {
    await typeCode(tablet, 'AAAA-AAAA')
    await comeIn(tablet)
    await expect(tablet.getByText(words.refused['not-it'])).toBeVisible()
  })

  await test.step('the right one says what the tablet became, and where it is', async () => {
    await typeCode(tablet, code)
    await comeIn(tablet)
    await expect(
      tablet.getByRole('heading', { name: words.join.isIn('counter', 'Alder Hall lunch line') }),
    ).toBeVisible()
    await expect(
      placeOf(lead, 'counter').locator('[data-is="here"], [data-is="away"]'),
    ).toHaveCount(1)
  })

  await test.step('it takes an order', async () => {
    await tablet.getByRole('link', { name: words.join.go('counter') }).click()
    await expect(tablet.getByText(live.isLive, { exact: true })).toBeVisible()
    await order(tablet, 'Garden chicken', 1)
    await ticketIsSent(tablet, 1)
  })

  await test.step('the code lets nobody else in', async () => {
    const other = await job.openStill(`/join#${code}`, false)
    await expect(other.getByText(words.refused['not-it'])).toBeVisible()
  })

  await test.step('it is the counter and no more', async () => {
    await tablet.goto('/pans')
    await expect(tablet.getByRole('heading', { name: words.shut.notYours('lead') })).toBeVisible()
    await tablet.getByRole('link', { name: words.shut.toOwn('counter') }).click()
    await expect(tablet.getByText(live.isLive, { exact: true })).toBeVisible()
  })
})
