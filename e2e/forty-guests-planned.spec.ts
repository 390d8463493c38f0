import type { Page } from '@playwright/test'
import { plannedWords } from '#lib/rooms/day/words/planned-en.ts'
import { batchWords } from '#lib/rooms/food/words/batches-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { readingWords } from '#lib/rooms/food/words/reading-pad-en.ts'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import { temporaryFolder } from '#tests/support/launch-server.ts'
import { makeHouse } from '#tests/support/make-house.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { INITIALS, job, pot } from './support/food-hands.ts'
import { launchTold } from './support/larder-hands.ts'
import {
  button,
  fill,
  type Hands,
  newHands,
  secondsOf,
  since,
  tap,
  tapTo,
} from './support/menu-hands.ts'
import { SCHOOL } from './support/plan-hands.ts'
import { expect, test } from './support/station.ts'

test.use({ proved: true, houseOf: 'forty-guests-planned' })

/** Friday, half past seven in the morning of the station. */
const FRIDAY = Date.parse('2026-12-04T13:30:00Z')
const { bells: _, crew: __, ...day } = SCHOOL.day
/** A station as somebody published it who knows neither bells nor crew yet. */
const OWN = { ...SCHOOL, day }

/** At 2 s a tap and 5 s a field: 35, 171 and 4 s were measured on 2026-11-30. */
const MOST_SECONDS = { planned: 40, prepped: 180, opened: 6 }

const tell = (what: string, { taps, fields }: Hands, most: number): void => {
  const seconds = secondsOf({ taps, fields })
  const said = `${what}: ${taps} taps and ${fields} fields, ${seconds} s at 2 s a tap and 5 s a field`
  test.info().annotations.push({ type: 'figure', description: said })
  console.log(said)
  expect(seconds).toBeLessThanOrEqual(most)
}

const main = (page: Page) => job(page).locator('[data-main]')

/** Place, probe and initials, unless they are filled in; the figures are one field. */
const reads = async (page: Page, hands: Hands, figures: string): Promise<void> => {
  const place = job(page)
    .getByRole('group', { name: readingWords.where, exact: true })
    .getByRole('button')
    .first()
  if ((await place.getAttribute('aria-pressed')) !== 'true') await tap(hands, place)
  for (const [label, text] of [
    [readingWords.probe, '1'],
    [readingWords.initials, INITIALS],
  ] as const) {
    const field = job(page).getByLabel(label, { exact: true })
    if ((await field.inputValue()) === '') await fill(hands, field, text)
  }
  hands.fields += 1
  for (const figure of figures)
    await job(page).getByRole('button', { name: figure, exact: true }).click()
}

test('forty guests, planned: from an own station to a service that is planned, prepped and open', async ({
  open,
  endServer,
}) => {
  test.setTimeout(600_000)
  const data = temporaryFolder(true)
  await publishIn(data, OWN)
  const server = await launchTold(FRIDAY, [60_000], { data })
  await makeHouse(server.url)
  const page = await open(`${server.pageUrl}/`, { viewport: { width: 1024, height: 768 } })
  page.setDefaultTimeout(60_000)
  const hands = newHands()
  let before = { ...hands }
  const part = (): Hands => {
    const took = since(hands, before)
    before = { ...hands }
    return took
  }

  await test.step('planned for today, 40 guests, one certified adult', async () => {
    const { form } = planEn
    await tap(hands, page.getByRole('link', { name: new RegExp(`^${plannedWords.planOne}`) }))
    await fill(hands, page.getByLabel(form.walkIn), '40')
    hands.fields += 1
    await page.getByLabel(form.on).first().fill('2026-12-04')
    await tap(hands, button(page, form.addCrew))
    await fill(hands, page.getByLabel(form.initials), 'KT')
    await tap(hands, button(page, form.student))
    for (const [label, time] of [
      [form.from, '07:30'],
      [form.to, '13:30'],
    ] as const) {
      hands.fields += 1
      await page.getByLabel(label, { exact: true }).fill(time)
    }
    await page.screenshot({ path: 'test-results/forty-form.png' })
    await tap(hands, button(page, form.send))
    await expect(page.getByRole('list', { name: planEn.title })).toBeVisible({ timeout: 60_000 })
    await page.screenshot({ path: 'test-results/forty-plan.png' })
    await tap(hands, button(page, new RegExp(`^${planEn.takePlan}`)))
    await expect(page.getByText(planEn.taken)).toBeVisible()
    tell('40 guests planned, and the plan taken', part(), MOST_SECONDS.planned)
  })

  await test.step('its batches are started, read and finished before it is open', async () => {
    await page.goto('/')
    await tap(hands, page.getByRole('link', { name: /11:20 AM to 12:20 PM/ }))
    await tap(hands, page.getByRole('link', { name: plannedWords.toBatches }))
    const start = button(page, formWords.startBatch)
    await expect(start).toBeVisible({ timeout: 60_000 })
    await page.screenshot({ path: 'test-results/forty-batches.png' })
    const names: string[] = []
    for (;;) {
      await tapTo(hands, start, main(page))
      const chosen = job(page).locator('[aria-pressed="true"]').first()
      const said = ((await chosen.textContent()) ?? '').replace(/^✓\s*/, '')
      const [name = '', toMake] = said.split(/\d+ loads? (?=to make)/)
      if (toMake === undefined) {
        hands.taps -= 1
        await button(page, formWords.back).click()
        break
      }
      names.push(name)
      await tapTo(hands, main(page), start)
    }
    await page.screenshot({ path: 'test-results/forty-started.png' })
    expect(names.length).toBeGreaterThan(3)
    const asks = job(page).getByLabel(readingWords.probe, { exact: true })
    const waits = job(page).getByText(batchWords.waits, { exact: true })
    for (const name of names) {
      await tapTo(hands, pot(page, name.trim()), job(page))
      // Each load that is cooked has a reading of its own.
      while (await main(page).isVisible()) {
        if (await asks.isVisible()) {
          await reads(page, hands, '171')
          await tapTo(hands, main(page), main(page).filter({ hasText: /portions/ }))
        }
        await tapTo(hands, main(page), asks.or(waits))
      }
      await expect(waits).toBeVisible()
      await tapTo(hands, button(page, formWords.back), start)
    }
    await expect(page.getByRole('button', { name: /: finish it$/ })).toHaveCount(0)
    await page.screenshot({ path: 'test-results/forty-prepped.png' })
    tell(`${names.length} batches of a planned service`, part(), MOST_SECONDS.prepped)
  })

  await test.step('opened, with all that was prepared', async () => {
    await tap(hands, page.getByRole('link', { name: /planned service/ }))
    await tap(hands, page.getByRole('button', { name: plannedWords.open }))
    await expect(page.getByText(/: open since/)).toBeVisible({ timeout: 60_000 })
    tell('opened', part(), MOST_SECONDS.opened)
  })
  await endServer(server)
})
