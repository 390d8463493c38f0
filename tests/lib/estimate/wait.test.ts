import { describe, expect, it } from 'vitest'
import {
  type BuildTimes,
  buildTime,
  NO_BUILD_TIMES,
  waitFor,
  withBuildTime,
} from '#lib/estimate/wait.ts'

const measured = (seconds: readonly number[]): BuildTimes =>
  seconds.reduce(withBuildTime, NO_BUILD_TIMES)

const forty = measured(new Array<number>(60).fill(40))

describe('how long a build takes', () => {
  it('[Z28] before any is measured, about a minute; then what is measured', () => {
    expect(buildTime(NO_BUILD_TIMES).mean).toBe(60)
    expect(buildTime(forty).mean).toBeGreaterThan(40)
    expect(buildTime(forty).mean).toBeLessThan(44)
  })

  it('[Z28] the last twenty count most', () => {
    const slower = [...new Array<number>(60).fill(30), ...new Array<number>(20).fill(90)]
    expect(buildTime(measured(slower)).mean).toBeGreaterThan(65)
  })

  it('[Z28] what was left lying, or ran backwards, is no build time', () => {
    expect(withBuildTime(forty, 4_000)).toBe(forty)
    expect(withBuildTime(forty, -5)).toBe(forty)
    expect(withBuildTime(forty, 0)).toBe(forty)
  })
})

describe('the wait that is said', () => {
  it('[Z29] with nobody before it, an order takes its own build', () => {
    const wait = waitFor(forty, { before: 0, making: 0, own: 1 }, 2)
    expect(wait?.seconds).toBeLessThan(45)
    expect(wait?.minutes).toEqual([1, 1])
  })

  it('[Z29] ten before it at one assembler take ten builds more', () => {
    const wait = waitFor(forty, { before: 10, making: 0, own: 1 }, 1)
    const { mean } = buildTime(forty)
    expect(wait?.seconds).toBeCloseTo(11 * mean, 6)
  })

  it('[Z29] two assemblers take about half as long as one', () => {
    const one = waitFor(forty, { before: 20, making: 1, own: 1 }, 1)?.seconds ?? 0
    const two = waitFor(forty, { before: 20, making: 2, own: 1 }, 2)?.seconds ?? 0
    expect(two / one).toBeGreaterThan(0.45)
    expect(two / one).toBeLessThan(0.6)
  })

  it('[Z30] it is a range where one number would be more than is known', () => {
    const uneven = measured([20, 90, 30, 120, 25, 100, 30, 140, 20, 60])
    const [low, high] = waitFor(uneven, { before: 18, making: 1, own: 1 }, 1)?.minutes ?? [0, 0]
    expect(high - low).toBeGreaterThanOrEqual(2)
    const [from, to] = waitFor(forty, { before: 1, making: 1, own: 1 }, 2)?.minutes ?? [0, 0]
    expect(from).toBe(to)
    expect(from).toBeGreaterThanOrEqual(1)
  })

  it('[Z30] without an assembler there is no answer', () => {
    expect(waitFor(forty, { before: 0, making: 0, own: 1 }, 0)).toBeNull()
  })
})
