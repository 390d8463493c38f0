import type { Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { pickUpWords } from '#lib/rooms/shelf/words/pick-up-en.ts'
import { needName } from '#lib/words/service-en.ts'
import {
  assemblyPan,
  assemblyRests,
  begin,
  counterPan,
  finishButton,
  giveOut,
  givePanel,
  guestAnswered,
  itemRow,
  makeAndMark,
  pickUpNumber,
  saying,
  sendButton,
  shelfCard,
  start,
  startButton,
  tapUntil,
  ticketIsSent,
  turnAndAgree,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { askItsGuest, giveAlone } from './support/need-hands.ts'

const NAMED = 'Juniper'
const NAMED_WITH_NEED = 'Rowan'

const addName = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('button', { name: counter.addName, exact: true }).click()
  await page.getByLabel(counter.nameLabel).fill(name)
  await page.getByRole('button', { name: counter.nameUse, exact: true }).click()
  await expect(page.getByRole('button', { name: counter.nameIs(name) })).toBeVisible()
}

/** All that a screen says, to eyes and to a screen reader. */
const wordsOf = async (page: Page): Promise<string> => {
  const main = page.locator('main')
  return `${await main.textContent()} ${await main.ariaSnapshot()}`
}

test('handed over by its mark: look-alikes differ, a kept-apart one goes alone', async ({
  job,
}) => {
  const [counterPage, assembly, handOver, pickUp] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/hand-over', { viewport: { width: 390, height: 844 } }),
    job.open('/pick-up'),
  ])

  await job.signOn()

  await test.step('two that look alike: one by wish, one by need; both gave a name', async () => {
    await begin(counterPage, 'Garden chicken')
    await counterPan(counterPage, 'Cheddar').click()
    await counterPan(counterPage, 'Yogurt sauce').click()
    await addName(counterPage, NAMED)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)

    await counterPage.getByRole('button', { name: counter.needTile('milk') }).click()
    await counterPage.getByRole('button', { name: counter.saidNeeds }).click()
    await itemRow(counterPage, 'Garden chicken').click()
    await expect(counterPage.getByText(/can’t promise that no milk gets in/).first()).toBeVisible()
    await addName(counterPage, NAMED_WITH_NEED)
    await turnAndAgree(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 2)
  })

  await test.step('the kept-apart one is read aloud first; its pans stay shut', async () => {
    await makeAndMark(assembly, '1A', assembly.getByText(assemblyEn.readAloud))
    await tapUntil(
      assembly.getByRole('button', { name: assemblyEn.wasRead }),
      startButton(assembly, '2A'),
    )
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', assemblyEn.no, assemblyEn.lidOn, 'MILK'),
    )
    await start(assembly, '2A')
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
  })

  await test.step('the shelf: marks on both, the guest’s name only where no need is', async () => {
    const mark = givePanel(handOver, '1A').getByRole('list')
    await expect(mark).toHaveText('NO CHEDDARNO SAUCE')
    await expect(shelfCard(handOver, '1A')).toContainText(NAMED)
    await expect(shelfCard(handOver, '2A')).toContainText(handOverEn.keptApart)
    await expect(
      handOver.getByRole('button', { name: handOverEn.handOver('2A'), exact: true }),
    ).toHaveCount(0)
    const shelf = await wordsOf(handOver)
    expect(shelf).not.toContain(NAMED_WITH_NEED)
    expect(shelf.toLowerCase()).not.toContain(needName('milk'))
  })

  await test.step('the kept-apart one stands alone, with an open question', async () => {
    await askItsGuest(handOver, '2A')
    await expect(handOver.getByText('KEEP FROM MILK')).toHaveCount(0)
    await guestAnswered(handOver)
    await expect(handOver.getByText('KEEP FROM MILK')).toBeVisible()
    const alone = await wordsOf(handOver)
    for (const other of [NAMED, NAMED_WITH_NEED]) expect(alone).not.toContain(other)
    const others = shelfCard(handOver, '1A').getByRole('button')
    await expect(others).toHaveText('1-\u2060A')
    await expect(others).toBeDisabled()
    expect(handOverEn.question.toLowerCase()).not.toContain(needName('milk'))
    await giveAlone(handOver, '2A', handOver.getByText(handOverEn.isHandedOver('2A')).first())
    await expect(shelfCard(handOver, '2A')).toHaveCount(0)
    await expect(pickUpNumber(pickUp, 'made', '2A')).toHaveCount(0)
    await expect(pickUpNumber(pickUp, 'made', '1A')).toBeVisible()
  })

  await test.step('the pick-up screen knew numbers only', async () => {
    const seen = await wordsOf(pickUp)
    for (const word of [NAMED, NAMED_WITH_NEED, 'Garden chicken', 'CHEDDAR'])
      expect(seen).not.toContain(word)
    expect(seen.toLowerCase()).not.toContain(needName('milk'))
  })

  await giveOut(handOver, '1A', handOver.getByText(handOverEn.nothing))
  await expect(pickUp.getByText(pickUpWords.none.made, { exact: true })).toBeVisible()
  const after = await wordsOf(handOver)
  for (const name of [NAMED, NAMED_WITH_NEED]) expect(after).not.toContain(name)

  const log = await job.log()
  expect(JSON.stringify(log)).not.toMatch(new RegExp(`${NAMED}|${NAMED_WITH_NEED}`))
  expect(log.flatMap(({ type, ticket }) => (type === 'buildHandedOver' ? [ticket] : []))).toEqual([
    2, 1,
  ])
})
