import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type AdviceKind,
  type AdviceLog,
  type Candidate,
  MOST_AN_HOUR,
  roomFor,
  tell,
  toDo,
} from '#lib/estimate/advice.ts'

const start = (id: string, saves: number): Candidate => ({
  key: `start-batch ${id}`,
  kind: 'start-batch',
  saves,
})
const of = (kind: AdviceKind, id: string, saves = 0): Candidate => ({
  key: `${kind} ${id}`,
  kind,
  saves,
})
const keys = (log: AdviceLog): readonly string[] => log.map(({ key }) => key)

/** As the fold answers what is open under a key. */
const answered = (
  log: AdviceLog,
  key: string,
  answer: 'done' | 'put-off' | 'declined',
  now: number,
): AdviceLog =>
  log.map((one) =>
    one.key === key && one.answer === 'open' ? { ...one, answer, answeredAt: now } : one,
  )

describe('what is told', () => {
  it('[Z31] is what saves enough, best first', () => {
    const log = tell([], [start('slaw', 90), start('rice', 5), start('chicken', 900)], 700, false)
    expect(keys(log)).toEqual(['start-batch chicken', 'start-batch slaw'])
  })

  it('[Z69] must save the more, the more was told within the hour; what is urgent needn’t', () => {
    const cheap = ['rice', 'slaw', 'pita', 'peppers', 'almonds'].map((id) => start(id, 100))
    const log = tell([], cheap, 700, false)
    expect(log).toHaveLength(3)
    expect(tell(log, cheap, 730, false)).toHaveLength(3)
    expect(keys(tell(log, [start('chicken', 134)], 730, false))).toHaveLength(3)
    expect(keys(tell(log, [start('chicken', 136)], 730, false))).toContain('start-batch chicken')
    expect(tell(log, [of('sold-out', 'tuna', 1)], 730, false)).toHaveLength(4)
    expect(tell(log, cheap, 760, false).length).toBeGreaterThan(3)
  })

  it('[Z31] is told once while it is open, however its worth changes', () => {
    let log = tell([], [start('slaw', 90)], 700, false)
    for (const saves of [95, 20, 400]) log = tell(log, [start('slaw', saves)], 701, false)
    expect(log).toHaveLength(1)
    expect(log[0]?.answer).toBe('open')
  })

  it('[Z32] lapses when it is worth nearly nothing, and doesn’t flicker', () => {
    let log = tell([], [start('slaw', 90)], 700, false)
    log = tell(log, [start('slaw', 15)], 702, false)
    expect(log[0]?.answer).toBe('open')
    log = tell(log, [start('slaw', 5)], 703, false)
    expect(log[0]?.answer).toBe('lapsed')
    log = tell(log, [start('slaw', 90)], 705, false)
    expect(log).toHaveLength(1)
    log = tell(log, [start('slaw', 90)], 714, false)
    expect(log).toHaveLength(2)
  })

  it('[Z32] what was put off comes back, what was declined or done rests', () => {
    const key = 'start-batch slaw'
    const told = tell([], [start('slaw', 90)], 700, false)
    const toldAfter = (answer: 'done' | 'put-off' | 'declined', minute: number): number =>
      tell(answered(told, key, answer, 700), [start('slaw', 90)], minute, false).length
    expect(toldAfter('put-off', 704)).toBe(1)
    expect(toldAfter('put-off', 705)).toBe(2)
    expect(toldAfter('declined', 709)).toBe(1)
    expect(toldAfter('declined', 711)).toBe(2)
    expect(toldAfter('done', 709)).toBe(1)
  })

  it('[Z32] unless far more is at stake', () => {
    const told = answered(
      tell([], [start('slaw', 90)], 700, false),
      'start-batch slaw',
      'declined',
      700,
    )
    expect(tell(told, [start('slaw', 400)], 702, false)).toHaveLength(2)
  })

  it('[Z33] in a rush it is only safety and sold-out', () => {
    const all = [start('slaw', 900), of('measure', 'rice', 500), of('keep', 'tuna', 500)]
    expect(tell([], all, 700, true)).toEqual([])
    const urgent = [...all, of('sold-out', 'tuna'), of('safety', 'chicken')]
    expect(keys(tell([], urgent, 700, true))).toEqual(['safety chicken', 'sold-out tuna'])
  })

  it('[Z52] of safety what comes and goes fills no log, and what is new comes at once', () => {
    const low = of('safety', 'chicken', 6)
    let log: AdviceLog = []
    const seconds = 600
    for (let second = 0; second < seconds; second += 1)
      log = tell(log, second % 2 === 0 ? [low] : [], 700 + second / 60, true)
    const told = log.filter(({ key }) => key === low.key)
    const events = told.length + told.filter(({ answer }) => answer === 'lapsed').length
    expect(events).toBeGreaterThan(1)
    expect(events).toBeLessThanOrEqual(seconds / 120 + 1)
    const other = of('safety', 'slaw', 2)
    expect(keys(tell(log, [other], 709.9, true))).toContain(other.key)
    const lapsed = tell(tell([], [low], 700, true), [], 702, true)
    expect(lapsed[0]?.answer).toBe('lapsed')
    expect(tell(lapsed, [low], 703, true)).toHaveLength(1)
    expect(tell(lapsed, [{ ...low, saves: 7 }], 703, true)).toHaveLength(2)
    expect(tell(lapsed, [low], 704, true)).toHaveLength(2)
    expect(tell(lapsed, [low], 640, true)).toHaveLength(2)
  })

  it('[Z34] never are there more than six new ones in any hour, apart from safety', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            after: fc.double({ min: 0, max: 9, noNaN: true }),
            ids: fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'), {
              maxLength: 8,
            }),
            saves: fc.integer({ min: 0, max: 5_000 }),
            answer: fc.constantFrom('done', 'put-off', 'declined', null),
            isRush: fc.boolean(),
          }),
          { maxLength: 60 },
        ),
        (steps) => {
          let now = 600
          let log: AdviceLog = []
          for (const { after, ids, saves, answer, isRush } of steps) {
            now += after
            log = tell(
              log,
              [...new Set(ids)].map((id) => start(id, saves)),
              now,
              isRush,
            )
            for (const { key } of log) if (answer) log = answered(log, key, answer, now)
          }
          for (const { at } of log)
            expect(
              log.filter((one) => one.at >= at && one.at < at + 60).length,
            ).toBeLessThanOrEqual(MOST_AN_HOUR)
        },
      ),
      { seed: 6, numRuns: 300 },
    )
  })

  it('[Z34] safety is told even where the hour is full', () => {
    const ids = ['a', 'b', 'c', 'd', 'e', 'f', 'g']
    const full = tell(
      [],
      ids.map((id) => start(id, 500)),
      700,
      false,
    )
    expect(full).toHaveLength(MOST_AN_HOUR)
    expect(roomFor(full, 701)).toBe(0)
    const candidates = [...ids.map((id) => start(id, 500)), of('safety', 'chicken')]
    expect(keys(tell(full, candidates, 701, false)).at(-1)).toBe('safety chicken')
    expect(roomFor(full, 760)).toBe(MOST_AN_HOUR)
  })
})

describe('what to do next', () => {
  it('[Z35] keeps its first place unless another is urgent or clearly better', () => {
    const log = tell([], [start('slaw', 300), start('rice', 280)], 700, false)
    const first = (slaw: number, rice: number): string | undefined =>
      toDo(log, [start('slaw', slaw), start('rice', rice)], 'start-batch slaw')[0]?.key
    expect(first(300, 280)).toBe('start-batch slaw')
    expect(first(300, 350)).toBe('start-batch slaw')
    expect(first(300, 400)).toBe('start-batch rice')
    const urgent = tell(log, [start('slaw', 300), of('safety', 'rice')], 701, false)
    const list = toDo(urgent, [start('slaw', 300), of('safety', 'rice')], 'start-batch slaw')
    expect(list.map(({ key }) => key)).toEqual(['safety rice', 'start-batch slaw'])
  })

  it('[Z35] lists only what is open', () => {
    const log = answered(
      tell([], [start('slaw', 300), start('rice', 280)], 700, false),
      'start-batch slaw',
      'done',
      701,
    )
    const list = toDo(log, [start('slaw', 300), start('rice', 280), start('beans', 99)], null)
    expect(list.map(({ key }) => key)).toEqual(['start-batch rice'])
  })
})
