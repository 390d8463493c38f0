import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { pickUpWords } from '#lib/rooms/shelf/words/pick-up-en.ts'
import {
  assemblyPan,
  assemblyRests,
  begin,
  finishButton,
  giveOut,
  leadPan,
  pickUpNumber,
  saying,
  sendButton,
  shelfCard,
  start,
  startButton,
  tapUntil,
  ticketIsSent,
} from './support/hands.ts'
import { expect, less, test } from './support/job.ts'

/** A scoop numbered n holds 4/n cups; grams a cup stand in the station document. */
const milligrams = (gPerCup: number, scoop: number, scoops = 1): number =>
  Math.round(((gPerCup * 4) / scoop) * scoops * 1000)

const TAKEN = {
  pita: 1,
  chicken: milligrams(140, 8),
  peppers: milligrams(149, 16),
  slaw: 45_000,
  cheddar: milligrams(113, 24),
  'yogurt-sauce': 1,
}

test('the first order: taken, made, counted down, called and handed over', async ({ job }) => {
  const [counterPage, assembly, pans, pickUp, handOver] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/pans'),
    job.open('/pick-up'),
    job.open('/hand-over', { viewport: { width: 390, height: 844 } }),
  ])
  const before = job.lead.inPan()
  await expect(assemblyRests(assembly)).toBeVisible()
  await expect(leadPan(pans, 'Cheddar', 40, 0)).toBeVisible()

  await test.step('three taps from an idle counter', async () => {
    await begin(counterPage, 'Garden chicken')
    await expect(counterPage.getByText('One garden chicken with pita, as it comes.')).toBeVisible()
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await expect(counterPage.getByText(/^tell the guest/)).toBeVisible()
  })

  await test.step('assembly shows the build on the line, scoop by scoop', async () => {
    await expect(startButton(assembly, '1A')).toBeVisible()
    await expect(assembly.getByRole('heading', { name: '1-\u2060A Garden chicken' })).toBeVisible()
    await expect(assemblyPan(assembly, 'Pita')).toHaveText(
      saying('Pita', '1', 'piece', 'warm', '15 s'),
    )
    await expect(assemblyPan(assembly, 'Herb chicken')).toHaveText(
      saying('Herb', 'chicken', '1', 'level', '#8', 'gray'),
    )
    await expect(assemblyPan(assembly, 'Roast peppers')).toHaveText(
      saying('Roast', 'peppers', '1', 'level', '#16', 'blue'),
    )
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', '1', 'level', '#24', 'red'),
    )
    await expect(assemblyPan(assembly, 'Yogurt sauce')).toHaveText(
      saying('Yogurt', 'sauce', '1', 'cup', 'lidded', '2 fl oz'),
    )
    await expect(assemblyPan(assembly, 'Tuna salad')).toHaveCount(0)
    await expect(pickUpNumber(pickUp, 'waiting', '1A')).toBeVisible()
    await expect(leadPan(pans, 'Cheddar', 39, 1)).toBeVisible()
    expect(job.lead.inPan()).toEqual(before)
  })

  await test.step('started, it moves along the line', async () => {
    await start(assembly, '1A')
    await expect(pickUpNumber(pickUp, 'making', '1A')).toBeVisible()
    await expect(pickUpNumber(pickUp, 'waiting', '1A')).toHaveCount(0)
  })

  await test.step('made, the pans go down by exactly those portions', async () => {
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
    await expect(leadPan(pans, 'Cheddar', 39, 0)).toBeVisible()
    await expect(leadPan(pans, 'Tuna salad', 16, 0)).toBeVisible()
    await expect.poll(job.lead.inPan).toEqual(less(before, TAKEN))
    expect(Object.values(job.lead.onTickets()).every((amount) => amount === 0)).toBe(true)
    await expect(pickUpNumber(pickUp, 'made', '1A')).toBeVisible()
    await expect(pickUpNumber(pickUp, 'making', '1A')).toHaveCount(0)
  })

  await test.step('handed over by its mark, it is gone everywhere', async () => {
    const card = shelfCard(handOver, '1A')
    await expect(card.getByText(handOverEn.asItComes)).toBeVisible()
    await giveOut(handOver, '1A', handOver.getByText(handOverEn.nothing))
    await expect(pickUpNumber(pickUp, 'made', '1A')).toHaveCount(0)
    await expect(pickUp.getByText(pickUpWords.none.made, { exact: true })).toBeVisible()
    await expect(counterPage.getByRole('button', { name: counter.ticketsOpen(0) })).toBeVisible()
    await expect(assemblyRests(assembly)).toBeVisible()
  })

  const log = await job.log()
  expect(
    log.filter(
      ({ type }) =>
        !/^(serviceOpened|panLoaded|backupSet|batch\w+|advice\w+|sanitizerRead)$/.test(type),
    ),
  ).toMatchObject([
    { type: 'ticketSent', ticket: 1, named: false, paid: false },
    { type: 'buildStarted', ticket: 1, letter: 'A' },
    { type: 'buildFinished', ticket: 1, letter: 'A', uncounted: {} },
    { type: 'buildHandedOver', ticket: 1, letter: 'A' },
  ])
})
