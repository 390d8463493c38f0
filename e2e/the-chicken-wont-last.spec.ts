import { doNextWords } from '#lib/rooms/advice/words/do-next-en.ts'
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import {
  anyPan,
  backToLine,
  job as dialog,
  inJob,
  openJob,
  pot,
  sends,
  typeReading,
} from './support/food-hands.ts'
import { itemRow, leadPan, order, tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

const MINUTE = 60_000
/** Portions that the pan usually holds. */
const FULL_PAN = 24

/** A quarter of an hour before the first rush of the demo station, and a batch takes 22 minutes. */
test.use({ clock: { beginsAt: Date.parse('2026-11-25T16:46:00Z'), passes: [22 * MINUTE] } })

test('the chicken won’t last: a batch is started, cooked to its limit, and the pan changed', async ({
  job,
}) => {
  const [pans, counterPage] = await Promise.all([job.open('/pans'), job.open('/counter')])
  await job.lead.does({ type: 'setDay', guestsExpected: 220 })
  await job.lead.does({ type: 'setBackup', component: 'chicken', ready: false })
  await order(counterPage, 'Garden chicken', 1)

  const start = pans.getByRole('button', { name: /^Start \d loads?$/ })
  await test.step('the lead is told to start it, with the reason in numbers', async () => {
    await expect(anyPan(pans, 'Herb chicken')).toHaveAccessibleName(
      new RegExp(`, ${doNextWords.lastingWord['wont-last']}, `),
    )
    await expect(pans.getByText(/^Start \d loads? of herb chicken$/)).toBeVisible()
    await expect(pans.getByText(/^May run out .*chances? in 10\.$/)).toBeVisible()
    await expect(pans.getByText(/^The first load on the line 11:\d\d, in 22 min\.$/)).toBeVisible()
    await tapUntil(start, pans.getByRole('button', { name: /^Herb chicken\s*\d loads?, 11:/ }))
  })
  const [batch] = Object.entries(job.lead.state().batches).find(
    ([, one]) => one.component === 'chicken' && one.finishedAt === null,
  ) ?? ['']
  const loads = job.lead.state().batches[batch]?.loads ?? Number.NaN
  await expect
    .poll(() => job.lead.state().adviceLog)
    .toContainEqual(expect.objectContaining({ key: 'start-batch chicken', answer: 'done' }))

  await test.step('nothing of it is loaded before it is cooked, finished and read', async () => {
    await openJob(pans, 'Herb chicken', pansWords.changePan)
    await expect(dialog(pans).getByText(formWords.needsBatch)).toBeVisible()
    await backToLine(pans)
  })

  await test.step('22 minutes later it is at 162 °F, which isn’t enough, and then each load at 165 °F or more', async () => {
    await job.hoursPass()
    await tapUntil(pot(pans, 'Herb chicken'), dialog(pans))
    await typeReading(pans, '162')
    await expect(dialog(pans).getByText(readingWords.verdict['not-met'])).toBeVisible()
    await sends(
      pans,
      batchWords.cookSendNot('162 °F'),
      batchWords.cookNotDone('Herb chicken', '162 °F'),
    )
    await expect(inJob(pans, batchWords.step.load)).toHaveCount(0)
    for (let load = 0; load < loads; load += 1) {
      const degrees = String(165 + load)
      if (load > 0) await inJob(pans, batchWords.step.cook).click()
      await typeReading(pans, degrees)
      await expect(dialog(pans).getByText(readingWords.verdict.met, { exact: true })).toBeVisible()
      await sends(
        pans,
        formWords.readSend(`${degrees} °F`),
        batchWords.cookDone('Herb chicken', `${degrees} °F`),
      )
    }
    await sends(
      pans,
      batchWords.finishSend(12 * loads),
      batchWords.finishDone('Herb chicken', 12 * loads),
    )
  })

  await test.step('two portions are left when the pan is changed', async () => {
    await job.lead.does({
      type: 'correct',
      pan: 'pan-chicken',
      amount: job.lead.portions('chicken', 3),
    })
    await expect(itemRow(counterPage, 'Garden chicken')).toHaveCount(0)
    await counterPage.getByRole('button', { name: counter.askedNone }).click()
    await expect(itemRow(counterPage, 'Garden chicken')).toContainText(counter.left(2))
    await tapUntil(inJob(pans, batchWords.step.load), dialog(pans).getByText(formWords.whatGoesIn))
    await typeReading(pans, '158')
    await sends(pans, formWords.put.change, formWords.isLoaded('Herb chicken'))
    await expect(leadPan(pans, 'Herb chicken', FULL_PAN - 1, 1)).toBeVisible()
    await expect(itemRow(counterPage, 'Garden chicken')).toContainText(counter.left(FULL_PAN - 1))
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type === 'batchCooked')).toMatchObject(
    expect.arrayContaining([
      expect.objectContaining({ batch, met: false }),
      expect.objectContaining({ batch, met: true }),
    ]),
  )
  expect(log.filter(({ type }) => type === 'panChanged')).toMatchObject([
    { pan: 'pan-chicken', batch, reading: { initialled: true } },
  ])
  expect(JSON.stringify(log), 'no initials in the log').not.toContain('"BO"')
  expect(log.filter(({ type }) => type === 'wantedGone')).toHaveLength(0)
})
