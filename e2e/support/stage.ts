import type { BrowserContextOptions, Page } from '@playwright/test'
import { live } from '#lib/words/house/live-en.ts'
import type { LaunchedServer } from '#tests/support/launch-server.ts'
import { playScene } from '#tests/support/play-scene.ts'
import type { Scene } from '#tests/support/scenes.ts'
import { isOfSchool, type SchoolSceneName, schoolServer } from '#tests/support/school-scenes.ts'
import { test as base, expect, joinContext, untilHydrated, watch } from './station.ts'
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
  readonly standing: { scene: View['scene'] | null }
  readonly school: School
  readonly device: Device
}

/** A worker's one server of the school's line, at the scene that stands there. */
interface School {
  scene: SchoolSceneName | null
  server: LaunchedServer | null
}

const endSchool = async (school: School): Promise<void> => {
  const { server } = school
  school.scene = null
  school.server = null
  if (server) expect((await server.stop()).stderr, 'what the school’s server said').toBe('')
}

/** A worker's one screen. */
interface Device {
  readonly page: Page
  /** The view that stands there. */
  shown: View | null
}

const ONLY_ASKS = /^\/(house|join|devices|privacy|larder|menu.*|paper.*)$/

const untilLive = async (page: Page, { asksOnly }: Pick<View, 'asksOnly'> = {}): Promise<void> => {
  await untilHydrated(page)
  if (asksOnly) return
  // Pages about who is in only ask.
  if (ONLY_ASKS.test(new URL(page.url()).pathname)) return
  await expect(page.getByText(live.isLive, { exact: true }).first()).toBeVisible()
}

const comeTo = async (page: Page, view: View): Promise<void> => {
  await view.reach?.(page)
  await expect(page.getByText(view.shows).first()).toBeVisible()
}

/** The screen that a scene's views begin with: as it stands where nothing was tapped, or loaded. */
const begin = async (device: Device, view: View, url: string): Promise<void> => {
  const { path, scene, asLead } = view
  const { page, shown } = device
  device.shown = null
  await shown?.leaves?.(page)
  if (shown?.path === path && shown.scene === scene && !shown.reach && !shown.leaves && !asLead)
    return
  // What one view left half typed is no part of the next; an empty page has no storage.
  if (page.url().startsWith('http')) await page.evaluate(() => sessionStorage.clear())
  if (asLead) await joinContext(page.context(), url)
  await page.goto(new URL(path, url).href)
  await untilLive(page, view)
}

/** Screens in the states that `views` names, on the worker's server. */
export const test = base.extend<OfTest, OfWorker>({
  // Some scenes are of a real service, which nobody walks through.
  proved: async ({ browserName: _ }, use) => use(true),
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
      if (isOfSchool(view.scene)) throw new Error(`${view.name} is looked at on the one device`)
      if (standing.scene !== view.scene) await play(view.scene)
      standing.scene = view.scene
      const page = await open(view.path, options, view.asLead)
      await untilLive(page)
      await comeTo(page, view)
      return page
    })
  },
  device: [
    async ({ browser, server }, use) => {
      const context = await browser.newContext({ baseURL: server.pageUrl, hasTouch: true })
      await joinContext(context, server.pageUrl)
      await use({ page: await context.newPage(), shown: null })
      await context.close()
    },
    { scope: 'worker' },
  ],
  school: [
    async ({ browserName: _ }, use) => {
      const school: School = { scene: null, server: null }
      await use(school)
      await endSchool(school)
    },
    { scope: 'worker' },
  ],
  look: async (
    { device, server, school, play, standing, consoleProblems, expectConsole: _ },
    use,
  ) => {
    const { page } = device
    const forget = watch(page, consoleProblems)
    await use(async (view) => {
      const { scene } = view
      const stands = isOfSchool(scene) ? school.scene : standing.scene
      if (stands !== scene) device.shown = null
      if (isOfSchool(scene) && stands !== scene) {
        // It goes on asking.
        await page.goto('about:blank')
        await endSchool(school)
        school.server = await schoolServer(scene)
        school.scene = scene
        await joinContext(page.context(), school.server.pageUrl)
      }
      if (!isOfSchool(scene)) {
        if (stands !== scene) await play(scene)
        standing.scene = scene
      }
      const url = isOfSchool(scene) ? school.server?.pageUrl : server.pageUrl
      await begin(device, view, url ?? server.pageUrl)
      await comeTo(page, view)
      device.shown = view
      return page
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
