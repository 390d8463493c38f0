/**
 * Preloaded into a server by a test: its clocks begin at an instant that the test tells, and each
 * SIGUSR2 lets time pass, on the wall as on the monotonic clock, so that it is no jump.
 */
const { LEVEL_SCOOP_TEST_BEGINS_AT: beginsAt, LEVEL_SCOOP_TEST_PASSES_MS: passes } = process.env
const wall = Date.now.bind(Date)
const monotonic = performance.now.bind(performance)
const steps = (passes ?? '').split(',').filter(Boolean).map(Number)
const ahead = beginsAt ? Number(beginsAt) - wall() : 0
let passed = 0

Date.now = () => wall() + ahead + passed
performance.now = () => monotonic() + passed

process.on('SIGUSR2', () => {
  passed += steps.shift() ?? 0
})
