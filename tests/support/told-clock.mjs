/**
 * Preloaded into a server by a test: its clocks begin at an instant that the test tells, and each
 * SIGUSR2 lets time pass, on the wall as on the monotonic clock, so that it is no jump. A step that
 * begins with "s" is slept through: only the wall goes on.
 */
const { LEVEL_SCOOP_TEST_BEGINS_AT: beginsAt, LEVEL_SCOOP_TEST_PASSES_MS: passes } = process.env
const wall = Date.now.bind(Date)
const monotonic = performance.now.bind(performance)
const steps = (passes ?? '').split(',').filter(Boolean)
const ahead = beginsAt ? Number(beginsAt) - wall() : 0
let passed = 0
let slept = 0

Date.now = () => wall() + ahead + passed + slept
performance.now = () => monotonic() + passed

process.on('SIGUSR2', () => {
  const step = steps.shift() ?? '0'
  if (step.startsWith('s')) slept += Number(step.slice(1))
  else passed += Number(step)
})
