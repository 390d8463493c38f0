/** What keyboards and readers of screens meet. */
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect } from './stage.ts'

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** No rule of WCAG 2.2 AA that axe can check is broken, contrast among them. */
export const breaksNoRule = async (page: Page): Promise<void> => {
  // Without frames to look into, the mode of old saves a page that axe would open each time.
  const { violations, passes, incomplete } = await new AxeBuilder({ page })
    .options({ resultTypes: ['violations', 'incomplete'], preload: false })
    .withTags(TAGS)
    .setLegacyMode(true)
    .analyze()
  expect.soft(passes.length, 'rules that held').toBeGreaterThan(0)
  const broken = violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')} ${failureSummary}`),
  )
  expect.soft(broken, 'rules of WCAG 2.2 AA that are broken').toEqual([])
  // axe takes words in the very colour of their ground for hidden on purpose, and passes them by.
  const unseen = incomplete.flatMap(({ nodes }) =>
    nodes
      .filter(({ any }) => any.some(({ data }) => data?.messageKey === 'equalRatio'))
      .map(({ html }) => html),
  )
  expect.soft(unseen, 'words in the colour of what they stand on').toEqual([])
}

declare global {
  interface Window {
    tabStops?: readonly Stop[]
  }
}

interface Stop {
  readonly place: number
  readonly ring: boolean
  readonly inSight: boolean
}

/** Numbers what the Tab key should reach, in the order of the document, and notes where it stops. */
const numberControls = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const root = document.querySelector('dialog[open]') ?? document.body
    const all = 'button, a[href], input, select, textarea, summary, [tabindex="0"]'
    const stops: Stop[] = []
    window.tabStops = stops
    for (const walked of document.querySelectorAll<HTMLElement>('[data-walked]'))
      delete walked.dataset.walked
    addEventListener('focusin', ({ target: element }) => {
      if (!(element instanceof HTMLElement) || element.dataset.walked === undefined) return
      const { outlineStyle, outlineWidth } = getComputedStyle(element)
      const { left, right, top, bottom } = element.getBoundingClientRect()
      const seen = document.elementFromPoint((left + right) / 2, (top + bottom) / 2)
      stops.push({
        place: Number(element.dataset.walked),
        ring: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
        inSight:
          seen !== null &&
          (element.contains(seen) || seen.contains(element)) &&
          left >= 0 &&
          right <= innerWidth,
      })
    })
    return [...root.querySelectorAll<HTMLElement>(all)]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }))
      .filter((element) => !element.matches(':disabled') && element.closest('[inert]') === null)
      .map((element, place) => {
        element.dataset.walked = String(place)
        return (
          element.getAttribute('aria-label') ?? (element.textContent ?? '').replace(/\s+/g, ' ')
        )
      })
  })

/** Tab reaches every control in the document's order, each with a ring and in sight. */
export const tabReachesAll = async (page: Page): Promise<void> => {
  const controls = await numberControls(page)
  let stops: readonly Stop[] = []
  let pressed = 0
  const isThrough = () => new Set(stops.map(({ place }) => place)).size === controls.length
  // Within a date Tab stops at its month, day, year and calendar, within a time at as many.
  const dates = await page.locator('input[type="date"], input[type="time"]').count()
  while (pressed < 2 * controls.length + 8 + 3 * dates && !isThrough()) {
    const presses = pressed === 0 ? Math.max(1, controls.length) : 1
    for (let press = 0; press < presses; press += 1) await page.keyboard.press('Tab')
    pressed += presses
    stops = await page.evaluate(() => window.tabStops ?? [])
  }
  const named = (some: readonly Stop[]) => some.map(({ place }) => controls[place])
  const reached = new Set(stops.map(({ place }) => place))
  const first = stops[0]?.place ?? 0
  const inOrder = stops.map((_, index) => controls[(first + index) % controls.length])
  expect
    .soft(
      controls.filter((_, place) => !reached.has(place)),
      'controls that Tab passes by',
    )
    .toEqual([])
  expect.soft(named(stops), 'the order in which Tab goes').toEqual(inOrder)
  expect.soft(named(stops.filter(({ ring }) => !ring)), 'controls without a ring').toEqual([])
  expect.soft(named(stops.filter(({ inSight }) => !inSight)), 'controls that hide').toEqual([])
}
