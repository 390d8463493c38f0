import { accessWords as words } from '#lib/words/house/access-en.ts'
import { LEADS_PASSPHRASE, PASSPHRASE } from '#tests/support/make-house.ts'
import { beginning } from './support/hands.ts'
import { placeOf } from './support/house-hands.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true })

const NEW = 'lantern in the reeds'

test('a passphrase is changed, an adult is taken out, a device signs off', async ({
  job,
  expectConsole,
}) => {
  expectConsole(/status of 40[13]/)
  const lead = await job.openStill('/devices')
  const { devices } = words
  const tap = (name: string | RegExp) => lead.getByRole('button', { name }).click()
  const type = (label: string, text: string) => lead.getByLabel(label, { exact: true }).fill(text)

  await test.step('one more leads', async () => {
    await placeOf(lead, 'lead').click()
    await expect(lead.getByRole('button', { name: /^Take / })).toHaveCount(0)
    await tap(devices.addAdult)
    await type(words.passphrase.name, 'Ines')
    await type(words.passphrase.passphrase, 'anchor under the ferry')
    await type(devices.proof, PASSPHRASE)
    await tap(devices.add)
    await expect(lead.getByText(devices.added('Ines'))).toBeVisible()
    await tap(devices.close)
  })

  await test.step('the lead’s passphrase is changed by the one until then', async () => {
    await tap(devices.changeOf('Lead'))
    await type(devices.before, LEADS_PASSPHRASE)
    await type(words.passphrase.newOne, NEW)
    await tap(devices.change)
    await expect(lead.getByText(devices.changed('Lead'))).toBeVisible()
  })

  await test.step('one is taken out, by the passphrase of somebody in charge', async () => {
    await tap(devices.takeOutOf('Ines'))
    await type(devices.proof, 'not the passphrase')
    await tap(devices.takeOutOf('Ines'))
    await expect(lead.getByText(words.refused['not-it'])).toBeVisible()
    await type(devices.proof, PASSPHRASE)
    await tap(devices.takeOutOf('Ines'))
    await expect(lead.getByText(devices.removed('Ines'))).toBeVisible()
    await expect(lead.getByRole('button', { name: /^Take / })).toHaveCount(0)
  })

  await test.step('this device signs off, with one confirmation', async () => {
    await lead.getByRole('button', { name: devices.signOff, exact: true }).click()
    await tap(devices.signOffYes)
    await expect(lead).toHaveURL(/\/$/)
    await lead.goto('/devices')
    await expect(lead.getByText(devices.notLead)).toBeVisible()
    await expect(lead.getByRole('button', { name: beginning(words.place.lead) })).toHaveCount(0)
  })
})
