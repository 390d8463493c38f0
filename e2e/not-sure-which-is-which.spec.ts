import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import {
  assemblyRests,
  begin,
  beginning,
  counterPan,
  giveOut,
  givePanel,
  guestAnswered,
  itemRow,
  leadPan,
  makeAndMark,
  pick,
  pickUpNumber,
  readAloud,
  sendButton,
  shelfCard,
  startButton,
  tellNeed,
  ticketIsSent,
  turnAndAgree,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { askItsGuest, giveAlone } from './support/need-hands.ts'

const SMALL = { viewport: { width: 1024, height: 768 } }
const BOTH = ['1A', '2A']
const MOST_TAPS = 4

test('not sure which is which: both are thrown out and made again, and each guest gets theirs', async ({
  job,
}) => {
  const [counterPage, assembly, handOver, pickUp, pans] = await Promise.all([
    job.open('/counter', SMALL),
    job.open('/assembly', SMALL),
    job.open('/hand-over', SMALL),
    job.open('/pick-up', SMALL),
    job.open('/pans', SMALL),
  ])
  await job.signOn()
  const { lead } = job
  const chicken = lead.portions('chicken', 1)
  const stateOf = (ticket: number) => findBuild(lead.state(), ticket, 'A')?.state

  await test.step('two wraps of the same food, one of them kept apart, and one of beans beside them', async () => {
    await begin(counterPage, 'Garden chicken')
    await counterPan(counterPage, 'Yogurt sauce').click()
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await tellNeed(counterPage, 'peanut')
    await itemRow(counterPage, 'Garden chicken').click()
    await turnAndAgree(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 2)
    await begin(counterPage, 'Bean and pepper')
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 3)
    await makeAndMark(assembly, '1A', assembly.getByText(assemblyEn.readAloud))
    await readAloud(assembly, '2A')
    await makeAndMark(assembly, '2A', startButton(assembly, '3A'))
    await makeAndMark(assembly, '3A', assemblyRests(assembly))
    await pick(handOver, '1A')
    await expect(givePanel(handOver, '1A')).toContainText(handOverEn.alike(['2A']))
  })
  const made = lead.inPan()
  const wasted = lead.wasted().chicken ?? Number.NaN
  await expect(leadPan(pans, 'Herb chicken', 22, 0)).toBeVisible()

  await test.step('what looks alike is lit, what doesn’t isn’t; both go with one button', async () => {
    await handOver.evaluate(() => {
      document.documentElement.dataset.taps = '0'
      const count = () => {
        const { dataset } = document.documentElement
        dataset.taps = String(Number(dataset.taps) + 1)
      }
      addEventListener('click', count, true)
    })
    await pick(handOver, '1A')
    await handOver.getByRole('button', { name: handOverEn.wrongOf('1A'), exact: true }).click()
    await handOver.getByRole('button', { name: beginning(handOverEn.notSure) }).click()
    await expect(handOver.getByRole('button', { pressed: true })).toHaveCount(BOTH.length)
    const other = handOver.getByRole('button', { name: beginning('3-\u2060A'), pressed: false })
    await other.click()
    await expect(
      handOver.getByRole('button', { name: handOverEn.throwOutMixedUp([...BOTH, '3A']) }),
    ).toBeVisible()
    await handOver.getByRole('button', { name: beginning('3-\u2060A'), pressed: true }).click()
    await handOver
      .getByRole('button', { name: handOverEn.throwOutMixedUp(BOTH), exact: true })
      .click()
    await expect(handOver.getByText(handOverEn.areOut(BOTH))).toBeVisible()
    // Two of these were spent on adding the beans and clearing them again.
    const taps = Number(await handOver.locator('html').getAttribute('data-taps')) - 2
    expect(taps).toBeLessThanOrEqual(MOST_TAPS)
  })

  await test.step('nobody can be given either; assembly has both again, and the pans owe them', async () => {
    for (const build of BOTH) {
      await expect(shelfCard(handOver, build)).toHaveCount(0)
      await expect(pickUpNumber(pickUp, 'waiting', build)).toBeVisible()
    }
    await expect(shelfCard(handOver, '3A')).toBeVisible()
    await expect(startButton(assembly, '1A')).toBeVisible()
    await expect(assembly.getByText(assemblyEn.madeAgain(1))).toBeVisible()
    await expect(
      assembly.getByRole('button', { name: beginning(assemblyEn.look('2A')) }),
    ).toBeVisible()
    await expect(leadPan(pans, 'Herb chicken', 20, 2)).toBeVisible()
    expect(lead.wasted().chicken).toBe(wasted + 2 * chicken)
    expect(lead.inPan()).toEqual(made)
  })

  await test.step('both are made again, the kept-apart one by its handling order', async () => {
    await makeAndMark(assembly, '1A', assembly.getByText(assemblyEn.readAloud))
    await readAloud(assembly, '2A')
    await makeAndMark(assembly, '2A', assemblyRests(assembly))
    await expect(leadPan(pans, 'Herb chicken', 20, 0)).toBeVisible()
    expect(lead.inPan().chicken).toBe((made.chicken ?? Number.NaN) - 2 * chicken)
  })

  await test.step('each goes to its guest, the kept-apart one by its mark', async () => {
    await askItsGuest(handOver, '2A')
    await guestAnswered(handOver)
    await expect(handOver.getByText('KEEP FROM PEANUT')).toBeVisible()
    await giveAlone(handOver, '2A')
    await giveOut(handOver, '1A', handOver.getByText(handOverEn.isHandedOver('1A')).first())
    await expect
      .poll(() => [stateOf(1), stateOf(2), stateOf(3)])
      .toEqual(['handed-over', 'handed-over', 'made'])
  })

  const log = await job.log()
  const remade = log.filter(({ type }) => type === 'buildRemade')
  expect(remade.map(({ ticket, mixedUpWith }) => [ticket, mixedUpWith])).toEqual([
    [1, ['2A']],
    [2, ['1A']],
  ])
  expect(new Set(remade.map(({ command }) => command)).size).toBe(1)
})
