/** `npm run pictures`: the README's pictures, made from the running program on the demo station. */
import { mkdirSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { assemblyEn } from '#lib/rooms/making/words/assembly-en.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import { pansWords } from '#lib/rooms/pans/words/pans-en.ts'
import { live } from '#lib/words/house/live-en.ts'
import { root } from '#server/root.ts'
import { browserArguments, findBrowser } from '#tests/support/browser.mjs'
import { launchServer } from '#tests/support/launch-server.ts'
import { playScene } from '#tests/support/play-scene.ts'

const FOLDER = join(root, 'fixtures', 'pictures')
const SIZE = { width: 1280, height: 800 }

/** The pans take half a second to sink, and a tapped button is lit for as long. */
const SETTLED_MS = 1_000

const first = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name }).first().click()

/** An order as it is said back: no cheddar, the sauce on the side. */
const order = async (page: Page): Promise<void> => {
  await first(page, counter.askedNone)
  await first(page, 'Garden chicken')
  const line = page.getByRole('list', { name: counter.line })
  await line.getByRole('button', { name: /^Cheddar/ }).click()
  const sauce = line.getByRole('button', { name: /^Yogurt sauce/ })
  await sauce.click()
  await sauce.click()
  await sauce.getByText(counter.pan.taken('side', 1), { exact: true }).waitFor()
}

/** Milk kept apart: what fits with which change, and why. */
const needs = async (page: Page): Promise<void> => {
  await first(page, counter.needTile('milk'))
  await first(page, counter.saidNeeds)
  await first(page, 'Garden chicken')
  await page.getByRole('list', { name: counter.line }).waitFor()
}

const pictures: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  counter: order,
  needs,
  assembly: (page) => page.getByText(assemblyEn.finish).waitFor(),
  pans: (page) => page.getByText(pansWords.soldOut, { exact: true }).waitFor(),
}

const found = findBrowser()
const server = await launchServer()
const browser = await chromium.launch({
  args: browserArguments,
  ...(found === null ? {} : { executablePath: found.path }),
})
mkdirSync(FOLDER, { recursive: true })
try {
  await playScene(server.url, 'rush')
  for (const [name, prepare] of Object.entries(pictures)) {
    const page = await browser.newPage({ viewport: SIZE, reducedMotion: 'reduce' })
    await page.goto(`${server.pageUrl}/${name === 'needs' ? 'counter' : name}`)
    await page.getByText(live.isLive, { exact: true }).first().waitFor()
    await prepare(page)
    await page.mouse.move(0, 0)
    await page.waitForTimeout(SETTLED_MS)
    const path = join(FOLDER, `${name}.png`)
    await page.screenshot({ path })
    console.log(`${relative(root, path)}: ${Math.ceil(statSync(path).size / 1000)} kB`)
    await page.close()
  }
} finally {
  await browser.close()
  await server.stop()
}
