import type { Page } from '@playwright/test'
import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import {
  assemblyPan,
  beginning,
  chooseTicket,
  finishButton,
  giveOut,
  makeAndMark,
  order,
  pickUpNumber,
  saying,
  shelfCard,
  start,
  startButton,
  tapUntil,
  turnAndAgree,
} from './support/hands.ts'
import { expect, less, test } from './support/job.ts'
import {
  answerStop,
  readAndStart,
  readBackOf,
  seeStop,
  spoken,
  stopOf,
  tellLate,
} from './support/need-hands.ts'

const stateOf = (state: RunningState, ticket: number) => findBuild(state, ticket, 'A')?.state

const toOrder = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: /^Leave / }).click()
  await expect(page.getByRole('button', { name: /^Tickets \(/ })).toBeVisible()
}

/** Ordered anew with what its guest told: read back, agreed to, and only then changed. */
const orderAgain = async (page: Page, build: string): Promise<void> => {
  await chooseTicket(page, build)
  await page.getByRole('button', { name: counter.changeOf(build), exact: true }).click()
  await expect(page.getByText(counter.changing(build), { exact: true })).toBeVisible()
  await turnAndChange(page, build)
}

const turnAndChange = async (page: Page, build: string): Promise<void> => {
  const send = page.getByRole('button', { name: beginning(counter.sendChange) })
  await expect(send).toHaveCount(0)
  await turnAndAgree(page, send)
  await send.click()
  await expect(page.getByText(counter.changedSent([build]), { exact: true })).toBeVisible()
}

test('told after sending: waiting, being made, handed over; stopped, and never continued', async ({
  job,
}) => {
  const [counterPage, assembly, handOver, pans, pickUp] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/hand-over'),
    job.open('/pans'),
    job.open('/pick-up'),
  ])
  await job.signOn()
  const { lead } = job
  const full = lead.held()

  const oneChicken = {
    pita: 1,
    chicken: lead.portions('chicken', 1),
    peppers: lead.portions('peppers', 1),
    slaw: lead.portions('slaw', 1),
    cheddar: lead.portions('cheddar', 1),
    'yogurt-sauce': 1,
  }
  const withoutMilk = spoken(lead.state(), [
    { say: 'item', item: 'garden-chicken', base: 'pita', asItComes: false },
    {
      say: 'need',
      components: ['cheddar', 'yogurt-sauce'],
      need: 'milk',
      why: 'contains',
      touches: null,
    },
    { say: 'backup', components: ['slaw'] },
    { say: 'keep-apart', codes: ['milk'] },
    { say: 'price', cents: 650 },
  ])

  await order(counterPage, 'Garden chicken', 1)
  await makeAndMark(assembly, '1A', assembly.getByRole('heading', { name: assemblyEn.idle }))
  await giveOut(handOver, '1A', handOver.getByText(handOverEn.nothing))
  await order(counterPage, 'Garden chicken', 2)
  await start(assembly, '2A')
  await order(counterPage, 'Garden chicken', 3)

  await test.step('told while it is being made: stopped at once, on every screen', async () => {
    await tellLate(counterPage, '2A', 'milk')
    const stop = stopOf(assembly)
    await expect(stop).toContainText('2-\u2060A')
    await expect(stop).toContainText('MILK: keep apart')
    await expect(stop).toContainText(assemblyEn.foodInIt('2A'))
    await expect(stop).toContainText(assemblyEn.thenHeld)
    await expect(finishButton(assembly)).toHaveCount(0)
    await expect(pans.getByText(firstWords.holdTitle(['2A'])).first()).toBeVisible()
    await expect(pickUpNumber(pickUp, 'making', '2A')).toHaveCount(0)
    await expect(pickUpNumber(pickUp, 'called', '2A')).toBeVisible()
    const held = findBuild(lead.state(), 2, 'A')
    expect(held).toMatchObject({ state: 'making', hold: { reason: 'need' } })
    expect(await lead.answerTo({ type: 'finish', ticket: 2, letter: 'A' })).toMatchObject({
      answer: 'refused',
    })
  })

  await test.step('food was in it: waste; it waits, held, and nothing of it goes on', async () => {
    await answerStop(assembly, true, startButton(assembly, '3A'))
    await expect.poll(() => stateOf(lead.state(), 2)).toBe('waiting')
    await expect.poll(() => lead.wasted()).toMatchObject({ cheddar: oneChicken.cheddar, pita: 1 })
    await assembly.getByRole('button', { name: beginning(assemblyEn.look('2A')) }).click()
    await expect(assembly.getByText(assemblyEn.heldThen)).toBeVisible()
    await expect(startButton(assembly, '2A')).toHaveCount(0)
    expect(
      await lead.answerTo({ type: 'start', ticket: 2, letter: 'A', read: true }),
    ).toMatchObject({
      answer: 'refused',
      refusal: { code: 'build-held', build: '2A' },
    })
  })

  await test.step('the counter orders it anew with the need; it starts fresh, kept apart', async () => {
    await expect(readBackOf(counterPage)).toHaveText(withoutMilk)
    await turnAndChange(counterPage, '2A')
    await readAndStart(assembly, '2A')
    await expect(assembly.getByText(assemblyEn.madeAgain(1))).toBeVisible()
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', assemblyEn.no, assemblyEn.lidOn, 'MILK'),
    )
    await tapUntil(finishButton(assembly), startButton(assembly, '3A'))
    expect(findBuild(lead.state(), 2, 'A')?.hold).toBeNull()
    await expect(shelfCard(handOver, '2A')).toContainText(handOverEn.keptApart)
  })

  await test.step('told while it waits: nothing was in it, so nothing is thrown out', async () => {
    const wasted = lead.wasted()
    await tellLate(counterPage, '3A', 'milk')
    await expect(stopOf(assembly)).toContainText('3-\u2060A')
    await expect(startButton(assembly, '3A')).toHaveCount(0)
    await toOrder(counterPage)
    await expect(counterPage.getByText(needsEn.heldNow(['3A']))).toBeVisible()
    await seeStop(assembly, '3A', assembly.getByText(assemblyEn.heldThen))
    await expect(startButton(assembly, '3A')).toHaveCount(0)
    await orderAgain(counterPage, '3A')
    await expect(counterPage.getByText(needsEn.heldNow(['3A']))).toHaveCount(0)
    await readAndStart(assembly, '3A')
    await tapUntil(finishButton(assembly), assembly.getByRole('heading', { name: assemblyEn.idle }))
    expect(lead.wasted()).toEqual(wasted)
  })

  await test.step('told of a made one: it is never given out', async () => {
    await order(counterPage, 'Garden chicken', 4)
    await makeAndMark(assembly, '4A', assembly.getByRole('heading', { name: assemblyEn.idle }))
    await expect(shelfCard(handOver, '4A')).toBeVisible()
    await expect(pickUpNumber(pickUp, 'made', '4A')).toBeVisible()
    await tellLate(counterPage, '4A', 'milk')
    await expect(stopOf(assembly)).toContainText(assemblyEn.madeIsWaste('4A'))
    await expect(shelfCard(handOver, '4A')).toHaveCount(0)
    await expect(handOver.getByRole('heading', { name: handOverEn.held })).toBeVisible()
    await expect(
      handOver.getByRole('button', { name: handOverEn.threwOut('4A'), exact: true }),
    ).toBeVisible()
    await expect(pickUpNumber(pickUp, 'made', '4A')).toHaveCount(0)
    expect(await lead.answerTo({ type: 'handOver', ticket: 4, letter: 'A' })).toMatchObject({
      answer: 'refused',
    })
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.threwOut('4A'), exact: true }),
      handOver.getByText(handOverEn.isThrownOut('4A')),
    )
    await expect(stopOf(assembly)).toHaveCount(0)
    await expect.poll(() => lead.wasted().pita).toBe(2)
    await toOrder(counterPage)
    await chooseTicket(counterPage, '4A')
    await counterPage.getByRole('button', { name: counter.cancelAsk('4A'), exact: true }).click()
    await counterPage.getByRole('button', { name: beginning(counter.cancelYes('4A')) }).click()
    await expect.poll(() => stateOf(lead.state(), 4)).toBe('cancelled')
    await counterPage.getByRole('button', { name: counter.toOrder, exact: true }).click()
  })

  await test.step('told after hand-over: its guest is listed to find, and that is answered', async () => {
    await tellLate(counterPage, '1A', 'milk')
    await toOrder(counterPage)
    await expect(counterPage.getByText(needsEn.findNow(['1A']))).toBeVisible()
    await expect(handOver.getByRole('heading', { name: handOverEn.toFind })).toBeVisible()
    await expect(pans.getByText(firstWords.findTitle(['1A'])).first()).toBeVisible()
    await expect.poll(() => Object.keys(lead.state().toFind)).toEqual(['1A'])
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.foundOf('1A'), exact: true }),
      handOver.getByText(handOverEn.findInCharge),
    )
    await expect(handOver.locator('main')).toContainText('MILK: keep apart')
    await tapUntil(
      handOver.getByRole('button', {
        name: saying(handOverEn.foundBack, handOverEn.foundBackThen),
      }),
      handOver.getByText(handOverEn.isFoundBack('1A')),
    )
    await expect(handOver.getByRole('heading', { name: handOverEn.toFind })).toHaveCount(0)
    await expect.poll(() => lead.state().toFind).toEqual({})
    await expect(counterPage.getByText(needsEn.findNow(['1A']))).toHaveCount(0)
    await expect(counterPage.getByText(needsEn.heldNow(['1A']))).toBeVisible()
    await orderAgain(counterPage, '1A')
    await expect(
      assembly.getByRole('button', { name: assemblyEn.wasRead, exact: true }),
    ).toBeVisible()
    await expect(assembly.getByText(assemblyEn.madeAgain(1))).toBeVisible()
    await expect(shelfCard(handOver, '2A')).toBeVisible()
  })

  const madeApart = { pita: 1, chicken: oneChicken.chicken, peppers: oneChicken.peppers }
  const gone = Object.fromEntries(
    Object.entries(oneChicken).map(([id, amount]) => {
      const apart = id in madeApart || id === 'slaw' ? 2 : 0
      return [id, amount * (3 + apart)]
    }),
  )
  expect(lead.held()).toEqual(less(full, gone))
  expect(lead.wasted()).toMatchObject({ pita: 3, cheddar: 3 * oneChicken.cheddar })

  const log = await job.log()
  expect(log.flatMap(({ type, ticket }) => (type === 'needTold' ? [ticket] : []))).toEqual([
    2, 3, 4, 1,
  ])
  expect(
    log
      .filter(({ type }) => type === 'stopAcknowledged')
      .map(({ ticket, foodInIt }) => [ticket, foodInIt]),
  ).toEqual([
    [2, true],
    [3, false],
    [4, true],
    [1, true],
  ])
  for (const ticket of [1, 2, 3]) {
    const own = log.filter((line) => line.ticket === ticket)
    const told = own.findIndex(({ type }) => type === 'needTold')
    const changed = own.findIndex(({ type }, index) => index > told && type === 'buildChanged')
    expect(changed, `${ticket}A ordered anew`).toBeGreaterThan(told)
    expect(
      own.slice(told, changed).map(({ type }) => type),
      'nothing of it goes on in between',
    ).toEqual(['needTold', 'stopAcknowledged'])
  }
})
