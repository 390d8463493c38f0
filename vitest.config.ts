import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    testTimeout: 90_000,
    hookTimeout: 60_000,
    maxWorkers: 2,
    // No module keeps state of its own, and loading each anew for every file took half of the run.
    isolate: false,
  },
})
