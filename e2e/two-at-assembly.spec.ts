import type { Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { screensEn } from '#lib/rooms/making/words/screens-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { stands } from './support/garden-chicken.ts'
import {
  assemblyRests,
  beginning,
  chooseTicket,
  finishButton,
  start,
  startButton,
  tapUntil,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'

/** A student says once where a screen stands. */
const standAt = async (page: Page, side: 'left' | 'right'): Promise<void> => {
  const way = page.getByRole('button', { name: screensEn.screen(side), exact: true })
  await tapUntil(page.getByRole('button', { name: /^This screen is / }), way)
  await way.click()
  await expect(
    page.getByRole('button', { name: screensEn.thisIs(side), exact: true }),
  ).toBeVisible()
}

test('two at assembly: each makes its own, takes over only by asking, and no stop is lost', async ({
  job,
}) => {
  const [counterPage, left, right] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/assembly'),
  ])
  const { lead } = job
  const state = (ticket: number) => findBuild(lead.state(), ticket, 'A')
  await standAt(left, 'left')
  await standAt(right, 'right')
  for (const ticket of [1, 2, 3]) await stands(lead, ticket, null, [])

  await test.step('one starts the oldest; the other is offered the next, and sees where it is made', async () => {
    await start(left, '1A')
    await expect(startButton(right, '2A')).toBeVisible()
    await expect(
      right.getByRole('button', { name: `${assemblyEn.look('1A')}, ${screensEn.madeAt('left')}` }),
    ).toBeVisible()
    await start(right, '2A')
    expect(state(1)).toMatchObject({ state: 'making', screen: 'left' })
    expect(state(2)).toMatchObject({ state: 'making', screen: 'right' })
    await expect(left.getByRole('heading', { level: 1 })).toContainText('1-')
  })

  await test.step('the name is kept on the device', async () => {
    await left.reload()
    await expect(
      left.getByRole('button', { name: screensEn.thisIs('left'), exact: true }),
    ).toBeVisible()
    await expect(finishButton(left)).toBeVisible()
  })

  await test.step('the server refuses a second start, and a finish from elsewhere', async () => {
    const build = { ticket: 1, letter: 'A' }
    const elsewhere = { answer: 'refused', refusal: { code: 'made-elsewhere', screen: 'left' } }
    expect(await lead.answerTo({ type: 'start', ...build, screen: 'right' })).toMatchObject(
      elsewhere,
    )
    expect(await lead.answerTo({ type: 'finish', ...build, screen: 'right' })).toMatchObject(
      elsewhere,
    )
  })

  await test.step('a stop stands where the build is made; the other is told, and can answer it', async () => {
    await chooseTicket(counterPage, '2A')
    await counterPage.getByRole('button', { name: counter.cancelAsk('2A'), exact: true }).click()
    await counterPage.getByRole('button', { name: beginning(counter.cancelYes('2A')) }).click()
    await expect(right.getByRole('alert').filter({ hasText: assemblyEn.stop })).toBeVisible()
    await expect(finishButton(left)).toBeVisible()
    const here = left.getByRole('button', { name: beginning(screensEn.answerHere) })
    await expect(left.getByText(screensEn.stopElsewhere('2A', 'right'))).toBeVisible()
    const stop = left.getByRole('alert').filter({ hasText: assemblyEn.stop })
    await tapUntil(here, stop)
    await expect(stop).toContainText(screensEn.wasMadeAt('right'))
    await stop.getByRole('button', { name: screensEn.leaveTo('right'), exact: true }).click()
    await expect(finishButton(left)).toBeVisible()
    expect(state(2)).toMatchObject({ state: 'making', stop: { reason: 'cancel' } })
    await tapUntil(here, stop)
    await left
      .getByRole('button', { name: beginning(assemblyEn.foodNo) })
      .last()
      .click()
    await expect.poll(() => state(2)?.state).toBe('cancelled')
    await expect(startButton(right, '3A')).toBeVisible()
    await expect(finishButton(left)).toBeVisible()
  })

  await test.step('a screen that died: what it made is taken over by one confirm, and told on both', async () => {
    const ask = right.getByText(screensEn.takeOverAsk('1A', 'left'))
    const look = right.getByRole('button', { name: beginning(assemblyEn.look('1A')) })
    await tapUntil(look, ask)
    await right.getByRole('button', { name: screensEn.takeOverNo('left'), exact: true }).click()
    await expect(startButton(right, '3A')).toBeVisible()
    await start(right, '3A')
    expect(state(1)).toMatchObject({ screen: 'left' })
    await tapUntil(look, ask)
    await right.keyboard.press('Enter')
    expect(state(1)).toMatchObject({ screen: 'left' })
    await right.getByRole('button', { name: beginning(screensEn.takeOverYes) }).click()
    await expect(right.getByText(screensEn.takenOverFrom('left'), { exact: true })).toBeVisible()
    await expect(left.getByText(screensEn.takenAway('1A', 'right'))).toBeVisible()
    await expect(finishButton(left)).toHaveCount(0)
    expect(state(1)).toMatchObject({ state: 'making', screen: 'right', tookFrom: 'left' })
  })

  await test.step('it is finished there, and then the other of its own', async () => {
    await tapUntil(
      finishButton(right),
      right.getByRole('heading', { level: 1 }).filter({ hasText: '3-' }),
    )
    await tapUntil(finishButton(right), assemblyRests(right))
    expect(state(1)).toMatchObject({ state: 'made', screen: 'right' })
    expect(state(3)).toMatchObject({ state: 'made' })
    await expect(left.getByText(screensEn.takenAway('1A', 'right'))).toHaveCount(0)
  })
})
