import type { Page } from '@playwright/test'
import { inChargeEn } from '#lib/rooms/care/words/in-charge-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import type { Statement } from '#lib/rooms/orders/facts/statement.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { overTheLine } from '#lib/rooms/orders/words/over-the-line-en.ts'
import { turnedEn } from '#lib/rooms/orders/words/turned-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { type BuildChoice, usualChoice } from '#lib/service/events/build-choice.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { itemOf } from '#lib/station/find.ts'
import { inChargeWords } from '#lib/words/house/in-charge-card-en.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import { sayNotTaken } from '#lib/words/refusals-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import {
  assemblyPan,
  assemblyRests,
  beginning,
  counterPan,
  finishButton,
  guestAnswered,
  itemRow,
  sendButton,
  shelfCard,
  tapUntil,
  ticketIsSent,
  turnAndAgree,
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

const GUESSED = 'I am the lead today'

const CAUTION =
  'Tuna salad shares tools or a place on the line with toasted almonds, which contain almond'

/** A guest who keeps away from almonds, and from no other nut, orders the tuna. */
const tunaWithoutAlmonds = async (page: Page): Promise<void> => {
  await needTile(page, 'tree-nuts').click()
  await page.getByRole('button', { name: counter.detail, exact: true }).click()
  const kinds = page.getByRole('group', { name: needsEn.kinds, exact: true })
  await kinds.getByRole('button', { name: counter.needTile('almond'), exact: true }).click()
  await page.getByRole('button', { name: needsEn.done, exact: true }).click()
  await expect(whatFits(page, 'Harbor tuna')).toContainText(
    counter.rowAsk('Tuna salad touches toasted almonds'),
  )
}

const callInCharge = (page: Page) =>
  page.getByRole('button', { name: beginning(counter.callInCharge) })

const prove = async (page: Page, passphrase: string, words: string): Promise<void> => {
  await page.getByLabel(inChargeEn.passphrase).fill(passphrase)
  await page.getByRole('button', { name: words, exact: true }).click()
}

test.use({ proved: true })

test('the person in charge accepts a caution; a student can’t', async ({ job }) => {
  const [start, counterPage, assembly, handOver] = await Promise.all([
    job.open('/'),
    job.open('/counter'),
    job.open('/assembly'),
    job.open('/hand-over'),
  ])
  const { lead } = job
  await expect(start.getByText(inChargeWords.off, { exact: true })).toBeVisible()

  const readBack = (...accepted: readonly Statement[]): string =>
    spoken(lead.state(), [
      { say: 'item', item: 'harbor-tuna', base: 'pita', asItComes: true },
      { say: 'backup', components: ['slaw', 'cheddar'] },
      {
        say: 'caution',
        told: {
          component: 'Tuna salad',
          isPlural: false,
          need: 'almond',
          handling: 'keep-apart',
          why: 'contact',
          ingredient: null,
          contact: { component: 'Toasted almonds', isPlural: true, by: null, declared: 'contains' },
        },
      },
      ...accepted,
      { say: 'keep-apart', codes: ['almond'] },
      { say: 'price', cents: 625 },
    ])

  await test.step('nobody is signed on: nothing can be kept apart, and the counter says so', async () => {
    await tunaWithoutAlmonds(counterPage)
    await expect(counterPage.getByText(counter.noOneInCharge)).toBeVisible()
    await counterPage.getByRole('button', { name: counter.saidNeeds, exact: true }).click()
    await itemRow(counterPage, 'Garden chicken').click()
    await expect(sendButton(counterPage)).toHaveCount(0)
    await expect(
      counterPage.getByRole('button', { name: beginning(counter.signOn) }),
    ).toContainText(counter.signOnWhy)
    await itemRow(counterPage, 'Harbor tuna').click()
    await expect(readBackOf(counterPage)).toHaveText(readBack())
    expect(readBack()).toContain(`${CAUTION}.`)
    await expect(sendButton(counterPage)).toHaveCount(0)
    await expect(counterPan(counterPage, 'Tuna salad')).toContainText(overTheLine.touches)
  })

  await test.step('a student guesses a passphrase, and it is refused in words', async () => {
    await counterPage.getByRole('button', { name: beginning(counter.signOn) }).click()
    await expect(
      counterPage.getByRole('heading', { name: inChargeEn.cautionTitle('Harbor tuna') }),
    ).toBeVisible()
    await expect(counterPage.getByText(`${CAUTION}.`)).toBeVisible()
    await prove(counterPage, '', inChargeEn.signOnAndAccept)
    await expect(counterPage.getByText(inChargeEn.tooShort)).toBeVisible()
    await prove(counterPage, GUESSED, inChargeEn.signOnAndAccept)
    await expect(counterPage.getByText(inChargeEn.chooseReason)).toBeVisible()
    await counterPage
      .getByRole('button', { name: inChargeEn.reason('guest-accepts'), exact: true })
      .click()
    await prove(counterPage, GUESSED, inChargeEn.signOnAndAccept)
    await expect(counterPage.getByText(sayNotTaken({ code: 'wrong-passphrase' }))).toBeVisible()
    await counterPage.getByRole('button', { name: inChargeEn.decline, exact: true }).click()
    await expect(sendButton(counterPage)).toHaveCount(0)
    expect(lead.state()).toMatchObject({ inCharge: null, cautions: {} })
  })

  await test.step('the lead can’t either, nor send it unaccepted', async () => {
    const { station } = lead.state()
    const apart = (item: string): BuildChoice => ({
      ...usualChoice(itemOf(station, item)),
      asked: 'needs',
      needs: [{ code: 'almond', handling: 'keep-apart', reason: null }],
      agreed: true,
    })
    const send = (build: BuildChoice) =>
      lead.answerTo({ type: 'send', builds: [build], readBack: true, paid: false })
    const tuna = apart('harbor-tuna')
    const chicken = apart('garden-chicken')
    const sauce = { placement: 'no', portions: 0, because: 'need' } as const
    const fitting = { ...chicken, parts: { ...chicken.parts, 'yogurt-sauce': sauce } }
    expect(
      await lead.answerTo({ type: 'acceptCaution', build: tuna, reason: 'guest-accepts' }),
    ).toMatchObject({ answer: 'not taken', because: { code: 'role-may-not', role: 'lead' } })
    expect(await send(fitting)).toMatchObject({
      answer: 'refused',
      refusal: { code: 'no-one-in-charge' },
    })
    await job.signOn()
    await expect.poll(() => lead.state().inCharge).not.toBeNull()
    expect(await send(tuna)).toMatchObject({
      answer: 'refused',
      refusal: { code: 'caution', component: 'tuna' },
    })
    await lead.does({ type: 'signOff' })
    await expect.poll(() => lead.state().inCharge).toBeNull()
  })

  await test.step('the adult signs on and accepts it with the guest, and why', async () => {
    await counterPage.getByRole('button', { name: beginning(counter.signOn) }).click()
    await counterPage
      .getByRole('button', { name: inChargeEn.reason('guest-accepts'), exact: true })
      .click()
    await prove(counterPage, PASSPHRASE, inChargeEn.signOnAndAccept)
    await expect(readBackOf(counterPage)).toHaveText(readBack({ say: 'accepted' }))
    await expect(readBackOf(counterPage)).toContainText(CAUTION)
    await expect
      .poll(() => lead.state().cautions)
      .toMatchObject({
        c1: {
          item: 'harbor-tuna',
          needs: [{ code: 'almond', handling: 'keep-apart' }],
          findings: [{ component: 'tuna', need: 'almond', why: 'contact', touches: 'almonds' }],
          reason: 'guest-accepts',
          build: null,
        },
      })
    await expect(sendButton(counterPage)).toHaveCount(0)
  })

  await test.step('the guest reads the caution on the turned screen, and agrees', async () => {
    const agree = counterPage.getByRole('button', { name: turnedEn.agree, exact: true })
    await tapUntil(counterPage.getByRole('button', { name: beginning(counter.turn) }), agree)
    const turned = counterPage.getByRole('region', { name: turnedEn.title })
    await expect(turned).toContainText(`${CAUTION}.`)
    await expect(turned).toContainText(turnedEn.accepted)
    await tapUntil(agree, sendButton(counterPage))
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await expect.poll(() => lead.state().cautions.c1?.build).toBe('1A')
    expect(findBuild(lead.state(), 1, 'A')?.choice.caution).toBe(1)
  })

  await test.step('used for that build only: the next one has to be accepted anew', async () => {
    await tunaWithoutAlmonds(counterPage)
    await counterPage.getByRole('button', { name: counter.saidNeeds, exact: true }).click()
    await itemRow(counterPage, 'Harbor tuna').click()
    await expect(readBackOf(counterPage)).toHaveText(readBack())
    await expect(callInCharge(counterPage)).toBeVisible()
    await expect(sendButton(counterPage)).toHaveCount(0)
    const used = findBuild(lead.state(), 1, 'A')
    expect(used).toBeDefined()
    if (used)
      expect(
        await lead.answerTo({
          type: 'send',
          builds: [used.choice],
          readBack: true,
          paid: false,
        }),
      ).toMatchObject({ answer: 'refused' })
    await callInCharge(counterPage).click()
    await counterPage
      .getByRole('button', { name: inChargeEn.reason('recipe-checked'), exact: true })
      .click()
    await prove(counterPage, GUESSED, inChargeEn.accept)
    await expect(counterPage.getByText(sayNotTaken({ code: 'wrong-passphrase' }))).toBeVisible()
    await prove(counterPage, PASSPHRASE, inChargeEn.accept)
    await turnAndAgree(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 2)
    await expect
      .poll(() => lead.state().cautions.c2)
      .toMatchObject({
        build: '2A',
        reason: 'recipe-checked',
      })
    expect(lead.state().cautions.c1?.build).toBe('1A')
  })

  await test.step('assembly sees what was accepted, in words and on its pan', async () => {
    await readAndStart(assembly, '1A')
    await expect(assembly.getByText(assemblyEn.accepted('guest-accepts'))).toBeVisible()
    await expect(assemblyPan(assembly, 'Tuna salad')).toContainText(
      'touches Toasted almonds: accepted',
    )
    await expect(assemblyPan(assembly, 'Sesame slaw')).toContainText(assemblyEn.backUp)
    await tapUntil(
      finishButton(assembly),
      assembly.getByRole('button', { name: assemblyEn.wasRead, exact: true }),
    )
    await readAndStart(assembly, '2A')
    await expect(assembly.getByText(assemblyEn.accepted('recipe-checked'))).toBeVisible()
    await tapUntil(finishButton(assembly), assemblyRests(assembly))
  })

  await test.step('and it is told at hand-over, once the guest has said their part', async () => {
    const told = handOverEn.told([
      { component: 'Tuna salad', need: 'almond', why: 'contact', touches: 'Toasted almonds' },
    ])
    await expect(shelfCard(handOver, '1A')).toContainText(handOverEn.keptApart)
    await expect(shelfCard(handOver, '1A')).not.toContainText(/almond/i)
    await askItsGuest(handOver, '1A')
    await expect(handOver.getByText(told)).toHaveCount(0)
    await guestAnswered(handOver)
    await expect(handOver.getByText(told)).toBeVisible()
    await expect(handOver.getByText('KEEP FROM ALMOND', { exact: true })).toBeVisible()
    await giveAlone(handOver, '1A')
  })

  const log = await job.log()
  expect(
    log.flatMap(({ type }) => (type === 'cautionAccepted' || type === 'ticketSent' ? [type] : [])),
  ).toEqual(['cautionAccepted', 'ticketSent', 'cautionAccepted', 'ticketSent'])
  const words = JSON.stringify(log)
  expect(words).not.toContain(PASSPHRASE)
  expect(words).not.toContain(GUESSED)
})
