import { describe, expect, it } from 'vitest'
import { isUsable } from '#lib/service/held-stock.ts'
import {
  at,
  fahrenheit,
  madeBefore,
  minute,
  read,
  readAll,
  until,
  whenAt,
} from '#tests/support/food.ts'
import {
  buildIn,
  choose,
  codeOf,
  type Given,
  given,
  happening,
  at as of,
  ofPortions,
  openedService,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
const noRush = (told: Told): Told => ({ ...told, state: { ...running(told), rushes: [] } })
const throwOutAt = (told: Told, name: string) => buildIn(told, name).until?.throwOutAt ?? 0
const readPan = (id: string, degrees: number): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id,
  ...read(degrees),
})

describe('a pan that nobody read in time, and that is found good', () => {
  const resolve = (over: object): Given =>
    ({ type: 'resolveOffSale', what: 'pan', id: 'pan-chicken', ...over }) as Given
  /** Read each hour, so that there is time left to reheat it. */
  const hourly = (told: Told): Told => {
    const state = running(told)
    const { safety } = state.station
    const readings = { ...safety.readings, everyMin: 60 }
    const station = { ...state.station, safety: { ...safety, readings } }
    return noRush({ ...told, state: { ...state, station } })
  }
  const sent = at(hourly(given()), 6, ...[1, 2, 3].map(() => send(choose('garden-chicken'))))
  const good = at(at(sent, 8, on('1A', 'start'), on('1A', 'finish')), 10, ...readAll(sent))
  const made = at(good, 60, on('2A', 'start'), on('2A', 'finish'))
  const missed = until(made, 75)
  const lastGoodAt = missed.state.pans['pan-chicken']?.offSale?.lastGoodAt ?? 0

  it('[B18] on time alone binds what was made of it since its last good reading', () => {
    expect(missed.state.pans['pan-chicken']?.offSale?.why).toBe('reading-missed')
    expect(buildIn(missed, '2A').hold).toBeNull()
    const timed = at(missed, 76, resolve({ way: 'time-only' }))
    expect(lastGoodAt).toBe(minute(10))
    expect(throwOutAt(timed, '2A')).toBe(minute(250))
    expect(throwOutAt(timed, '1A')).toBe(throwOutAt(missed, '1A'))
    expect(codeOf(whenAt(timed, 249, on('2A', 'handOver')))).toBeNull()
    expect(codeOf(whenAt(timed, 251, on('2A', 'handOver')))).toBe('past-throw-out')
  })

  it('[B18] reheated binds it as well: made food isn’t heated with its pan', () => {
    const heat = {
      way: 'reheat',
      place: 'range',
      startedAt: minute(76),
      reading: { ...fahrenheit(166, { at: minute(85) }), heldSeconds: 15 },
      initials: 'KT',
    }
    const heated = at(missed, 86, resolve(heat))
    expect(heated.state.pans['pan-chicken']?.offSale).toBeNull()
    expect(throwOutAt(heated, '2A')).toBe(minute(250))
  })
})

describe('two pans of one component on the line', () => {
  /** A second pan of chicken stands there, as the first one is. */
  const withTwo = (told: Told): Told => {
    const state = running(told)
    const [first, ...others] = state.station.line.wells
    const place = state.station.line.wells
      .flatMap(({ pans }) => pans)
      .find(({ id }) => id === 'pan-chicken')
    const pan = state.pans['pan-chicken']
    if (!first || !place || !pan) throw new Error('no chicken')
    const wells = [
      { ...first, pans: [...first.pans, { ...place, id: 'pan-chicken-2' }] },
      ...others,
    ]
    return {
      ...told,
      state: {
        ...state,
        station: { ...state.station, line: { ...state.station.line, wells } },
        pans: { ...state.pans, 'pan-chicken-2': pan },
      },
    }
  }
  const two = withTwo(at(noRush(given()), 6, send(choose('garden-chicken'))))
  const ofOther = readAll(two).filter((one) => 'id' in one && one.id !== 'pan-chicken')
  /** Started while both were good; counted out of the second, since the first was missed by then. */
  const made = at(at(at(two, 60, ...ofOther), 115, on('1A', 'start')), 125, on('1A', 'finish'))

  it('[B31] whatever the counts say, made food may have come from each of them', () => {
    expect(made.state.pans['pan-chicken']?.offSale?.why).toBe('reading-missed')
    expect(buildIn(made, '1A').took.map(({ pan }) => pan)).toContain('pan-chicken-2')
    expect(buildIn(made, '1A').took.map(({ pan }) => pan)).not.toContain('pan-chicken')
    const out = at(made, 126, readPan('pan-chicken', 110))
    expect(buildIn(out, '1A').hold).toMatchObject({ reason: 'off-sale', pans: ['pan-chicken'] })
    expect(codeOf(whenAt(out, 127, on('1A', 'handOver')))).toBe('build-held')
  })
})

describe('while a jump of the clock isn’t confirmed', () => {
  const jumped = (told: Told, byMin: number): Told =>
    noRush(happening(told, [{ type: 'clockJumped', byMs: byMin * 60_000 }], null))

  it('[B23] nothing is sold that may be past the end of its day', () => {
    const tuna = at(
      noRush(openedService()),
      2,
      ...madeBefore('b1', 'tuna', ofPortions('tuna', 20)),
      {
        type: 'load',
        pan: 'pan-tuna',
        batch: 'b1',
        amount: ofPortions('tuna', 20),
        ...read(38),
      },
    )
    expect(tuna.state.pans['pan-tuna']?.food).toHaveProperty('dayEndsAt')
    expect(isUsable(running(tuna), 'pan', 'pan-tuna')).toBe(true)
    const state = running(tuna)
    const ends = state.pans['pan-tuna']?.food?.dayEndsAt ?? 0
    const sold = (hours: number, byMin: number): boolean => {
      const at = ends - hours * 3_600_000
      const read = { 'pan/pan-tuna': at }
      const clockJump = byMin === 0 ? null : { byMs: byMin * 60_000, at, read }
      return isUsable({ ...state, at, clockJump }, 'pan', 'pan-tuna')
    }
    expect([sold(6, -60), sold(6, 60), sold(0.1, 0)]).toEqual([true, true, true])
    // By the clock of before there may be less left.
    expect([sold(6, -120), sold(4, 60), sold(-1, 600)]).toEqual([false, false, false])
  })

  it('[B23] made food counts what the clock fell, and not what it rose', () => {
    const made = at(
      noRush(given()),
      6,
      send(choose('garden-chicken')),
      on('1A', 'start'),
      on('1A', 'finish'),
    )
    expect(throwOutAt(made, '1A')).toBe(minute(246))
    const back = jumped(made, -100)
    expect(codeOf(whenAt(back, 145, on('1A', 'handOver')))).toBeNull()
    expect(codeOf(whenAt(back, 147, on('1A', 'handOver')))).toBe('past-throw-out')
    expect(codeOf(whenAt(jumped(made, 100), 147, on('1A', 'handOver')))).toBeNull()
  })
})

describe('a batch that is called as a pan is', () => {
  it('[B31] lets nothing go on that is held for the pan', () => {
    const cooked = at(
      noRush(given()),
      8,
      send(choose('garden-chicken')),
      on('1A', 'start'),
      on('1A', 'finish'),
      {
        type: 'startBatch',
        batch: 'pan-chicken',
        component: 'beans',
        loads: 1,
        startedAt: minute(-30),
      },
      {
        type: 'recordCooking',
        batch: 'pan-chicken',
        reading: { ...fahrenheit(168, { at: minute(7) }), heldSeconds: 20 },
        initials: 'KT',
      },
      { type: 'finishBatch', batch: 'pan-chicken', amount: ofPortions('beans', 20) },
    )
    const out = at(cooked, 10, readPan('pan-chicken', 110), {
      type: 'readTemperature',
      what: 'batch',
      id: 'pan-chicken',
      ...read(110),
    })
    expect(buildIn(out, '1A').hold?.pans).toEqual(['pan-chicken'])
    const resolved = at(out, 11, {
      type: 'resolveOffSale',
      what: 'batch',
      id: 'pan-chicken',
      way: 'time-only',
    })
    expect(resolved.state.batches['pan-chicken']?.offSale).toBeNull()
    expect(buildIn(resolved, '1A').hold?.pans).toEqual(['pan-chicken'])
    expect(codeOf(whenAt(resolved, 12, on('1A', 'handOver')))).toBe('build-held')
  })
})
