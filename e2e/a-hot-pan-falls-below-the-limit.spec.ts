import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { padWords } from '#lib/rooms/food/words/job-lacks-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import {
  anyPan,
  job as dialog,
  done,
  inJob,
  openJob,
  sends,
  typeReading,
} from './support/food-hands.ts'
import { itemRow, leadPan, order, startButton, tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true })

test('a hot pan falls below the limit: off sale everywhere, until the person in charge decides', async ({
  job,
}) => {
  await job.signOn()
  const [pans, counterPage, assembly] = await Promise.all([
    job.open('/pans'),
    job.open('/counter'),
    job.open('/assembly'),
  ])
  await order(counterPage, 'Bean and pepper', 1)
  await expect(startButton(assembly, '1A')).toBeEnabled()
  await counterPage.getByRole('button', { name: counter.askedNone }).click()
  await expect(itemRow(counterPage, 'Bean and pepper')).toContainText(counter.left(23))

  await test.step('a reading in the wrong scale is asked about, not taken', async () => {
    await openJob(pans, 'Black beans', pansWords.readTemperature)
    await typeReading(pans, '62')
    await expect(dialog(pans).getByRole('alert')).toContainText('Did you mean °C')
    await expect(inJob(pans, padWords.lackAnswer)).toBeDisabled()
    for (const _ of '62') await inJob(pans, readingWords.takeBack).click()
  })

  await test.step('128 °F in the middle, stirred: recorded, and not served on every screen', async () => {
    await typeReading(pans, '128')
    await expect(dialog(pans).getByText(readingWords.verdict['not-met'])).toBeVisible()
    await sends(pans, formWords.readOut('128 °F'), formWords.readDone('Black beans', '128 °F'))
    await expect(anyPan(pans, 'Black beans')).toHaveAccessibleName(
      new RegExp(`, ${pansWords.dontServe}, .*${pansWords.dontServeWhy['out-of-limits']}`),
    )
    await expect(itemRow(counterPage, 'Bean and pepper')).not.toContainText(counter.left(23))
    await expect(itemRow(counterPage, 'Bean and pepper')).toContainText(
      counter.rowNo('Black beans'),
    )
    await expect(
      assembly.getByText(assemblyEn.dontServe('1A', 'Black beans', 'waiting')),
    ).toBeVisible()
    await expect(startButton(assembly, '1A')).toHaveCount(0)
  })

  await test.step('a better reading doesn’t undo it, and the lead alone can’t', async () => {
    const resolve = {
      type: 'resolveOffSale',
      what: 'pan',
      id: 'pan-beans',
      way: 'discard',
    } as const
    expect(await job.lead.answerTo(resolve)).not.toMatchObject({ answer: 'accepted' })
    await job.lead.does({
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-beans',
      reading: { tenths: 1450, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: 'BO',
    })
    await expect(itemRow(counterPage, 'Bean and pepper')).toContainText(
      counter.rowNo('Black beans'),
    )
  })

  await test.step('the person in charge has it reheated on the range', async () => {
    const open = pans.getByRole('button', { name: 'What may be done', exact: true })
    await tapUntil(open, dialog(pans))
    await expect(inJob(pans, 'Throw it out')).toBeVisible()
    await inJob(pans, 'Reheat it on the range by').click()
    await typeReading(pans, '166')
    await dialog(pans).getByLabel(readingWords.held, { exact: true }).fill('20')
    await dialog(pans).getByLabel(formWords.passphrase).fill('not the passphrase')
    await inJob(pans, formWords.resolveSend).click()
    await expect(pans.getByRole('status').filter({ hasText: /./ }).first()).toBeVisible()
    await dialog(pans).getByLabel(formWords.passphrase).fill(PASSPHRASE)
    await tapUntil(
      inJob(pans, formWords.resolveSend),
      done(pans, formWords.resolved('Black beans')),
    )
    await expect(leadPan(pans, 'Black beans', 23, 1)).toBeVisible()
    await expect(itemRow(counterPage, 'Bean and pepper')).toContainText(counter.left(23))
    await expect(startButton(assembly, '1A')).toBeEnabled()
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type === 'offSaleResolved')).toMatchObject([
    { what: 'pan', id: 'pan-beans', way: 'reheat' },
  ])
})
