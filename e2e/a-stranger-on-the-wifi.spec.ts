import { accessWords as words } from '#lib/words/house/access-en.ts'
import { privacyWords } from '#lib/words/house/privacy-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { comeIn, typeCode } from './support/house-hands.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true, stations: [demoStation] })

test('a stranger on the Wi-Fi sees a shut door on every screen, and guesses nothing', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/status of 4(01|03|29)/)
  const lead = await job.openStill('/devices')

  for (const path of ['/counter', '/assembly', '/hand-over', '/pans', '/pick-up'])
    await test.step(`${path}: not in`, async () => {
      const page = await job.openStill(path, false)
      await expect(page.getByRole('heading', { name: words.shut.stranger })).toBeVisible()
      await expect(page.locator('[data-pan]')).toHaveCount(0)
    })

  await test.step('the first page opens nothing, and says how one comes in', async () => {
    const page = await job.openStill('/', false)
    await expect(page.getByText(words.start.notIn)).toBeVisible()
    for (const path of ['/counter', '/assembly', '/hand-over', '/pans', '/pick-up', '/devices'])
      await expect(page.locator(`a[href="${path}"]`)).toHaveCount(0)
  })

  for (const [path, told] of [
    ['/devices', words.devices.notLead],
    ['/privacy', privacyWords.notLead],
  ] as const)
    await test.step(`${path}: only the lead's`, async () => {
      const page = await job.openStill(path, false)
      await expect(page.getByText(told)).toBeVisible()
    })

  await test.step('after so many codes none is compared any more, and the lead is told', async () => {
    const page = await job.openStill('/join', false)
    const stopped = page.getByText(words.refused['too-many-tries'])
    for (let tries = 0; tries < 12 && !(await stopped.isVisible()); tries += 1) {
      await typeCode(page, 'ACDEFGHJ')
      await comeIn(page)
      await expect(page.getByRole('alert').getByText(/./)).toBeVisible()
    }
    await expect(stopped).toBeVisible()
    await expect(lead.getByText(/wrong codes or passphrases from/)).toBeVisible()
  })
})
