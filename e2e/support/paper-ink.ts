/** A paper as Chromium lays it and prints it: measured, and read back. */
import type { Page } from '@playwright/test'
import { LEAST_PT, MM_PER_PT, PAPER_MM, type Paper } from '#lib/paper/page/papers.ts'
import { frameEn } from '#lib/paper/words/frame-en.ts'
import { type PdfPage, pdfPages } from './pdf-text.ts'
import { expect } from './station.ts'

const PX_PER_MM = 96 / 25.4
/** Of a layout, to whole device pixels. */
export const ROUNDING_PX = 0.6

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
export const inkOf = (page: Page): Promise<readonly (readonly Ink[])[]> =>
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
export const nothingIsOutside = async (page: Page, paper: string): Promise<void> => {
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
export const printed = async (page: Page, paper: Paper): Promise<readonly PdfPage[]> => {
  await choose(page, paper)
  const pages = pdfPages(await page.pdf({ preferCSSPageSize: true }))
  const { width, height } = PAPER_MM[paper]
  for (const one of pages) {
    expect(Math.abs(one.width - width / MM_PER_PT), `${paper}, wide`).toBeLessThan(1)
    expect(Math.abs(one.height - height / MM_PER_PT), `${paper}, high`).toBeLessThan(1)
  }
  return pages
}
