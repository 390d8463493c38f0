import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { sayRefusal } from '#lib/words/refusals-en.ts'
import { begin, itemRow, leadPan, sendButton } from './support/hands.ts'
import { expect, test } from './support/job.ts'

const refused = sayRefusal({ code: 'sold-out', component: 'chicken' }, () => 'Herb chicken')

test('the last portion: two counters send at once, exactly one gets it', async ({ job }) => {
  const [one, other, pans] = await Promise.all([
    job.open('/counter'),
    job.open('/counter', { viewport: { width: 1024, height: 768 } }),
    job.open('/pans'),
  ])
  await job.lead.does({
    type: 'correct',
    pan: 'pan-chicken',
    amount: job.lead.portions('chicken', 1),
  })
  for (const page of [one, other]) {
    await begin(page, 'Garden chicken')
    await expect(itemRow(page, 'Garden chicken')).toContainText(counter.left(1))
    await expect(sendButton(page)).toBeEnabled()
  }

  await test.step('both are sent before the server can tell either of the other', async () => {
    job.holdStill()
    for (const page of [one, other]) {
      await sendButton(page).click()
      await expect(
        page.getByText(counter.sending).or(page.getByText(counter.waitTitle)),
      ).toBeVisible()
    }
    job.goOn()
  })
  const sent = (page: typeof one) => page.getByText(counter.ticket([1]), { exact: true })
  const won = () => Promise.all([one, other].map((page) => sent(page).isVisible()))
  await expect.poll(async () => (await won()).filter(Boolean).length).toBe(1)
  const [winner, loser] = (await won())[0] ? [one, other] : [other, one]
  await expect(sent(winner)).toBeVisible()
  await expect(loser.getByText(counter.cannot.gone('Herb chicken')).first()).toBeVisible()
  await expect(loser.getByRole('paragraph').filter({ hasText: refused })).toBeVisible()
  await expect(sent(loser)).toHaveCount(0)

  await test.step('neither counter can sell it any more', async () => {
    await expect(sendButton(loser)).toBeDisabled()
    await winner.getByRole('button', { name: counter.askedNone }).click()
    await expect(itemRow(winner, 'Garden chicken')).toContainText(counter.rowNo('Herb chicken'))
    await itemRow(winner, 'Garden chicken').click()
    await expect(winner.getByText(counter.cannot.gone('Herb chicken')).last()).toBeVisible()
    await expect(sendButton(winner)).toBeDisabled()
    await expect(leadPan(pans, 'Herb chicken', 0, 1, pansWords.soldOut)).toBeVisible()
  })

  expect(job.lead.onTickets().chicken).toBe(job.lead.inPan().chicken)
  const log = await job.log()
  expect(log.filter(({ type }) => type === 'ticketSent')).toHaveLength(1)
})
