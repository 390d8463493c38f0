import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import {
  anyPan,
  job as dialog,
  INITIALS,
  inJob,
  openJob,
  pot,
  sends,
  typeReading,
} from './support/food-hands.ts'
import {
  assemblyRests,
  givePanel,
  itemRow,
  makeAndMark,
  order,
  startButton,
  tapUntil,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'

const MINUTE = 60_000
const TOLD_MINUTES_AGO = 150

test.use({
  clock: {
    beginsAt: Date.parse('2026-11-25T16:46:00Z'),
    passes: [80 * MINUTE, 12 * MINUTE],
  },
})

test('the clock that started in the prep kitchen: its time binds the pan, the counter, and the shelf', async ({
  job,
}) => {
  const [pans, counterPage, assembly, handOver] = await Promise.all([
    job.open('/pans'),
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/hand-over'),
  ])
  const began = job.lead.state().at
  await job.lead.does({
    type: 'startBatch',
    batch: 'prep-beans',
    component: 'beans',
    loads: 1,
    startedAt: began - 200 * MINUTE,
  })
  await job.lead.does({
    type: 'recordCooking',
    batch: 'prep-beans',
    reading: {
      tenths: 1_800,
      scale: 'F',
      probe: '1',
      where: 'middle-stirred',
      at: began - 170 * MINUTE,
    },
    initials: INITIALS,
  })
  await job.lead.does({
    type: 'finishBatch',
    batch: 'prep-beans',
    amount: job.lead.portions('beans', 24),
    finishedAt: began - 160 * MINUTE,
  })

  await test.step('it left heat 150 minutes ago, at 150 °F: so its time is over at 12:16', async () => {
    await tapUntil(pot(pans, 'Black beans'), dialog(pans))
    const clock = dialog(pans).getByText(formWords.clockWhy)
    await tapUntil(inJob(pans, batchWords.step.clock), clock)
    await inJob(pans, formWords.clockFromIs.hot).click()
    for (let told = 0; told < TOLD_MINUTES_AGO; told += 10)
      await dialog(pans)
        .getByRole('button', { name: pansWords.moreBy(10), exact: true })
        .click()
    await expect(
      dialog(pans).getByText(formWords.clockAgo(TOLD_MINUTES_AGO), { exact: true }),
    ).toBeVisible()
    await typeReading(pans, '150')
    await tapUntil(
      inJob(pans, formWords.clockSend('').trim()),
      pans
        .getByRole('status')
        .filter({ hasText: /Black beans: throw out at 12:1\d/ })
        .first(),
    )
  })

  await test.step('the pan on the line carries that time, and asks for no reading', async () => {
    await openJob(pans, 'Black beans', pansWords.changePan)
    await inJob(pans, 'Batch, made').first().click()
    await expect(dialog(pans).getByLabel(readingWords.initials, { exact: true })).toHaveCount(0)
    await sends(pans, formWords.put.change, formWords.isLoaded('Black beans'))
    await expect(anyPan(pans, 'Black beans')).toHaveAccessibleName(/, throw out 12:1\d/)
    const again = await job.lead.answerTo({
      type: 'topUp',
      pan: 'pan-beans',
      amount: job.lead.portions('beans', 4),
      from: 'back-up-beans',
      reading: { tenths: 1_500, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: INITIALS,
    })
    expect(again, 'hot beans without a clock don’t go into it').toMatchObject({
      answer: 'refused',
      refusal: { code: 'cannot-top-up', why: 'needs-clock' },
    })
  })

  await test.step('what is made of it carries the same time on the shelf', async () => {
    await order(counterPage, 'Bean and pepper', 1)
    await makeAndMark(assembly, '1A', assemblyRests(assembly))
    await expect(givePanel(handOver, '1A')).toContainText(/throw out (at )?12:1\d/)
  })

  await test.step('eighty minutes later the lead is told that it is nearly over', async () => {
    await job.hoursPass()
    await expect(pans.getByText(/^The black beans pan: throw out at 12:1\d$/).first()).toBeVisible()
    await order(counterPage, 'Bean and pepper', 2)
    await expect(startButton(assembly, '2A')).toBeEnabled()
  })

  await test.step('past its time nothing of it is sold, made or handed over', async () => {
    await job.hoursPass()
    await counterPage.getByRole('button', { name: counter.askedNone }).click()
    await expect(itemRow(counterPage, 'Bean and pepper')).toContainText(
      counter.rowNo('Black beans'),
    )
    await expect(assembly.getByText(assemblyEn.pastTime('2A', 'Black beans'))).toBeVisible()
    await expect(handOver.getByRole('heading', { name: handOverEn.past })).toBeVisible()
    expect(await job.lead.answerTo({ type: 'handOver', ticket: 1, letter: 'A' })).toMatchObject({
      answer: 'refused',
    })
  })

  await test.step('it stays to be thrown out until it is initialed, at hand-over and on the line', async () => {
    expect(Object.keys(job.lead.state().toThrowOut).sort()).toEqual(['build/1A', 'pan/pan-beans'])
    await handOver.getByLabel(handOverEn.initials).fill(INITIALS)
    await handOver.getByRole('button', { name: handOverEn.threwPast('1A'), exact: true }).click()
    await expect(handOver.getByRole('heading', { name: handOverEn.past })).toHaveCount(0)
    await expect(anyPan(pans, 'Black beans')).toHaveAccessibleName(
      new RegExp(`, ${pansWords.throwOut}, `),
    )
    const list = pans.getByRole('button', { name: pansWords.toThrowOut, exact: true })
    await tapUntil(list, dialog(pans))
    // What was thrown out is a claim: it is tapped, also where it is the only one.
    await dialog(pans).getByRole('button', { name: formWords.throwWhat.pan }).click()
    await dialog(pans).getByLabel(readingWords.initials, { exact: true }).fill(INITIALS)
    await sends(pans, formWords.throwSend, formWords.throwDone('Black beans'))
    expect(job.lead.state().toThrowOut).toEqual({})
    expect(job.lead.state().pans['pan-beans']?.amount).toBe(0)
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type === 'discardSignedOff')).toMatchObject([
    { what: 'build', id: '1A', reason: 'past-time' },
    { what: 'pan', id: 'pan-beans', reason: 'past-time' },
  ])
  expect(JSON.stringify(log), 'no initials in the log').not.toContain(`"${INITIALS}"`)
})
