import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import {
  assemblyRests,
  finishButton,
  guestAnswered,
  startButton,
  tapUntil,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { askItsGuest, giveAlone, readAndStart, stopOf } from './support/need-hands.ts'
import { orderMilkApart, standsBehind } from './support/slaw-behind.ts'

const MINUTE = 60_000

test.use({
  clock: { beginsAt: Date.parse('2026-11-25T16:46:00Z'), passes: [{ slept: 20 * MINUTE }] },
})

test('the laptop that slept: who counts on a back-up pan is held until the clock is confirmed', async ({
  job,
}) => {
  const { lead } = job
  const [counterPage, assembly, handOver, pans] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/hand-over'),
    job.open('/pans'),
  ])
  await job.signOn()
  await standsBehind(lead, 3)
  await lead.does({ type: 'soilPan', pan: 'pan-slaw', by: 'cheddar' })
  await orderMilkApart(counterPage, 1)
  await readAndStart(assembly, '1A')
  await tapUntil(finishButton(assembly), assemblyRests(assembly))
  await orderMilkApart(counterPage, 2)
  await expect(startButton(assembly, '2A')).toHaveCount(0)

  await test.step('the lid was shut for twenty minutes: what waits is held, what is made isn’t', async () => {
    await job.hoursPass()
    await expect(pans.getByText(pansWords.clockTitle, { exact: true }).first()).toBeVisible()
    await expect(stopOf(assembly)).toContainText('2-\u2060A')
    await expect(startButton(assembly, '2A')).toHaveCount(0)
    await expect(counterPage.getByText(needsEn.heldNow(['2A']))).toBeVisible()
    expect(findBuild(lead.state(), 1, 'A')?.hold).toBeNull()
    expect(findBuild(lead.state(), 2, 'A')?.hold?.reason).toBe('contact')
    expect(
      await lead.answerTo({ type: 'start', ticket: 2, letter: 'A', read: true }),
    ).toMatchObject({ answer: 'refused', refusal: { code: 'build-held' } })
  })

  await test.step('what was made before goes to its guest', async () => {
    await askItsGuest(handOver, '1A')
    await guestAnswered(handOver)
    await giveAlone(handOver, '1A')
    await expect(handOver.getByText(handOverEn.isHandedOver('1A')).first()).toBeVisible()
  })

  await test.step('the lead says that the clock is right: the hold is lifted, and it is made', async () => {
    await tapUntil(
      pans.getByRole('button', { name: pansWords.clockConfirm, exact: true }),
      assembly.getByRole('button', { name: assemblyEn.wasRead, exact: true }),
    )
    await expect(counterPage.getByText(needsEn.heldNow(['2A']))).toHaveCount(0)
    await readAndStart(assembly, '2A')
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
    expect(findBuild(lead.state(), 2, 'A')).toMatchObject({ state: 'made', hold: null })
  })

  const log = await job.log()
  expect(
    log.flatMap(({ type, ticket, command }) =>
      ['clockJumped', 'buildHeld', 'clockConfirmed', 'holdLifted'].includes(type)
        ? [[type, ticket ?? null, command === null]]
        : [],
    ),
  ).toEqual([
    ['clockJumped', null, true],
    ['buildHeld', 2, true],
    ['clockConfirmed', null, false],
    ['holdLifted', 2, false],
  ])
})
