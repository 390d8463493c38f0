import type { Page } from '@playwright/test'
import { expect, resize, TABLETS, test } from './support/stage.ts'
import { view } from './support/views.ts'

/** Rounding of a layout to whole device pixels. */
const ROUNDING_PX = 1

interface Place {
  readonly pan: string
  readonly left: number
  readonly width: number
}

/** Where each pan of the first whole line of a screen stands, from left to right. */
const placesOn = (page: Page): Promise<readonly Place[]> =>
  page.evaluate(() => {
    const lines = [...document.querySelectorAll('ol')].filter(
      (one) => one.querySelector(':scope > li > ol > [data-pan]') && one.checkVisibility(),
    )
    return [...(lines.at(-1)?.querySelectorAll('[data-pan]') ?? [])].map((at) => {
      const { left, width } = at.getBoundingClientRect()
      return { pan: at.getAttribute('data-pan') ?? '', left, width }
    })
  })

const SCREENS = [
  'counter, ask',
  'counter, ask, one need',
  'counter, choose',
  'counter, read-back',
  'counter, tickets',
  'pans, calm',
  'pans, rush',
  'pans, a pan',
]

test('a pan never moves: it stands in one place on every screen of the crew', async ({ see }) => {
  test.slow()
  const pages: { name: string; page: Page }[] = []
  for (const name of SCREENS) pages.push({ name, page: await see(view(name)) })
  for (const size of TABLETS) {
    const seen = []
    for (const { name, page } of pages) {
      await resize(page, size)
      seen.push({ name, places: await placesOn(page) })
    }
    const first = seen[0]?.places ?? []
    expect(first.length, `${size.width}: pans`).toBeGreaterThan(5)
    for (const { name, places } of seen) {
      expect
        .soft(
          places.map(({ pan }) => pan),
          `${name}, ${size.width}`,
        )
        .toEqual(first.map(({ pan }) => pan))
      const moved = places.flatMap(({ pan, left, width }, index) => {
        const there = first[index]
        return there &&
          Math.abs(there.left - left) <= ROUNDING_PX &&
          Math.abs(there.width - width) <= ROUNDING_PX
          ? []
          : [`${pan}: ${left} +${width}, not ${there?.left} +${there?.width}`]
      })
      expect.soft(moved, `${name}, ${size.width}`).toEqual([])
    }
  }
})
