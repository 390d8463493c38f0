import type { BrowserContextOptions, Page } from '@playwright/test'
import { live } from '#lib/words/live-en.ts'
import { playScene } from '#tests/support/play-scene.ts'
import type { Scene } from '#tests/support/scenes.ts'
import { test as base, expect, untilHydrated, watch } from './station.ts'
import type { View } from './views/view.ts'

interface OfTest {
  /** Plays a scene on the worker's server. */
  readonly play: (scene: Scene) => Promise<void>
  /** Plays the view's scene, unless it stands already, opens its screen and taps on to it. */
  readonly see: (view: View, options?: BrowserContextOptions) => Promise<Page>
  /** The same on the worker's one device, whose screen goes there: a third of the time. */
  readonly look: (view: View) => Promise<Page>
}

interface OfWorker {
  readonly standing: { scene: Scene | null }
  readonly device: Page
}

const comeTo = async (page: Page, view: View): Promise<void> => {
  await untilHydrated(page)
  await expect(page.getByText(live.isLive, { exact: true }).first()).toBeVisible()
  await view.reach?.(page)
  await expect(page.getByText(view.shows).first()).toBeVisible()
}

/** Screens in the states that `views` names, on the worker's server. */
export const test = base.extend<OfTest, OfWorker>({
  standing: [
    async ({ browserName: _ }, use) => {
      await use({ scene: null })
    },
    { scope: 'worker' },
  ],
  play: async ({ server, standing }, use) => {
    await use(async (scene) => {
      standing.scene = null
      await playScene(server.url, scene)
    })
  },
  see: async ({ open, play, standing }, use) => {
    await use(async (view, options) => {
      if (standing.scene !== view.scene) await play(view.scene)
      standing.scene = view.scene
      const page = await open(view.path, options)
      await comeTo(page, view)
      return page
    })
  },
  device: [
    async ({ browser, server }, use) => {
      const context = await browser.newContext({ baseURL: server.pageUrl, hasTouch: true })
      await use(await context.newPage())
      await context.close()
    },
    { scope: 'worker' },
  ],
  look: async ({ device, play, standing, consoleProblems, expectConsole: _ }, use) => {
    const forget = watch(device, consoleProblems)
    await use(async (view) => {
      if (standing.scene !== view.scene) await play(view.scene)
      standing.scene = view.scene
      await device.goto(view.path)
      await comeTo(device, view)
      return device
    })
    forget()
  },
})

export { expect }

/** Of a window, CSS pixels. */
export interface Size {
  readonly width: number
  readonly height: number
}

export const TABLET: Size = { width: 1280, height: 800 }
export const TABLETS: readonly Size[] = [TABLET, { width: 1024, height: 768 }]

export const PHONE: Size = { width: 390, height: 844 }

/** A page at another size, drawn anew. */
export const resize = async (page: Page, size: Size): Promise<void> => {
  await page.setViewportSize({ ...size })
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestAnimationFrame(() => requestAnimationFrame(() => done()))
      }),
  )
}
