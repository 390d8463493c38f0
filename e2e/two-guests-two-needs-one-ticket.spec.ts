import type { Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { overTheLine } from '#lib/rooms/orders/words/over-the-line-en.ts'
import { turnedEn } from '#lib/rooms/orders/words/turned-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import {
  assemblyPan,
  assemblyRests,
  beginning,
  counterPan,
  finishButton,
  givePanel,
  guestAnswered,
  itemRow,
  pick,
  saying,
  sendButton,
  shelfCard,
  start,
  startButton,
  tapUntil,
  ticketIsSent,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import {
  askItsGuest,
  giveAlone,
  needTile,
  readAndStart,
  readBackOf,
  spoken,
  whatFits,
} from './support/need-hands.ts'

const saidNeeds = (page: Page) =>
  page.getByRole('button', { name: counter.saidNeeds, exact: true }).click()

const tab = (page: Page, letter: string, item: string | null) =>
  page
    .getByRole('group', { name: counter.builds, exact: true })
    .getByRole('button', { name: counter.build(letter, item), exact: true })

test('two guests, two needs, one ticket: each build keeps its own', async ({ job }) => {
  const [counterPage, assembly, handOver] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/hand-over'),
  ])
  await job.signOn()
  const { lead } = job

  await test.step('A keeps sesame apart: pita warns of it, so it comes with rice', async () => {
    await needTile(counterPage, 'sesame').click()
    await expect(whatFits(counterPage, 'Garden chicken')).toHaveText(
      saying(
        'Garden chicken',
        counter.rowFitsWith(
          [
            counter.rowBase('Brown rice'),
            counter.rowWithout(['Roast peppers', 'Sesame slaw', 'Lemon yogurt sauce']),
          ].join(', '),
        ),
        counter.left(24),
      ),
    )
    await saidNeeds(counterPage)
    await itemRow(counterPage, 'Garden chicken').click()
    await expect(counterPan(counterPage, 'Sesame slaw')).toHaveText(
      saying('Sesame', 'slaw', counter.pan.no, overTheLine.contains('sesame')),
    )
    const withRice = spoken(lead.state(), [
      { say: 'item', item: 'garden-chicken', base: 'rice', asItComes: false },
      {
        say: 'not-this-base',
        wanted: 'pita',
        because: {
          component: 'Pita',
          isPlural: false,
          need: 'sesame',
          handling: 'keep-apart',
          why: 'may-contain',
          ingredient: null,
          contact: null,
        },
      },
      {
        say: 'need',
        components: ['peppers'],
        need: 'sesame',
        why: 'contact',
        touches: 'pita',
      },
      { say: 'need', components: ['slaw'], need: 'sesame', why: 'contains', touches: null },
      {
        say: 'need',
        components: ['yogurt-sauce'],
        need: 'sesame',
        why: 'contact',
        touches: 'slaw',
      },
      { say: 'backup', components: ['rice', 'chicken', 'cheddar'] },
      { say: 'keep-apart', codes: ['sesame'] },
      { say: 'price', cents: 650 },
    ])
    await expect(readBackOf(counterPage)).toHaveText(withRice)
    expect(withRice).toContain('Not with pita, since it may contain sesame.')
  })

  await test.step('A may still choose pita: that is a caution, until the guest chooses rice', async () => {
    await counterPan(counterPage, 'Pita').click()
    const call = counterPage.getByRole('button', { name: beginning(counter.callInCharge) })
    await expect(call).toBeVisible()
    await expect(readBackOf(counterPage)).toContainText(
      'The label of pita warns: may contain sesame',
    )
    await expect(sendButton(counterPage)).toHaveCount(0)
    await counterPan(counterPage, 'Brown rice').click()
    await expect(call).toHaveCount(0)
    await expect(readBackOf(counterPage)).toContainText('One garden chicken with brown rice.')
  })

  await test.step('B is asked anew: vegan, left out; A’s need isn’t theirs', async () => {
    await counterPage.getByRole('button', { name: counter.another, exact: true }).click()
    await expect(counterPage.getByText(counter.askAgainHint('B'))).toBeVisible()
    await expect(needTile(counterPage, 'sesame')).toHaveAttribute('aria-pressed', 'false')
    await needTile(counterPage, 'vegan').click()
    await expect(whatFits(counterPage, 'Garden chicken')).toContainText(
      counter.rowDoesNot('herb chicken'),
    )
    await expect(whatFits(counterPage, 'Harbor tuna')).toContainText(
      counter.rowDoesNot('tuna salad'),
    )
    await expect(whatFits(counterPage, 'Bean and pepper')).toContainText(
      counter.rowFitsWith(counter.rowWithout(['Cheddar', 'Lemon yogurt sauce'])),
    )
    await saidNeeds(counterPage)
    await itemRow(counterPage, 'Bean and pepper').click()
    await expect(counterPan(counterPage, 'Sesame slaw')).toContainText(counter.pan.taken('in', 1))
    await expect(counterPan(counterPage, 'Cheddar')).toHaveText(
      saying('Cheddar', counter.pan.no, overTheLine.contains('vegan')),
    )
    await expect(readBackOf(counterPage)).not.toContainText('sesame, ')
    await tab(counterPage, 'A', 'Garden chicken').click()
    await expect(
      counterPage.getByRole('button', { name: beginning(counter.need('sesame', 'keep-apart')) }),
    ).toBeVisible()
    await tab(counterPage, 'B', 'Bean and pepper').click()
    await expect(
      counterPage.getByRole('button', { name: beginning(counter.need('vegan', 'leave-out')) }),
    ).toBeVisible()
  })

  await test.step('only A’s guest agrees on the turned screen; then one ticket is sent', async () => {
    await expect(sendButton(counterPage)).toHaveCount(0)
    const agree = counterPage.getByRole('button', { name: turnedEn.agree, exact: true })
    await tapUntil(counterPage.getByRole('button', { name: beginning(counter.turnTo('A')) }), agree)
    const turned = counterPage.getByRole('region', { name: turnedEn.title })
    await expect(turned).toContainText(turnedEn.need('sesame', 'keep-apart'))
    await expect(turned).not.toContainText(/vegan/)
    await tapUntil(agree, sendButton(counterPage))
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await expect
      .poll(() => findBuild(lead.state(), 1, 'B')?.choice.needs)
      .toEqual([{ code: 'vegan', handling: 'leave-out', reason: null }])
    expect(findBuild(lead.state(), 1, 'A')?.choice).toMatchObject({
      base: 'rice',
      agreed: true,
      needs: [{ code: 'sesame', handling: 'keep-apart' }],
    })
    expect(findBuild(lead.state(), 1, 'B')?.choice).toMatchObject({ base: 'rice', agreed: false })
  })

  await test.step('assembly keeps A apart: back-up pans, the sesame pans wide and shut', async () => {
    await expect(assembly.getByRole('heading', { name: assemblyEn.readAloud })).toBeVisible()
    await expect(assembly.locator('main')).toContainText(assemblyEn.keepApart(['sesame']))
    await readAndStart(assembly, '1A')
    for (const short of ['Brown rice', 'Herb chicken', 'Cheddar'])
      await expect(assemblyPan(assembly, short)).toContainText(assemblyEn.backUp)
    await expect(assemblyPan(assembly, 'Sesame slaw')).toHaveText(
      saying('Sesame', 'slaw', assemblyEn.no, assemblyEn.lidOn, 'SESAME'),
    )
    await expect(assemblyPan(assembly, 'Pita')).toContainText(assemblyEn.lidOn)
    await expect(assemblyPan(assembly, 'Pita')).toContainText(/may\shave SESAME/)
    await expect(assembly.getByText('KEEP FROM SESAME')).toBeVisible()
    await expect(assembly.locator('main')).not.toContainText(/VEGAN/)
    await tapUntil(finishButton(assembly), startButton(assembly, '1B'))
  })

  await test.step('B needs no reading: its pans say no, and the sesame slaw is in it', async () => {
    await expect(assembly.getByRole('heading', { name: assemblyEn.readAloud })).toHaveCount(0)
    await expect(assembly.locator('main')).not.toContainText('keep apart')
    await expect(assembly.getByText(assemblyEn.leaveOut(['vegan'])).first()).toBeVisible()
    await start(assembly, '1B')
    await expect(assemblyPan(assembly, 'Cheddar')).toHaveText(
      saying('Cheddar', assemblyEn.no, assemblyEn.because('need', ['vegan'])),
    )
    for (const short of ['Sesame slaw', 'Brown rice']) {
      await expect(assemblyPan(assembly, short)).not.toContainText(assemblyEn.lidOn)
      await expect(assemblyPan(assembly, short)).not.toContainText(assemblyEn.backUp)
    }
    await expect(assembly.locator('main')).not.toContainText('KEEP FROM')
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
  })

  await test.step('at hand-over A goes alone after the question; B like any other', async () => {
    await expect(shelfCard(handOver, '1A')).toContainText(handOverEn.keptApart)
    await pick(handOver, '1B')
    await expect(givePanel(handOver, '1B')).toContainText('VEGAN')
    await expect(shelfCard(handOver, '1A')).not.toContainText(/sesame/i)
    await askItsGuest(handOver, '1A')
    await guestAnswered(handOver)
    await expect(handOver.getByText('KEEP FROM SESAME', { exact: true })).toBeVisible()
    await expect(handOver.locator('main')).not.toContainText(/vegan/i)
    await expect(shelfCard(handOver, '1B')).toHaveText('1-\u2060B')
    await expect(shelfCard(handOver, '1B').getByRole('button')).toBeDisabled()
    await giveAlone(handOver, '1A')
    // Its ticket is on the list of what isn't paid: nobody asks again.
    await pick(handOver, '1B')
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.handOver('1B'), exact: true }),
      handOver.getByText(handOverEn.nothing),
    )
    await expect.poll(() => lead.state().handedOver).toBe(2)
  })

  const log = await job.log()
  expect(log.filter(({ type }) => type === 'ticketSent')).toMatchObject([
    {
      ticket: 1,
      builds: [
        { letter: 'A', choice: { item: 'garden-chicken', base: 'rice' } },
        {
          letter: 'B',
          choice: {
            item: 'bean-and-pepper',
            parts: { slaw: { placement: 'in' }, cheddar: { placement: 'no' } },
          },
        },
      ],
    },
  ])
})
