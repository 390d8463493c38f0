import type { Page } from '@playwright/test'
import { BOUNDS, type Bound } from '#tests/support/legible-bounds.ts'
import { drawnTexts } from './support/drawn.ts'
import { measure, notUpright, underTheFloor } from './support/legible-text.ts'
import { resize, TABLET, TABLETS, test } from './support/stage.ts'
import type { View } from './support/views/view.ts'
import { views } from './support/views.ts'

/** `npm run legible` prints it; what has to hold is held by every-screen.spec.ts. */
const lineOf = async (page: Page, bound: Bound, head: string): Promise<string[]> => {
  const found = await measure(page, bound)
  if (!found) return []
  const { smallest, mm, arcMinutes, isHeld } = found
  const { what, leastPx, distanceM, later } = bound
  return [
    [
      `${head} ${what.padEnd(13)}`,
      `${smallest.fontPx.toFixed(1).padStart(6)} px ${mm.toFixed(1).padStart(5)} mm`,
      `${arcMinutes.toFixed(1).padStart(5)}′ at ${distanceM} m`,
      `least ${leastPx} px ${isHeld ? 'held' : later ? 'NOT YET' : 'FAILS'}`,
      `“${smallest.text.slice(0, 40)}”`,
    ].join('  '),
  ]
}

const linesOf = async (page: Page, view: View): Promise<string[]> => {
  const lines: string[] = []
  for (const size of TABLETS) {
    await resize(page, size)
    const head = `${view.name.padEnd(36)} ${String(size.width).padStart(4)}`
    for (const bound of BOUNDS[view.path] ?? []) lines.push(...(await lineOf(page, bound, head)))
    const texts = await drawnTexts(page)
    const under = underTheFloor(texts)
    const turned = notUpright(texts)
    if (under.length > 0) lines.push(`${head} under the floor: ${under.length}, ${under[0]}`)
    if (turned.length > 0) lines.push(`${head} not upright: ${turned.length}, ${turned[0]}`)
  }
  await resize(page, TABLET)
  return lines
}

for (const scene of new Set(views.map((view) => view.scene)))
  test.describe(scene, () => {
    test.describe.configure({ mode: 'default' })
    for (const view of views.filter((one) => one.scene === scene && one.path !== '/'))
      test(view.name, async ({ look }) => {
        console.log((await linesOf(await look(view), view)).join('\n'))
      })
  })
