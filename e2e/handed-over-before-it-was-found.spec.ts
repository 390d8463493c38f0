import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { handedOverWords } from '#lib/rooms/food/words/handed-over-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { job as dialog, done, inJob, openJob, sends, typeReading } from './support/food-hands.ts'
import { stands } from './support/garden-chicken.ts'
import { tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

test.use({ proved: true })

test('handed over before the pan was found out of limits: named, and answered for once', async ({
  job,
}) => {
  await job.signOn()
  const [pans] = await Promise.all([job.open('/pans'), job.open('/hand-over')])
  await stands(job.lead, 1, null, ['start', 'finish', 'handOver'])
  await stands(job.lead, 2, null, ['start', 'finish', 'handOver'])
  await openJob(pans, 'Herb chicken', pansWords.readTemperature)
  await typeReading(pans, '128')
  await sends(pans, formWords.readOut('128 °F'), formWords.readDone('Herb chicken', '128 °F'))
  const task = pans.getByRole('button', { name: handedOverWords.open, exact: true })
  await expect(
    pans.getByText(
      /^2 builds with this food were handed over since .*: 1-\u2060A at .*, 2-\u2060A at /,
    ),
  ).toBeVisible()
  await tapUntil(task, dialog(pans))
  await inJob(pans, handedOverWords.answer.told).click()
  await dialog(pans).getByLabel(readingWords.initials, { exact: true }).fill('KT')
  await dialog(pans).getByLabel(formWords.passphrase).fill(PASSPHRASE)
  await tapUntil(
    inJob(pans, handedOverWords.send),
    done(pans, handedOverWords.done('Herb chicken')),
  )
  expect(job.lead.state().toTell).toEqual({})
  const log = await job.log()
  expect(log.filter(({ type }) => type === 'handedOverAnswered')).toMatchObject([
    { what: 'pan', id: 'pan-chicken', answer: 'told', builds: ['1A', '2A'] },
  ])
})
