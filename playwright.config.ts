import { existsSync } from 'node:fs'
import { defineConfig } from '@playwright/test'
import { browserArguments, findBrowser } from '#tests/support/browser.mjs'

const browser = findBrowser()
const timed = '**/taps-are-instant.spec.ts'
const table = '**/legibility.spec.ts'

/** The main job, once through: what `npm test` runs of the pages. All of them: `npm test -- --whole`. */
const everyday = [
  'first-order',
  'no-cheddar-sauce-on-the-side',
  'allergy-and-a-change-that-fits',
  'two-guests-two-needs-one-ticket',
  'handed-over-by-its-mark',
  'a-hot-pan-falls-below-the-limit',
  'last-portion',
  'two-orders-through-an-outage',
  'label-changed-at-noon',
  'read-a-label',
  'screens-answer',
].map((story) => `${story}.spec.ts`)

const missing = everyday.filter((story) => !existsSync(new URL(`e2e/${story}`, import.meta.url)))
if (missing.length > 0) throw new Error(`no such story: ${missing.join(', ')}`)

export default defineConfig({
  testDir: 'e2e',
  testMatch: '**/*.spec.ts',
  // On two cores: a page waits for its server and its timers longer than it computes.
  workers: 3,
  fullyParallel: true,
  timeout: 90_000,
  expect: { timeout: 10_000 },
  forbidOnly: process.env.CI !== undefined,
  // What is timed shares the machine with nothing: `npm test` runs it by itself, after the others.
  projects: [
    {
      name: 'everyday',
      testMatch: everyday.map((story) => `**/${story}`),
      outputDir: 'test-results/everyday',
    },
    { name: 'stories', testIgnore: [timed, table], outputDir: 'test-results/stories' },
    { name: 'timed', testMatch: timed, outputDir: 'test-results/timed' },
    // A table to read: `npm run legible`.
    { name: 'legibility', testMatch: table, outputDir: 'test-results/legibility' },
  ],
  use: {
    browserName: 'chromium',
    headless: true,
    viewport: { width: 1280, height: 800 },
    hasTouch: true,
    screenshot: 'only-on-failure',
    // A trace of each step took a fifth of the run: asked for with --trace on.
    trace: 'off',
    launchOptions: {
      args: browserArguments,
      ...(browser === null ? {} : { executablePath: browser.path }),
    },
  },
})
