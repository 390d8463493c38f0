import { larderScreen as words } from '#lib/words/larder/screen-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true, stations: [demoStation] })

const AMOUNT = 400_000

test('another class took it: set aside by a service, seen on two devices, gone in one tap, and back where that was a slip', async ({
  job,
}) => {
  await job.lead.does({
    type: 'endFood',
    what: 'pan',
    id: 'pan-slaw',
    end: 'cold',
    amount: AMOUNT,
    how: 'weighed',
    lot: 'slaw-1',
    initials: 'KT',
    reading: { tenths: 380, scale: 'F', probe: 'probe 1', where: 'middle-stirred' },
  })
  const one = await job.openStill('/larder')
  const other = await job.openStill('/larder')
  const cold = one.getByRole('region', { name: words.shelves.cold })
  const slaw = cold.getByRole('button', { name: /slaw/i })

  await test.step('it is on the cold shelf, with its last day and when it is read next', async () => {
    await expect(slaw).toContainText(words.first)
    await expect(slaw).toContainText(/last day \w{3}, \w{3} \d+/)
    await expect(other.getByRole('button', { name: /slaw/i })).toBeVisible()
  })

  await test.step('a reading is written down with a probe and initials, and not without', async () => {
    await slaw.click()
    const jobs = one.getByRole('region', { name: words.jobs })
    await expect(jobs.getByRole('button', { name: words.read })).toBeDisabled()
    await jobs.getByLabel(words.initials).fill('KT')
    await jobs.getByLabel(words.degrees).fill('39')
    await jobs.getByLabel(words.probe).fill('probe 1')
    await jobs.getByRole('button', { name: words.read }).click()
    await expect(one.getByText(words.done)).toBeVisible()
  })

  await test.step('one tap, without initials: it is gone on both', async () => {
    await slaw.click()
    await one.getByRole('button', { name: words.tookIt }).click()
    await expect(one.getByText(words.empty)).toBeVisible()
    await expect(other.getByText(words.empty)).toBeVisible()
  })

  await test.step('it was a slip: it is back with its date', async () => {
    await other.getByRole('button', { name: words.isBack }).click()
    await expect(slaw).toContainText(/last day \w{3}, \w{3} \d+/)
    await expect(other.getByRole('button', { name: /slaw/i })).toBeVisible()
  })
})
