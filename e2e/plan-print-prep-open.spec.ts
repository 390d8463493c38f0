import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { PAPERS } from '#lib/paper/page/papers.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { labelsEn } from '#lib/paper/words/labels-screen-en.ts'
import { listsEn } from '#lib/paper/words/lists-en.ts'
import { prepSheetEn } from '#lib/paper/words/prep-sheet-en.ts'
import { purchaseListEn } from '#lib/paper/words/purchase-list-en.ts'
import { plannedWords } from '#lib/rooms/day/words/planned-en.ts'
import { packEn } from '#lib/rooms/prep/words/pack-en.ts'
import { papersEn } from '#lib/rooms/prep/words/papers-en.ts'
import { planEn } from '#lib/rooms/prep/words/plan-en.ts'
import { prepEn } from '#lib/rooms/prep/words/prep-en.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { sayPacks } from '#lib/words/recipe/packs-en.ts'
import { needName } from '#lib/words/service-en.ts'
import { root } from '#server/root.ts'
import { CARDED } from '#tests/support/carded-station.ts'
import { launchServer, temporaryFolder } from '#tests/support/launch-server.ts'
import { publishIn } from '#tests/support/own-station.ts'
import { crowded } from './support/crowded-line.ts'
import { nothingIsOutside, printed } from './support/paper-ink.ts'
import { pdfPages } from './support/pdf-text.ts'
import { planPan, planTheDay, SCHOOL, sayInitials, takeThePlan } from './support/plan-hands.ts'
import { PHONE, resize, TABLETS } from './support/stage.ts'
import { expect, test } from './support/station.ts'

test.use({ proved: true, houseOf: 'plan-print-prep-open' })

const MINUTE = 60_000
/** Friday, half past seven in the morning of the station; then seven past eleven. */
const FRIDAY = Date.parse('2026-12-04T13:30:00Z')
const LATER = 217 * MINUTE
const AT_ONCE = { viewport: { width: 1024, height: 768 } }

/** The school's line with amounts on its cards. */
const LUNCH: StationDocument = { ...CARDED, id: SCHOOL.id, name: SCHOOL.name, day: SCHOOL.day }

const serverOf = async (document: StationDocument) => {
  const data = temporaryFolder(true)
  await publishIn(data, document)
  return launchServer({
    data,
    nodeArguments: ['--import', join(root, 'tests/support/told-clock.mjs')],
    env: { LEVEL_SCOOP_TEST_BEGINS_AT: String(FRIDAY), LEVEL_SCOOP_TEST_PASSES_MS: String(LATER) },
  })
}

/** From the plan to one of its papers. */
const toPaper = async (lead: Page, paper: keyof typeof papersEn.of): Promise<void> => {
  await lead.getByRole('button', { name: papersEn.print, exact: true }).click()
  await lead.getByRole('link', { name: new RegExp(`^${papersEn.of[paper].name}`) }).click()
  await expect(lead.locator('article[data-row]').first()).toBeAttached({ timeout: 60_000 })
}

/** A minute may pass between what is printed and what is looked at. */
const isStill = (line: string): boolean => !line.startsWith('Printed ')

/** Made as PDF on both papers: what is drawn on the screen is printed, page by page, and nothing is cut. */
const paperIsTrue = async (page: Page): Promise<string> => {
  let whole = ''
  for (const paper of PAPERS) {
    const pages = await printed(page, paper)
    const lines = pages.flatMap((one) => one.lines)
    const drawn = await page.locator('section[data-paper] [data-text] > span').allInnerTexts()
    expect(lines.filter(isStill)).toEqual(drawn.map((one) => one.trim()).filter(isStill))
    for (const [at, one] of pages.entries())
      expect(one.lines.at(-1)).toBe(frameEn.page(at + 1, pages.length))
    whole = lines.join(' ')
    expect(whole).toContain(listsEn.revision(1))
    expect(whole).toMatch(/Printed Dec 4, 2026, 7:\d\d AM/)
    await page.emulateMedia({ media: 'print' })
    await nothingIsOutside(page, paper)
    await page.emulateMedia({ media: null })
  }
  return whole
}

/** What the plan's tasks make of each food, as the prep sheet calls its rows. */
const MADE = [
  ['Brown rice', 'cook.rice'],
  ['Herb chicken', 'cook.chicken'],
  ['Black beans', 'cook.beans'],
  ['Roast peppers', 'cook.peppers'],
  ['Tuna salad', 'make.tuna'],
  ['Sesame slaw', 'make.slaw'],
  ['Cheddar', 'make.cheddar'],
  ['Toasted almonds', 'make.almonds'],
  ['Lemon yogurt sauce', 'make.yogurt-sauce'],
  ['Pita', 'make.pita'],
] as const

const NINE = [
  ...(['milk', 'egg', 'fish', 'shellfish', 'tree-nuts'] as const),
  ...(['wheat', 'peanut', 'soy', 'sesame'] as const),
]

const bare = (text: string): string => text.replace(/\s/g, '')

/** "2 loads" and "24 × 1/2 cup = 3 qt", as the plan's screen has them of a pan. */
const planned = async (lead: Page, name: string) => {
  const label = (await planPan(lead, name).first().getAttribute('aria-label')) ?? ''
  const [, loads = '', total = ''] = /: (\d+ loads?), (.+ = .+)$/.exec(label) ?? []
  expect(total, label).not.toBe('')
  return { loads, total }
}

test('[PA19] [PA50] [LS9] [LS10] plan, print, prep, open: four papers say what the plan says, and ticks are on all tablets', async ({
  open,
  endServer,
}) => {
  test.setTimeout(420_000)
  const server = await serverOf(LUNCH)
  const lead = await open(`${server.pageUrl}/plan?station=${LUNCH.id}`, AT_ONCE, true)
  const ofPlan = { on: '2026-12-04', guests: '46' }
  await planTheDay(lead, { ...ofPlan, helper: ['ZZ', 'Period 3', ofPlan.on] })
  await expect(lead.getByRole('button', { name: papersEn.print, exact: true })).toHaveCount(0)
  await takeThePlan(lead)
  // Who is in no set-up is called by initials too, here, on the sheet and on the tablets.
  await expect(lead.getByRole('list', { name: planEn.tasks })).toContainText('ZZ')
  await expect(lead.getByRole('list', { name: planEn.tasks })).not.toContainText(/\bc\d+\b/)
  const all = new Map<string, Awaited<ReturnType<typeof planned>>>()
  for (const [name] of MADE) all.set(name, await planned(lead, name))
  const said = {
    chicken: await planned(lead, 'Herb chicken'),
    slaw: await planned(lead, 'Sesame slaw'),
    beans: await planned(lead, 'Black beans'),
  }
  for (const size of [...TABLETS, PHONE]) {
    await resize(lead, size)
    await lead.screenshot({ path: `test-results/plan-print-${size.width}.png` })
  }
  await resize(lead, AT_ONCE.viewport)

  await test.step('the prep sheet: the loads of the plan, with what each card takes of them', async () => {
    await toPaper(lead, 'prep')
    const row = (id: string) => lead.locator(`article[data-row="${id}"]`)
    for (const part of [said.chicken.loads, said.chicken.total])
      await expect(row('cook.chicken')).toContainText(part)
    for (const part of [said.slaw.loads, said.slaw.total])
      await expect(row('make.slaw')).toContainText(part)
    for (const [name, id] of MADE) {
      const { loads, total } = all.get(name) ?? { loads: '', total: '' }
      await expect(row(id), name).toContainText(loads)
      await expect(row(id), name).toContainText(total)
    }
    const loads = Number.parseInt(said.chicken.loads, 10)
    await expect(row('cook.chicken')).toContainText(`Chicken breast ${5 * loads} lb`)
    await expect(row('cook.chicken')).toContainText(prepSheetEn.raw)
    await expect(row('make.slaw').locator('[data-black]')).toHaveCount(1)
    for (const blank of ['read', 'time', 'initials'])
      await expect(row('make.slaw').locator(`[data-blank="${blank}"]`)).toHaveCount(1)
    const whole = await paperIsTrue(lead)
    for (const [name] of MADE)
      expect(bare(whole), name).toContain(bare(all.get(name)?.total ?? '?'))
    for (const part of [
      said.chicken.total,
      said.slaw.total,
      said.beans.total,
      'Period 3',
      'Discard by',
      'KT',
      'ZZ',
    ])
      expect(whole).toContain(part)
    expect(whole).not.toMatch(/\bc\d+\b/)
    await lead.pdf({ path: 'test-results/prep-sheet.pdf', preferCSSPageSize: true })
    await lead.goBack()
  })

  await test.step('the purchase list: in packs, by place; one tap says a place, and both screens have it', async () => {
    await toPaper(lead, 'purchase')
    const other = await open(lead.url(), AT_ONCE, true)
    const whole = await paperIsTrue(lead)
    const chicken = Number.parseInt(said.chicken.loads, 10)
    const beans = Number.parseInt(said.beans.loads, 10)
    const row = lead.locator('article[data-row="chicken-breast"]')
    await expect(row).toContainText(`${5 * chicken} lb`)
    await expect(lead.locator('article[data-row="black-beans"]')).toContainText(
      sayPacks(Math.ceil(beans / 6), '6 x #10 cans'),
    )
    expect(whole).toContain(purchaseListEn.lacking)
    expect(whole).toContain(purchaseListEn.noPlace)
    const places = lead.getByRole('region', { name: purchaseListEn.setPlaces })
    const asked = places.getByRole('group', { name: 'Chicken breast' })
    await asked.getByRole('button', { name: purchaseListEn.places.freezer, exact: true }).click()
    for (const page of [lead, other])
      await expect(
        page.locator('[data-band]', { hasText: purchaseListEn.places.freezer }),
      ).toHaveCount(1, { timeout: 60_000 })
    await expect(asked).toHaveCount(0)
    await lead.screenshot({ path: 'test-results/purchase-list.png', fullPage: true })
    await lead.pdf({ path: 'test-results/purchase-list.pdf', preferCSSPageSize: true })
    await other.context().close()
    await lead.goBack()
  })

  let packed = ''
  await test.step('the pack list: all of the line, with its numbers and their rules', async () => {
    await toPaper(lead, 'pack')
    const whole = await paperIsTrue(lead)
    for (const part of ['#16 blue scoop', 'half pan, 4 in deep, its lid', 'own #8 gray scoop'])
      expect(whole).toContain(part)
    expect(whole).toContain(packEn.groups.clean)
    packed = bare(whole)
    await lead.pdf({ path: 'test-results/pack-list.pdf', preferCSSPageSize: true })
  })

  await test.step('the set-up sheet: what goes in is the plan’s, pan by pan, with its totals', async () => {
    await lead.goBack()
    await toPaper(lead, 'setUp')
    const whole = bare(await paperIsTrue(lead))
    for (const [name] of MADE) {
      const { loads, total } = all.get(name) ?? { loads: '?', total: '?' }
      // Of others it says that they are beside it.
      const row = lead.locator('article[data-row]', {
        hasText: new RegExp(`^\\d+ ${name.replaceAll(' ', '\\s*')}`),
      })
      await expect(row, name).toHaveCount(1)
      const onPaper = bare((await row.textContent()) ?? '')
      expect(onPaper, name).toContain(bare(loads))
      expect(onPaper, name).toContain(bare(total))
      expect(whole, name).toContain(bare(total))
    }
    expect(whole).toContain(bare(prepSheetEn.sub('2026-12-04', '11:20', 46)))
    await lead.pdf({ path: 'test-results/set-up-sheet.pdf', preferCSSPageSize: true })
  })

  const [one, other] = [
    await open(`${server.pageUrl}/prep?station=${LUNCH.id}`, AT_ONCE, true),
    await open(`${server.pageUrl}/prep?station=${LUNCH.id}`, { viewport: PHONE }, true),
  ]

  await test.step('prep: a task is ticked on one tablet, a pan is packed on the other, and both have it', async () => {
    const slaw = (page: Page) => page.getByRole('button', { name: /^Sesame slaw \d+:/ })
    await expect(one.getByRole('button', { name: 'ZZ', exact: true }).first()).toBeVisible()
    await slaw(one).click()
    await sayInitials(one, 'AB')
    await one.getByRole('button', { name: prepEn.done, exact: true }).click()
    await expect(slaw(other)).toContainText(prepEn.is.done)
    for (const page of [one, other])
      await page.getByRole('button', { name: packEn.toPack, exact: true }).click()
    // Every number and thing that the tablets have is on the paper.
    const things = await one
      .locator('main section li button')
      .evaluateAll((rows) => rows.map((row) => row.textContent ?? ''))
    const drawn = await one
      .getByRole('list', { name: packEn.groups.pans })
      .getByRole('button')
      .evaluateAll((pans) => pans.map((pan) => `1${pan.getAttribute('aria-label')}`))
    expect(things.length).toBeGreaterThan(20)
    expect(drawn).toHaveLength(19)
    for (const thing of [...things, ...drawn]) expect(packed).toContain(bare(thing))
    const rice = (page: Page) => page.getByRole('button', { name: /^Brown rice: half pan/ }).first()
    await rice(other).click()
    await expect(other.getByText(prepEn.lacksInitials)).toBeVisible()
    await sayInitials(other, 'CD')
    await rice(other).click()
    await expect(rice(one)).toHaveAttribute('aria-pressed', 'true')
    await one.getByLabel(prepEn.otherInitials, { exact: true }).fill('AB')
    await one.getByRole('button', { name: /Probe thermometers/ }).click()
    await expect(other.getByRole('button', { name: /Probe thermometers/ })).toHaveAttribute(
      'aria-pressed',
      'true',
    )
    await expect(one.getByText(/^2 of \d+ things packed/)).toBeVisible()
    for (const size of TABLETS) {
      await resize(one, size)
      await one.screenshot({ path: `test-results/pack-${size.width}.png` })
    }
    await other.screenshot({ path: 'test-results/pack-390.png' })
    await rice(one).click()
    await expect(rice(other)).toHaveAttribute('aria-pressed', 'false')
  })

  await test.step('open: at seven past eleven the day begins with what was planned', async () => {
    server.signal('SIGUSR2')
    const start = await open(`${server.pageUrl}/?station=${LUNCH.id}`, AT_ONCE, true)
    await start.getByRole('link', { name: /11:20 AM to 12:20 PM/ }).click()
    await start.getByRole('button', { name: plannedWords.open }).click()
    await expect(start.getByText(/: open since 11:\d\d/)).toBeVisible({ timeout: 60_000 })
  })
  await endServer(server)
})

test('[PA10] [PA19] [PA30] names of 40 letters, nine allergens and nine pans in a well: nothing is cut on any paper of a plan', async ({
  open,
  endServer,
}) => {
  test.setTimeout(420_000)
  const line = crowded(LUNCH)
  const ready = {
    kind: 'ready' as const,
    cookedIn: 'usual' as const,
    roast: false,
    reheatable: false,
  }
  const server = await serverOf({
    ...line,
    invented: false,
    components: line.components.map((one) => ({ ...one, food: ready })),
    ingredients: line.ingredients.map((one) => ({
      ...one,
      declarations: Object.fromEntries(NINE.map((code) => [code, 'contains' as const])),
      // Nobody said: traits that contradict what is contained are refused.
      traits: null,
    })),
  })
  const lead = await open(`${server.pageUrl}/plan?station=${LUNCH.id}`, AT_ONCE, true)
  await planTheDay(lead, { on: '2026-12-04', guests: '40' })
  await takeThePlan(lead)
  for (const paper of ['prep', 'pack', 'purchase'] as const) {
    await toPaper(lead, paper)
    const letters = (await paperIsTrue(lead)).replace(/\s/g, '')
    if (paper !== 'purchase')
      for (const { name } of line.components)
        expect(letters, name).toContain(name.replace(/\s/g, ''))
    await lead.pdf({ path: `test-results/crowded-${paper}.pdf`, preferCSSPageSize: true })
    await lead.goBack()
    await expect(lead.getByRole('list', { name: planEn.title })).toBeVisible({ timeout: 60_000 })
  }

  await lead.getByRole('button', { name: papersEn.print, exact: true }).click()
  await lead.getByRole('link', { name: new RegExp(`^${papersEn.of.labels.name}`) }).click()
  await expect(lead.locator('article[data-label]').first()).toBeAttached({ timeout: 60_000 })
  for (const id of ['cut-letter', 'letter-30', 'a4-21', 'roll-2x2', 'roll-62'] as const)
    await test.step(`labels: ${id}`, async () => {
      const { name, size } = labelsEn.stock[id]
      await lead.getByRole('button', { name: `${name} ${size}`, exact: true }).click()
      const pages = pdfPages(await lead.pdf({ preferCSSPageSize: true }))
      const letters = bare(pages.flatMap((one) => one.lines).join(''))
      for (const one of line.components) expect(letters, one.name).toContain(bare(one.name))
      for (const code of NINE) expect(letters).toContain(bare(needName(code).toUpperCase()))
      await lead.emulateMedia({ media: 'print' })
      await nothingIsOutside(lead, id)
      await lead.emulateMedia({ media: null })
      await lead.pdf({ path: `test-results/crowded-labels-${id}.pdf`, preferCSSPageSize: true })
    })
  await endServer(server)
})
