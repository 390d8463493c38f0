import type { Page } from '@playwright/test'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { expect, test } from './support/stage.ts'
import { view } from './support/views.ts'

/** The issue: answered within 100 ms at 4× CPU throttle. */
const MOST_MS = 100
const THROTTLE = 4
const ROUNDS = 3

const CODES = ['milk', 'egg', 'fish', 'tree-nuts', 'wheat', 'peanut', 'soy', 'sesame'] as const

/** From the browser's own stamp of the tap to the paint after the verdicts in the rows changed. */
const timeNextTap = (page: Page, list: string): Promise<void> =>
  page.evaluate((label) => {
    const said = () => document.querySelector(`[aria-label="${label}"]`)?.textContent ?? ''
    const before = said()
    const answer = new Promise<number>((done) => {
      addEventListener(
        'pointerup',
        ({ timeStamp }) => {
          const seen = new MutationObserver(() => {
            if (said() === before) return
            seen.disconnect()
            // The first frame paints what changed; a task after it finds it painted.
            requestAnimationFrame(() => {
              const { port1, port2 } = new MessageChannel()
              port1.onmessage = () => done(performance.now() - timeStamp)
              port2.postMessage(null)
            })
          })
          seen.observe(document.body, { subtree: true, childList: true, characterData: true })
        },
        { capture: true, once: true },
      )
    })
    Object.assign(window, { answer })
  }, list)

test('a tap on a need is answered at once, on a slow tablet', async ({ see }) => {
  const page = await see(view('counter, ask'), { viewport: { width: 1024, height: 768 } })
  const tile = (code: string) =>
    page.getByRole('button', { name: new RegExp(`^${counter.needTile(code)}( keep apart)?$`) })
  const clear = page.getByRole('button', { name: counter.clearNeeds, exact: true })
  const cdp = await page.context().newCDPSession(page)
  await tile('gluten').click()
  await expect(page.getByRole('list', { name: counter.fits })).toBeVisible()
  await clear.click()
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: THROTTLE })

  const round = async (): Promise<readonly number[]> => {
    const taps: number[] = []
    for (const code of [...CODES, ...CODES]) {
      await timeNextTap(page, counter.fits)
      await tile(code).click()
      const ms = await page.evaluate(
        () => (window as unknown as { readonly answer: Promise<number> }).answer,
      )
      taps.push(Math.round(ms))
      await clear.click()
    }
    return taps.sort((one, other) => one - other)
  }
  // What is slow is slow in every round; a busy machine is not.
  let median = Number.POSITIVE_INFINITY
  for (let rounds = 0; rounds < ROUNDS && median > MOST_MS; rounds += 1) {
    const taps = await round()
    median = taps[taps.length / 2] ?? Number.NaN
    console.log(`${taps.length} taps at ${THROTTLE}x CPU: median ${median} ms (${taps.join(' ')})`)
  }
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: 1 })
  expect(median).toBeLessThanOrEqual(MOST_MS)
})
