/** Sizes that eyes and hands need, on a tablet of 5.88 px/mm. */
import type { Page } from '@playwright/test'
import { DEFAULT_PX_PER_MM } from '#lib/measure/legibility.ts'
import { arcMinutesOf, type Reading } from '#tests/support/legible-sizes.ts'
import { apart, type DrawnText, drawnControls, drawnTexts, scrolled } from './drawn.ts'
import { expect, type Size } from './stage.ts'
import type { View } from './views/view.ts'

/** Reading distances of the assembly screen, and what a capital must fill there. */
const AT_A_GLANCE: Reading = { distanceM: 1, arcMinutes: 20 }
const AT_THE_PAN: Reading = { distanceM: 0.7, arcMinutes: 16 }

/** Rounding of a layout to whole device pixels. */
const ROUNDING_PX = 0.6

/** Least height of what a gloved hand meets, and least room around it; targets at the counter. */
const HAND_MM = 20
const ROOM_MM = 3
const COUNTER_MM = 15

const mm = (px: number): number => px / DEFAULT_PX_PER_MM
const ROUNDING_MM = mm(ROUNDING_PX)
const place = ({ width, height }: Size): string => `${width} × ${height}`

const tooSmall = (
  texts: readonly DrawnText[],
  { distanceM, arcMinutes }: Reading,
): readonly string[] =>
  texts.flatMap(({ text, fontPx }) => {
    const filled = arcMinutesOf(fontPx, DEFAULT_PX_PER_MM, distanceM)
    return filled < arcMinutes ? [`${text}: ${filled.toFixed(1)}′ (${fontPx} px)`] : []
  })

/** Item, need, counts and "no" read from a metre; names and scoops from where the hand is. */
export const readsOnTheLine = async (page: Page, view: View, size: Size): Promise<void> => {
  const inPans = await drawnTexts(page, 'main ol')
  const counts = inPans.filter(({ text }) => /^\d+$/.test(text))
  const nos = inPans.filter(({ text }) => text === 'no')
  const scoops = inPans.filter(({ text }) => /^#\d+$/.test(text))
  const names = await drawnTexts(page, 'main ol h2')
  const item = await drawnTexts(page, 'h1')
  const where = place(size)
  for (const [what, some] of Object.entries({ item, names, counts, scoops }))
    expect.soft(some.length, `${where}: ${what}`).toBeGreaterThan(0)
  if (/kept apart|leave out/.test(view.name)) {
    const needs = await drawnTexts(page, '[data-needs] strong')
    expect.soft(needs.length, `${where}: needs`).toBeGreaterThan(0)
    expect.soft(tooSmall(needs, AT_A_GLANCE), `${where}: needs too small`).toEqual([])
  }
  const glance = [...item, ...counts, ...nos]
  expect.soft(tooSmall(glance, AT_A_GLANCE), `${where}: too small from 1 m`).toEqual([])
  expect.soft(tooSmall([...names, ...scoops], AT_THE_PAN), `${where}: from 0.7 m`).toEqual([])
}

/** A build's name is drawn with its dash, alone and in sentences, and on one line. */
export const buildsAreSaid = (texts: readonly DrawnText[]): void => {
  const bare = texts.filter(({ text }) => /\b\d+[A-Z]{1,2}\b|\d-\u2060?$/.test(text))
  expect
    .soft(
      bare.map(({ text }) => text),
      'build names without their dash, or cut in two',
    )
    .toEqual([])
}

/** No text is cut off, and none lies on another. */
export const nothingIsCut = (texts: readonly DrawnText[], size: Size): void => {
  expect.soft(texts.length, `${place(size)}: texts`).toBeGreaterThan(0)
  const cut = texts.filter((text) => text.cut > ROUNDING_PX)
  const overlapping = texts.flatMap((one, index) =>
    texts
      .slice(index + 1)
      .filter((other) => apart(one, other) < -1)
      .map((other) => `“${one.text}”, “${other.text}”: ${(-apart(one, other)).toFixed(1)} px`),
  )
  expect
    .soft(
      cut.map(({ text, cut: by }) => `“${text}”: ${by.toFixed(1)} px`),
      `${place(size)}: cut off`,
    )
    .toEqual([])
  expect.soft(overlapping, `${place(size)}: one on another`).toEqual([])
}

/** Nothing scrolls, neither the page nor a part of it, and all of it is in sight. */
export const fitsWithoutScrolling = async (
  page: Page,
  texts: readonly DrawnText[],
  size: Size,
): Promise<void> => {
  expect.soft(await scrolled(page), `${place(size)}: what scrolls`).toEqual([])
  const outside = texts.filter(
    ({ left, top, right, bottom }) =>
      left < 0 || top < 0 || bottom > size.height || right > size.width,
  )
  expect
    .soft(
      outside.map(({ text }) => text),
      `${place(size)}: out of sight`,
    )
    .toEqual([])
  const clipped = (await drawnControls(page)).filter(({ cut }) => cut > ROUNDING_PX)
  expect
    .soft(
      clipped.map(({ name, cut }) => `${name}: ${cut.toFixed(1)} px`),
      `${place(size)}: controls that a frame cuts`,
    )
    .toEqual([])
}

/** On a phone nothing is beside the window, and the main action can be tapped. */
export const worksOnAPhone = async (page: Page, view: View, size: Size): Promise<void> => {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth)
  expect.soft(wide, 'wide on a phone').toBeLessThanOrEqual(size.width)
  const beside = (await drawnTexts(page)).filter(
    ({ left, right, isSwiped }) => !isSwiped && (left < 0 || right > size.width),
  )
  expect
    .soft(
      beside.map(({ text }) => text),
      'beside the window of a phone',
    )
    .toEqual([])
  // Whose hand holds the phone types with its thumb: nothing is scrolled to reach the keys.
  for (const pad of await page.locator('[data-pad]').all()) {
    await page.evaluate(() => scrollTo(0, 0))
    await expect.soft(pad, 'the keys, before anything is scrolled').toBeInViewport({ ratio: 0.99 })
  }
  for (const main of view.main ?? []) {
    const button = page.getByRole('button', { name: main }).first()
    // Again while the screen still settles: what is never whole, or lies below another, fails.
    await expect(async () => {
      await button.scrollIntoViewIfNeeded()
      await expect(button, 'whole on a phone').toBeInViewport({ ratio: 0.99, timeout: 2_000 })
      await button.click({ trial: true, timeout: 3_000 })
    }).toPass({ timeout: 20_000 })
  }
}

/** Main actions are 20 mm high and 3 mm from everything else that can be tapped. */
export const fitsGlovedHands = async (page: Page, view: View, size: Size): Promise<void> => {
  const controls = await drawnControls(page)
  const mains = controls.filter(({ name }) => view.main?.some((main) => main.test(name)))
  expect.soft(mains.length, `${place(size)}: main actions`).toBe(view.main?.length)
  for (const main of mains) {
    const where = `${place(size)}: ${main.name}`
    expect
      .soft(mm(main.bottom - main.top), `${where}, mm high`)
      .toBeGreaterThanOrEqual(HAND_MM - ROUNDING_MM)
    for (const other of controls.filter((one) => one !== main))
      expect
        .soft(mm(apart(main, other)), `${where}, mm to ${other.name}`)
        .toBeGreaterThanOrEqual(ROOM_MM - ROUNDING_MM)
  }
}

/** Whatever is tapped at the counter is 15 mm wide and high. */
export const targetsAreLarge = async (page: Page, size: Size): Promise<void> => {
  const small = (await drawnControls(page)).flatMap(({ name, left, right, top, bottom }) => {
    const least = mm(Math.min(right - left, bottom - top))
    return least < COUNTER_MM - ROUNDING_MM ? [`${name}: ${least.toFixed(1)} mm`] : []
  })
  expect.soft(small, `${place(size)}: small targets`).toEqual([])
}
