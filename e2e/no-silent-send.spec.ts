import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { turnedEn } from '#lib/rooms/orders/words/turned-en.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { RefusalCode } from '#lib/service/refusal.ts'
import { findBuild } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import {
  begin,
  beginning,
  counterPan,
  itemRow,
  readAloud,
  sendButton,
  tapUntil,
  tellNeed,
  ticketIsSent,
  turnAndAgree,
} from './support/hands.ts'
import { expect, type Job, test } from './support/job.ts'

const SMALL = { viewport: { width: 1024, height: 768 } }

const APART: readonly Need[] = [{ code: 'peanut', handling: 'keep-apart', reason: null }]
const TAKEN = { placement: 'in', portions: 1, because: 'asked' } as const
const NOT_IN = { placement: 'no', portions: 0, because: 'asked' } as const
const LEFT_OUT = { placement: 'no', portions: 0, because: 'need' } as const

/** A garden chicken that fits who keeps peanuts apart. */
const FITS: BuildChoice = {
  item: 'garden-chicken',
  base: 'pita',
  parts: {
    chicken: TAKEN,
    peppers: TAKEN,
    slaw: TAKEN,
    cheddar: TAKEN,
    almonds: NOT_IN,
    'yogurt-sauce': LEFT_OUT,
  },
  asked: 'needs',
  needs: APART,
  agreed: true,
  caution: null,
}

const isRefused = async (
  { lead }: Job,
  build: BuildChoice,
  code: RefusalCode,
  readBack = true,
): Promise<void> => {
  expect(
    await lead.answerTo({ type: 'send', builds: [build], paid: false, readBack }),
  ).toMatchObject({
    answer: 'refused',
    refusal: { code },
  })
}

test('no silent send: nothing goes without an answer, a read-back and an agreement', async ({
  job,
}) => {
  const [counterPage, assembly] = await Promise.all([
    job.open('/counter', SMALL),
    job.open('/assembly', SMALL),
  ])
  const startOver = counterPage.getByRole('button', { name: counter.startOver, exact: true })
  const turn = counterPage.getByRole('button', { name: beginning(counter.turn) })
  const readAgain = counterPage.getByRole('button', { name: beginning(counter.readAgain) })
  const menu = counterPage.getByRole('list', { name: counter.menu, exact: true })
  const garden = () => itemRow(counterPage, 'Garden chicken')

  await test.step('silence isn’t an answer: no menu, and nothing to send', async () => {
    await expect(counterPage.getByText(counter.question)).toBeVisible()
    await expect(menu).toHaveCount(0)
    await expect(sendButton(counterPage)).toHaveCount(0)
    const silent = { ...FITS, needs: [], agreed: false }
    await isRefused(job, silent, 'not-asked')
    await isRefused(job, { ...FITS, asked: 'none' }, 'not-asked')
  })

  await test.step('nothing goes that wasn’t read back', async () => {
    await counterPage.getByRole('button', { name: counter.askedNone }).click()
    await expect(menu).toBeVisible()
    await expect(sendButton(counterPage)).toBeDisabled()
    await garden().click()
    await expect(counterPage.getByText('One garden chicken with pita, as it comes.')).toBeVisible()
    await expect(sendButton(counterPage)).toBeEnabled()
    await job.lead.does({ type: 'stopSelling', what: 'component', id: 'slaw' })
    await expect(counterPage.getByText('We aren’t serving sesame slaw now.')).toBeVisible()
    await expect(sendButton(counterPage)).toHaveCount(0)
    await tapUntil(readAgain, sendButton(counterPage))
    await startOver.click()
    const plain = { ...FITS, asked: 'none', needs: [], agreed: false } as const
    await isRefused(job, plain, 'not-read-back', false)
    await job.lead.does({ type: 'resumeSelling', what: 'component', id: 'slaw' })
  })

  await test.step('not sure counts as unknown, and calls the person in charge', async () => {
    await counterPage.getByRole('button', { name: beginning(counter.notSure) }).click()
    await expect(counterPage.getByRole('heading', { name: counter.stopTitle })).toBeVisible()
    await expect(menu).toHaveCount(0)
    await expect(sendButton(counterPage)).toHaveCount(0)
    await isRefused(job, { ...FITS, asked: 'not-sure', needs: [], agreed: false }, 'not-sure')
    await isRefused(job, { ...FITS, asked: 'not-sure' }, 'not-sure')
    await startOver.click()
  })

  await test.step('nothing is kept apart while nobody is in charge', async () => {
    await counterPage.getByRole('button', { name: counter.needTile('peanut'), exact: true }).click()
    await expect(counterPage.getByText(counter.noOneInCharge)).toBeVisible()
    await counterPage.getByRole('button', { name: counter.saidNeeds }).click()
    await garden().click()
    await expect(counterPage.getByRole('button', { name: beginning(counter.signOn) })).toBeVisible()
    await expect(sendButton(counterPage)).toHaveCount(0)
    await expect(turn).toHaveCount(0)
    await isRefused(job, FITS, 'no-one-in-charge')
  })

  await test.step('the guest reads the turned screen; going back isn’t agreeing', async () => {
    await job.signOn()
    await expect(turn).toBeVisible()
    await expect(sendButton(counterPage)).toHaveCount(0)
    await isRefused(job, { ...FITS, agreed: false }, 'not-agreed')
    const agree = counterPage.getByRole('button', { name: turnedEn.agree, exact: true })
    await tapUntil(turn, agree)
    for (const words of [
      turnedEn.need('peanut', 'keep-apart'),
      turnedEn.food('Garden chicken'),
      turnedEn.shared,
    ])
      await expect(counterPage.getByText(words, { exact: true })).toBeVisible()
    await tapUntil(counterPage.getByRole('button', { name: turnedEn.notRight, exact: true }), turn)
    await expect(sendButton(counterPage)).toHaveCount(0)
  })

  await test.step('a change after agreeing clears it, on the pans and in the needs', async () => {
    await turnAndAgree(counterPage)
    await counterPan(counterPage, 'Roast peppers').click()
    await expect(counterPage.getByText('No roast peppers, as you asked.')).toBeVisible()
    await expect(turn).toBeVisible()
    await expect(sendButton(counterPage)).toHaveCount(0)
    await turnAndAgree(counterPage)
    await counterPage.getByRole('button', { name: /Peanut, keep apart/ }).click()
    await tellNeed(counterPage, 'sesame')
    await expect(turn).toHaveCount(0)
    await expect(sendButton(counterPage)).toHaveCount(0)
    await tapUntil(readAgain, turn)
    await expect(counterPage.getByText(/can’t promise that no peanut or sesame/)).toBeInViewport()
    await expect(counterPage.getByText('$6.50', { exact: true })).toBeInViewport({ ratio: 1 })
    await expect(sendButton(counterPage)).toHaveCount(0)
    await startOver.click()
    expect(job.lead.state().nextTicket).toBe(1)
  })

  await test.step('asked, read back and agreed, it goes; assembly gets what was agreed to', async () => {
    await tellNeed(counterPage, 'peanut')
    await garden().click()
    await turnAndAgree(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await expect(assembly.getByText(assemblyEn.keepApart(['peanut'])).first()).toBeVisible()
    await readAloud(assembly, '1A')
    expect(findBuild(job.lead.state(), 1, 'A')?.choice).toEqual(FITS)
    await begin(counterPage, 'Garden chicken')
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 2)
  })

  await test.step('left out only: what a scoop brings in is said again, and goes nowhere unsaid', async () => {
    const noted = 'Left out, not kept apart: a little milk can get in.'
    await tellNeed(counterPage, 'milk', 'leave-out')
    await garden().click()
    await counterPan(counterPage, 'Sesame slaw').click()
    await expect(sendButton(counterPage)).toBeEnabled()
    await expect(counterPage.getByText(noted)).toHaveCount(0)
    const unsaid: BuildChoice = {
      ...FITS,
      parts: { ...FITS.parts, slaw: NOT_IN, cheddar: LEFT_OUT },
      needs: [{ code: 'milk', handling: 'leave-out', reason: null }],
      agreed: false,
    }
    await job.lead.does({ type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' })
    await expect(counterPage.locator('ins').filter({ hasText: noted })).toBeInViewport()
    await expect(sendButton(counterPage)).toHaveCount(0)
    expect(
      await job.lead.answerTo({
        type: 'send',
        builds: [unsaid],
        paid: false,
        readBack: true,
        said: [[]],
      }),
    ).toMatchObject({ answer: 'refused', refusal: { code: 'said-changed', letter: 'A' } })
    await counterPan(counterPage, 'Roast peppers').click()
    await expect(sendButton(counterPage)).toHaveCount(0)
    await tapUntil(readAgain, sendButton(counterPage))
    await expect(counterPage.locator('ins')).toHaveCount(0)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 3)
  })

  const sent = (await job.log()).filter(({ type }) => type === 'ticketSent')
  expect(sent).toMatchObject([
    { builds: [{ choice: { asked: 'needs', needs: APART, agreed: true } }] },
    { builds: [{ choice: { asked: 'none', needs: [], agreed: false } }] },
    { builds: [{ choice: { asked: 'needs', needs: [{ handling: 'leave-out' }] } }] },
  ])
})
