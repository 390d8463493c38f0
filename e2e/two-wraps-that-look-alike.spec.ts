import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { pickUpWords } from '#lib/rooms/shelf/words/pick-up-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import {
  assemblyRests,
  begin,
  beginning,
  counterPan,
  finishButton,
  giveOut,
  givePanel,
  guestAnswered,
  itemRow,
  makeAndMark,
  pickUpNumber,
  readAloud,
  sendButton,
  shelfCard,
  start,
  tapUntil,
  tellNeed,
  ticketIsSent,
  turnAndAgree,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { askItsGuest, giveAlone } from './support/need-hands.ts'

const SMALL = { viewport: { width: 1024, height: 768 } }
/** Gone from both: from one by its guest's wish, from the other by its guest's need. */
const LEFT_OUT = ['Yogurt sauce']
const PLAIN = 'NO SAUCE'
const KEPT = 'KEEP FROM PEANUT'

test('two wraps that look alike: told apart by the mark, one guest at a time', async ({ job }) => {
  const [counterPage, assembly, handOver, pickUp] = await Promise.all([
    job.open('/counter', SMALL),
    job.open('/assembly', SMALL),
    job.open('/hand-over', SMALL),
    job.open('/pick-up', SMALL),
  ])
  await job.signOn()

  const handOverButton = handOver.getByRole('button', {
    name: handOverEn.handOver('1A'),
    exact: true,
  })
  const askButton = handOver.getByRole('button', { name: handOverEn.askFirst('2A'), exact: true })
  const sameButton = handOver.getByRole('button', { name: handOverEn.same('2A'), exact: true })

  await test.step('two garden chickens of the same food, one by wish, one kept apart', async () => {
    await begin(counterPage, 'Garden chicken')
    for (const pan of LEFT_OUT) await counterPan(counterPage, pan).click()
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await tellNeed(counterPage, 'peanut')
    await itemRow(counterPage, 'Garden chicken').click()
    await turnAndAgree(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 2)
    const [plain, kept] = [1, 2].map((ticket) => findBuild(job.lead.state(), ticket, 'A'))
    expect(kept?.takes).toEqual(plain?.takes)
  })

  await test.step('each is made and marked on its own', async () => {
    const wrap = assembly.getByRole('heading', { name: assemblyEn.wrap }).locator('..')
    await expect(wrap).not.toContainText(KEPT)
    await makeAndMark(assembly, '1A', assembly.getByText(assemblyEn.readAloud))
    await readAloud(assembly, '2A')
    await expect(wrap).toContainText(KEPT)
    await start(assembly, '2A')
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
  })

  await test.step('the shelf says that they look alike, and shows no need', async () => {
    await expect(givePanel(handOver, '1A')).toContainText(handOverEn.alike(['2A']))
    await expect(givePanel(handOver, '1A')).toContainText(PLAIN)
    await expect(shelfCard(handOver, '2A')).toContainText(handOverEn.keptApart)
    await askItsGuest(handOver, '2A')
    await tapUntil(handOver.getByRole('button', { name: handOverEn.back, exact: true }), askButton)
    await expect(givePanel(handOver, '2A')).toContainText(handOverEn.alike(['1A']))
    await expect(handOver.getByText(KEPT)).toHaveCount(0)
    await expect(handOver.getByText(/peanut/i)).toHaveCount(0)
  })

  await test.step('while its guest is asked, nothing else can be given out', async () => {
    await askItsGuest(handOver, '2A')
    await expect(handOver.getByText(KEPT)).toHaveCount(0)
    await expect(handOverButton).toHaveCount(0)
    await expect(sameButton).toHaveCount(0)
    await expect(shelfCard(handOver, '1A').getByRole('button')).toBeDisabled()
    await expect(shelfCard(handOver, '1A')).toHaveText('1-\u2060A')
    await guestAnswered(handOver)
    await expect(handOver.getByText(KEPT)).toBeVisible()
    await expect(handOver.getByText(handOverEn.alikeBeware)).toBeVisible()
    await expect(handOver.getByText('2-\u2060A', { exact: true }).first()).toBeVisible()
  })

  await test.step('not the same: it stays here, and the person in charge is called', async () => {
    await handOver.getByRole('button', { name: handOverEn.notSame, exact: true }).click()
    await expect(handOver.getByText(handOverEn.notSameThen)).toBeVisible()
    await expect(sameButton).toHaveCount(0)
    await tapUntil(handOver.getByRole('button', { name: handOverEn.back, exact: true }), askButton)
    expect(findBuild(job.lead.state(), 2, 'A')?.state).toBe('made')
    await expect(askButton).toBeVisible()
  })

  await test.step('it is thrown out and made again by the handling order', async () => {
    await handOver.getByRole('button', { name: handOverEn.wrongOf('2A'), exact: true }).click()
    await handOver.getByRole('button', { name: beginning(handOverEn.again) }).click()
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.yesAgain('2A'), exact: true }),
      handOver.getByText(handOverEn.isAgain('2A')),
    )
    await expect(shelfCard(handOver, '2A')).toHaveCount(0)
    await readAloud(assembly, '2A')
    await makeAndMark(assembly, '2A', assemblyRests(assembly))
  })

  await test.step('each goes to its guest, the kept-apart one by its mark', async () => {
    await askItsGuest(handOver, '2A')
    await guestAnswered(handOver)
    await giveAlone(handOver, '2A')
    await expect(pickUpNumber(pickUp, 'made', '2A')).toHaveCount(0)
    await expect(pickUpNumber(pickUp, 'made', '1A')).toBeVisible()
    const seen = `${await pickUp.locator('main').textContent()}`
    expect(seen).not.toMatch(/peanut|chicken|keep|apart/i)
    await giveOut(handOver, '1A', handOver.getByText(handOverEn.nothing))
    await expect(pickUp.getByText(pickUpWords.none.made, { exact: true })).toBeVisible()
  })

  const log = await job.log()
  expect(
    log.flatMap(({ type, ticket }) =>
      type === 'buildHandedOver' || type === 'buildRemade' ? [[type, ticket]] : [],
    ),
  ).toEqual([
    ['buildRemade', 2],
    ['buildHandedOver', 2],
    ['buildHandedOver', 1],
  ])
})
