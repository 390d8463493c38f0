import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { shortEn } from '#lib/rooms/orders/words/short-en.ts'
import { ticketsEn } from '#lib/rooms/orders/words/tickets-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import {
  begin,
  beginning,
  order,
  sendButton,
  startButton,
  ticketIsSent,
  ticketRow,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { readBackOf } from './support/need-hands.ts'

const SINGLE = { fewer: { chicken: 1 }, without: [], base: null, item: null }

test('a short double becomes a single: offered as the pans let it, read back, and made', async ({
  job,
}) => {
  const [counterPage, assembly] = await Promise.all([job.open('/counter'), job.open('/assembly')])
  const { lead } = job
  await order(counterPage, 'Garden chicken', 1)
  await begin(counterPage, 'Garden chicken')
  await counterPage.getByRole('button', { name: /^One more portion of herb chicken/ }).click()
  await sendButton(counterPage).click()
  await ticketIsSent(counterPage, 2)
  const single = counterPage.getByRole('button', {
    name: ticketsEn.wayOf('2A', SINGLE, () => 'Herb chicken'),
    exact: true,
  })

  await test.step('two portions are left for three on tickets: the double is short', async () => {
    await lead.does({ type: 'correct', pan: 'pan-chicken', amount: lead.portions('chicken', 2) })
    await expect(counterPage.getByText(shortEn.shortNow(['2A']))).toBeVisible()
    await counterPage.getByRole('button', { name: /^Tickets \(/ }).click()
    await expect(ticketRow(counterPage, '2A')).toHaveAttribute('aria-pressed', 'true')
    await expect(ticketRow(counterPage, '2A')).toContainText(ticketsEn.shortOf(['Herb chicken']))
    await expect(single).toBeVisible()
  })

  await test.step('with one portion the single would take it from the guest before: not offered', async () => {
    await lead.does({ type: 'correct', pan: 'pan-chicken', amount: lead.portions('chicken', 1) })
    await expect(single).toHaveCount(0)
    await lead.does({ type: 'correct', pan: 'pan-chicken', amount: lead.portions('chicken', 2) })
  })

  await test.step('a tap opens it as a single, it is read back, and another sends it', async () => {
    await single.click()
    await expect(readBackOf(counterPage)).not.toContainText(/double|2 portions|extra/i)
    await counterPage.getByRole('button', { name: beginning(counter.sendChange) }).click()
    await expect(counterPage.getByText(counter.changedSent(['2A']), { exact: true })).toBeVisible()
    const build = findBuild(lead.state(), 2, 'A')
    expect(build?.choice.parts.chicken).toEqual({ placement: 'in', portions: 1, because: 'asked' })
    expect(build?.priceCents).toBe(findBuild(lead.state(), 1, 'A')?.priceCents)
    await expect(counterPage.getByText(shortEn.shortNow(['2A']))).toHaveCount(0)
  })

  await test.step('both can be made', async () => {
    await expect(startButton(assembly, '1A')).toBeEnabled()
    for (const ticket of [1, 2]) {
      await lead.does({ type: 'start', ticket, letter: 'A' })
      await lead.does({ type: 'finish', ticket, letter: 'A' })
    }
    await expect(assembly.getByRole('heading', { name: assemblyEn.idle })).toBeVisible()
    expect(lead.inPan().chicken).toBe(0)
  })
})
