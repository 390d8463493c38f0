import { accessWords as words } from '#lib/words/house/access-en.ts'
import { live } from '#lib/words/house/live-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { askCode, placeOf } from './support/house-hands.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true, stations: [demoStation] })

test('a lost tablet is removed: two taps, and its screen shows nothing', async ({ job }) => {
  const lead = await job.openStill('/devices')
  const tablet = await job.openStill(`/join#${await askCode(lead, 'hand-over')}`, false)
  await tablet.getByRole('link', { name: words.join.go('hand-over') }).click()
  await expect(tablet.getByText(live.isLive, { exact: true })).toBeVisible()
  await expect(placeOf(lead, 'hand-over').locator('[data-is="here"]')).toHaveCount(1)

  await lead.getByRole('button', { name: /^Remove / }).click()
  await lead.getByRole('button', { name: words.devices.removeYes }).click()
  await expect(tablet.getByRole('heading', { name: words.shut.removed })).toBeVisible()
  await expect(tablet.getByRole('dialog')).toBeVisible()
  await expect(placeOf(lead, 'hand-over').locator('[data-is]')).toHaveCount(1)

  await test.step('loaded anew it is still out', async () => {
    await tablet.reload()
    await expect(tablet.getByRole('heading', { name: words.shut.removed })).toBeVisible()
  })
})
