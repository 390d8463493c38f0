import type { Page } from '@playwright/test'
import type { Scene } from '#tests/support/scenes.ts'
import type { SchoolSceneName } from '#tests/support/school-scenes.ts'

export interface View {
  /** Unique: which screen, and what stands on it. */
  readonly name: string
  readonly path: string
  /** Of the demo, or of the school's line on a server of its own. */
  readonly scene: Scene | SchoolSceneName
  /** What is tapped to come to it, from a page that was just opened. */
  readonly reach?: (page: Page) => Promise<void>
  /** It is seen on a lead's device; else on one that walks the demo. */
  readonly asLead?: true
  /** What is undone on its device once it was looked at. */
  readonly leaves?: (page: Page) => Promise<void>
  /** Text that is on it, and on nothing before it. */
  readonly shows: string | RegExp
  /** Names of the buttons that the view is there for. */
  readonly main?: readonly RegExp[]
  /** It holds a list of any length, which may scroll. */
  readonly long?: true
  /** No screen of the crew's, and in one window all the same: nothing of it scrolls. */
  readonly isWhole?: true
  /** Nothing of it scrolls on a phone either. */
  readonly isWholeOnPhone?: true
  /** It follows no service, so that no connection stands on it. */
  readonly asksOnly?: true
}

/** Longer than the guard that keeps a press from landing on what has only just come. */
const GUARD_MS = 500
const GUARDED =
  /Load the (line|pan)|Next: |I read it aloud|What (can|may) be done|To be thrown out|Ask, then|They answered|Hand over|Say what each|Leave it/

const taps =
  (...names: readonly (string | RegExp)[]) =>
  async (page: Page): Promise<void> => {
    for (const name of names) {
      const button = page.getByRole('button', { name }).first()
      await button.waitFor()
      if (GUARDED.test(String(name))) await page.waitForTimeout(GUARD_MS)
      await button.click()
    }
  }

/** Views quote a build as "2-A"; what is drawn joins it, so that no line ends within. */
const joined = (text: string): string => text.replace(/(\d)-([A-Z])/g, '$1-\u2060$2')
const asDrawn = <Quoted extends string | RegExp>(quoted: Quoted): Quoted =>
  (typeof quoted === 'string'
    ? joined(quoted)
    : new RegExp(joined(quoted.source), quoted.flags)) as Quoted

/** What is tapped, in order. */
type Names = readonly (string | RegExp)[]

/** Views of one screen. */
export const on =
  (path: string, screen: string) =>
  (
    name: string,
    scene: View['scene'],
    shows: string | RegExp,
    tapped: Names = [],
    more: Pick<View, 'main' | 'long' | 'isWhole' | 'isWholeOnPhone' | 'asksOnly'> = {},
  ): View => ({
    name: `${screen}, ${name}`,
    path,
    scene,
    shows: asDrawn(shows),
    ...(tapped.length > 0 ? { reach: taps(...tapped.map(asDrawn)) } : {}),
    ...more,
    ...(more.main ? { main: more.main.map(asDrawn) } : {}),
  })
