import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { shortEn } from '#lib/rooms/orders/words/short-en.ts'
import { ticketsEn } from '#lib/rooms/orders/words/tickets-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { sayBuild } from '#lib/service/tickets.ts'
import {
  backToLine,
  job as dialog,
  inJob,
  openJob,
  sends,
  typeReading,
} from './support/food-hands.ts'
import {
  beginning,
  chooseTicket,
  leadPan,
  order,
  startButton,
  tapUntil,
  ticketRow,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'

const SHORT = ['4A', '3A', '2A']

test('a spill makes builds short: the newest go without first, and each has its own way out', async ({
  job,
}) => {
  const [pans, counterPage, assembly] = await Promise.all([
    job.open('/pans'),
    job.open('/counter'),
    job.open('/assembly'),
  ])
  for (const ticket of [1, 2, 3, 4]) await order(counterPage, 'Garden chicken', ticket)
  await job.lead.does({
    type: 'correct',
    pan: 'pan-peppers',
    amount: job.lead.portions('peppers', 5),
  })

  await test.step('four of five portions of peppers are spilled, with the reason', async () => {
    await expect(leadPan(pans, 'Roast peppers', 1, 4, pansWords.nearlyEmpty)).toBeVisible()
    await openJob(pans, 'Roast peppers', pansWords.waste)
    await inJob(pans, formWords.wasteReason.spill).click()
    for (let more = 0; more < 3; more += 1) await inJob(pans, pansWords.moreBy(1)).first().click()
    await sends(pans, formWords.wasteSend(4), formWords.wasteDone('Roast peppers', 4))
    await expect(leadPan(pans, 'Roast peppers', 0, 4, pansWords.short(3))).toBeVisible()
  })

  await test.step('the builds hit are named, newest first', async () => {
    await expect(pans.getByText(pansWords.shortTitle('Roast peppers'))).toBeVisible()
    await tapUntil(
      pans.getByRole('button', { name: pansWords.shortOpen, exact: true }),
      dialog(pans),
    )
    const rows = dialog(pans).getByRole('listitem')
    await expect(rows).toHaveCount(SHORT.length)
    for (const [place, build] of SHORT.entries())
      await expect(rows.nth(place)).toContainText(sayBuild(build))
    await expect(rows.first()).toContainText(formWords.shortLeaveOut)
    await expect(rows.first()).toContainText(formWords.shortCancel)
  })

  await test.step('the guest of 3A waits: the lead says so', async () => {
    const row = dialog(pans).getByRole('listitem').filter({ hasText: '3-\u2060A' })
    await row.getByRole('button', { name: formWords.shortWaits }).click()
    await expect(row.getByRole('button', { name: formWords.shortWaits })).toHaveCount(0)
    await expect(row).toContainText(formWords.shortWaits)
    await backToLine(pans)
  })

  await test.step('the counter leaves it out of 4A, and cancels 2A', async () => {
    const way = { fewer: {}, without: ['peppers'], base: null, item: null }
    const leaveOut = ticketsEn.wayOf('4A', way, () => 'Roast peppers')
    await chooseTicket(counterPage, '4A')
    await counterPage.getByRole('button', { name: leaveOut, exact: true }).click()
    const change = counterPage.getByRole('button', { name: beginning(counter.sendChange) })
    await tapUntil(change, counterPage.getByText(counter.changedSent(['4A']), { exact: true }))
    await chooseTicket(counterPage, '3A')
    await expect(counterPage.getByText(shortEn.shortWaits('Roast peppers'))).toBeVisible()
    await ticketRow(counterPage, '2A').click()
    await counterPage.getByRole('button', { name: counter.cancelAsk('2A'), exact: true }).click()
    await counterPage.getByRole('button', { name: beginning(counter.cancelYes('2A')) }).click()
    await expect(counterPage.getByText(counter.cancelled('2A'))).toBeVisible()
    await expect(leadPan(pans, 'Roast peppers', 0, 2, pansWords.short(1))).toBeVisible()
  })

  await test.step('1A can be made, and 3A once the back-up pan stands on the line', async () => {
    await expect(startButton(assembly, '1A')).toBeEnabled()
    await job.lead.does({ type: 'start', ticket: 1, letter: 'A' })
    await job.lead.does({ type: 'finish', ticket: 1, letter: 'A' })
    await expect(assembly.getByText(assemblyEn.short('3A', 'Roast peppers'))).toBeVisible()
    await openJob(pans, 'Roast peppers', pansWords.loadPan)
    await typeReading(pans, '150')
    await sends(pans, formWords.put.load, formWords.isLoaded('Roast peppers'))
    await expect(startButton(assembly, '3A')).toBeEnabled()
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type === 'wasteRecorded')).toMatchObject([
    { component: 'peppers', reason: 'spill' },
  ])
  expect(log.filter(({ type }) => type === 'buildWaits')).toMatchObject([
    { build: '3A', component: 'peppers' },
  ])
})
