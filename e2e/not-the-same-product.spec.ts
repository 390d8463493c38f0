import { firstWords } from '#lib/rooms/care/words/first-of-all-en.ts'
import { sayWhyHeld } from '#lib/rooms/care/words/held-en.ts'
import { labelWords } from '#lib/rooms/care/words/labels-en.ts'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { handOverEn } from '#lib/rooms/shelf/words/hand-over-en.ts'
import { findBuild } from '#lib/service/tickets.ts'
import { GLUTEN_STATEMENT, sayLabelProblem } from '#lib/words/label-problems-en.ts'
import { needsEn } from '#lib/words/needs-en.ts'
import { PASSPHRASE } from '#tests/support/make-house.ts'
import { backToLine } from './support/food-hands.ts'
import {
  assemblyRests,
  giveOut,
  guestAnswered,
  itemRow,
  makeAndMark,
  openLabel,
  order,
  readAloud,
  sendButton,
  shelfCard,
  tapUntil,
  tellNeed,
  ticketIsSent,
  turnAndAgree,
} from './support/hands.ts'
import { expect, test } from './support/job.ts'
import { askItsGuest, giveAlone, seeStop } from './support/need-hands.ts'

const SMALL = { viewport: { width: 1024, height: 768 } }
const WHY = sayWhyHeld({ reason: 'label', ingredients: ['Cumin, ground'] })
const READ_FIRST = 'not known whether cumin, ground contains peanut: read the label first'

test.use({ proved: true })

test('not the same product as last time: unknown at once, until its label is read', async ({
  job,
}) => {
  const [counterPage, assembly, handOver, pans] = await Promise.all([
    job.open('/counter', SMALL),
    job.open('/assembly', SMALL),
    job.open('/hand-over', SMALL),
    job.open('/pans', SMALL),
  ])
  await job.signOn()
  const tile = counterPage.getByRole('button', { name: counter.needTile('peanut'), exact: true })
  const fits = counterPage.getByRole('list', { name: counter.fits }).getByRole('listitem')
  const handling = counterPage.getByRole('button', {
    name: counter.changeHandling('peanut', 'keep-apart'),
  })
  const clear = counterPage.getByRole('button', { name: counter.clearNeeds, exact: true })
  const startOver = counterPage.getByRole('button', { name: counter.startOver, exact: true })
  const cumin = () => job.lead.state().station.ingredients.find((one) => one.id === 'cumin')

  await test.step('a kept-apart order that takes it waits, and one without needs', async () => {
    await tellNeed(counterPage, 'peanut')
    await itemRow(counterPage, 'Bean and pepper').click()
    await turnAndAgree(counterPage)
    await sendButton(counterPage).click()
    await ticketIsSent(counterPage, 1)
    await order(counterPage, 'Bean and pepper', 2)
  })

  await test.step('a student at the door says so: two taps, no passphrase', async () => {
    const dialog = await openLabel(pans, 'Cumin')
    const sure = dialog.getByRole('button', { name: labelWords.notSameSure('Cumin, ground') })
    await tapUntil(dialog.getByRole('button', { name: labelWords.notSame, exact: true }), sure)
    expect(job.lead.state().labelChanges).toEqual([])
    await tapUntil(sure, dialog.getByText(labelWords.hold(['1A'])))
    await expect(dialog.getByText(labelWords.findNone)).toBeVisible()
    await expect(dialog.getByText(labelWords.reprint(['Black beans']))).toBeVisible()
    await backToLine(pans)
    expect(cumin()).toMatchObject({ declarations: {}, traits: null, readOn: null })
    expect(job.lead.state().labelChanges).toMatchObject([{ ingredient: 'cumin', read: false }])
  })

  await test.step('the open one is held on every screen; the one without needs isn’t', async () => {
    expect(findBuild(job.lead.state(), 1, 'A')?.hold?.reason).toBe('label')
    expect(findBuild(job.lead.state(), 2, 'A')?.hold).toBeNull()
    await expect(counterPage.getByText(needsEn.heldNow(['1A']))).toBeVisible()
    await expect(
      assembly.getByRole('heading', { name: `${assemblyEn.stop} 1-\u2060A` }),
    ).toBeVisible()
    await expect(assembly.getByText(WHY)).toBeVisible()
    await expect(pans.getByText(firstWords.holdTitle(['1A']), { exact: true })).toBeVisible()
    await seeStop(assembly, '1A', assembly.getByRole('button', { name: assemblyEn.start('2A') }))
    await makeAndMark(assembly, '2A', assembly.getByText(assemblyEn.heldThen))
    await expect(assembly.getByText(WHY)).toBeVisible()
    await giveOut(handOver, '2A', handOver.getByText(handOverEn.isHandedOver('2A')).first())
  })

  await test.step('kept apart it is refused: not known, read the label first', async () => {
    await tile.click()
    await expect(fits.filter({ hasText: 'Bean and pepper' })).toHaveAttribute('data-fit', 'no')
    await expect(fits.filter({ hasText: 'Bean and pepper' })).toContainText(
      counter.rowDoesNot('Black beans, peanut: not known'),
    )
    await counterPage.getByRole('button', { name: counter.saidNeeds }).click()
    await expect(itemRow(counterPage, 'Bean and pepper')).toContainText(
      counter.rowDoesNot('black beans, peanut: not known'),
    )
    await itemRow(counterPage, 'Bean and pepper').click()
    await expect(counterPage.getByText(`Black beans: ${READ_FIRST}.`).first()).toBeVisible()
    await expect(sendButton(counterPage)).toBeDisabled()
    const before = findBuild(job.lead.state(), 1, 'A')?.choice
    if (!before) throw new Error('there is no 1A')
    expect(
      await job.lead.answerTo({ type: 'send', builds: [before], paid: false, readBack: true }),
    ).toMatchObject({
      answer: 'refused',
      refusal: { code: 'unknown-declaration', component: 'beans', need: 'peanut' },
    })
    await startOver.click()
  })

  await test.step('left out only, the person in charge has to be asked', async () => {
    await tile.click()
    await handling.click()
    await expect(fits.filter({ hasText: 'Bean and pepper' })).toHaveAttribute('data-fit', 'ask')
    await clear.click()
  })

  await test.step('the person in charge reads the label, with the passphrase', async () => {
    const dialog = await openLabel(pans, 'Cumin')
    await expect(
      dialog.getByRole('button', { name: labelWords.notSame, exact: true }),
    ).toBeDisabled()
    await dialog.getByRole('button', { name: labelWords.read, exact: true }).click()
    await expect(
      dialog.getByRole('button', { name: labelWords.fromBefore, exact: true }),
    ).toHaveCount(0)
    const way = (name: string) => dialog.getByRole('button', { name, exact: true })
    await way(labelWords.laws['us-9']).click()
    await way(labelWords.restNotListed(9)).click()
    await expect(dialog.getByLabel(labelWords.readAll)).toBeChecked()
    await dialog.getByLabel(labelWords.readBy).fill('KT')
    await dialog.getByLabel(labelWords.passphrase).fill(PASSPHRASE)
    const keep = dialog.getByRole('button', { name: labelWords.send, exact: true })
    await expect(keep).toBeEnabled()
    const sayOf = (code: string, word: 'contains' | 'free') =>
      dialog
        .getByRole('group', { name: counter.needTile(code), exact: true })
        .getByText(labelWords.word[word], { exact: true })
        .click()
    await sayOf('wheat', 'contains')
    await expect(dialog.getByText(sayLabelProblem({ why: 'wheat-is-gluten' }))).toBeVisible()
    await expect(keep).toBeDisabled()
    await sayOf('gluten', 'free')
    await expect(
      dialog.getByText(labelWords.groundsProblem({ why: 'free-by', codes: ['gluten'] })),
    ).toBeVisible()
    await way(labelWords.freeByWays.printed).click()
    await expect(keep).toBeDisabled()
    await dialog.getByLabel(GLUTEN_STATEMENT).check()
    await expect(keep).toBeEnabled()
    await sayOf('wheat', 'free')
    const gelatin = dialog.getByLabel(labelWords.trait('gelatin'), { exact: true })
    await gelatin.check()
    await expect(dialog.getByText(labelWords.sourceUnanswered('gelatin'))).toBeVisible()
    await expect(keep).toBeDisabled()
    const from = dialog.getByRole('group', { name: labelWords.source('gelatin'), exact: true })
    await from.getByText(labelWords.notSaid, { exact: true }).click()
    await expect(keep).toBeEnabled()
    await from.getByText('beef', { exact: true }).click()
    await expect(from.getByLabel(labelWords.notSaid)).not.toBeChecked()
    await gelatin.uncheck()
    await keep.click()
    await expect(dialog.getByText(labelWords.change('Cumin, ground', true))).toBeVisible()
    await backToLine(pans)
    await expect.poll(cumin).toMatchObject({
      declarations: { peanut: 'not-listed', milk: 'not-listed', wheat: 'free' },
      law: 'us-9',
      freeBy: 'printed',
      readBy: null,
    })
  })

  await test.step('it fits again, and so the hold of what nobody began is lifted by itself', async () => {
    await tile.click()
    await expect(fits.filter({ hasText: 'Bean and pepper' })).toHaveAttribute('data-fit', 'change')
    await clear.click()
    await expect(counterPage.getByText(needsEn.heldNow(['1A']))).toHaveCount(0)
    await expect(assembly.getByText(WHY)).toHaveCount(0)
    expect(findBuild(job.lead.state(), 1, 'A')?.hold).toBeNull()
  })

  await test.step('it is made by the handling order, and handed over by its mark', async () => {
    await readAloud(assembly, '1A')
    await makeAndMark(assembly, '1A', assemblyRests(assembly))
    await askItsGuest(handOver, '1A')
    await guestAnswered(handOver)
    await giveAlone(handOver, '1A', handOver.getByText(handOverEn.isHandedOver('1A')).first())
    await expect(shelfCard(handOver, '1A')).toHaveCount(0)
  })

  const log = await job.log()
  expect(
    log.flatMap(({ type, ticket, ingredient, label }) =>
      ['labelChanged', 'buildHeld', 'holdLifted', 'buildHandedOver'].includes(type)
        ? [[type, ticket ?? ingredient, ...(type === 'labelChanged' ? [label === null] : [])]]
        : [],
    ),
  ).toEqual([
    ['labelChanged', 'cumin', true],
    ['buildHeld', 1],
    ['buildHandedOver', 2],
    ['labelChanged', 'cumin', false],
    ['holdLifted', 1],
    ['buildHandedOver', 1],
  ])
})
