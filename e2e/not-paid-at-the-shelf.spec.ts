import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { usualChoice } from '#lib/service/events/build-choice.ts'
import { findTicket } from '#lib/service/tickets.ts'
import { itemOf } from '#lib/station/find.ts'
import { beginning, giveOut, givePanel, pick, shelfCard, tapUntil } from './support/hands.ts'
import { expect, test } from './support/job.ts'

test('not paid at the shelf: asked once a ticket, on one list until it is paid or written off', async ({
  job,
}) => {
  const [handOver, pans] = await Promise.all([job.open('/hand-over'), job.open('/pans')])
  const { lead } = job
  const choice = () => usualChoice(itemOf(lead.state().station, 'garden-chicken'))
  const made = async (ticket: number, letters: readonly string[], paid = false) => {
    await lead.does({ type: 'send', builds: letters.map(choice), paid, readBack: true })
    for (const letter of letters) {
      await lead.does({ type: 'start', ticket, letter, read: true })
      await lead.does({ type: 'finish', ticket, letter })
    }
  }
  await made(1, ['A', 'B'])
  await made(2, ['A'])
  await made(3, ['A'], true)
  const later = handOver.getByRole('button', { name: beginning(handOverEn.payLater) })
  const handOverButton = (build: string) =>
    handOver.getByRole('button', { name: handOverEn.handOver(build), exact: true })
  const unpaid = (count: number) =>
    handOver.getByRole('button', { name: beginning(handOverEn.unpaidCount(count)) })
  const onPans = (count: number) =>
    pans.getByRole('button', { name: pansWords.notPaid(count), exact: true })

  await test.step('what is paid goes with one tap, and nothing is asked', async () => {
    await pick(handOver, '3A')
    await expect(givePanel(handOver, '3A')).toContainText(handOverEn.paid)
    await tapUntil(handOverButton('3A'), handOver.getByText(handOverEn.isHandedOver('3A')).first())
    await expect(unpaid(1)).toHaveCount(0)
  })

  await test.step('a ticket of two is said as one sum, and asked about once', async () => {
    await pick(handOver, '1A')
    await tapUntil(handOverButton('1A'), later)
    await expect(givePanel(handOver, '1A')).toContainText(
      handOverEn.notPaid('$13.00', ['1A', '1B']),
    )
    await tapUntil(later, handOver.getByText(handOverEn.isHandedOver('1A')).first())
    await expect(unpaid(1)).toContainText('$13.00')
    await expect(onPans(1)).toBeVisible()
    await pick(handOver, '1B')
    await expect(givePanel(handOver, '1B')).toContainText(handOverEn.onListNow)
    await tapUntil(handOverButton('1B'), handOver.getByText(handOverEn.isHandedOver('1B')).first())
    await expect(shelfCard(handOver, '1B')).toHaveCount(0)
    await expect(unpaid(1)).toContainText('$13.00')
  })

  await test.step('a screen that is opened anew has the list; paid there, it leaves both screens', async () => {
    await giveOut(handOver, '2A')
    await expect(onPans(2)).toBeVisible()
    await handOver.reload()
    await unpaid(2).click()
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.ticketPaid(1), exact: true }),
      onPans(1),
    )
    await expect.poll(() => findTicket(lead.state(), 1)?.paid).toBe(true)
  })

  await test.step('the lead writes the other off, asked twice; then nothing is owed anywhere', async () => {
    await onPans(1).click()
    const yes = pans.getByRole('button', { name: handOverEn.yesWriteOff('$6.50'), exact: true })
    // A second tap of the same finger writes nothing off: the answer has only just come.
    const ask = pans.getByRole('button', { name: handOverEn.writeOffOf(2), exact: true })
    await ask.evaluate((button: HTMLElement) => {
      const row = button.closest('li')
      button.click()
      requestAnimationFrame(() => row?.querySelector<HTMLElement>('button:last-of-type')?.click())
    })
    await expect(yes).toBeVisible()
    expect(findTicket(lead.state(), 2)).not.toHaveProperty('writtenOff')
    await expect(async () => {
      if (await yes.isVisible()) await yes.click()
      expect(findTicket(lead.state(), 2)).toMatchObject({ writtenOff: true })
    }).toPass()
    await expect(unpaid(1)).toHaveCount(0)
    expect(findTicket(lead.state(), 2)).toMatchObject({ paid: false, writtenOff: true })
  })

  const log = await job.log()
  expect(
    log.flatMap(({ type, ticket, paid, writtenOff }) =>
      type === 'ticketPaid' ? [[ticket, paid, writtenOff ?? false]] : [],
    ),
  ).toEqual([
    [1, true, false],
    [2, false, true],
  ])
})
