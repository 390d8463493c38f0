import { describe, expect, it } from 'vitest'
import { handedOverListOf } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { evolve } from '#lib/spine/evolve.ts'
import { at, fahrenheit, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  choose,
  codeOf,
  type Given,
  given,
  at as of,
  ofPortions,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const chicken = (count: number): number => ofPortions('chicken', count)
const out = (build: string): readonly Given[] =>
  (['start', 'finish', 'handOver'] as const).map((type) => ({ type, ...of(build) }))
const readPan = (degrees: number): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id: 'pan-chicken',
  ...read(degrees),
})
const throwOut = (
  what: 'pan' | 'batch',
  id: string,
  reason: 'not-cooked' | 'quality' | 'out-of-limits',
): Given => ({ type: 'throwOut', what, id, reason, initials: 'KT' })

/** 1A has its chicken at 11:20, of a pan that was read at 11:10 and not since. */
const lunch = at(
  at(given(), 10, readPan(150)),
  20,
  send(choose('garden-chicken')),
  send(choose('garden-chicken')),
  ...out('1A'),
)
const missed = until(lunch, 150)
const ofChicken = (told: Told) => handedOverListOf(running(told), 'pan', 'pan-chicken')
const names = (told: Told) => ofChicken(told)?.builds.map(({ build }) => build) ?? null
const allNames = (told: Told) =>
  Object.values(running(told).toTell).flatMap(({ builds }) => builds.map(({ build }) => build))

/** Another batch, ready at that minute, in the chicken's pan a minute later. */
const loadedAnew = (told: Told, minutes: number): Told =>
  at(
    at(
      told,
      minutes,
      { type: 'startBatch', batch: 'b9', component: 'chicken', loads: 1, startedAt: minute(0) },
      {
        type: 'recordCooking',
        batch: 'b9',
        reading: { ...fahrenheit(168), heldSeconds: 20 },
        initials: 'KT',
      },
      { type: 'finishBatch', batch: 'b9', amount: chicken(20) },
    ),
    minutes + 1,
    { type: 'load', pan: 'pan-chicken', amount: chicken(10), batch: 'b9', ...read(150) },
  )

const fell = (told: Told, minutes: number, byMs: number): Told => {
  const position = told.events.length + 1
  const event = { type: 'clockJumped', byMs, position, at: minute(minutes), command: null } as const
  const state = evolve(told.state, event)
  return at({ ...told, state, events: [...told.events, event] }, minutes, { type: 'confirmClock' })
}

describe('a list of what was handed over', () => {
  it('[Z63] of an earlier load isn’t lifted by a good reading of a later one', () => {
    const gone = at(missed, 151, throwOut('pan', 'pan-chicken', 'out-of-limits'))
    const late = until(loadedAnew(gone, 152), 310)
    expect(names(at(late, 311, readPan(150)))).toEqual(['1A'])
  })

  it('[Z63] says what was found once that is worse than a missed reading', () => {
    expect(ofChicken(missed)?.because).toBe('reading-missed')
    expect(ofChicken(at(missed, 151, readPan(120)))?.because).toBe('out-of-limits')
    expect(ofChicken(at(missed, 151, readPan(150)))).toBeNull()
  })

  it('[Z61] of a batch that was not cooked names who stands on a list of a missed reading', () => {
    const never = at(missed, 151, throwOut('batch', 'opening-chicken', 'not-cooked'))
    expect(allNames(never)).toContain('1A')
    const lifted = at(never, 152, readPan(150))
    expect(lifted.state.pans['pan-chicken']?.offSale?.why).toBe('out-of-limits')
    expect(codeOf(whenAt(lifted, 153, send(choose('garden-chicken'))))).not.toBeNull()
  })

  it('[Z60] names a guest whose build was made again since', () => {
    const again = at(lunch, 25, { type: 'remake', ...of('1A') })
    const bad = at(again, 30, readPan(128))
    expect(names(bad)).toEqual(['1A'])
    expect(ofChicken(bad)?.builds).toMatchObject([{ at: minute(20) }])
  })

  it('[Z60] names a guest though the clock fell below the load', () => {
    const changed = at(given(), 60, {
      type: 'changePan',
      pan: 'pan-chicken',
      amount: chicken(10),
      batch: 'opening-chicken',
      ...read(150),
    })
    const ordered = at(changed, 70, send(choose('garden-chicken')))
    const gone = at(fell(ordered, 10, -3_600_000), 15, ...out('1A'))
    expect(names(at(gone, 20, readPan(128)))).toEqual(['1A'])
  })

  it('[Z65] holds the close where food was found bad, and not where it was only not read', () => {
    const emptied = (told: Told): Told =>
      [...Object.entries(told.state.pans), ...Object.entries(running(told).batches)].reduce(
        (so, [id, { offSale }]) =>
          offSale
            ? at(so, 152, throwOut(id in so.state.pans ? 'pan' : 'batch', id, 'quality'))
            : so,
        at(told, 151, { type: 'cancel', ...of('2A') }),
      )
    expect(codeOf(whenAt(emptied(missed), 153, { type: 'close' }))).toBeNull()
    const bad = emptied(at(missed, 150, readPan(120)))
    expect(refusalOf(whenAt(bad, 153, { type: 'close' }))).toEqual({
      code: 'handed-over-first',
      count: 1,
    })
  })
})

describe('a clock that is set back', () => {
  it('[B38] moves back what binds made food that was taken back, as all other limits', () => {
    const timed = at(given(), 12, {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: minute(10),
      from: 'cold',
      rule: '4h',
      ...read(40, { at: minute(9) }),
    })
    const making = ['1A', '2A'].flatMap((build) => out(build).slice(0, 2))
    const tuna = send(choose('harbor-tuna'))
    const taken = at(timed, 70, tuna, tuna, ...making, {
      type: 'takeBack',
      ...of('1A'),
      made: false,
    })
    const [first, second] = Object.values(running(fell(taken, 10, -3_600_000)).tickets)
    expect(first?.builds[0]?.boundTo).toBeGreaterThan(0)
    expect(first?.builds[0]?.boundTo).toBe(second?.builds[0]?.until?.throwOutAt)
  })
})

describe('a batch that was never cooked', () => {
  it('[B36] takes its pan off sale for good, also where that was off sale already', () => {
    const ways = (told: Told) =>
      refusalOf(
        whenAt(
          told,
          33,
          { type: 'resolveOffSale', what: 'pan', id: 'pan-chicken', way: 'time-only' },
          { by: 'in-charge' },
        ),
      )
    const never = throwOut('batch', 'opening-chicken', 'not-cooked')
    const low = at(at(lunch, 30, readPan(128)), 31, never)
    expect(ways(low)).toEqual({ code: 'way-not-allowed', ways: ['discard'] })
    expect(ways(at(lunch, 31, never))).toEqual(ways(low))
  })
})
