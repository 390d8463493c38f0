import { describe, expect, it } from 'vitest'
import { at, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
  buildIn,
  choose,
  codeOf,
  type Given,
  given,
  at as of,
  ofPortions,
  refusalOf,
  send,
  type Told,
} from '#tests/support/service.ts'

const clock: Given = {
  type: 'startTimeClock',
  what: 'pan',
  id: 'pan-tuna',
  leftAt: minute(10),
  from: 'cold',
  rule: '4h',
  ...read(40, { at: minute(9) }),
}
const on1A = (type: 'start' | 'finish' | 'handOver' | 'remake'): Given => ({ type, ...of('1A') })
const takeBack = (made: boolean): Given => ({ type: 'takeBack', ...of('1A'), made })
const cold = { reading: read(38).reading, initials: 'KT' }
const freshTuna: readonly Given[] = [
  { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1 },
  { type: 'finishBatch', batch: 'b1', amount: ofPortions('tuna', 30) },
  { type: 'changePan', pan: 'pan-tuna', amount: ofPortions('tuna', 12), batch: 'b1', ...cold },
]
const throwOutAt = (told: Told) => buildIn(told, '1A').until?.throwOutAt

/** Tuna on time alone until 14:10, and a build of it that was finished at 13:20. */
const timed = at(given(), 12, clock)
const late = at(at(timed, 95, ...readAll(timed)), 195, ...readAll(timed))
const made = at(late, 200, send(choose('harbor-tuna')), on1A('start'), on1A('finish'))

describe('a finish that is taken back', () => {
  it('[B38] leaves its time to what is finished next, though its pan was changed since', () => {
    expect(throwOutAt(made)).toBe(minute(250))
    const changed = at(made, 201, ...freshTuna)
    const fresh = at(at(late, 201, ...freshTuna), 203, send(choose('harbor-tuna')))
    expect(throwOutAt(at(fresh, 203, on1A('start'), on1A('finish')))).toBeGreaterThan(minute(250))
    const again = at(changed, 203, takeBack(false), on1A('finish'))
    expect(throwOutAt(again)).toBe(minute(250))
    expect(buildIn(again, '1A').until?.collectBy).toBeLessThanOrEqual(minute(250))
    const twice = at(again, 204, takeBack(false), on1A('finish'))
    expect(throwOutAt(twice)).toBe(minute(250))
    expect(until(twice, 250).state.toThrowOut['build/1A']).toMatchObject({ because: 'time' })
  })

  it('[B38] keeps the time of the shelf as well', () => {
    const plain = at(given(), 6, send(choose('garden-chicken')), on1A('start'), on1A('finish'))
    const first = throwOutAt(plain)
    expect(first).toBe(minute(246))
    const again = at(plain, 30, takeBack(false), on1A('finish'))
    expect(throwOutAt(again)).toBe(first)
    expect(buildIn(again, '1A').until?.collectBy).toBe(minute(50))
  })

  it('[B38] binds nothing more once what was in it was thrown out', () => {
    const changed = at(made, 201, ...freshTuna)
    const fresh = minute(203) + 4 * 3_600_000
    const ways: readonly (readonly Given[])[] = [
      [takeBack(true)],
      [takeBack(false), on1A('finish'), takeBack(true)],
    ]
    for (const way of ways)
      expect(throwOutAt(at(changed, 203, ...way, on1A('start'), on1A('finish')))).toBe(fresh)
    const stopped = (foodInIt: boolean) =>
      at(
        changed,
        203,
        takeBack(false),
        { type: 'change', readBack: true, ...of('1A'), to: choose('harbor-tuna', { slaw: 'no' }) },
        { type: 'acknowledge', ...of('1A'), foodInIt },
        on1A('start'),
        on1A('finish'),
      )
    expect(throwOutAt(stopped(true))).toBe(fresh)
    expect(throwOutAt(stopped(false)), 'said to hold nothing').toBe(minute(250))
  })

  it('[B38] is refused where it is held for a pan that is off sale, and goes on once that is decided', () => {
    const plain = at(given(), 30, send(choose('garden-chicken')), on1A('start'), on1A('finish'))
    const out = at(plain, 40, {
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-chicken',
      ...read(118),
    })
    expect(refusalOf(whenAt(out, 41, takeBack(false)))).toEqual({
      code: 'build-held',
      build: '1A',
      reason: 'off-sale',
    })
    const good = at(out, 42, {
      type: 'resolveOffSale',
      what: 'pan',
      id: 'pan-chicken',
      way: 'reheat',
      place: 'range',
      startedAt: minute(41),
      reading: { ...read(166).reading, heldSeconds: 20 },
      initials: 'KT',
    })
    const bound = throwOutAt(good)
    expect(bound).toBeLessThan(minute(270))
    const again = at(good, 43, takeBack(false), on1A('finish'))
    expect(throwOutAt(again)).toBe(bound)
  })

  it('[B38] a need told late is no reason against it', () => {
    const plain = at(given(), 30, send(choose('garden-chicken')), on1A('start'), on1A('finish'))
    const told = at(plain, 31, {
      type: 'tellNeed',
      ...of('1A'),
      asked: 'needs',
      needs: [{ code: 'milk', handling: 'keep-apart', reason: null }],
    })
    expect(buildIn(told, '1A').hold?.reason).toBe('need')
    expect(codeOf(whenAt(told, 32, takeBack(false)))).toBeNull()
  })
})
