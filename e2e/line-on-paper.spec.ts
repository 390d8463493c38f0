import type { Page } from '@playwright/test'
import { widthEm } from '#lib/paper/page/letter-widths.ts'
import { LEAST_PT, MM_PER_PT, PAPER_MM, PAPERS, type Paper } from '#lib/paper/page/papers.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { setUpSheetEn as words } from '#lib/paper/words/set-up-sheet-en.ts'
import { formWords } from '#lib/rooms/food/words/food-forms-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { setUpWords } from '#lib/rooms/pans/words/set-up-en.ts'
import { pansOf } from '#lib/station/find.ts'
import { stationSchema } from '#lib/station/schema.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { demoStation } from '#server/demo-station.ts'
import { tapUntil } from './support/hands.ts'
import { pdfPages } from './support/pdf-text.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

const PX_PER_MM = 96 / 25.4
/** Of a layout, to whole device pixels. */
const ROUNDING_PX = 0.6

interface Ink {
  readonly text: string
  readonly fontPx: number
  readonly weight: string
  readonly widths: readonly number[]
  /** How far its letters reach out of its own box, and that out of what holds it, CSS pixels. */
  readonly out: number
  readonly outOfPage: number
  readonly box: {
    readonly left: number
    readonly top: number
    readonly right: number
    readonly bottom: number
  }
}

/** Each text of a page as it is laid and as it is drawn. */
const inkOf = (page: Page): Promise<readonly (readonly Ink[])[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('section[data-paper]')].map((sheet) => {
      const beyond = (inner: DOMRect, outer: DOMRect): number =>
        Math.max(
          outer.left - inner.left,
          outer.top - inner.top,
          inner.right - outer.right,
          inner.bottom - outer.bottom,
        )
      const edge = sheet.getBoundingClientRect()
      return [...sheet.querySelectorAll<HTMLElement>('[data-text]')].map((element) => {
        const own = element.getBoundingClientRect()
        const style = getComputedStyle(element)
        const lines = [...element.querySelectorAll('span')].map((span) => {
          const range = document.createRange()
          range.selectNodeContents(span)
          return range.getBoundingClientRect()
        })
        const { left, top, right, bottom } = own
        return {
          text: element.textContent ?? '',
          fontPx: Number.parseFloat(style.fontSize),
          weight: style.fontWeight,
          widths: lines.map(({ width }) => width),
          out: Math.max(
            ...lines.map((line) => Math.max(own.left - line.left, line.right - own.right)),
          ),
          outOfPage: beyond(own, edge),
          box: { left, top, right, bottom },
        }
      })
    }),
  )

/** Nothing is outside its box, its page or under the least size; nothing lies on another. */
const nothingIsOutside = async (page: Page, paper: Paper): Promise<void> => {
  const pages = await inkOf(page)
  expect(pages.length).toBeGreaterThan(0)
  for (const [at, inks] of pages.entries()) {
    const where = `${paper}, page ${at + 1}`
    const said = (some: readonly Ink[]) => some.map(({ text, out }) => `${text}: ${out}`)
    expect(said(inks.filter(({ out }) => out > ROUNDING_PX)), `${where}: out of its box`).toEqual(
      [],
    )
    expect(said(inks.filter(({ outOfPage }) => outOfPage > 0)), `${where}: out of it`).toEqual([])
    const small = inks.filter(({ fontPx }) => fontPx / PX_PER_MM / MM_PER_PT < LEAST_PT - 0.01)
    expect(said(small), `${where}: under ${LEAST_PT} pt`).toEqual([])
    const over = inks.flatMap((one, place) =>
      inks.slice(place + 1).flatMap((other) => {
        const deep = Math.min(
          one.box.right - other.box.left,
          other.box.right - one.box.left,
          one.box.bottom - other.box.top,
          other.box.bottom - one.box.top,
        )
        return deep > ROUNDING_PX ? [`${one.text} | ${other.text}: ${deep}`] : []
      }),
    )
    expect(over, `${where}: one on another`).toEqual([])
  }
}

const choose = async (page: Page, paper: Paper): Promise<void> => {
  const button = page.getByRole('button', { name: frameEn.papers[paper], exact: true })
  await button.click()
  await expect(button).toHaveAttribute('aria-pressed', 'true')
}

/** Made by the browser, and read back. */
const printed = async (page: Page, paper: Paper) => {
  await choose(page, paper)
  const pages = pdfPages(await page.pdf({ preferCSSPageSize: true }))
  const { width, height } = PAPER_MM[paper]
  for (const one of pages) {
    expect(Math.abs(one.width - width / MM_PER_PT), `${paper}, wide`).toBeLessThan(1)
    expect(Math.abs(one.height - height / MM_PER_PT), `${paper}, high`).toBeLessThan(1)
  }
  return pages
}

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
    let weights = 0
    for (const [at, { id }] of pansOf(demoStation).entries()) {
      await sheet.locator(`[data-notch="${id}"]`).click()
      const shown = sheet.getByRole('status', { name: formWords.goesIn, exact: true })
      await expect(sheet.locator(`[data-notch="${id}"]`)).toHaveAttribute('data-lit')
      const [, portions = '', amount = ''] =
        (await shown.textContent())?.match(/^Goes in(\d+) portions?(.*)$/) ?? []
      const onPaper = (await rows.nth(at).textContent()) ?? ''
      expect(onPaper, id).toContain(` ${portions} × `)
      const [weight = ''] = amount.split(' · ')
      if (!/oz$/.test(weight)) continue
      expect(onPaper, id).toContain(` ${weight} `)
      weights += 1
    }
    expect(weights, 'pans that are weighed').toBe(8)
  })

  for (const paper of PAPERS)
    await test.step(`${paper}: the demo’s ten pans are on one page, all of it`, async () => {
      const pages = await printed(page, paper)
      expect(pages).toHaveLength(1)
      const lines = pages.flatMap((one) => one.lines)
      const drawn = (
        await page.locator('section[data-paper] [data-text] > span').allInnerTexts()
      ).map((one) => one.trim())
      expect(lines).toEqual(drawn)
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

/** 40 letters, of one word and of several. */
const LONG = [
  'Slowroastedpaprikachickenthighsdeboned',
  'Wheat berries with preserved lemon, dill',
].map((name) => name.padEnd(40, 'x').slice(0, 40))

/** Nine ninths in a well, one by time alone, and each touches all others. */
const crowded = (): StationDocument => {
  const [, , cold, last] = demoStation.line.wells
  if (!cold || !last) throw new Error('the demo has four wells')
  const pans = demoStation.line.wells.flatMap((well) => well.pans)
  const small = pans.map((pan) => ({ ...pan, size: 'ninth' as const, depthIn: 4 as const }))
  const ids = demoStation.components.map(({ id }) => id)
  return stationSchema.parse({
    ...demoStation,
    name: LONG.join(' ').slice(0, 60),
    components: demoStation.components.map((one, at) => ({
      ...one,
      held: one.held === 'hot' ? ('cold' as const) : one.held,
      name: `${(LONG[at % 2] ?? '').slice(0, 38)}${at % 10}`,
    })),
    contacts: (['beside', 'scoop', 'board'] as const).map((kind) => ({
      id: kind,
      kind,
      components: ids,
    })),
    line: {
      wells: [
        { ...cold, id: 'crowded', pans: small.slice(0, 9) },
        { ...last, id: 'by-time', held: 'time', pans: small.slice(9) },
        ...Array.from({ length: 4 }, (_, at) => ({
          ...cold,
          id: `more-${at}`,
          pans: [{ ...small[2], id: `pan-more-${at}`, size: 'sixth' as const }],
        })),
      ],
    },
  })
}

test('[PA1] [PA2] names of 40 letters and pans behind one another: nothing is cut on any paper', async ({
  open,
}) => {
  const page = await open('/paper/set-up')
  const station = crowded()
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
