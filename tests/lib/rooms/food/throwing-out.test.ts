import { describe, expect, it } from 'vitest'
import { levelOf, levelsOf, sellable } from '#lib/rooms/pans/facts/levels.ts'
import { EMPTY_STOCK } from '#lib/service/food-state.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { at, fahrenheit, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
  accountOf,
  buildIn,
  choose,
  codeOf,
  type Given,
  given,
  at as of,
  ofPortions,
  onward,
  openedService,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const tuna = (count: number) => ofPortions('tuna', count)
const clock = (over: Partial<Extract<Given, { type: 'startTimeClock' }>> = {}): Given => ({
  type: 'startTimeClock',
  what: 'pan',
  id: 'pan-tuna',
  leftAt: minute(10),
  from: 'cold',
  rule: '4h',
  ...read(40, { at: minute(9) }),
  ...over,
})
const on1A = (type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of('1A') })
const throwOut = (what: 'pan' | 'backup' | 'batch' | 'build', id: string): Given => ({
  type: 'throwOut',
  what,
  id,
  reason: 'past-time',
  initials: 'KT',
})
const left = (told: Told, component: string) =>
  sellable(running(told), levelsOf(running(told)), component)

/** Tuna on time alone since 10:10. */
const timed = at(given(), 12, clock())
/** The same at 13:15, the other pans read in between. */
const late = at(at(timed, 95, ...readAll(timed)), 195, ...readAll(timed))

describe('time alone', () => {
  it('[B15] starts with a reading, and runs from when the food left the cold', () => {
    expect(timed.state.pans['pan-tuna']).toMatchObject({
      food: {
        heldBy: 'time',
        clock: { rule: '4h', startedAt: minute(10), throwOutAt: minute(250) },
      },
    })
    expect(refusalOf(whenAt(given(), 60, clock({ leftAt: minute(-260) })))).toMatchObject({
      code: 'cannot-start-clock',
      why: 'past-throw-out',
    })
    expect(codeOf(whenAt(timed, 13, clock()))).toBe('already-so')
    expect(refusalOf(whenAt(given(), 12, clock({ rule: '4h-cool' })))).toMatchObject({
      why: 'rule-not-from-there',
    })
  })

  it('[B15] a start reading out of limits starts no clock, and takes the pan off sale', () => {
    const decision = whenAt(given(), 12, clock(read(48, { at: minute(9) })))
    expect(refusalOf(decision)).toEqual({ code: 'cannot-start-clock', why: 'start-out-of-limits' })
    expect('also' in decision && decision.also).toMatchObject([
      { type: 'temperatureRead', what: 'pan', id: 'pan-tuna', inLimits: false },
      { type: 'takenOffSale', what: 'pan', id: 'pan-tuna', why: 'out-of-limits' },
    ])
    const none = whenAt(given(), 12, clock({ leftAt: minute(-260) }))
    expect('also' in none).toBe(false)
  })

  it.each([
    ['pan-tuna', 'hot'],
    ['pan-tuna', 'room'],
    ['pan-chicken', 'cold'],
    ['pan-almonds', 'cold'],
  ] as const)('[B15] %s didn’t leave %s', (id, from) => {
    const rule = from === 'room' ? '4h-cool' : '4h'
    const started = clock({ id, from, rule, ...read(from === 'hot' ? 150 : 40) })
    expect(refusalOf(whenAt(given(), 12, started))).toEqual({
      code: 'cannot-start-clock',
      why: 'held-otherwise',
    })
  })

  it('[B15] a batch leaves what it was cooked, cooled or cut to', () => {
    const cut = at(
      openedService(),
      1,
      { type: 'startBatch', component: 'tuna', loads: 1, startedAt: minute(-20) },
      { type: 'finishBatch', batch: 'b1', amount: tuna(30), finishedAt: minute(0) },
    )
    const of = { what: 'batch', id: 'b1', leftAt: minute(0), ...read(60) } as const
    expect(codeOf(whenAt(cut, 2, clock({ ...of, from: 'room', rule: '4h-cool' })))).toBeNull()
    expect(refusalOf(whenAt(cut, 2, clock({ ...of, from: 'hot' })))).toMatchObject({
      why: 'held-otherwise',
    })
    const known: Given = { type: 'readTemperature', what: 'batch', id: 'b1', ...read(39) }
    const cold = at(cut, 2, known)
    expect(
      refusalOf(whenAt(cold, 3, clock({ ...of, from: 'room', rule: '4h-cool' }))),
    ).toMatchObject({ why: 'held-otherwise' })
  })

  it('[B15] is for no station without a written procedure', () => {
    const { station } = running(given())
    const none = {
      ...given(),
      state: {
        ...given().state,
        station: { ...station, safety: { ...station.safety, timeProcedure: false } },
      },
    }
    expect(refusalOf(whenAt(none, 12, clock()))).toEqual({
      code: 'cannot-start-clock',
      why: 'no-procedure',
    })
  })

  it('[B16] [F19] ends at its throw-out time: not sold, to be thrown out, until it is initialled', () => {
    expect(left(until(late, 249.9), 'tuna')).toBe(16)
    const past = until(late, 250)
    expect(left(past, 'tuna')).toBe(0)
    expect(past.state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'time' })
    expect(past.events.at(-1)).toMatchObject({ command: null, due: minute(250) })
    expect(codeOf(whenAt(past, 251, send(choose('harbor-tuna'))))).toBe('sold-out')
    const away = at(past, 252, throwOut('pan', 'pan-tuna'))
    expect(away.state.toThrowOut).toEqual({})
    expect(accountOf(away, 'tuna').wasted).toBe(tuna(16))
    expect(away.state.pans['pan-tuna']).toMatchObject({ amount: 0, food: null, batches: [] })
    expect(codeOf(whenAt(away, 253, throwOut('pan', 'pan-tuna')))).toBe('nothing-there')
  })

  it('[B16] stops what is being made of it, which is made again from what is left', () => {
    const making = at(late, 248, send(choose('harbor-tuna')), on1A('start'))
    const past = until(making, 250)
    expect(buildIn(past, '1A').stop).toMatchObject({ reason: 'throw-out', to: null })
    expect(codeOf(whenAt(past, 251, on1A('finish')))).toBe('build-stopped')
    const waits = at(past, 251, { type: 'acknowledge', ...of('1A'), foodInIt: true })
    expect(buildIn(waits, '1A')).toMatchObject({ state: 'waiting', stop: null })
    expect(codeOf(whenAt(waits, 252, on1A('start')))).toBe('short')
  })

  it('[B17] nothing is sold or started that would be finished past it', () => {
    expect(codeOf(whenAt(late, 246, send(choose('harbor-tuna'))))).toBeNull()
    expect(refusalOf(whenAt(late, 249.2, send(choose('harbor-tuna'))))).toEqual({
      code: 'past-throw-out-by-then',
      component: 'tuna',
      at: minute(250),
    })
    const waiting = at(late, 240, send(choose('harbor-tuna')))
    expect(codeOf(whenAt(waiting, 247, on1A('start')))).toBeNull()
    expect(codeOf(whenAt(waiting, 249.2, on1A('start')))).toBe('past-throw-out-by-then')
  })

  it('[B16] under a rule with a warmest ends at the first reading above it', () => {
    const six = at(given(), 12, clock({ rule: '6h' }))
    expect(six.state.pans['pan-tuna']?.food?.clock?.throwOutAt).toBe(minute(370))
    const warm: Given = {
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-tuna',
      reading: fahrenheit(71),
      initials: 'KT',
    }
    const told = at(six, 40, warm)
    expect(told.state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'too-warm' })
    expect(left(told, 'tuna')).toBe(0)
    const cool = at(six, 40, { ...warm, reading: fahrenheit(69) } as Given)
    expect(left(cool, 'tuna')).toBe(16)
    // Read at 10:40, so due again at 11:40; a missing reading doesn't pass.
    expect(left(until(cool, 99), 'tuna')).toBe(16)
    const missed = until(cool, 100)
    expect(missed.state.pans['pan-tuna']?.offSale).toMatchObject({ why: 'monitoring-missed' })
  })

  it('[B15] that started in the prep kitchen goes with its batch, to the line and into no heat', () => {
    const batch: readonly Given[] = [
      { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1, startedAt: minute(-60) },
      { type: 'finishBatch', batch: 'b1', amount: tuna(30), finishedAt: minute(-30) },
      clock({ what: 'batch', id: 'b1', leftAt: minute(-20), ...read(40, { at: minute(-21) }) }),
    ]
    const told = at(openedService(), 1, ...batch)
    const load: Given = { type: 'load', pan: 'pan-tuna', amount: tuna(12), batch: 'b1' }
    expect(refusalOf(whenAt(told, 5, { ...load, ...read(40) }))).toMatchObject({
      problem: { code: 'not-back-to-hot-or-cold' },
    })
    const line = at(told, 5, { ...load, heldBy: 'time' })
    expect(line.state.pans['pan-tuna']?.food?.clock?.throwOutAt).toBe(minute(220))
    const past = until(line, 220)
    expect(Object.keys(past.state.toThrowOut).sort()).toEqual(['batch/b1', 'pan/pan-tuna'])
    const gone = at(past, 221, throwOut('batch', 'b1'), throwOut('pan', 'pan-tuna'))
    expect(gone.state.batches.b1?.thrownOutAt).toBe(minute(221))
    expect(gone.state.wastes.tuna).toEqual({ 'past-time': tuna(30) })
    expect(accountOf(gone, 'tuna')).toMatchObject({ wasted: tuna(30), loaded: tuna(30) })
    expect(codeOf(whenAt(gone, 222, throwOut('batch', 'b1')))).toBe('already-so')
  })

  it('[B11] in a pan takes only food with a clock, and the older one governs', () => {
    const batch: readonly Given[] = [
      { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1, startedAt: minute(-60) },
      { type: 'finishBatch', batch: 'b1', amount: tuna(30), finishedAt: minute(-30) },
    ]
    const told = onward(timed, { type: 'correct', pan: 'pan-tuna', amount: tuna(4) })
    const more = at(told, 20, ...batch)
    const topUp: Given = { type: 'topUp', pan: 'pan-tuna', amount: tuna(5), batch: 'b1' }
    expect(refusalOf(whenAt(more, 21, { ...topUp, ...read(39) }))).toMatchObject({
      code: 'cannot-load',
      problem: { code: 'needs-clock' },
    })
    const older = at(
      more,
      21,
      clock({ what: 'batch', id: 'b1', leftAt: minute(-20), ...read(40, { at: minute(-21) }) }),
      topUp,
    )
    expect(older.state.pans['pan-tuna']).toMatchObject({
      amount: tuna(9),
      food: { clock: { throwOutAt: minute(220) } },
    })
  })

  it('[B23] while a jump of the clock isn’t confirmed nothing on a clock is sold', () => {
    const { at: now } = timed.state
    const read = { 'pan/pan-tuna': now, 'pan/pan-chicken': now }
    const jumped = {
      ...timed,
      state: { ...timed.state, clockJump: { byMs: 90_000, at: now, read } },
    }
    expect(left(jumped, 'tuna')).toBe(0)
    expect(left(jumped, 'chicken')).toBe(24)
  })

  it('[B27] a clock that is set back makes no limit longer; set forward and back it changes none', () => {
    const jump = (byMs: number) => ({ type: 'clockJumped', byMs }) as const
    const set = (...by: number[]) =>
      [...by.map(jump), { type: 'clockConfirmed' } as const].reduce<ServiceState>(
        (state, event) =>
          evolve(state, { ...event, position: 999, at: timed.state.at, command: null }),
        timed.state,
      )
    expect(set(-3_600_000).pans['pan-tuna']?.food?.clock).toMatchObject({
      throwOutAt: (timed.state.pans['pan-tuna']?.food?.clock?.throwOutAt ?? 0) - 3_600_000,
    })
    expect(set(3_600_000, -3_600_000)).toEqual({ ...timed.state, clockJump: null, position: 999 })
    expect(set(3_600_000)).toEqual({ ...timed.state, clockJump: null, position: 999 })
  })
})

describe('made food', () => {
  const made = at(late, 200, send(choose('harbor-tuna')), on1A('start'), on1A('finish'))

  it('[B18] is bound by the clock of what it took, and has a collect-by', () => {
    expect(buildIn(made, '1A').until).toEqual({ collectBy: minute(220), throwOutAt: minute(250) })
    const plain = at(given(), 20, send(choose('garden-chicken')), on1A('start'), on1A('finish'))
    expect(buildIn(plain, '1A').until).toEqual({ collectBy: minute(40), throwOutAt: minute(260) })
  })

  it('[B18] is handed to nobody from its very throw-out time on, told or not that it is over', () => {
    const over = minute(250)
    expect(made.state.toThrowOut['build/1A']).toBeUndefined()
    expect(codeOf(when(made, on1A('handOver'), { now: over - 1 }))).toBeNull()
    for (const now of [over, over + 1])
      expect(refusalOf(when(made, on1A('handOver'), { now }))).toEqual({
        code: 'past-throw-out',
        id: '1A',
      })
  })

  it('[B18] past its time is handed to nobody, thrown out with initials, and made again', () => {
    expect(codeOf(whenAt(made, 249, on1A('handOver')))).toBeNull()
    const past = until(made, 250)
    expect(past.state.toThrowOut['build/1A']).toMatchObject({ what: 'build' })
    expect(refusalOf(whenAt(past, 251, on1A('handOver')))).toEqual({
      code: 'past-throw-out',
      id: '1A',
    })
    const again = at(past, 251, throwOut('build', '1A'))
    expect(buildIn(again, '1A')).toMatchObject({ state: 'waiting', until: null, remakes: 1 })
    expect(accountOf(again, 'tuna')).toMatchObject({ wasted: tuna(1), used: 0 })
    expect(again.state.toThrowOut['build/1A']).toBeUndefined()
    expect(codeOf(whenAt(again, 252, throwOut('build', '1A')))).toBe('wrong-state')
    expect(codeOf(whenAt(again, 252, throwOut('build', '9Z')))).toBe('unknown build')
  })
})

describe('throwing out', () => {
  it('[B21] needs initials, counts as waste, and corrects what was weighed otherwise', () => {
    const { initials: _, ...bare } = throwOut('pan', 'pan-tuna') as Extract<
      Given,
      { type: 'throwOut' }
    >
    expect(codeOf(whenAt(given(), 9, bare))).toBe('not-initialled')
    const told = at(given(), 9, { ...throwOut('pan', 'pan-tuna'), amount: tuna(15) } as Given)
    expect(accountOf(told, 'tuna')).toMatchObject({
      wasted: tuna(15),
      corrected: -tuna(1),
      loaded: tuna(16),
    })
    const absurd = { ...throwOut('pan', 'pan-tuna'), amount: tuna(99) } as Given
    expect(codeOf(whenAt(given(), 9, absurd))).toBe('absurd-amount')
  })

  it('[B22] comes before closing, as does what is off sale', () => {
    const past = until(timed, 99)
    const closes: Given = { type: 'close' }
    const low: Given = {
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-chicken',
      reading: fahrenheit(128),
      initials: 'KT',
    }
    expect(refusalOf(whenAt(at(past, 99, low), 99, closes))).toEqual({
      code: 'throw-out-first',
      count: 1,
    })
    expect(codeOf(whenAt(past, 99, closes))).toBeNull()
    expect(refusalOf(whenAt(until(late, 250), 250, closes))).toMatchObject({
      code: 'throw-out-first',
    })
  })
})

describe('food of an older log', () => {
  it('[B26] of which nothing is known isn’t sold; what is dry is', () => {
    const { state } = given()
    const old: Told = {
      ...given(),
      state: {
        ...state,
        pans: Object.fromEntries(
          Object.entries(state.pans).map(([id, pan]) => [
            id,
            { ...EMPTY_STOCK, amount: pan.amount, load: 1 },
          ]),
        ),
      },
    }
    expect(left(old, 'chicken')).toBe(0)
    expect(levelOf(running(old), 'chicken').heldBack).toBe(ofPortions('chicken', 24))
    expect(left(old, 'pita')).toBe(24)
    expect(left(old, 'almonds')).toBe(30)
  })
})

describe('a clock that is told late', () => {
  const order = send(choose('harbor-tuna'))
  /** 1A made at 10:22, of tuna that had left the cold at 10:10. */
  const made = at(at(given(), 20, order, on1A('start')), 22, on1A('finish'))

  it('[B35] binds what was made of it since', () => {
    const told = at(made, 24, clock({ leftAt: minute(10) }))
    expect(buildIn(told, '1A').until?.throwOutAt).toBe(minute(250))
    expect(buildIn(told, '1A').until?.collectBy).toBeLessThanOrEqual(minute(250))
    const over = until(told, 251)
    expect(running(over).toThrowOut['build/1A']).toMatchObject({ because: 'time' })
  })

  it('[B35] doesn’t bind what was made before it started', () => {
    const told = at(made, 25, clock({ leftAt: minute(23), ...read(40, { at: minute(23) }) }))
    expect(buildIn(told, '1A').until?.throwOutAt ?? Number.POSITIVE_INFINITY).toBeGreaterThan(
      minute(260),
    )
  })
})
