import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type HeldPan,
  holdingState,
  inLimits,
  nextReading,
  READING_PRACTICE,
  resolveProblem,
  waitingState,
  waysOut,
} from '#lib/safety/holding.ts'
import { MODEL_CODE as limits } from '#lib/safety/limits.ts'
import { at, read } from '#tests/support/readings.ts'

const hot = (...readings: HeldPan['readings']): HeldPan => ({
  heldBy: 'hot',
  roast: false,
  since: at('10:30'),
  readings,
})
const stateAt = (pan: HeldPan, time: string | number) =>
  holdingState(pan, [], typeof time === 'number' ? time : at(time), limits)

/** Only these pass: everything else takes the pan off sale. */
const passes = ({ state }: { readonly state: string }): boolean =>
  state === 'in-limits' || state === 'ask'

describe('holding', () => {
  it('[F11] hot food is at its limit or above, cold food at its limit or below', () => {
    expect(inLimits('hot', read(135, '11:00'), limits)).toBe(true)
    expect(inLimits('hot', read(134.9, '11:00'), limits)).toBe(false)
    expect(inLimits('cold', read(41, '11:00'), limits)).toBe(true)
    expect(inLimits('cold', read(41.1, '11:00'), limits)).toBe(false)
    expect(inLimits('cold', read(5, '11:00', { in: 'C' }), limits)).toBe(true)
    expect(inLimits('hot', read(5, '11:00', { in: 'C' }), limits)).toBe(false)
  })

  it('[F11] only a roast is held at the limit of roasts', () => {
    expect(inLimits('hot', read(130, '11:00'), limits, true)).toBe(true)
    expect(inLimits('hot', read(129.9, '11:00'), limits, true)).toBe(false)
    expect(inLimits('hot', read(130, '11:00'), limits)).toBe(false)
  })

  it('[F12] a pan is in limits, is asked for, and from the due moment on is missed', () => {
    const pan = hot(read(150, '10:30'))
    expect(stateAt(pan, '10:30').state).toBe('in-limits')
    expect(stateAt(pan, at('12:20') - 1).state).toBe('in-limits')
    expect(stateAt(pan, '12:20').state).toBe('ask')
    expect(passes(stateAt(pan, at('12:30') - 1))).toBe(true)
    expect(stateAt(pan, '12:30')).toEqual({ state: 'missed', since: at('12:30') })
    expect(passes(stateAt(pan, '12:30'))).toBe(false)
  })

  it('[F12] without a reading that counts nothing passes', () => {
    const without = [
      hot(),
      hot(read(150, '10:00')),
      hot(read(150, '10:30', { initialled: false })),
      hot(read(150, '10:30', { where: 'surface' })),
      hot(read(150, '13:00')),
    ]
    for (const pan of without) {
      expect(stateAt(pan, '10:31')).toEqual({ state: 'missed', since: at('10:30') })
      expect(passes(stateAt(pan, '10:31'))).toBe(false)
    }
  })

  it('[F14] out of limits stays so until it is resolved, whatever is read after it', () => {
    const low = read(128, '11:30')
    const pan = hot(read(150, '10:30'), read(141, '11:00'), low, read(150, '11:35'))
    expect(stateAt(pan, '11:40')).toEqual({ state: 'out', reading: low, lastGoodAt: at('11:00') })
    expect(passes(stateAt(pan, '11:40'))).toBe(false)
    expect(stateAt({ ...pan, since: at('11:35') }, '11:40').state).toBe('in-limits')
    expect(stateAt(hot(read(120, '10:30')), '10:31')).toMatchObject({ lastGoodAt: null })
  })

  it('[F14] only the person in charge resolves it, in a way that is allowed', () => {
    const allowed = [{ way: 'discard' as const }]
    expect(resolveProblem('discard', false, allowed)).toBe('only-in-charge')
    expect(resolveProblem('reheat', true, allowed)).toBe('way-not-allowed')
    expect(resolveProblem('discard', true, allowed)).toBeNull()
  })

  const out = {
    heldBy: 'hot',
    lastGoodAt: at('11:00'),
    reheatable: true,
    timeProcedure: true,
  } as const
  const wayNames = (...of: Parameters<typeof waysOut>) => waysOut(...of).map(({ way }) => way)

  it('[F15] the time it has been out counts from the last reading in limits', () => {
    expect(waysOut(out, at('12:00'), limits)).toEqual([
      { way: 'reheat', by: at('14:00') },
      { way: 'time-only', startedAt: at('11:00'), throwOutAt: at('15:00') },
      { way: 'discard' },
    ])
    expect(wayNames(out, at('13:00'), limits)).toContain('reheat')
    expect(wayNames(out, at('13:00') + 1, limits)).toEqual(['time-only', 'discard'])
    expect(wayNames(out, at('15:00') - 1, limits)).toEqual(['time-only', 'discard'])
    expect(wayNames(out, at('15:00'), limits)).toEqual(['discard'])
  })

  it('[F15] an unknown time out leaves only throwing out', () => {
    expect(wayNames({ ...out, lastGoodAt: null }, at('11:01'), limits)).toEqual(['discard'])
    expect(wayNames({ ...out, lastGoodAt: at('12:00') }, at('11:01'), limits)).toEqual(['discard'])
  })

  it('[F15] cold food isn’t reheated, and time alone needs its procedure', () => {
    expect(wayNames({ ...out, heldBy: 'cold' }, at('12:00'), limits)).toEqual([
      'time-only',
      'discard',
    ])
    expect(wayNames({ ...out, reheatable: false }, at('12:00'), limits)).not.toContain('reheat')
    const noProcedure = { ...out, timeProcedure: false }
    expect(wayNames(noProcedure, at('12:00'), limits)).toEqual(['reheat', 'discard'])
  })

  const rush = { from: at('12:00'), to: at('13:30') }

  it('[F13] a reading that would fall into a rush is moved ahead of it', () => {
    expect(nextReading(at('10:45'), [rush], READING_PRACTICE)).toEqual({
      askAt: at('11:50'),
      dueAt: at('12:00'),
      moved: true,
    })
    const two = [rush, { from: at('11:45'), to: at('12:05') }]
    expect(nextReading(at('10:45'), two, READING_PRACTICE).dueAt).toBe(at('11:45'))
  })

  it('[F13] it isn’t moved where it falls outside, or where too little time lies between', () => {
    expect(nextReading(at('10:00'), [rush], READING_PRACTICE)).toMatchObject({ moved: false })
    expect(nextReading(at('11:30'), [rush], READING_PRACTICE).dueAt).toBe(at('13:30'))
    expect(nextReading(at('11:25'), [rush], READING_PRACTICE).dueAt).toBe(at('12:00'))
    expect(
      nextReading(at('11:25') + 600_000, [{ ...rush, to: at('14:00') }], READING_PRACTICE),
    ).toEqual({
      askAt: at('13:25'),
      dueAt: at('13:35'),
      moved: false,
    })
  })

  it('[F13] it is never moved behind what is usual, nor before the reading before it', () => {
    const windows = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 120 })),
      { maxLength: 5 },
    )
    fc.assert(
      fc.property(windows, fc.integer({ min: 0, max: 200 }), (spans, minute) => {
        const last = at('09:00') + minute * 60_000
        const rushes = spans.map(([start, length]) => {
          const from = at('09:00') + start * 60_000
          return { from, to: from + length * 60_000 }
        })
        const next = nextReading(last, rushes, READING_PRACTICE)
        expect(next.dueAt).toBeLessThanOrEqual(last + READING_PRACTICE.everyMs)
        expect(next.dueAt).toBeGreaterThanOrEqual(last + READING_PRACTICE.leastBetweenMs)
        expect(next.askAt).toBeLessThanOrEqual(next.dueAt)
        expect(next.askAt).toBeGreaterThanOrEqual(last)
      }),
      { seed: 17 },
    )
  })
})

describe('food that waits', () => {
  const waits = (readings: HeldPan['readings'], now: string) =>
    waitingState({ heldBy: 'hot', roast: false, since: at('10:00'), readings }, [], at(now), limits)

  it('[F42] is read as a pan is, and what it was made to counts as its first reading', () => {
    expect(waits([], '11:49')).toMatchObject({ state: 'in-limits', next: { dueAt: at('12:00') } })
    expect(waits([], '11:50').state).toBe('ask')
    expect(waits([], '12:00')).toEqual({ state: 'missed', since: at('12:00') })
    expect(waits([read(150, '11:30')], '12:00')).toMatchObject({ next: { dueAt: at('13:30') } })
    expect(waits([read(120, '11:30'), read(150, '11:40')], '11:50').state).toBe('out')
    expect(waits([read(150, '11:30', { probe: null })], '12:00').state).toBe('missed')
  })
})
