import { describe, expect, it } from 'vitest'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { SHELF } from '#lib/service/shelf.ts'
import { shelfHolds } from '#lib/spine/consequences/shelf-holds.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { at, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
  buildIn,
  choose,
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  given,
  happening,
  at as of,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const HOUR = 60
const shelf = (held: 'none' | 'hot' | 'cold', over = {}): StationDocument => ({
  ...demoStation,
  safety: { ...demoStation.safety, shelf: { held, collectWithinMin: 20 }, ...over },
})
const on = (station: StationDocument): Told => {
  const told = given()
  return { ...told, state: { ...told.state, station } }
}
const hot = on(shelf('hot'))
const readShelf = (degrees: number, over = {}): Given => ({
  type: 'readShelf',
  ...read(degrees, over),
})
/** Its tuna and slaw are of today, and nobody dated them: that binds it anyway. */
const MIDNIGHT = Date.parse('2026-11-26T06:00:00Z')
const bowl = choose('harbor-tuna', { cheddar: 'no' })
const step = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({
  type,
  ...of(name),
})
/** One more build is made at a minute: the first is 1A. */
const madeAt = (told: Told, minutes: number): Told => {
  const name = `${told.state.nextTicket}A`
  return at(told, minutes, ...readAll(told), send(bowl), step(name, 'start'), step(name, 'finish'))
}
const lasts = (told: Told, name = '1A') => buildIn(told, name).until?.throwOutAt ?? null
const decide = (way: 'discard' | 'time-only'): Given => ({ type: 'resolveShelf', way })

describe('made food on a hot or cold shelf', () => {
  it('[F64] that nobody read is at room temperature: 4 hours from being made', () => {
    for (const held of ['hot', 'cold', 'none'] as const)
      expect(lasts(madeAt(on(shelf(held)), 10))).toBe(minute(10 + 4 * HOUR))
  })

  it('[F64] read in limits it binds nothing, and again once a reading is missed', () => {
    const told = madeAt(at(hot, 5, readShelf(140)), 10)
    expect(lasts(told)).toBe(MIDNIGHT)
    const late = until(told, 5 + 2 * HOUR)
    expect(late.events.at(-1)).toMatchObject({ type: 'shelfReadingMissed' })
    expect(lasts(madeAt(late, 5 + 2 * HOUR), '2A')).toBe(minute(5 + 6 * HOUR))
  })

  it('[F65] a missed reading holds nothing: since the last good one it counts as room temperature', () => {
    const early = madeAt(at(hot, 5, readShelf(140)), 10)
    const again = madeAt(at(early, 60, readShelf(136)), 90)
    expect(until(again, 60 + 2 * HOUR - 1).state.shelf).toMatchObject({ goodAt: minute(60) })
    const missed = until(again, 60 + 2 * HOUR)
    expect(missed.state.shelf).toMatchObject({ goodAt: null, offSale: null })
    expect(buildIn(missed, '1A').hold).toBeNull()
    // 1A was known to be hot until 11:00; 2A was made after that.
    expect(lasts(missed, '1A')).toBe(minute(60 + 4 * HOUR))
    expect(lasts(missed, '2A')).toBe(minute(90 + 4 * HOUR))
    const over = until(missed, 60 + 4 * HOUR)
    expect(over.state.toThrowOut['build/1A']).toMatchObject({ because: 'time' })
    expect(codeOf(whenAt(missed, 60 + 4 * HOUR, step('1A', 'handOver')))).not.toBeNull()
  })

  it('[F65] what was bound by a missed reading isn’t bound later by a good one', () => {
    const missed = until(madeAt(at(hot, 5, readShelf(140)), 10), 3 * HOUR)
    const good = at(missed, 3 * HOUR, readShelf(150))
    expect(lasts(good)).toBe(minute(10 + 4 * HOUR))
    expect(lasts(madeAt(good, 3 * HOUR + 1), '2A')).toBe(MIDNIGHT)
  })

  it('[F65] the sooner of its time there and of what it took holds', () => {
    const clock: Given = {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: minute(6),
      from: 'cold',
      rule: '4h',
      ...read(38, { at: minute(6) }),
    }
    const told = madeAt(at(hot, 7, readShelf(140), clock), 60)
    expect(lasts(told)).toBe(minute(6 + 4 * HOUR))
    expect(lasts(until(told, 3 * HOUR))).toBe(minute(6 + 4 * HOUR))
  })

  it('[F66] a hot shelf keeps 135 °F and a cold one 41 °F', () => {
    const inLimits = (held: 'hot' | 'cold', degrees: number) => {
      const told = at(on(shelf(held)), 5, readShelf(degrees))
      return told.state.shelf?.goodAt === minute(5)
    }
    expect([inLimits('hot', 135), inLimits('hot', 134)]).toEqual([true, false])
    expect([inLimits('cold', 41), inLimits('cold', 42)]).toEqual([true, false])
  })

  it('[F66] a shelf at room temperature isn’t read, and a reading is complete', () => {
    expect(codeOf(whenAt(on(shelf('none')), 5, readShelf(140)))).toBe('not-read-here')
    const { initials: _, ...bare } = readShelf(140) as Extract<Given, { type: 'readShelf' }>
    expect(codeOf(whenAt(hot, 5, bare))).toBe('reading-lacks')
    const told = at(hot, 20, readShelf(140))
    expect(codeOf(whenAt(told, 21, readShelf(140, { at: minute(19) })))).toBe('wrong-moment')
  })

  it('[F67] out of limits it holds all that stands there until the person in charge decides', () => {
    const good = at(hot, 5, readShelf(140))
    const both = madeAt(madeAt(good, 10), 20)
    const out = at(both, 30, readShelf(120))
    expect(out.state.shelf).toMatchObject({
      goodAt: null,
      offSale: { since: minute(30), lastGoodAt: minute(5) },
    })
    for (const name of ['1A', '2A']) {
      expect(buildIn(out, name).hold).toMatchObject({ reason: 'off-sale', pans: [SHELF] })
      expect(refusalOf(whenAt(out, 31, step(name, 'handOver')))).toMatchObject({
        code: 'build-held',
      })
    }
    // A better reading changes nothing of that, and what is made now isn't there since.
    const better = at(out, 32, readShelf(150))
    expect(better.state.shelf).toMatchObject({ goodAt: null, offSale: { since: minute(30) } })
    expect(buildIn(better, '1A').hold).not.toBeNull()
    const more = madeAt(better, 33)
    expect(buildIn(more, '3A').hold).toBeNull()
    expect(lasts(more, '3A')).toBe(minute(33 + 4 * HOUR))
    expect(codeOf(whenAt(out, 34, decide('discard')))).toBe('not-in-charge')
  })

  it('[F67] on time alone it goes on, no longer than 4 hours since it was last known hot', () => {
    const out = at(madeAt(at(hot, 5, readShelf(140)), 10), 30, readShelf(120))
    const goesOn = at(out, 31, decide('time-only'))
    expect(buildIn(goesOn, '1A').hold).toBeNull()
    expect(lasts(goesOn)).toBe(minute(10 + 4 * HOUR))
    expect(codeOf(whenAt(goesOn, 32, step('1A', 'handOver')))).toBeNull()
    expect(goesOn.state.shelf).toMatchObject({ goodAt: null, offSale: null })
    expect(codeOf(whenAt(goesOn, 33, decide('discard'), { by: 'in-charge' }))).toBe('already-so')
    const none = on(shelf('hot', { timeProcedure: false }))
    const bare = at(madeAt(at(none, 5, readShelf(140)), 10), 30, readShelf(120))
    expect(refusalOf(whenAt(bare, 31, decide('time-only'), { by: 'in-charge' }))).toEqual({
      code: 'way-not-allowed',
      ways: ['discard'],
    })
  })

  it('[F67] thrown out, what stood there is initialled, and what was made since goes on', () => {
    const out = at(madeAt(at(hot, 5, readShelf(140)), 10), 30, readShelf(120))
    const more = madeAt(out, 32)
    const gone = at(more, 33, decide('discard'))
    expect(gone.state.toThrowOut).toMatchObject({ 'build/1A': { because: 'out-of-limits' } })
    expect(gone.state.toThrowOut).not.toHaveProperty('build/2A')
    expect(codeOf(whenAt(gone, 34, step('2A', 'handOver')))).toBeNull()
  })

  it('[F67] the holds are a matter of the state before and after alone', () => {
    const made = running(madeAt(at(hot, 5, readShelf(140)), 10))
    const offSale = { since: minute(30), lastGoodAt: minute(5) }
    const newest = made.shelf?.newest
    if (!newest) throw new Error('nobody read it')
    const after = { ...made, shelf: { newest, goodAt: null, offSale } }
    expect(shelfHolds(made, after)).toEqual([
      { type: 'buildHeld', ticket: 1, letter: 'A', reason: 'off-sale', pan: SHELF },
    ])
    expect(shelfHolds(after, after)).toEqual([])
    expect(shelfHolds(made, made)).toEqual([])
  })

  it('[F64] while a jump of the clock isn’t confirmed it counts as room temperature', () => {
    const good = at(hot, 5, readShelf(140))
    const jumped = happening(good, [{ type: 'clockJumped', byMs: -HOUR * 60_000 }], null)
    const told = madeAt({ ...jumped, state: { ...jumped.state, at: minute(6) } }, 10)
    expect(lasts(told)).toBe((buildIn(told, '1A').madeAt ?? 0) + 4 * HOUR * 60_000)
  })

  it('[F65] a clock that is set back makes none of it longer', () => {
    const told = madeAt(at(hot, 5, readShelf(140)), 10)
    const jumped = happening(told, [{ type: 'clockJumped', byMs: -HOUR * 60_000 }], null)
    const back = happening(jumped, [{ type: 'clockConfirmed' }], null)
    expect(back.state.shelf?.goodAt).toBe(minute(5 - HOUR))
    const missed = until(back, 5 - HOUR + 2 * HOUR)
    expect(lasts(missed)).toBe(minute(10 - HOUR + 4 * HOUR))
  })

  it('[F68] the lead is told to read it, that it wasn’t read, and that it is out of limits', () => {
    const duties = (told: Told, minutes: number) =>
      safetyDue(running(told), minute(minutes)).flatMap(({ reason }) =>
        reason.why === 'safety' && reason.of === 'shelf' ? [reason.what] : [],
      )
    expect(duties(on(shelf('none')), 5)).toEqual([])
    // With nothing on it nobody has to read it.
    expect(duties(hot, 5)).toEqual([])
    expect(duties(madeAt(hot, 5), 6)).toEqual(['reading-missed'])
    const good = at(hot, 5, readShelf(140))
    expect(duties(good, 6)).toEqual([])
    expect(duties(good, 5 + 2 * HOUR - 9)).toEqual(['reading-due'])
    expect(duties(until(madeAt(good, 10), 5 + 2 * HOUR), 5 + 2 * HOUR)).toEqual(['reading-missed'])
    expect(duties(at(good, 9, readShelf(120)), 10)).toEqual(['out-of-limits'])
  })

  it('[F66] what happens is one event, and an older log has none of it', () => {
    const decision = whenAt(hot, 5, readShelf(140))
    expect(eventsOf(decision)).toMatchObject([{ type: 'shelfRead', inLimits: true }])
    expect(given().state).not.toHaveProperty('shelf')
  })
})
