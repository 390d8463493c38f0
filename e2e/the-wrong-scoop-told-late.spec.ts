import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import {
  assemblyRests,
  finishButton,
  giveOut,
  guestAnswered,
  itemRow,
  order,
  saying,
  sendButton,
  start,
  tapUntil,
  tellNeed,
  ticketIsSent,
  turnAndAgree,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { askItsGuest, giveAlone, readAndStart } from './support/need-hands.ts'

test('the wrong scoop told late: who was handed food of that pan and keeps it apart is found', async ({
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

  await test.step('one who keeps milk apart and one who keeps nothing are handed peppers', async () => {
    await tellNeed(counterPage, 'milk')
    await itemRow(counterPage, 'Bean and pepper').click()
    await turnAndAgree(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await readAndStart(assembly, '1A')
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
    await askItsGuest(handOver, '1A')
    await guestAnswered(handOver)
    await giveAlone(handOver, '1A')
    await order(counterPage, 'Bean and pepper', 2)
    await start(assembly, '2A')
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
    await giveOut(handOver, '2A', handOver.getByText(handOverEn.isHandedOver('2A')).first())
    expect(lead.state().toFind).toEqual({})
  })

  await test.step('then somebody says that the cheddar scoop was in the peppers', async () => {
    await lead.does({ type: 'soilPan', pan: 'pan-peppers', by: 'cheddar' })
    expect(Object.keys(lead.state().toFind)).toEqual(['1A'])
    await expect(handOver.getByText(handOverEn.toFind, { exact: true }).first()).toBeVisible()
    await expect(
      handOver.getByRole('button', { name: handOverEn.foundOf('1A'), exact: true }),
    ).toBeVisible()
    await expect(pans.getByText(/1-\u2060A/).first()).toBeVisible()
    expect(await lead.answerTo({ type: 'close' })).toMatchObject({
      answer: 'refused',
      refusal: { code: 'guests-to-find' },
    })
  })

  await test.step('the guest is found and told: answered once, and asked no more', async () => {
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.foundOf('1A'), exact: true }),
      handOver.getByText(handOverEn.findQuestion('1A')),
    )
    await tapUntil(
      handOver.getByRole('button', {
        name: saying(handOverEn.foundTold, handOverEn.foundToldThen),
      }),
      handOver.getByText(handOverEn.isFoundTold('1A')),
    )
    await lead.does({ type: 'soilPan', pan: 'pan-almonds', by: 'cheddar' })
    expect(lead.state().toFind).toEqual({})
    expect(findBuild(lead.state(), 1, 'A')).toMatchObject({ state: 'handed-over', hold: null })
  })

  const log = await job.log()
  const held = log.filter(({ type }) => type === 'buildHeld')
  expect(held).toMatchObject([{ ticket: 1, letter: 'A', reason: 'contact' }])
})
