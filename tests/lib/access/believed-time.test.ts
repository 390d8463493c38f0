import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type BelievedTime,
  DAY_MS,
  firstSeen,
  goesAt,
  isToGo,
  LEAP_MS,
  observed,
} from '#lib/access/believed-time.ts'

const HOUR_MS = 3_600_000
const MONDAY = Date.UTC(2026, 2, 2, 8)
const YEARS = 5 * 365 * DAY_MS

interface Session {
  /** True time of the start, milliseconds after the first one. */
  readonly at: number
  readonly hours: number
  /** By how much the wall clock is wrong all the while, in milliseconds. */
  readonly wrongBy: number
}

interface Looked {
  readonly trueTime: number
  readonly time: BelievedTime
}

/** A house whose server is looked at every hour that it runs. */
const live = (sessions: readonly Session[], from = MONDAY): readonly Looked[] => {
  const looks: Looked[] = []
  let time: BelievedTime | null = null
  let ran = 0
  for (const [index, { at, hours, wrongBy }] of sessions.entries())
    for (let hour = 0; hour <= hours; hour += 1) {
      if (hour > 0) ran += HOUR_MS
      const trueTime = from + at + hour * HOUR_MS
      const seen = { wall: trueTime + wrongBy, ran, starts: index + 1 }
      time = time ? observed(time, seen) : firstSeen(seen, from)
      looks.push({ trueTime, time })
    }
  return looks
}

/** Six hours a day from Monday to Friday; `wrong` says by how much, by the number of the day. */
const school = (days: number, wrong: (day: number) => number = () => 0): readonly Session[] =>
  Array.from({ length: days }, (_, day) => day)
    .filter((day) => day % 7 < 5)
    .map((day) => ({ at: day * DAY_MS, hours: 6, wrongBy: wrong(day) }))

const over = { closedAt: MONDAY + 6 * HOUR_MS, seenAt: MONDAY + 6 * HOUR_MS }

/** After how many true days it went; null where it never did. */
const wentAfter = (looks: readonly Looked[], days = 30): number | null => {
  const found = looks.find(({ time }) => isToGo(over, time, days))
  return found ? (found.trueTime - over.closedAt) / DAY_MS : null
}

describe('how long a stream is kept', () => {
  test('[G12] at school hours it goes after 30 days, at the latest four days on', () => {
    const after = wentAfter(live(school(60)))
    expect(after).toBeGreaterThanOrEqual(30)
    expect(after).toBeLessThanOrEqual(34)
  })

  test('[G12] where the server runs on, it goes within the hour', () => {
    const after = wentAfter(live([{ at: 0, hours: 40 * 24, wrongBy: 0 }]))
    expect(after).toBeGreaterThanOrEqual(30)
    expect(after).toBeLessThanOrEqual(30 + 1 / 12)
  })

  test('[G12] after a summer it goes once two days agree that it is over', () => {
    const away = { at: 80 * DAY_MS, hours: 6, wrongBy: 0 }
    const back = [away, { ...away, at: 81 * DAY_MS }]
    expect(wentAfter(live([...school(5), ...back]))).toBeCloseTo(81 - 0.25, 1)
  })
})

describe('a clock that is wrong', () => {
  test('[G13] years ahead for a day, or for five days of school, takes nothing', () => {
    for (const wrongDays of [1, 2, 5]) {
      const wrong = (day: number) => (day >= 7 && day < 7 + wrongDays ? YEARS : 0)
      const looks = live(school(29, wrong))
      expect(wentAfter(looks), `${wrongDays} days`).toBeNull()
      expect(looks.some(({ time }) => time.other !== null)).toBe(true)
    }
  })

  test('[G13] another each morning, as with an empty battery, takes nothing', () => {
    const looks = live(school(29, (day) => ((day * 7919) % 13) * YEARS))
    expect(wentAfter(looks)).toBeNull()
  })

  test('[G13] set ahead while it runs, it counts only once a day has agreed', () => {
    const ahead = 40 * DAY_MS
    const first = { at: 0, hours: 3, wrongBy: 0 }
    const looks = live([first, { at: 3 * HOUR_MS, hours: 30, wrongBy: ahead }])
    const went = wentAfter(looks)
    expect(went).toBe(21 / 24)
    expect(wentAfter(looks.slice(0, 24))).toBeNull()
  })

  test('[G13] years ahead for good, it is believed after a week of days', () => {
    const looks = live(school(20, (day) => (day >= 1 ? YEARS : 0)))
    const after = wentAfter(looks)
    expect(after).toBeGreaterThan(7)
    expect(after).toBeLessThan(14)
  })

  test('[G13] set back, it stretches nothing for a week; then it is believed again', () => {
    const back = 30 * DAY_MS
    const looks = live(
      [{ at: 0, hours: 45 * 24, wrongBy: 0 }].concat({
        at: 45 * DAY_MS,
        hours: 10 * 24,
        wrongBy: -back,
      }),
    )
    const afterSet = looks.filter(({ trueTime }) => trueTime > MONDAY + 45 * DAY_MS)
    const [first] = afterSet
    expect(first?.time.believed).toBeGreaterThan(MONDAY + 44 * DAY_MS)
    const last = afterSet.at(-1)
    expect(last?.time.believed).toBeCloseTo((last?.trueTime ?? 0) - back, -7)
  })

  test('[G13] nothing that is believed is ahead of the true time, whatever clocks do for a day', () => {
    const session = fc.record({
      off: fc.integer({ min: 1, max: 70 }),
      hours: fc.integer({ min: 0, max: 12 }),
      wrongBy: fc.oneof(
        { weight: 3, arbitrary: fc.constant(0) },
        { weight: 1, arbitrary: fc.integer({ min: -YEARS, max: YEARS }) },
      ),
    })
    let faults = 0
    fc.assert(
      fc.property(fc.array(session, { minLength: 5, maxLength: 60 }), (given) => {
        let at = 0
        const sessions: Session[] = []
        for (const { off, hours, wrongBy } of given) {
          // A fault lasts for one session; the one after it has the time again.
          const isAgain = sessions.at(-1)?.wrongBy !== 0
          const wrong = isAgain ? 0 : wrongBy
          if (wrong !== 0) faults += 1
          sessions.push({ at, hours, wrongBy: wrong })
          at += (hours + off) * HOUR_MS
        }
        for (const { trueTime, time } of live(sessions))
          expect(time.believed).toBeLessThanOrEqual(trueTime)
      }),
      { numRuns: 300 },
    )
    expect(faults).toBeGreaterThan(200)
  })
})

describe('a close whose time can’t be', () => {
  const time = (believed: number, wall = believed): BelievedTime => ({
    believed,
    last: { wall, ran: 0, starts: 1 },
    other: null,
  })

  test('[G14] years ahead, it counts from when it was seen', () => {
    const ahead = { closedAt: MONDAY + YEARS, seenAt: MONDAY }
    expect(goesAt(ahead, time(MONDAY), 30)).toBe(MONDAY + 30 * DAY_MS)
  })

  test('[G14] while a wrong time is believed, it isn’t over as soon as it is closed', () => {
    const believed = MONDAY + YEARS
    const closed = { closedAt: MONDAY, seenAt: believed }
    expect(isToGo(closed, time(believed, MONDAY), 30)).toBe(false)
    expect(isToGo(closed, time(MONDAY + 29 * DAY_MS), 30)).toBe(false)
    expect(isToGo(closed, time(MONDAY + 30 * DAY_MS), 30)).toBe(true)
  })

  test('[G14] nobody having seen it, the log is believed', () => {
    expect(goesAt({ closedAt: MONDAY, seenAt: null }, time(MONDAY + DAY_MS), 1)).toBe(
      MONDAY + DAY_MS,
    )
  })
})

test('[G13] a summer is no leap', () => {
  expect(LEAP_MS).toBeGreaterThan(80 * DAY_MS)
})
