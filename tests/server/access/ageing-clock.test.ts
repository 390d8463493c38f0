import { expect, test } from 'vitest'
import { createAgeingClock } from '#server/access/ageing-clock.ts'

const NOON = Date.UTC(2026, 2, 2, 17)

const clocks = (kept = 0) => {
  const raised: number[] = []
  let [wall, monotonic] = [NOON, 0]
  const house = { floor: () => raised.at(-1) ?? kept, raiseFloor: (at: number) => raised.push(at) }
  const clock = createAgeingClock(
    { floor: house.floor, raiseFloor: (at) => void house.raiseFloor(at) },
    () => wall,
    () => monotonic,
  )
  return {
    clock,
    raised,
    pass: (ms: number) => {
      wall += Math.floor(ms)
      monotonic += ms
    },
    set: (to: number) => {
      wall = to
    },
  }
}

test('[D3] however often it is asked, it runs no faster than time', () => {
  const { clock, pass, set } = clocks()
  clock.now()
  set(0)
  for (let asked = 0; asked < 10_000; asked += 1) {
    pass(0.6)
    clock.now()
  }
  expect(clock.now() - NOON).toBeGreaterThanOrEqual(5_999)
  expect(clock.now() - NOON).toBeLessThanOrEqual(6_001)
})

test('[D3] begins where it ended, where the machine’s clock is behind that', () => {
  const ahead = NOON + 86_400_000
  const { clock, pass, raised } = clocks(ahead)
  expect(clock.now()).toBe(ahead)
  pass(61_000)
  expect(clock.now()).toBe(ahead + 61_000)
  expect(raised).toEqual([ahead + 61_000])
  expect(clock.onWall(ahead + 61_000)).toBe(NOON + 61_000)
  expect(clocks().clock.onWall(NOON + 5)).toBe(NOON + 5)
})
