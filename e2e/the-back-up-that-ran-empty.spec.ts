import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import {
  assemblyRests,
  beginning,
  chooseTicket,
  counterPan,
  finishButton,
  startButton,
  tapUntil,
  turnAndAgree,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { answerStop, readAndStart, seeStop, stopOf } from './support/need-hands.ts'
import { orderMilkApart, standsBehind } from './support/slaw-behind.ts'

test('the back-up that ran empty: its guest’s build is held, and never made off the line', async ({
  job,
}) => {
  const { lead } = job
  const [counterPage, assembly, pans] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/pans'),
  ])
  await job.signOn()
  await standsBehind(lead, 1)
  await orderMilkApart(counterPage, 1)
  await lead.does({ type: 'soilPan', pan: 'pan-slaw', by: 'cheddar' })

  await test.step('it is being made out of the back-up pan when its guest changes it', async () => {
    await readAndStart(assembly, '1A')
    await chooseTicket(counterPage, '1A')
    await counterPage.getByRole('button', { name: counter.changeOf('1A'), exact: true }).click()
    await counterPan(counterPage, 'Roast peppers').click()
    const change = counterPage.getByRole('button', { name: beginning(counter.sendChange) })
    await turnAndAgree(counterPage, change)
    await change.click()
    await expect(stopOf(assembly)).toContainText('1-\u2060A')
  })

  await test.step('food was in it: the back-up is empty, and every screen says that it is held', async () => {
    const wrongScoop = { pan: 'Sesame slaw', by: 'Cheddar', lent: false, over: null }
    const why = sayWhyHeld({ reason: 'contact', scoops: [wrongScoop] })
    await answerStop(assembly, true, stopOf(assembly).getByText(why))
    const wasted = lead.wasted()
    await seeStop(assembly, '1A', assembly.getByText(assemblyEn.heldThen))
    expect(lead.wasted()).toEqual(wasted)
    expect(lead.state().backups.slaw).toBeUndefined()
    expect(findBuild(lead.state(), 1, 'A')).toMatchObject({
      state: 'waiting',
      hold: { reason: 'contact' },
    })
    await expect(startButton(assembly, '1A')).toHaveCount(0)
    await expect(pans.getByText(firstWords.holdTitle(['1A']), { exact: true })).toBeVisible()
    await expect(counterPage.getByText(needsEn.heldNow(['1A']))).toBeVisible()
    expect(
      await lead.answerTo({ type: 'start', ticket: 1, letter: 'A', read: true }),
    ).toMatchObject({ answer: 'refused', refusal: { code: 'build-held', reason: 'contact' } })
  })

  await test.step('filled again the hold is lifted by itself, and it is made', async () => {
    const line = lead.inPan().slaw
    await standsBehind(lead, 3)
    await expect(counterPage.getByText(needsEn.heldNow(['1A']))).toHaveCount(0)
    await readAndStart(assembly, '1A')
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
    expect(lead.inPan().slaw).toBe(line)
    expect(findBuild(lead.state(), 1, 'A')).toMatchObject({ state: 'made', hold: null })
  })

  const log = await job.log()
  expect(
    log.flatMap(({ type }) =>
      ['stopAcknowledged', 'buildHeld', 'holdLifted', 'buildFinished'].includes(type) ? [type] : [],
    ),
  ).toEqual(['stopAcknowledged', 'buildHeld', 'stopAcknowledged', 'holdLifted', 'buildFinished'])
})
