import { describe, expect, it } from 'vitest'
import {
  coolingStages,
  coolingState,
  coolingWays,
  planCooling,
  stagesToCome,
} from '#lib/safety/cooling.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import type { Reading } from '#lib/safety/readings.ts'
import { at, read } from '#tests/support/readings.ts'

const state = (now: string | number, ...readings: readonly Reading[]) =>
  coolingState(readings, 'cooked', typeof now === 'number' ? now : at(now), limits, null)
const start = read(135, '12:00')

describe('cooling', () => {
  it('[F23] it starts with a reading of 135 °F or more', () => {
    expect(state('12:00')).toEqual({ state: 'no-start', below: false })
    expect(state('12:00', read(134.9, '12:00'))).toEqual({ state: 'no-start', below: true })
    expect(state('12:30', read(130, '12:00'), read(140, '12:30'))).toEqual({
      state: 'no-start',
      below: true,
    })
    expect(state('12:00', read(135, '12:00', { probe: null })).state).toBe('no-start')
    expect(state('12:00', start)).toEqual({
      state: 'first-stage',
      startedAt: at('12:00'),
      dueAt: at('14:00'),
    })
  })

  it('[F23] the clock starts at the last reading at 135 °F or more, before it fell below', () => {
    const readings = [read(190, '11:00'), read(140, '11:40'), read(120, '12:10')]
    expect(state('12:10', ...readings)).toMatchObject({
      startedAt: at('11:40'),
      dueAt: at('13:40'),
    })
  })

  it('[F23] the second stage counts from the same start, 6 hours in all', () => {
    expect(state('13:00', start, read(70, '13:00'))).toEqual({
      state: 'second-stage',
      startedAt: at('12:00'),
      dueAt: at('18:00'),
    })
    const last = read(41, '18:00')
    expect(state('18:00', start, read(70, '13:00'), last)).toMatchObject({ state: 'cooled' })
    const late = read(41, at('18:00') + 1)
    expect(state('19:00', start, read(70, '13:00'), late)).toEqual({
      state: 'missed',
      stage: 2,
      startedAt: at('12:00'),
    })
  })

  it('[F23] the last millisecond of a stage still counts, the next doesn’t', () => {
    expect(state('14:00', start, read(70, '14:00')).state).toBe('second-stage')
    expect(state('14:00', start).state).toBe('first-stage')
    expect(state(at('14:00') + 1, start)).toMatchObject({ state: 'missed', stage: 1 })
    expect(state('15:00', start, read(70, at('14:00') + 1))).toMatchObject({ stage: 1 })
  })

  it('[F23] a stage without a reading in time is missed, however cold it was read later', () => {
    expect(state('14:30', start, read(38, '14:30'))).toMatchObject({ state: 'missed', stage: 1 })
    expect(state('18:30', start, read(65, '13:30'), read(38, '18:30'))).toMatchObject({ stage: 2 })
  })

  it('[F23] a reading warmer than the stage that was passed is told', () => {
    expect(state('14:00', start, read(68, '13:00'), read(75, '13:30'))).toEqual({
      state: 'warmed',
      startedAt: at('12:00'),
      at: at('13:30'),
    })
    const cold = [start, read(68, '13:00'), read(40, '15:00')]
    expect(state('16:00', ...cold, read(45, '16:00'))).toMatchObject({ state: 'warmed' })
    expect(state('16:00', ...cold, read(41, '16:00'))).toMatchObject({ at: at('15:00') })
  })

  it('[F23] readings after now don’t count yet', () => {
    expect(state('12:30', start, read(70, '13:00')).state).toBe('first-stage')
  })

  it('[F23] from room temperature it has 4 hours from its first reading and one stage', () => {
    const room = (now: number, ...readings: readonly Reading[]) =>
      coolingState(readings, 'room', now, limits, null)
    const first = read(72, '10:00')
    expect(room(at('10:00'), first)).toMatchObject({ state: 'second-stage', dueAt: at('14:00') })
    expect(room(at('14:00'), first, read(41, '14:00')).state).toBe('cooled')
    expect(room(at('14:00') + 1, first)).toMatchObject({ state: 'missed', stage: 2 })
    expect(room(at('10:00'))).toEqual({ state: 'no-start', below: false })
  })

  it('[F23] made before its first reading, it has 4 hours from then; read while it was made, from the reading', () => {
    const room = (now: number, madeAt: number | null, ...readings: readonly Reading[]) =>
      coolingState(readings, 'room', now, limits, madeAt)
    const first = read(65, '10:00')
    const made = at('08:30')
    expect(room(at('10:00'), made, first)).toEqual({
      state: 'second-stage',
      startedAt: made,
      dueAt: at('12:30'),
    })
    expect(room(at('12:30'), made, first, read(41, '12:30'))).toMatchObject({ state: 'cooled' })
    const late = read(41, at('12:30') + 1)
    expect(room(at('13:00'), made, first, late)).toMatchObject({ state: 'missed', stage: 2 })
    expect(room(at('10:00'), at('10:20'), first)).toMatchObject({ dueAt: at('14:00') })
    expect(room(at('10:00'), made)).toEqual({ state: 'no-start', below: false })
    // Of cooked food it is the reading at 135 °F that starts it.
    expect(coolingState([start], 'cooked', at('12:00'), limits, made)).toMatchObject({
      startedAt: at('12:00'),
    })
  })

  it('[F24] a missed first stage may be reheated once and in time, a missed second is thrown out', () => {
    const first = state('14:30', start)
    const ways = (again: boolean, time: number) => coolingWays(first, again, time, limits)
    expect(ways(false, at('14:30'))).toEqual(['reheat-and-cool-again', 'discard'])
    expect(ways(true, at('14:30'))).toEqual(['discard'])
    expect(ways(false, at('16:00') - 1)).toContain('reheat-and-cool-again')
    expect(ways(false, at('16:00'))).toEqual(['discard'])
    const second = state('18:30', start, read(70, '13:00'))
    expect(coolingWays(second, false, at('18:30'), limits)).toEqual(['discard'])
  })

  it('[F24] what nobody knows the start of, or what got warm again, is thrown out', () => {
    const way = (one: ReturnType<typeof state>) => coolingWays(one, false, at('12:30'), limits)
    expect(way(state('12:30', read(100, '12:00')))).toEqual(['discard'])
    expect(way(state('12:30'))).toEqual(['take-start-reading', 'discard'])
    expect(way({ state: 'warmed', startedAt: 0, at: 1 })).toEqual(['discard'])
    expect(way(state('12:30', start))).toEqual(['go-on', 'discard'])
  })

  const fastest = { first: 60 * 60_000, total: 4 * 60 * 60_000 }
  const there = (present: readonly (readonly [string, string])[]) =>
    present.map(([one, other]) => ({ from: at(one), to: at(other) }))
  const plan = (from: string, ...present: readonly (readonly [string, string])[]) =>
    planCooling(coolingStages('cooked', at(from), limits), at(from), there(present), fastest)

  it('[F25] each stage is read as late as somebody is there, before its time is over', () => {
    expect(plan('12:00', ['06:00', '23:00'])).toEqual({
      ok: true,
      stages: [
        { stage: 1, readAt: at('14:00'), by: at('14:00') },
        { stage: 2, readAt: at('18:00'), by: at('18:00') },
      ],
    })
    expect(plan('12:00', ['06:00', '13:30'], ['16:30', '17:00'])).toMatchObject({
      ok: true,
      stages: [{ readAt: at('13:30') }, { readAt: at('17:00') }],
    })
  })

  it('[F25] a cooling that nobody can read in time isn’t planned', () => {
    expect(plan('12:00', ['06:00', '11:00'])).toEqual({
      ok: false,
      stage: 1,
      why: 'nobody-there',
      by: at('14:00'),
    })
    expect(plan('12:00', ['06:00', '12:00'])).toMatchObject({
      ok: false,
      stage: 1,
      why: 'nobody-there',
    })
    expect(plan('12:00', ['06:00', '12:30'])).toMatchObject({
      ok: false,
      stage: 1,
      why: 'too-soon',
    })
    expect(plan('12:00', ['06:00', '14:00'])).toEqual({
      ok: false,
      stage: 2,
      why: 'too-soon',
      by: at('18:00'),
    })
    expect(plan('12:00', ['06:00', '14:00'], ['18:01', '19:00'])).toMatchObject({ stage: 2 })
    expect(plan('12:00', ['06:00', '14:00'], ['18:00', '19:00']).ok).toBe(true)
  })

  it('[F25] a reading at the very moment at which this kitchen may have cooled it isn’t too soon', () => {
    expect(plan('12:00', ['06:00', '13:00'], ['15:00', '16:00']).ok).toBe(true)
    expect(plan('12:00', ['06:00', '12:59'], ['15:00', '16:00'])).toMatchObject({ stage: 1 })
    expect(plan('12:00', ['06:00', '13:00'], ['15:00', '15:59'])).toMatchObject({ stage: 2 })
  })

  it('[B80] food from room temperature has one stage: 41 °F within 4 hours of when it was made, 3-501.14(B)', () => {
    const [only, ...others] = coolingStages('room', at('09:00'), limits)
    expect(others).toEqual([])
    expect(only).toMatchObject({ stage: 2, by: at('13:00') })
    expect(only?.within.paragraph).toBe('3-501.14(B)')
    const cooked = coolingStages('cooked', at('09:00'), limits)
    expect(cooked.map((one) => [one.by, one.within.paragraph])).toEqual([
      [at('11:00'), '3-501.14(A)(1)'],
      [at('15:00'), '3-501.14(A)(2)'],
    ])
  })

  it('[B80] only stages that no reading shows yet are to come', () => {
    const of = (one: ReturnType<typeof state>) =>
      stagesToCome(one, 'cooked', limits).map(({ stage }) => stage)
    expect(of(state('12:30', start))).toEqual([1, 2])
    expect(of(state('13:30', start, read(70, '13:00')))).toEqual([2])
    expect(of(state('13:30', start, read(41, '13:00')))).toEqual([])
    expect(of(state('14:01', start))).toEqual([])
  })

  it('[B80] from room temperature it is read within its 4 hours, by who is there after its last reading', () => {
    const room = (after: string, ...present: readonly (readonly [string, string])[]) =>
      planCooling(coolingStages('room', at('09:00'), limits), at(after), there(present), {
        first: 0,
        total: 0,
      })
    expect(room('10:00', ['06:00', '12:00'])).toEqual({
      ok: true,
      stages: [{ stage: 2, readAt: at('12:00'), by: at('13:00') }],
    })
    // There before it was read, and from 15:00 on, as both stages of cooked food would let them.
    expect(room('10:00', ['06:00', '10:00'], ['13:01', '15:00'])).toEqual({
      ...{ ok: false, stage: 2, why: 'nobody-there', by: at('13:00') },
    })
  })
})
