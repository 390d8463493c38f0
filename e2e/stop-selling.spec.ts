import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import {
  assemblyPan,
  begin,
  beginning,
  counterPan,
  itemRow,
  leadPan,
  saying,
  sendButton,
  tapUntil,
  ticketIsSent,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'

test('the lead stops selling a component and an item, and resumes', async ({ job }) => {
  const [counterPage, pans, assembly] = await Promise.all([
    job.open('/counter'),
    job.open('/pans'),
    job.open('/assembly'),
  ])
  const said = (words: string) => pans.getByRole('status').filter({ hasText: words })
  const button = (words: string) => pans.getByRole('button', { name: words, exact: true })
  await begin(counterPage, 'Garden chicken')
  await expect(counterPan(counterPage, 'Cheddar')).toContainText(counter.pan.with)

  await test.step('a component: the order on the counter goes without, and says so', async () => {
    await leadPan(pans, 'Cheddar', 40, 0).click()
    await button(pansWords.stopSelling).click()
    await expect(pans.getByText(pansWords.stopTitle('Cheddar'))).toBeVisible()
    await tapUntil(button(pansWords.stopSelling), said(pansWords.done.stopped('Cheddar')))
    await expect(leadPan(pans, 'Cheddar', 40, 0, pansWords.notSelling)).toBeVisible()
    await expect(counterPan(counterPage, 'Cheddar')).toHaveText(
      saying('Cheddar', counter.pan.notSelling),
    )
    await expect(itemRow(counterPage, 'Garden chicken')).toContainText(
      counter.rowWithout(['Cheddar']),
    )
    await expect(counterPage.getByText('We aren’t serving cheddar now.')).toBeVisible()
    // The sentence changed under the student's hand, so it is read once more before it is sent.
    await tapUntil(
      counterPage.getByRole('button', { name: beginning(counter.readAgain) }),
      sendButton(counterPage),
    )
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', assemblyEn.no, assemblyEn.because('not-selling', [])),
    )
  })

  await test.step('an item: the counter can’t choose it', async () => {
    await counterPage.getByRole('button', { name: counter.askedNone }).click()
    await expect(itemRow(counterPage, 'Harbor tuna')).toContainText(counter.left(16))
    await pans.getByRole('button', { name: beginning('16 Harbor tuna') }).click()
    await tapUntil(button(pansWords.stopSelling), said(pansWords.done.stopped('Harbor tuna')))
    await expect(itemRow(counterPage, 'Harbor tuna')).toContainText(counter.itemNotSold)
    await itemRow(counterPage, 'Harbor tuna').click()
    await expect(
      counterPage.getByText(counter.cannot.notSelling('Harbor tuna')).last(),
    ).toBeVisible()
    await expect(sendButton(counterPage)).toBeDisabled()
  })

  await test.step('resumed, both are sold again', async () => {
    await leadPan(pans, 'Cheddar', 40, 0, pansWords.notSelling).click()
    await button(pansWords.resumeSelling).click()
    await tapUntil(button(pansWords.resumeSelling), said(pansWords.done.resumed('Cheddar')))
    await expect(leadPan(pans, 'Cheddar', 40, 0)).toBeVisible()
    await pans.getByRole('button', { name: /Harbor tuna/ }).click()
    await tapUntil(button(pansWords.resumeSelling), said(pansWords.done.resumed('Harbor tuna')))
    await itemRow(counterPage, 'Harbor tuna').click()
    await expect(counterPage.getByText('One harbor tuna with pita, as it comes.')).toBeVisible()
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 2)
    await expect(leadPan(pans, 'Cheddar', 39, 1)).toBeVisible()
  })

  const acts = (await job.log()).filter(({ type }) => type.startsWith('selling'))
  expect(acts).toMatchObject([
    { type: 'sellingStopped', what: 'component', id: 'cheddar' },
    { type: 'sellingStopped', what: 'item', id: 'harbor-tuna' },
    { type: 'sellingResumed', what: 'component', id: 'cheddar' },
    { type: 'sellingResumed', what: 'item', id: 'harbor-tuna' },
  ])
})
