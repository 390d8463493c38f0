import { describe, expect, it } from 'vitest'
import { civilDate, minuteOfDay } from '#lib/measure/civil.ts'
import { coolEnd } from '#lib/rooms/day/views/cool-end.ts'
import { endFormWords } from '#lib/rooms/day/words/ends-en.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import { placeOf } from '#lib/service/place.ts'
import { demoStation } from '#server/demo-station.ts'
import { at, minute, read } from '#tests/support/food.ts'
import { type Given, given, OPENED_AT, running, type Told } from '#tests/support/service.ts'

const rice = { what: 'pan', id: 'pan-rice' } as const
const b1 = { what: 'batch', id: 'b1' } as const
const of = (told: Told, at: Parameters<typeof placeOf>[1], minutes: number, over: object = {}) => {
  const state = { ...running(told), ...over }
  const place = placeOf(state, at)
  return place && coolEnd(state, place, minute(minutes))
}
/** In words, without a time zone: minutes since the opening. */
const time = (at: number) => `${(at - OPENED_AT) / MINUTE_MS}`
const { timeZone } = demoStation
const DAY = civilDate(OPENED_AT, timeZone)
/** So many minutes from the opening, as a plan says it. */
const clock = (minutes: number): string => {
  const of = minuteOfDay(minute(minutes), timeZone)
  return `${`${Math.floor(of / 60)}`.padStart(2, '0')}:${`${of % 60}`.padStart(2, '0')}`
}
const tuna = (...more: readonly Given[]): Told =>
  at(
    given(),
    1,
    { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1, startedAt: minute(0) },
    { type: 'finishBatch', batch: 'b1', amount: 900_000, finishedAt: minute(1) },
    ...more,
  )
const cools: Given = {
  ...{ type: 'recordCooling', batch: 'b1', ...read(65, { at: minute(1) }) },
  presentUntil: minute(100),
}

describe('what cooling takes, before it is chosen', () => {
  it('[EN31] hot food has both deadlines, counted from now: 2 and 6 hours, 3-501.14(A)', () => {
    const hot = of(given(), rice, 10)
    expect(hot?.stages.map(({ by }) => by)).toEqual([minute(130), minute(370)])
    expect(hot).toMatchObject({ isStarted: false, isStayed: false, tooLittle: null })
    expect(endFormWords.coolBy(hot?.stages ?? [], 'F', time)).toBe('70 °F by 130, 41 °F by 370')
    expect(endFormWords.coolBy(hot?.stages ?? [], 'C', time)).toBe('21 °C by 130, 5 °C by 370')
  })

  it('[EN31] food from room temperature has one, counted from when it was made: 4 hours, 3-501.14(B)', () => {
    const room = of(tuna(cools), b1, 100)
    expect(room).toMatchObject({ isStarted: true, isStayed: false })
    expect(endFormWords.coolBy(room?.stages ?? [], 'F', time)).toBe('41 °F by 241')
    expect(of(tuna({ ...cools, presentUntil: minute(241) } as Given), b1, 100)?.isStayed).toBe(true)
    // Nothing is left to be read of it.
    expect(of(tuna(cools), b1, 242)).toBeNull()
  })

  it('[EN31] says who is there by the plan, up to the end of the next stage', () => {
    const crew = (from: string, to: string) => ({
      plan: { crew: [{ id: 'c1', adult: true, on: DAY, from, to }] },
    })
    const there = (over: object) => of(given(), rice, 10, over)?.there
    expect(there({})).toBeUndefined()
    expect(there(crew(clock(-60), clock(60)))).toBe(minute(60))
    expect(there(crew(clock(-60), clock(300)))).toBe(minute(130))
    expect(there(crew(clock(-60), clock(5)))).toBeNull()
    expect(there(crew(clock(131), clock(300)))).toBeNull()
  })

  it('[EN31] says why the time that is used leaves too little, with its paragraph', () => {
    const little = (minutes: number, over: object = {}) =>
      of(tuna(cools), b1, minutes, over)?.tooLittle ?? null
    expect(little(211)).toBeNull()
    const late = little(221)
    expect(late).toMatchObject({ leftMs: 20 * MINUTE_MS, usedMs: 220 * MINUTE_MS, needsMs: null })
    const say = (one: typeof late) =>
      one && endFormWords.coolLittle(one, { scale: 'F', now: minute(221), time })
    expect(say(late)).toBe('Only 20 min left of its 4 h to 41 °F (3-501.14(B)), counted since 1.')
    const measured = (total: number) => ({
      prep: { foods: [{ component: 'tuna', coolsIn: { first: 60, total } }] },
    })
    expect(little(60, measured(240))).toBeNull()
    const slow = little(60, measured(300))
    expect(slow?.needsMs).toBe(5 * HOUR_MS)
    expect(say(slow)).toBe(
      'Here it took 5 h when it was measured, and has 4 h to 41 °F (3-501.14(B)): too slow.',
    )
  })
})
