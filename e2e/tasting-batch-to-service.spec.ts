import { join } from 'node:path'
import type { Locator, Page } from '@playwright/test'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { measuredEn } from '#lib/words/recipe/measured-en.ts'
import { recipeEn } from '#lib/words/recipe/recipe-en.ts'
import { tastingEn as words } from '#lib/words/tasting/tasting-en.ts'
import { root } from '#server/root.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { TASTING_STATION } from '#tests/support/tasting.ts'
import { planPan, planTheDay, SCHOOL, takeThePlan } from './support/plan-hands.ts'
import { test, expect as usual } from './support/station.ts'

const expect = usual.configure({ timeout: 90_000 })

/** Thursday, half past seven in the morning of the station. */
const THURSDAY = Date.parse('2026-12-03T13:30:00Z')
const TABLET = { viewport: { width: 1024, height: 768 } }
const LAPTOP = { viewport: { width: 1280, height: 800 } }
const STATION: StationDocument = { ...TASTING_STATION, day: SCHOOL.day }

const button = (at: Page | Locator, name: string | RegExp) => at.getByRole('button', { name })
const beginning = (text: string) => new RegExp(`^${text.replaceAll(/[.*+?^${}()|[\]\\“”]/g, '.')}`)
const onLine = (page: Page, said: string) =>
  page.getByRole('list', { name: words.lineOf }).getByRole('img', { name: said, exact: true })

test('a tasting batch to service: who can taste it, what it really made, and the plan by that', async ({
  open,
  endServer,
}) => {
  test.setTimeout(560_000)
  const data = temporaryFolder(true)
  await publishIn(data, STATION)
  const server = await launchServer({
    data,
    nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
    env: { LEVEL_SCOOP_TEST_BEGINS_AT: String(THURSDAY), LEVEL_SCOOP_TEST_PASSES_MS: '' },
  })
  const address = `${server.pageUrl}/tasting?station=${STATION.id}`
  const lead = await open(address, LAPTOP, true)

  await test.step('it is planned on the line for two, not in the past, and not for nothing', async () => {
    await expect(button(lead, words.form.lacks('food'))).toBeDisabled({ timeout: 30_000 })
    for (const name of ['Tuna salad', 'Black beans'])
      await lead.getByRole('button', { name, exact: true }).click()
    await expect(lead.getByRole('heading', { name: 'Tuna salad and black beans' })).toBeVisible()
    await lead.getByLabel(words.form.on).fill('2026-12-02')
    await button(lead, words.form.send).click()
    await expect(lead.getByText(words.refusal({ code: 'in-the-past' }, String))).toBeVisible()
    await lead.getByLabel(words.form.on).fill('2026-12-03')
    await button(lead, /^Period 3/).click()
    await lead.screenshot({ path: 'test-results/tasting-plan.png' })
    await button(lead, words.form.send).click()
    await expect(lead.getByRole('heading', { name: /^Tasting Thu, Dec 3, Period 3/ })).toBeVisible()
  })

  const tablet = await open(address, TABLET, true)
  await tablet.getByRole('link', { name: /^Thu, Dec 3, 09:34: Tuna salad and Black beans/ }).click()

  await test.step('nothing is made before both are asked; one keeps fish apart', async () => {
    await expect(button(lead, words.toAsk([1, 2]))).toBeDisabled()
    await button(tablet, beginning(words.taster(1))).click()
    await button(tablet, /^Fish/).click()
    await tablet.screenshot({ path: 'test-results/tasting-ask.png' })
    await button(tablet, words.saidThese(1)).click()
    await expect(
      lead.getByText(words.needs([{ code: 'fish', handling: 'keep-apart' }])),
    ).toBeVisible()
    await expect(button(lead, words.toAsk([2]))).toBeDisabled()
  })

  await test.step('where the other isn’t sure either, nobody can taste it, and that is said first', async () => {
    await button(lead, beginning(words.taster(2))).click()
    await button(lead, beginning(words.saidNotSure)).click()
    await expect(button(lead, words.toSettle(['Tuna salad']))).toBeDisabled()
    await expect(
      lead.getByText(`${words.unsure('Black beans')}. ${words.instead(1)}`),
    ).toBeVisible()
    await lead.screenshot({ path: 'test-results/tasting-nobody.png' })
    await button(lead, beginning(words.taster(2))).click()
    await button(lead, words.saidNone).click()
    const because = 'Tuna salad: tuna in water contains fish.'
    await expect(tablet.getByText(`${because} ${words.instead(2)}`)).toBeVisible()
    await expect(
      onLine(tablet, words.onPan('Tuna salad', [words.cannot(1), words.can(2)])),
    ).toBeVisible()
    await expect(
      onLine(tablet, words.onPan('Black beans', [words.can(1), words.can(2)])),
    ).toBeVisible()
    await tablet.screenshot({ path: 'test-results/tasting-asked.png' })
  })

  await test.step('it is cooked by the card for two, read before it is tasted, and weighed', async () => {
    await button(tablet, beginning(words.make)).click()
    const card = lead.getByRole('article', { name: 'Tuna salad' })
    await expect(card).toContainText('4 3/4 oz')
    await expect(card).toContainText(words.whoTastes([2]))
    await lead.screenshot({ path: 'test-results/tasting-cook.png', fullPage: true })
    await expect(button(lead, words.toRead(['Black beans']))).toBeDisabled()
    await button(lead, words.read('Black beans')).click()
    const read = lead.getByRole('region', { name: words.read('Black beans') })
    await read.getByLabel('Probe').fill('probe 1')
    await read.getByLabel(words.initials).fill('KT')
    await button(read, 'Middle, stirred').click()
    for (const key of '128') await read.getByRole('button', { name: key, exact: true }).click()
    await lead.screenshot({ path: 'test-results/tasting-read.png' })
    await button(read, words.recordLow('128 °F')).click()
    await expect(lead.getByText(words.tooLow('128 °F', 'too-low'))).toBeVisible()
    await expect(button(tablet, words.toCookOn(['Black beans']))).toBeDisabled()
    await button(lead, words.readAgain('Black beans')).click()
    // Probe and initials are typed once, where it was read is said each time.
    await button(read, 'Middle, stirred').click()
    for (const key of '171') await read.getByRole('button', { name: key, exact: true }).click()
    await button(read, words.record('171 °F')).click()
    await expect(tablet.getByText(words.isRead('171 °F'))).toBeVisible()
    await button(lead, beginning(words.ready)).click()
    await card.getByLabel(words.weighed).fill('0 oz')
    await lead.getByLabel(words.initials).fill('KT')
    await button(lead, beginning(words.end)).click()
    const refused = { code: 'not-measured', component: 'tuna', because: 'zero' } as const
    await expect(lead.getByText(words.refusal(refused, () => 'Tuna salad'))).toBeVisible()
    await card.getByLabel(words.weighed).fill('6 oz')
    await button(lead, beginning(words.end)).click()
    await expect(lead.getByText(words.isOver(['Tuna salad']))).toBeVisible()
    // What was told is gone with it, on the other screen as well.
    await expect(tablet.getByText(words.isOver(['Tuna salad']))).toBeVisible()
    await expect(tablet.getByText(/keep apart/)).toHaveCount(0)
  })

  await test.step('a plan counts with it: a load of 20 makes 16, and says so', async () => {
    await lead.goto(`${server.pageUrl}/plan?station=${STATION.id}`)
    await planTheDay(lead, { guests: '46' })
    await planPan(lead, 'Tuna salad').click()
    await expect(
      lead.getByText('A load: 16.6 portions from your one batch, stated 20', { exact: false }),
    ).toBeVisible()
    const tuna = planPan(lead, 'Tuna salad')
    const said = (await tuna.getAttribute('aria-label')) ?? ''
    const [, loads, portions = ''] = /: (\d+) loads?, (\d+) × 1\/2 cup/.exec(said) ?? []
    expect([said, Number(portions)]).toEqual([said, Number(loads) * 16])
    await lead.screenshot({ path: 'test-results/tasting-planned.png' })
    await takeThePlan(lead)
    await tablet.goto(`${server.pageUrl}/prep?station=${STATION.id}`)
    await button(tablet, /^Tuna salad \d+:/).click()
    const task = tablet.getByRole('region', { name: 'Tuna salad' })
    await expect(task).toContainText(`${portions} × 1/2 cup`)
    await tablet.screenshot({ path: 'test-results/tasting-prep.png' })
    await expect(lead.getByText(planEn.asTaken, { exact: true })).toBeVisible()
  })

  await test.step('and so does the recipe', async () => {
    await lead.goto(`${server.pageUrl}/menu/recipe?station=${STATION.id}&recipe=tuna-mix`)
    const told = lead.getByRole('region', { name: measuredEn.title })
    await expect(told).toContainText('Stated 20; your one batch made 16.6.')
    await expect(told).toContainText('Dec 3, 0.1 × the card, 6 oz, 83%')
    const check = lead.getByRole('region', { name: recipeEn.yield })
    await expect(check).toContainText('By your own batches it makes 2 qt')
    await expect(check).toContainText('From 1 batch: how sure that is, a second one tells.')
    await expect(check).toContainText('The card says 20.')
    await lead.screenshot({ path: 'test-results/tasting-recipe.png', fullPage: true })
  })

  await test.step('typed wrongly, it is taken out again, and counts no more', async () => {
    const told = lead.getByRole('region', { name: measuredEn.title })
    const check = lead.getByRole('region', { name: recipeEn.yield })
    await button(told, measuredEn.takeOut).click()
    await expect(button(told, measuredEn.initialsFirst)).toBeDisabled()
    await told.getByLabel(measuredEn.initials).fill('zq')
    await button(told, measuredEn.takeOutSure).click()
    await expect(told).toContainText(/Taken out Dec 3, 2026, .*, ZQ: plans don’t count with it/)
    await expect(told).toContainText(measuredEn.noneCounts)
    await expect(check).not.toContainText('your own batches')
    await lead.screenshot({ path: 'test-results/tasting-taken-out.png', fullPage: true })
    await tablet.goto(`${server.pageUrl}/plan?station=${STATION.id}`)
    await planTheDay(tablet, { on: '2026-12-07', guests: '46' })
    await planPan(tablet, 'Tuna salad').click()
    await expect(planPan(tablet, 'Tuna salad')).toHaveAttribute(
      'aria-label',
      /: \d+ loads?, \d*0 × /,
    )
    await expect(tablet.getByText(/^A load:/)).toHaveCount(0)
  })
  await endServer(server)
})
