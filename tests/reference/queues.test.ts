import { describe, expect, it } from 'vitest'
import { longRun } from '#lib/stock/queueing.ts'

const queue = (arrivals: number, builds: number, servers: number) => {
  const found = longRun(arrivals, builds, servers)
  if (!found) throw new Error('grows without end')
  return found
}

describe('R. Bronson, Operations Research, 1982', () => {
  it('[Z4] example 24.6: three servers, 300 a year, two days each', () => {
    const { waiting, there, untilStarted, untilMade, empty, chanceToWait } = queue(300, 182.5, 3)
    expect(waiting).toBeCloseTo(0.3524259, 7)
    expect(there).toBeCloseTo(1.9962615, 7)
    expect(untilStarted).toBeCloseTo(0.0011747531, 9)
    expect(untilMade).toBeCloseTo(0.0066542051, 9)
    expect(empty).toBeCloseTo(0.177537, 6)
    expect(chanceToWait).toBeCloseTo(0.2907514, 7)
  })

  it('[Z4] problem 23.3: one server, 24 an hour of 30', () => {
    const { there, waiting, untilMade, empty } = queue(24, 30, 1)
    expect([there, waiting, untilMade, empty].map((one) => Number(one.toFixed(9)))).toEqual([
      4, 3.2, 0.166666667, 0.2,
    ])
  })

  it('[Z4] problem 23.14: 30 an hour, a minute and a half each', () => {
    const { waiting, untilStarted, empty } = queue(30, 40, 1)
    expect(waiting).toBeCloseTo(2.25, 12)
    expect(untilStarted * 60).toBeCloseTo(4.5, 12)
    expect(empty).toBeCloseTo(0.25, 12)
  })

  it('[Z4] problem 23.16: one a minute, 45 seconds each; empty is 0.25, the 0.178 printed is an error', () => {
    const { waiting, untilStarted, untilMade, empty } = queue(1, 4 / 3, 1)
    expect(waiting).toBeCloseTo(2.25, 12)
    expect(untilStarted).toBeCloseTo(2.25, 12)
    expect(untilMade).toBeCloseTo(3, 12)
    expect(empty).toBeCloseTo(0.25, 12)
  })
})

describe('D. Ríos Insua and others, example 10.9, 2004 (inputs; answers computed)', () => {
  it('[Z4] two servers, 5 of 10 each', () => {
    const { empty, chanceToWait, waiting, there, untilStarted } = queue(5, 10, 2)
    expect(empty).toBeCloseTo(0.6, 12)
    expect(chanceToWait).toBeCloseTo(0.1, 12)
    expect(waiting).toBeCloseTo(1 / 30, 12)
    expect(there).toBeCloseTo(0.533333333, 9)
    expect(untilStarted).toBeCloseTo(1 / 150, 12)
  })
})

describe('F. S. Hillier and G. J. Lieberman, County Hospital (from memory)', () => {
  it('[Z4] two doctors', () => {
    const { empty, chanceToWait, waiting, there, untilStarted, untilMade } = queue(2, 3, 2)
    expect(empty).toBeCloseTo(1 / 2, 12)
    expect(chanceToWait).toBeCloseTo(1 / 6, 12)
    expect(waiting).toBeCloseTo(1 / 12, 12)
    expect(there).toBeCloseTo(3 / 4, 12)
    expect(untilStarted).toBeCloseTo(1 / 24, 12)
    expect(untilMade).toBeCloseTo(3 / 8, 12)
  })

  it('[Z4] one doctor', () => {
    const { waiting, there, untilStarted, untilMade } = queue(2, 3, 1)
    expect(waiting).toBeCloseTo(4 / 3, 12)
    expect(there).toBeCloseTo(2, 12)
    expect(untilStarted).toBeCloseTo(2 / 3, 12)
    expect(untilMade).toBeCloseTo(1, 12)
  })
})

describe('long queues', () => {
  it('[Z4] 49 of 55 an hour by one: 7.28 wait', () => {
    expect(queue(49, 55, 1).waiting).toBeCloseTo(7.2757576, 7)
    expect(queue(49, 55, 1).untilStarted).toBeCloseTo(0.1484848, 7)
  })

  it('[Z4] where more come than can be made there is no answer', () => {
    expect(longRun(30, 30, 1)).toBeNull()
    expect(longRun(61, 30, 2)).toBeNull()
    expect(longRun(1, 30, 0)).toBeNull()
  })
})
