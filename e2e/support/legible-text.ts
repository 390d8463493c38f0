/** Whether every text that has to be read is large enough for where it is read from, and upright. */
import type { Page } from '@playwright/test'
import { DEFAULT_PX_PER_MM } from '#lib/measure/legibility.ts'
import {
  BOUNDS,
  type Bound,
  FLOOR_LATER,
  FLOOR_PX,
  UPRIGHT_LATER,
} from '#tests/support/legible-bounds.ts'
import { arcMinutesOf, type Reading, TELEVISION_PX_PER_MM } from '#tests/support/legible-sizes.ts'
import { type DrawnText, drawnTexts } from './drawn.ts'
import { expect, type Size } from './stage.ts'
import type { View } from './views/view.ts'

/** A browser's rounding of what is worked out. */
const ROUNDING_PX = 0.05

export const TELEVISION: Size = { width: 1920, height: 1080 }
/** A guest's, of what is ready, on a television. */
const FROM_AFAR: Reading = { distanceM: 4, arcMinutes: 16 }

const place = ({ width, height }: Size): string => `${width} × ${height}`
const said = ({ text, fontPx }: DrawnText): string => `“${text}”: ${fontPx.toFixed(1)} px`

/** The texts that a bound holds for. */
export const boundTexts = async (
  page: Page,
  { what, within, text }: Bound,
): Promise<readonly DrawnText[]> => {
  const all = await drawnTexts(page, `:is(${within}), [data-legible="${what}"]`)
  return all.filter((one) => !one.isAside && (text?.test(one.text) ?? true))
}

/** Every bound of the view's screen is held, but those that are to be held later. */
export const isLargeEnough = async (page: Page, view: View, size: Size): Promise<void> => {
  // A dialog lies over what the bounds are about.
  if (await page.locator('dialog[open]').count()) return
  for (const bound of BOUNDS[view.path] ?? []) {
    if (bound.later?.test(view.name)) continue
    const texts = await boundTexts(page, bound)
    const where = `${place(size)}: ${bound.what}`
    if (bound.shownIn.test(view.name)) expect.soft(texts.length, where).toBeGreaterThan(0)
    const small = texts.filter(({ fontPx }) => fontPx < bound.leastPx - ROUNDING_PX)
    expect.soft(small.map(said), `${where} under ${bound.leastPx} px`).toEqual([])
  }
}

/** Text under the smallest size, and text that runs upward and names no sliver. */
export const underTheFloor = (texts: readonly DrawnText[]): readonly string[] =>
  texts.filter(({ fontPx, isOnPaper }) => !isOnPaper && fontPx < FLOOR_PX - ROUNDING_PX).map(said)
export const notUpright = (texts: readonly DrawnText[]): readonly string[] =>
  texts.filter(({ isTurned, isSliver }) => isTurned && !isSliver).map(said)

export const isUpright = (texts: readonly DrawnText[], { path }: View, size: Size): void => {
  if (!UPRIGHT_LATER.includes(path))
    expect.soft(notUpright(texts), `${place(size)}: not upright`).toEqual([])
  if (!FLOOR_LATER.includes(path))
    expect.soft(underTheFloor(texts), `${place(size)}: under ${FLOOR_PX} px`).toEqual([])
}

/** On a television what is ready is read from 4 m, and nothing that isn't ready is larger. */
export const readsFromAfar = async (page: Page): Promise<void> => {
  const texts = await drawnTexts(page, '[data-ticket]')
  const arcs = texts.map(({ text, fontPx }) => ({
    text,
    arc: arcMinutesOf(fontPx, TELEVISION_PX_PER_MM, FROM_AFAR.distanceM),
  }))
  expect
    .soft(
      arcs.filter(({ arc }) => arc < FROM_AFAR.arcMinutes),
      `${place(TELEVISION)}: ready, from 4 m`,
    )
    .toEqual([])
  const onPath = await drawnTexts(page, '[data-place="waiting"] li, [data-place="making"] li')
  const smallest = Math.min(Number.POSITIVE_INFINITY, ...texts.map(({ fontPx }) => fontPx))
  const larger = onPath.filter(({ fontPx }) => fontPx > smallest + ROUNDING_PX)
  expect.soft(larger.map(said), `${place(TELEVISION)}: larger than what is ready`).toEqual([])
}

export interface Measured {
  readonly smallest: DrawnText
  readonly mm: number
  readonly arcMinutes: number
  readonly isHeld: boolean
}

/** The smallest text of a bound, on a tablet; null where the screen has none. */
export const measure = async (page: Page, bound: Bound): Promise<Measured | null> => {
  const texts = await boundTexts(page, bound)
  const [smallest] = [...texts].sort((one, other) => one.fontPx - other.fontPx)
  if (!smallest) return null
  const { fontPx } = smallest
  return {
    smallest,
    mm: fontPx / DEFAULT_PX_PER_MM,
    arcMinutes: arcMinutesOf(fontPx, DEFAULT_PX_PER_MM, bound.distanceM),
    isHeld: fontPx >= bound.leastPx - ROUNDING_PX,
  }
}
