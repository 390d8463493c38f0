import type { Page } from '@playwright/test'
import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { labelWords } from '#lib/rooms/care/words/labels-en.ts'
import { sheetWords } from '#lib/rooms/care/words/sheet-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { ticketsEn } from '#lib/rooms/orders/words/tickets-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import { sayNotTaken } from '#lib/words/refusals-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { backToLine } from './support/food-hands.ts'
import { gardenChicken, stands } from './support/garden-chicken.ts'
import {
  beginning,
  finishButton,
  giveOut,
  givePanel,
  itemRow,
  makeAndMark,
  openLabel,
  pick,
  saying,
  sendButton,
  shelfCard,
  start,
  startButton,
  tapUntil,
  tellNeed,
  ticketIsSent,
  ticketRow,
  turnAndAgree,
} from './support/hands.ts'
import { expect, type Job, test } from './support/job.ts'
import { seeStop } from './support/need-hands.ts'

const SMALL = { viewport: { width: 1024, height: 768 } }
const WHY = sayWhyHeld({ reason: 'label', ingredients: ['Canola oil'] })

const keepsApart = async (page: Page): Promise<void> => {
  await tellNeed(page, 'peanut')
  await itemRow(page, 'Garden chicken').click()
  await turnAndAgree(page)
}

const buildOf = ({ lead }: Job, ticket: number) => findBuild(lead.state(), ticket, 'A')

test.use({ proved: true })

test('the label changed at noon: every build is checked again, whatever its state', async ({
  job,
  open,
}) => {
  const [counterPage, assembly, handOver, pans] = await Promise.all([
    job.open('/counter', SMALL),
    job.open('/assembly', SMALL),
    job.open('/hand-over', SMALL),
    job.open('/pans', SMALL),
  ])
  const sheet = await open(new URL('/sheet', pans.url()).href, SMALL)
  await job.signOn()
  const cellOf = (row: string) =>
    sheet
      .getByRole('table')
      .getByRole('row')
      .filter({ has: sheet.getByRole('rowheader', { name: row, exact: true }) })
      .getByRole('cell')
      .nth(6)
  const fromBefore = cellOf('Herb chicken')

  await test.step('the morning: one handed over, one made, one being made, one waits', async () => {
    await stands(job.lead, 1, 'leave-out', ['start', 'finish', 'handOver'])
    await stands(job.lead, 2, 'keep-apart', ['start', 'finish'])
    await stands(job.lead, 3, 'leave-out', ['start'])
    await keepsApart(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 4)
    await stands(job.lead, 5, null, [])
    await expect(shelfCard(handOver, '2A')).toBeVisible()
    await expect(finishButton(assembly)).toBeVisible()
    await keepsApart(counterPage)
    await expect(sendButton(counterPage)).toBeEnabled()
    await expect(fromBefore).toContainText(sheetWords.word.free)
  })

  await test.step('a wrong passphrase changes no label', async () => {
    const dialog = await openLabel(pans, 'Canola oil')
    await dialog.getByRole('button', { name: labelWords.read, exact: true }).click()
    await dialog.getByRole('button', { name: labelWords.fromBefore, exact: true }).click()
    // What declares the others free is said anew of the pack in hand.
    await dialog.getByRole('button', { name: labelWords.freeByWays.printed, exact: true }).click()
    await dialog
      .getByRole('group', { name: counter.needTile('peanut'), exact: true })
      .getByText(labelWords.word.contains, { exact: true })
      .click()
    const keep = dialog.getByRole('button', { name: labelWords.send, exact: true })
    await expect(keep).toBeDisabled()
    await dialog.getByLabel(labelWords.readBy).fill('KT')
    await dialog.getByLabel(labelWords.passphrase).fill(PASSPHRASE.toUpperCase())
    await keep.click()
    await expect(dialog.getByText(sayNotTaken({ code: 'wrong-passphrase' })).first()).toBeVisible()
    expect(job.lead.state().labelChanges).toEqual([])
    await expect(keep).toBeDisabled()
    await dialog.getByLabel(labelWords.passphrase).fill(PASSPHRASE)
    await keep.click()
  })

  await test.step('the lead reads what comes of it: whom to find, what to print anew', async () => {
    const dialog = pans.locator('[data-job="labels"]')
    await expect(
      dialog.getByRole('heading', { name: labelWords.outcomeTitle('Canola oil') }),
    ).toBeVisible()
    await expect.poll(() => job.lead.state().labelChanges.length).toBe(1)
    const [change] = job.lead.state().labelChanges
    const date = sheetWords.moment(change?.at ?? 0, job.lead.state().station.timeZone)
    for (const words of [
      labelWords.find(['1A']),
      labelWords.hold(['2A', '3A', '4A']),
      labelWords.reprint(['Herb chicken', 'Roast peppers']),
      labelWords.sheet(date),
    ])
      await expect(dialog.getByText(words)).toBeVisible()
    await backToLine(pans)
    await expect(pans.getByText(firstWords.findTitle(['1A']), { exact: true })).toBeVisible()
    await expect(
      pans.getByText(firstWords.hold(['2A', '3A', '4A'], 'label'), { exact: true }),
    ).toBeVisible()
    await expect(cellOf('Herb chicken')).toContainText(sheetWords.word.contains)
    await expect(cellOf('Garden chicken')).toContainText(sheetWords.word.contains)
    await expect(
      sheet.getByText(sheetWords.asOf(change?.at ?? 0, job.lead.state().station.timeZone)),
    ).toBeVisible()
  })

  await test.step('all four are held, and none goes on', async () => {
    expect([1, 2, 3, 4, 5].map((ticket) => buildOf(job, ticket)?.hold?.reason ?? null)).toEqual([
      'label',
      'label',
      'label',
      'label',
      null,
    ])
    expect(Object.keys(job.lead.state().toFind)).toEqual(['1A'])
    await expect(handOver.getByRole('heading', { name: handOverEn.toFind })).toBeVisible()
    await expect(
      handOver.getByRole('button', { name: handOverEn.foundOf('1A'), exact: true }),
    ).toBeVisible()
    await expect(shelfCard(handOver, '2A')).toHaveCount(0)
    await expect(handOver.getByText(WHY)).toHaveCount(2)
    for (const ticket of [2, 3, 4])
      for (const type of ['handOver', 'finish'] as const)
        expect(await job.lead.answerTo({ type, ticket, letter: 'A' })).toMatchObject({
          answer: 'refused',
        })
    expect(await job.lead.answerTo({ type: 'handOver', ticket: 2, letter: 'A' })).toMatchObject({
      refusal: { code: 'build-held', build: '2A', reason: 'label' },
    })
  })

  await test.step('assembly stops; the made one is waste, the others are answered', async () => {
    await expect(
      assembly.getByRole('heading', { name: `${assemblyEn.stop} 2-\u2060A` }),
    ).toBeVisible()
    await expect(assembly.getByText(WHY)).toBeVisible()
    await expect(finishButton(assembly)).toHaveCount(0)
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.threwOut('2A'), exact: true }),
      assembly.getByRole('heading', { name: assemblyEn.foodInIt('3A') }),
    )
    await tapUntil(
      assembly.getByRole('button', { name: saying(assemblyEn.foodYes, assemblyEn.foodYesThen) }),
      assembly.getByRole('heading', { name: assemblyEn.notBeingMade('4A') }),
    )
    await seeStop(assembly, '4A', startButton(assembly, '5A'))
  })

  await test.step('a build without needs goes on to its guest', async () => {
    await start(assembly, '5A')
    await tapUntil(finishButton(assembly), assembly.getByText(assemblyEn.held('2A')))
    await giveOut(handOver, '5A', handOver.getByText(handOverEn.isHandedOver('5A')).first())
  })

  await test.step('the order that was read back and agreed can’t be sent any more', async () => {
    await expect(sendButton(counterPage)).toBeDisabled()
    await expect(
      counterPage.getByText(/Herb chicken: canola oil contains peanut/).first(),
    ).toBeVisible()
    await counterPage.getByRole('button', { name: counter.startOver }).click()
  })

  await test.step('the counter shows what is held, and orders one anew by the new label', async () => {
    await expect(counterPage.getByText(needsEn.findNow(['1A']))).toBeVisible()
    await expect(counterPage.getByText(needsEn.heldNow(['2A', '3A', '4A']))).toBeVisible()
    await counterPage.getByRole('button', { name: needsEn.see, exact: true }).click()
    for (const build of ['1A', '2A', '3A', '4A']) {
      await expect(ticketRow(counterPage, build)).toContainText(
        build === '1A' ? ticketsEn.toFindRow : ticketsEn.heldRow,
      )
      await ticketRow(counterPage, build).click()
      await expect(counterPage.getByText(WHY)).toHaveCount(1)
    }
    await counterPage.getByRole('button', { name: counter.cancelAsk('4A') }).click()
    await counterPage.getByRole('button', { name: counter.cancelYes('4A') }).click()
    await expect(counterPage.getByText(counter.cancelled('4A'))).toBeVisible()
    await ticketRow(counterPage, '3A').click()
    await counterPage.getByRole('button', { name: counter.changeOf('3A') }).click()
    await itemRow(counterPage, 'Bean and pepper').click()
    await expect(
      counterPage.getByText('No roast peppers, since they contain peanut.'),
    ).toBeVisible()
    await counterPage.getByRole('button', { name: beginning(counter.sendChange) }).click()
    await makeAndMark(assembly, '3A', assembly.getByText(assemblyEn.held('2A')))
    await pick(handOver, '3A')
    await expect(givePanel(handOver, '3A')).toContainText('NO PEPPERS')
  })

  await test.step('a new order is checked by the new label at once, on every way', async () => {
    await counterPage.getByRole('button', { name: counter.needTile('peanut'), exact: true }).click()
    const fits = counterPage.getByRole('list', { name: counter.fits }).getByRole('listitem')
    await expect(fits.filter({ hasText: 'Garden chicken' })).toContainText(
      counter.rowDoesNot('Herb chicken: canola oil contains peanut'),
    )
    const builds = [gardenChicken(job.lead, 'leave-out')]
    expect(
      await job.lead.answerTo({ type: 'send', builds, paid: false, readBack: true }),
    ).toMatchObject({
      answer: 'refused',
      refusal: { code: 'contains', component: 'chicken', need: 'peanut' },
    })
  })

  await test.step('the guest is found', async () => {
    await tapUntil(
      handOver.getByRole('button', { name: handOverEn.foundOf('1A'), exact: true }),
      handOver.getByRole('heading', { name: handOverEn.findQuestion('1A') }),
    )
    await tapUntil(
      handOver.getByRole('button', { name: beginning(handOverEn.foundTold) }),
      handOver.getByText(handOverEn.isFoundTold('1A')),
    )
    expect(job.lead.state().toFind).toEqual({})
  })

  await sheet.context().close()
  const log = await job.log()
  const changed = log.find(({ type }) => type === 'labelChanged')
  expect(changed).toMatchObject({
    ingredient: 'canola-oil',
    label: { declarations: { peanut: 'contains' }, readBy: null },
  })
  expect(
    log
      .flatMap(({ type, ticket, reason, command }) =>
        type === 'buildHeld' ? [[ticket, reason, command === changed?.command]] : [],
      )
      .sort(),
  ).toEqual([1, 2, 3, 4].map((ticket) => [ticket, 'label', true]))
  const afterwards = log.filter(({ position }) => position > (changed?.position ?? Infinity))
  expect(
    afterwards.flatMap(({ type, ticket }) => (type === 'buildHandedOver' ? [ticket] : [])),
  ).toEqual([5])
  expect(JSON.stringify(log)).not.toContain(PASSPHRASE)
})
