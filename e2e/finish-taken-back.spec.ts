import type { Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { demoStation } from '#server/demo-station.ts'
import { cookedFor } from '#tests/support/refill.ts'
import {
  assemblyRests,
  beginning,
  finishButton,
  leadPan,
  makeAndMark,
  order,
  pickUpNumber,
  startButton,
  tapUntil,
} from './support/hands.ts'
import { expect, less, test } from './support/job.ts'

const takeBack = async (assembly: Page, build: string, answer: string): Promise<void> => {
  await assembly.getByRole('button', { name: assemblyEn.takeBack, exact: true }).click()
  await assembly.getByRole('button', { name: beginning(assemblyEn.takeBackOne(build)) }).click()
  await expect(assembly.getByRole('heading', { name: assemblyEn.wasMade(build) })).toBeVisible()
  await assembly.getByRole('button', { name: beginning(answer) }).click()
}

test('a finish taken back: not made it goes back, made it is thrown out', async ({ job }) => {
  const [counterPage, assembly, pans, pickUp] = await Promise.all([
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/pans'),
    job.open('/pick-up'),
  ])
  const { lead } = job
  const before = lead.inPan()
  const cheddar = lead.portions('cheddar', 1)
  await order(counterPage, 'Garden chicken', 1)
  await makeAndMark(assembly, '1A', assemblyRests(assembly))
  await expect(leadPan(pans, 'Cheddar', 39, 0)).toBeVisible()
  const made = lead.inPan()

  await test.step('not made: back to making, its portions in the pans and on tickets', async () => {
    await takeBack(assembly, '1A', assemblyEn.wasMadeNo)
    await expect(finishButton(assembly)).toBeVisible()
    await expect(pickUpNumber(pickUp, 'making', '1A')).toBeVisible()
    await expect(leadPan(pans, 'Cheddar', 39, 1)).toBeVisible()
    await expect.poll(lead.inPan).toEqual(before)
    expect(lead.onTickets().cheddar).toBe(cheddar)
    expect(Object.values(lead.wasted()).every((amount) => amount === 0)).toBe(true)
  })

  await tapUntil(finishButton(assembly), assemblyRests(assembly))
  await expect.poll(lead.inPan).toEqual(made)

  await test.step('made: thrown out, and made again from the pans', async () => {
    await takeBack(assembly, '1A', assemblyEn.wasMadeYes)
    await expect(startButton(assembly, '1A')).toBeVisible()
    await expect(assembly.getByText(assemblyEn.madeAgain(1))).toBeVisible()
    await expect(pickUpNumber(pickUp, 'waiting', '1A')).toBeVisible()
    await expect(leadPan(pans, 'Cheddar', 38, 1)).toBeVisible()
    expect(lead.inPan()).toEqual(made)
    expect(lead.wasted()).toMatchObject({ cheddar, pita: 1, 'yogurt-sauce': 1 })
  })

  await makeAndMark(assembly, '1A', assemblyRests(assembly))
  await expect(leadPan(pans, 'Cheddar', 38, 0)).toBeVisible()

  await test.step('short: the pans can’t fill the remake, and everyone who acts is told', async () => {
    const pan = 'pan-chicken'
    await lead.does({ type: 'correct', pan, amount: 0 })
    await expect(leadPan(pans, 'Herb chicken', 0, 0, pansWords.soldOut)).toBeVisible()
    await takeBack(assembly, '1A', assemblyEn.wasMadeYes)
    await expect(assembly.getByText(assemblyEn.short('1A', 'Herb chicken'))).toBeVisible()
    await expect(startButton(assembly, '1A')).toHaveCount(0)
    await expect(leadPan(pans, 'Herb chicken', 0, 1, pansWords.short(1))).toBeVisible()
    await expect(pans.getByText(pansWords.shortTitle('Herb chicken'))).toBeVisible()
    const more = lead.portions('chicken', 10)
    const cooked = { round: 'more', now: Date.now() - 1_000 }
    const place = { id: pan, component: 'chicken' }
    for (const command of cookedFor(demoStation, 'load', place, more, cooked))
      await lead.does(command)
    await expect(startButton(assembly, '1A')).toBeEnabled()
    await makeAndMark(assembly, '1A', assemblyRests(assembly))
    await expect(leadPan(pans, 'Herb chicken', 9, 0)).toBeVisible()
  })

  expect(lead.inPan().cheddar).toBe(less(before, { cheddar: 3 * cheddar }).cheddar)
  expect(lead.wasted().cheddar).toBe(2 * cheddar)
  const acts = (await job.log()).filter(({ type }) => /^(build|finish)/.test(type))
  expect(acts.map(({ type }) => type)).toEqual([
    'buildStarted',
    'buildFinished',
    'finishTakenBack',
    'buildFinished',
    'buildRemade',
    'buildStarted',
    'buildFinished',
    'buildRemade',
    'buildStarted',
    'buildFinished',
  ])
})
