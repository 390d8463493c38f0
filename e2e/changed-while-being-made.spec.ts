import type { Locator, Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import {
  assemblyPan,
  assemblyRests,
  beginning,
  chooseTicket,
  counterPan,
  finishButton,
  leadPan,
  order,
  pickUpNumber,
  saying,
  start,
  startButton,
  tapUntil,
} from './support/hands.ts'
import { expect, less, test } from './support/job.ts'

const stop = (assembly: Page): Locator =>
  assembly.getByRole('alert').filter({ hasText: assemblyEn.stop })

const change = async (page: Page, build: string, pan: string): Promise<void> => {
  await chooseTicket(page, build)
  await page.getByRole('button', { name: counter.changeOf(build), exact: true }).click()
  await expect(page.getByText(counter.changingMaking(build))).toBeVisible()
  await counterPan(page, pan).click()
  await page.getByRole('button', { name: beginning(counter.sendChange) }).click()
  await expect(page.getByText(counter.changedSent([build]), { exact: true })).toBeVisible()
}

const cancel = async (page: Page, build: string): Promise<void> => {
  await chooseTicket(page, build)
  await page.getByRole('button', { name: counter.cancelAsk(build), exact: true }).click()
  await expect(page.getByText(counter.cancelMaking)).toBeVisible()
  await page.getByRole('button', { name: beginning(counter.cancelYes(build)) }).click()
  await expect(
    page.getByRole('status').filter({ hasText: counter.toldAssembly(build) }),
  ).toBeVisible()
}

const answer = async (assembly: Page, words: string, then: Locator): Promise<void> => {
  await tapUntil(stop(assembly).getByRole('button', { name: saying(words) }), then)
}

const YES = `${assemblyEn.foodYes} ${assemblyEn.foodYesThen}`
const NO = `${assemblyEn.foodNo} ${assemblyEn.foodNoThen}`

test('changed while being made: assembly stops and says whether food was in it', async ({
  job,
}) => {
  const [counterPage, assembly, pans, pickUp] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/pans'),
    job.open('/pick-up'),
  ])
  const { lead } = job
  const before = lead.inPan()
  const cheddarPan = stop(assembly).getByRole('button', { name: beginning('Cheddar') })

  await order(counterPage, 'Garden chicken', 1)
  await start(assembly, '1A')

  await test.step('changed, no food in it: nothing is thrown out, it starts anew', async () => {
    await change(counterPage, '1A', 'Cheddar')
    await expect(stop(assembly)).toContainText('1-\u2060A')
    await expect(cheddarPan).toHaveText(
      saying('Cheddar', 'with', assemblyEn.becomes, 'no', assemblyEn.wasIn(false)),
    )
    await expect(finishButton(assembly)).toHaveCount(0)
    await answer(assembly, NO, startButton(assembly, '1A'))
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', assemblyEn.no, 'guest asked'),
    )
    await expect(pickUpNumber(pickUp, 'waiting', '1A')).toBeVisible()
    await expect(leadPan(pans, 'Cheddar', 40, 0)).toBeVisible()
    await expect.poll(lead.inPan).toEqual(before)
    expect(lead.onTickets()).toMatchObject({ cheddar: 0, pita: 1 })
  })

  await test.step('changed with food in it: that is waste, and never goes back', async () => {
    await start(assembly, '1A')
    await change(counterPage, '1A', 'Sesame slaw')
    await answer(assembly, YES, startButton(assembly, '1A'))
    await expect(assembly.getByText(assemblyEn.madeAgain(1))).toBeVisible()
    await expect(leadPan(pans, 'Pita', 22, 1)).toBeVisible()
    await expect.poll(lead.inPan).toEqual(
      less(before, {
        pita: 1,
        chicken: lead.portions('chicken', 1),
        peppers: lead.portions('peppers', 1),
        slaw: lead.portions('slaw', 1),
        'yogurt-sauce': 1,
      }),
    )
    expect(lead.wasted()).toMatchObject({ pita: 1, slaw: lead.portions('slaw', 1), cheddar: 0 })
    expect(lead.onTickets()).toMatchObject({ pita: 1, slaw: 0 })
  })

  await test.step('cancelled with some of it in, while another waits', async () => {
    await order(counterPage, 'Garden chicken', 2)
    await start(assembly, '1A')
    await cancel(counterPage, '1A')
    await expect(stop(assembly)).toContainText(assemblyEn.cancelled)
    await expect(counterPage.getByText(counter.stopped)).toBeVisible()
    const chicken = stop(assembly).getByRole('button', { name: beginning('Herb chicken') })
    const wasted = lead.wasted()
    const held = lead.inPan()
    await expect(chicken).toHaveAttribute('aria-pressed', 'true')
    await chicken.click()
    await expect(chicken).toHaveAttribute('aria-pressed', 'false')
    const lit = await stop(assembly).getByRole('button', { pressed: true }).count()
    const some = `${assemblyEn.foodYes} ${assemblyEn.foodYesSome(lit, lit + 1)}`
    await answer(assembly, some, startButton(assembly, '2A'))
    await expect.poll(() => lead.wasted().pita).toBe(2)
    expect(lead.wasted().chicken).toBe(wasted.chicken)
    expect(lead.inPan()).toMatchObject({
      chicken: held.chicken,
      peppers: less(held, { peppers: lead.portions('peppers', 1) }).peppers,
    })
    await expect(pickUpNumber(pickUp, 'making', '1A')).toHaveCount(0)
    await expect(leadPan(pans, 'Pita', 21, 1)).toBeVisible()
    expect(lead.wasted()).toMatchObject({ pita: 2, cheddar: 0 })
    await counterPage.getByRole('button', { name: counter.toOrder }).click()
  })

  await test.step('cancelled with none in it: its portions are let go, once', async () => {
    await start(assembly, '2A')
    await cancel(counterPage, '2A')
    await answer(assembly, NO, assemblyRests(assembly))
    await expect(leadPan(pans, 'Pita', 22, 0)).toBeVisible()
    await expect(leadPan(pans, 'Cheddar', 40, 0)).toBeVisible()
    expect(lead.inPan().cheddar).toBe(before.cheddar)
    expect(Object.values(lead.onTickets()).every((amount) => amount === 0)).toBe(true)
    expect(lead.wasted().cheddar).toBe(0)
  })

  const answered = (await job.log()).filter(({ type }) => type === 'stopAcknowledged')
  expect(answered.map(({ letter, ticket, foodInIt }) => [ticket, letter, foodInIt])).toEqual([
    [1, 'A', false],
    [1, 'A', true],
    [1, 'A', true],
    [2, 'A', false],
  ])
})
