import { describe, expect, it } from 'vitest'
import type { StationForecast } from '#lib/estimate/station-forecast.ts'
import { calmOf } from '#lib/rooms/advice/facts/calm.ts'
import { forecastNow, withDoNext } from '#lib/rooms/advice/facts/forecast-now.ts'
import { pastTaught } from '#lib/rooms/day/facts/past-services.ts'
import { readyBehind, supplyOf, underwayOf } from '#lib/rooms/pans/facts/supply.ts'
import {
  CLOSES,
  choice,
  give,
  happens,
  MINUTE,
  OPENED,
  openedAs,
  order,
  panFor,
  portionOf,
  type Stocked,
  stocked,
  stockedStation,
} from '#tests/support/stock.ts'

const NOTHING_PAST = pastTaught([], stockedStation, 'real')

const forecast = (told: Stocked, minutes: number, firstBefore: string | null = null) =>
  forecastNow(told.state, NOTHING_PAST, {
    position: told.events.length,
    now: OPENED + minutes * MINUTE,
    firstBefore,
  })

/** So many chicken orders a minute apart. */
const sold = (told: Stocked, builds: number, item = 'garden-chicken'): Stocked =>
  Array.from({ length: builds }).reduce<Stocked>(
    (so, _, index) => give(so, index + 1, order(choice(item))),
    told,
  )

const batch = (told: Stocked, minutes: number, loads: number, startedAt: number): Stocked =>
  happens(told, minutes, {
    type: 'batchStarted',
    batch: 'b1',
    component: 'chicken',
    loads,
    startedAt,
  })

const keys = ({ candidates }: StationForecast): readonly string[] =>
  candidates.map(({ key }) => key)

describe('what can still be served', () => {
  it('[Z37] is what the pans are believed to hold, tickets apart', () => {
    const told = sold(stocked({ chicken: 20 }), 3)
    expect(supplyOf(told.state, 'chicken', told.state.at)).toMatchObject({ mean: 17, arriving: [] })
    expect(supplyOf(told.state, 'kale', told.state.at)).toBeNull()
  })

  it('[Z37] leaves out what may not be sold, and has what stands ready behind', () => {
    const told = stocked({ chicken: 20 })
    const off = happens(told, 5, {
      type: 'takenOffSale',
      what: 'pan',
      id: panFor('chicken'),
      why: 'out-of-limits',
      lastGoodAt: null,
    })
    expect(supplyOf(off.state, 'chicken', off.state.at)?.mean).toBe(0)
    const finished = happens(batch(told, 5, 1, OPENED), 20, {
      type: 'batchFinished',
      batch: 'b1',
      finishedAt: OPENED + 20 * MINUTE,
      amount: 12 * portionOf('chicken'),
      dateMark: null,
    })
    expect(readyBehind(finished.state, 'chicken')).toBe(12 * portionOf('chicken'))
    expect(supplyOf(finished.state, 'chicken', finished.state.at)?.mean).toBeCloseTo(32)
  })

  it('[Z37] has every back-up pan, however it is kept', () => {
    const told = stocked({ pita: 3 })
    const behind = happens(told, 5, {
      type: 'backupSet',
      component: 'pita',
      ready: true,
      backup: 'back-up-pita',
      amount: 60,
      food: { heldBy: 'dry', clock: null, dateMark: null, finishedAt: OPENED, guarded: false },
      reading: null,
      batch: null,
    })
    expect(supplyOf(behind.state, 'pita', behind.state.at)?.mean).toBeCloseTo(63)
    expect(forecast(told, 100).components.pita?.lasting).not.toBe('enough')
    expect(forecast(behind, 100).components.pita?.lasting).toBe('enough')
    expect(keys(forecast(behind, 100))).not.toContain('start-batch pita')
  })

  it('[Z53] ends where food is thrown out', () => {
    const told = stocked({ tuna: 40 })
    const ending = (minutes: number): Stocked => {
      const { food } = told.state.pans[panFor('tuna')] ?? {}
      if (!food) throw new Error('nothing is known of the tuna')
      const throwOutAt = OPENED + minutes * MINUTE
      const clock = { rule: '4h', startedAt: throwOutAt - 240 * MINUTE, throwOutAt } as const
      return happens(told, 5, {
        type: 'panChanged',
        pan: panFor('tuna'),
        takenAway: 40 * portionOf('tuna'),
        amount: 40 * portionOf('tuna'),
        food: { ...food, heldBy: 'time', clock },
        reading: null,
        batch: null,
        from: null,
      })
    }
    expect(forecast(told, 60).components.tuna?.lasting).toBe('enough')
    expect(forecast(ending(61), 60).components.tuna?.lasting).toBe('wont-last')
    expect(forecast(ending(300), 60).components.tuna?.lasting).toBe('enough')
  })

  it('[Z37] has the loads under way when they are expected, a late one soon', () => {
    const told = batch(stocked({ chicken: 4 }), 10, 2, OPENED + 10 * MINUTE)
    const remake = stockedStation.components.find(({ id }) => id === 'chicken')?.remake
    const first = 655 + (remake?.minutes ?? 0)
    const portions = remake?.portionsPerLoad
    expect(underwayOf(told.state, 'chicken', OPENED + 11 * MINUTE)).toEqual([
      { at: first, portions },
      { at: first + (remake?.minutesPerLoad ?? 0), portions },
    ])
    const late = underwayOf(told.state, 'chicken', OPENED + 100 * MINUTE)
    expect(late.map(({ at }) => at)).toEqual([747, 747])
    expect(underwayOf(told.state, 'slaw', OPENED)).toEqual([])
  })

  it('[Z37] has a finished load in hand, and the others of its batch as under way', () => {
    const told = batch(stocked({ chicken: 20 }), 10, 3, OPENED + 10 * MINUTE)
    const all = underwayOf(told.state, 'chicken', OPENED + 11 * MINUTE)
    const finish = (so: Stocked, minutes: number, loads?: number) =>
      happens(so, minutes, {
        type: 'batchFinished',
        batch: 'b1',
        finishedAt: OPENED + minutes * MINUTE,
        amount: (loads ?? 3) * 12 * portionOf('chicken'),
        dateMark: null,
        ...(loads === undefined ? {} : { loads }),
      })
    const one = finish(told, 12, 1)
    expect(all).toHaveLength(3)
    expect(underwayOf(one.state, 'chicken', OPENED + 12 * MINUTE)).toEqual(all.slice(1))
    expect(readyBehind(one.state, 'chicken')).toBe(12 * portionOf('chicken'))
    expect(supplyOf(one.state, 'chicken', OPENED + 12 * MINUTE)?.arriving).toHaveLength(2)
    const both = finish(one, 14, 2)
    expect(underwayOf(both.state, 'chicken', OPENED + 14 * MINUTE)).toEqual(all.slice(2))
    expect(underwayOf(finish(both, 16).state, 'chicken', OPENED + 16 * MINUTE)).toEqual([])
    const thrown = happens(one, 13, {
      type: 'discardSignedOff',
      what: 'batch',
      id: 'b1',
      amount: 12 * portionOf('chicken'),
      reason: 'quality',
    })
    expect(underwayOf(thrown.state, 'chicken', OPENED + 13 * MINUTE)).toEqual([])
  })
})

describe('the forecast of a station', () => {
  const told = sold(stocked({ chicken: 10, tuna: 3 }), 6)

  it('[Z38] says of each component whether it lasts, and what to do', () => {
    const made = forecast(told, 10)
    expect(Object.keys(made.components).sort()).toEqual(
      stockedStation.components.map(({ id }) => id).sort(),
    )
    const chicken = made.components.chicken
    expect(chicken).toMatchObject({
      lasting: 'wont-last',
      batch: { verdict: 'start', where: 'the kitchen', who: 'a cook' },
    })
    expect(chicken?.by.likely).toBeGreaterThan(OPENED + 10 * MINUTE)
    expect(chicken?.by.likely).toBeLessThan(CLOSES)
    expect(chicken?.batch?.readyAt).toBe(OPENED + (10 + (chicken?.batch?.minutes ?? 0)) * MINUTE)
    expect(keys(made)).toContain('start-batch chicken')
    expect(made).toMatchObject({ service: 's-lunch', closesAt: CLOSES, closesSaid: true })
    expect(made.wait?.minutes[0]).toBeGreaterThan(0)
  })

  it('[Z38] is the same wherever it is reckoned', () => {
    const again = { ...told, state: JSON.parse(JSON.stringify(told.state)) }
    expect(forecast(again, 10)).toEqual(forecast(told, 10))
    expect(JSON.parse(JSON.stringify(forecast(told, 10)))).toEqual(forecast(told, 10))
  })

  it('[Z38] starts nothing that can’t be made again, and keeps it instead', () => {
    const made = forecast(told, 10)
    expect(made.components.tuna).toMatchObject({ batch: null, beforeNextBatch: null })
    expect(made.components.tuna?.keep?.forItems).toContain('harbor-tuna')
    expect(keys(made)).toContain('keep tuna')
    for (const { kind, reason } of made.candidates)
      if (kind === 'start-batch' && reason.why === 'start-batch')
        expect(
          stockedStation.components.find(({ id }) => id === reason.component)?.remake,
        ).not.toBeNull()
  })

  it('[Z38] knows of a batch under way', () => {
    const alone = forecast(told, 20).components.chicken?.chance ?? 0
    const helped = forecast(batch(told, 9, 3, OPENED + 9 * MINUTE), 20)
    expect(helped.components.chicken?.chance).toBeLessThan(alone)
    expect(helped.components.chicken?.underway).toHaveLength(3)
  })

  it('[Z38] wants nothing more once it is closing time', () => {
    const made = forecast(told, 155)
    expect(made.components.chicken).toMatchObject({ chance: 0, lasting: 'enough' })
  })

  it('[Z43] speaks of keeping once', () => {
    const kept = give(told, 8, {
      type: 'keep',
      component: 'tuna',
      portions: 2,
      for: ['harbor-tuna'],
    })
    expect(keys(forecast(kept, 10))).not.toContain('keep tuna')
    const found = forecast(told, 10).candidates.find(({ key }) => key === 'keep tuna')
    if (!found) throw new Error('nothing was said of keeping')
    const answered = give(happens(told, 10, { type: 'adviceTold', ...found }), 11, {
      type: 'answerAdvice',
      key: 'keep tuna',
      answer: 'declined',
    })
    expect(keys(forecast(answered, 60))).not.toContain('keep tuna')
  })

  it('[Z39] suggests nothing while the pans are set up, but what can’t wait', () => {
    const early = stocked({ chicken: 4, tuna: 3 })
    const asked = forecast(early, 2).candidates.filter(({ kind }) => kind !== 'safety')
    expect(asked.map(({ key }) => key)).toEqual(['start-batch chicken'])
    // It may run out before a load is there: that can't wait until the pans are set up.
    expect(asked[0]?.reason).toMatchObject({ latestStart: null })
    expect(keys(forecast(early, 12)).length).toBeGreaterThan(asked.length)
    expect(keys(forecast(early, 12))).toContain('start-batch chicken')
    expect(keys(forecast(sold(early, 1), 2))).toContain('start-batch chicken')
    expect(keys(forecast(sold(openedAs(), 0), 12))).toEqual([
      'safety reading-due sanitizer @sanitizer',
    ])
  })

  it('[Z35] has what is open, in the order in which to do it', () => {
    const made = forecast(told, 10)
    const two = made.candidates.slice(0, 2)
    const open = two.reduce((so, one) => happens(so, 10, { type: 'adviceTold', ...one }), told)
    const next = withDoNext(made, open.state.adviceLog, null)
    expect(next.doNext.map(({ key }) => key).sort()).toEqual(two.map(({ key }) => key).sort())
    expect(made.doNext).toEqual([])
  })

  it('[P25] of what is off sale, doesn’t say that it is sold out', () => {
    const gone = { type: 'correct', pan: panFor('chicken'), amount: 0 } as const
    expect(keys(forecast(give(told, 9, gone), 10))).toContain('sold-out chicken')
    const off = give(told, 9, {
      type: 'readTemperature',
      what: 'pan',
      id: panFor('chicken'),
      reading: { tenths: 1210, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: 'AB',
    })
    expect(off.state.pans[panFor('chicken')]?.offSale?.why).toBe('out-of-limits')
    expect(keys(forecast(off, 10))).not.toContain('sold-out chicken')
  })

  it('[Z51] without a closing time reaches two and a half hours, then on from now', () => {
    const open = sold(stocked({}, { closesAt: null }), 1)
    expect(forecast(open, 10)).toMatchObject({
      closesAt: OPENED + 150 * MINUTE,
      closesSaid: false,
    })
    expect(forecast(open, 200).closesAt).toBe(OPENED + 210 * MINUTE)
  })
})

describe('a rush', () => {
  const told = stocked()
  const rushes = [{ from: OPENED + 15 * MINUTE, to: OPENED + 35 * MINUTE }]
  const state = { ...told.state, rushes }

  it('[Z40] is a window that was said', () => {
    const calm = calmOf(state, null)
    expect(calm.rushUntil(OPENED + 14 * MINUTE)).toBeNull()
    expect(calm.rushUntil(OPENED + 15 * MINUTE)).toBe(OPENED + 35 * MINUTE)
    expect(calm.nextQuiet(OPENED + 20 * MINUTE, CLOSES)).toBe(OPENED + 35 * MINUTE)
    expect(calm.nextQuiet(OPENED + 5 * MINUTE, CLOSES)).toBe(OPENED + 5 * MINUTE)
    const made = forecast({ ...told, state }, 20)
    expect(made.rushUntil).toBe(OPENED + 35 * MINUTE)
  })

  it('[Z40][F82] is known before it begins, where it was said or past days show it', () => {
    const said = calmOf(state, null)
    expect(said.rushAhead(OPENED + 5 * MINUTE, CLOSES)).toEqual(rushes[0])
    expect(said.rushAhead(OPENED + 20 * MINUTE, CLOSES)).toBeNull()
    expect(said.rushAhead(OPENED + 5 * MINUTE, OPENED + 10 * MINUTE)).toBeNull()
    expect(calmOf(told.state, null).rushAhead(OPENED, CLOSES)).toBeNull()
    const profile = Array.from({ length: 30 }, (_, slot) => (slot === 3 || slot === 6 ? 40 : 2))
    const calm = calmOf(told.state, profile)
    const from = (minutes: number) => ({
      from: OPENED + minutes * MINUTE,
      to: OPENED + (minutes + 5) * MINUTE,
    })
    expect(calm.rushAhead(OPENED + 2 * MINUTE, CLOSES)).toEqual(from(15))
    expect(calm.rushAhead(OPENED + 16 * MINUTE, CLOSES)).toEqual(from(30))
    expect(forecast({ ...told, state }, 5).rushAhead).toEqual(rushes[0])
  })

  it('[Z40] is one that past days show', () => {
    const profile = Array.from({ length: 30 }, (_, slot) => (slot === 3 ? 40 : 2))
    const calm = calmOf(told.state, profile)
    expect(calm.rushUntil(OPENED + 16 * MINUTE)).toBe(OPENED + 20 * MINUTE)
    expect(calm.rushUntil(OPENED + 21 * MINUTE)).toBeNull()
    expect(calm.nextQuiet(OPENED + 15 * MINUTE, OPENED + 17 * MINUTE)).toBe(OPENED + 17 * MINUTE)
  })
})
