import { widthEm } from '#lib/paper/page/letter-widths.ts'
import { PAPERS } from '#lib/paper/page/papers.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { setUpSheetEn as words } from '#lib/paper/words/set-up-sheet-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { setUpWords } from '#lib/rooms/pans/words/set-up-en.ts'
import { pansOf } from '#lib/station/find.ts'
import { demoStation } from '#server/demo-station.ts'
import { crowded } from './support/crowded-line.ts'
import { tapUntil } from './support/hands.ts'
import { inkOf, nothingIsOutside, printed, ROUNDING_PX } from './support/paper-ink.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

test('[PA3] [PA7] plan, print, prep, open: the line’s set-up sheet says what the pans’ screen says', async ({
  open,
  see,
  play,
}) => {
  await play('ready to load')
  const pans = await see({ ...view('pans, unloaded'), scene: 'ready to load' })
  const sheet = pans.locator('section[data-job="set-up"]')
  await tapUntil(pans.getByRole('button', { name: pansWords.loadLine, exact: true }), sheet)
  const page = await open('/paper/set-up')
  const rows = page.locator('article[data-row]')
  await expect(rows).toHaveCount(10)

  await test.step('every amount is the one that goes into the pan', async () => {
    await expect(sheet.getByRole('link', { name: setUpWords.onPaper })).toHaveAttribute(
      'href',
      /^\/paper\/set-up/,
    )
    const close = (text: string) => text.replace(/\s/g, '')
    for (const [at, { id }] of pansOf(demoStation).entries()) {
      await sheet.locator(`[data-notch="${id}"]`).click()
      const shown = sheet.getByRole('status', { name: formWords.goesIn, exact: true })
      await expect(sheet.locator(`[data-notch="${id}"]`)).toHaveAttribute('data-lit')
      const [, portions = '', total = ''] =
        (await shown.textContent())?.match(/^Goes in(\d+) portions?(.*)$/) ?? []
      const onPaper = (await rows.nth(at).textContent()) ?? ''
      expect(total, id).toMatch(new RegExp(`^${portions} × .+ = .+`))
      expect(close(onPaper), id).toContain(close(total))
    }
  })

  for (const paper of PAPERS)
    await test.step(`${paper}: the demo’s ten pans are on one page, all of it`, async () => {
      const pages = await printed(page, paper)
      expect(pages).toHaveLength(1)
      const lines = pages.flatMap((one) => one.lines)
      const drawn = (
        await page.locator('section[data-paper] [data-text] > span').allInnerTexts()
      ).map((one) => one.trim())
      // A minute may pass between what is printed and what is looked at.
      const isStill = (line: string): boolean => !line.startsWith('Printed ')
      expect(lines.filter(isStill)).toEqual(drawn.filter(isStill))
      const whole = lines.join(' ')
      for (const part of ['24 × 1/2 cup = 3 qt', '#16 blue', words.demo, words.revision(1)])
        expect(whole).toContain(part)
      expect(lines.at(-1)).toBe(frameEn.page(1, 1))
      for (const blank of ['loaded', 'initials'])
        await expect(rows.locator(`[data-blank="${blank}"]`)).toHaveCount(10)
      await expect(rows.locator('[data-blank="read"]')).toHaveCount(8)
      await page.emulateMedia({ media: 'print' })
      await nothingIsOutside(page, paper)
      await page.emulateMedia({ media: null })
    })
})

test('[PA1] [PA2] names of 40 letters and pans behind one another: nothing is cut on any paper', async ({
  open,
}) => {
  const page = await open('/paper/set-up')
  const station = crowded(demoStation)
  await page.route('**/allergens*', (route) =>
    route.fulfill({
      json: {
        at: Date.parse('2026-11-29T16:00:00Z'),
        facts: {
          station: { ...station, invented: false },
          revision: 12,
          soiled: [],
          lent: [],
          asOf: null,
        },
      },
    }),
  )
  await page.reload()
  await expect(page.locator('article[data-row]')).toHaveCount(14, { timeout: 30_000 })
  for (const paper of PAPERS) {
    const pages = await printed(page, paper)
    expect(pages.length).toBeGreaterThan(1)
    for (const [at, { lines }] of pages.entries())
      expect(lines.at(-1)).toBe(frameEn.page(at + 1, pages.length))
    const letters = pages
      .flatMap(({ lines }) => lines)
      .join('')
      .replace(/\s/g, '')
    for (const { name } of station.components)
      expect(letters, name).toContain(name.replace(/\s/g, ''))
    expect(letters).toContain(words.outBy.replace(/\s/g, ''))
    await page.emulateMedia({ media: 'print' })
    await nothingIsOutside(page, paper)
    await page.emulateMedia({ media: null })
  }
  await test.step('letters are no wider than the paper reckons', async () => {
    await page.emulateMedia({ media: 'print' })
    const found: string[] = []
    for (const ink of (await inkOf(page)).flat()) {
      const [width = 0] = ink.widths
      if (ink.widths.length !== 1) continue
      const weight = Number(ink.weight) >= 700 ? 'bold' : 'regular'
      const reckoned = widthEm(ink.text.trim(), weight) * ink.fontPx
      if (width > reckoned + ROUNDING_PX || width < reckoned * 0.9)
        found.push(`${ink.text}: ${width} is drawn, ${reckoned} reckoned`)
    }
    expect(found).toEqual([])
  })
})
