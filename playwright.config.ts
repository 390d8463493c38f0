import { defineConfig } from '@playwright/test'
import { browserArguments, findBrowser } from '#tests/support/browser.mjs'

const browser = findBrowser()

export default defineConfig({
  testDir: 'e2e',
  testMatch: '**/*.spec.ts',
  workers: 1,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  forbidOnly: process.env.CI !== undefined,
  outputDir: 'test-results',
  use: {
    browserName: 'chromium',
    headless: true,
    viewport: { width: 1280, height: 800 },
    hasTouch: true,
    screenshot: 'only-on-failure',
    trace: { mode: 'retain-on-failure', screenshots: false },
    launchOptions: {
      args: browserArguments,
      ...(browser === null ? {} : { executablePath: browser.path }),
    },
  },
})
