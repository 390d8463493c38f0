import { describe, expect, it } from 'vitest'
import { notYetClosed } from '#lib/rooms/day/facts/not-yet-closed.ts'
import { handedOverListOf, handedOverLists } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { handedOverWords } from '#lib/rooms/food/words/handed-over-en.ts'
import type { HandedOverFound } from '#lib/service/events/handed-over-event.ts'
import { SHELF } from '#lib/service/shelf.ts'
import type { StationDocument } from '#lib/station/station-document.ts'
import { at, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
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
const HOT: StationDocument = {
  ...demoStation,
  safety: { ...demoStation.safety, shelf: { held: 'hot', collectWithinMin: 20 } },
}
const hot: Told = (() => {
  const told = given()
  return { ...told, state: { ...told.state, station: HOT } }
})()
const KEY = `shelf/${SHELF}`
const readShelf = (degrees: number, when?: number): Given => ({
  type: 'readShelf',
  ...read(degrees, when === undefined ? {} : { at: minute(when) }),
})
const bowl = choose('harbor-tuna', { cheddar: 'no' })
const step = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
const handOver = (name: string) => step(name, 'handOver')
/** One more build is made at a minute: the first is 1A. */
const madeAt = (told: Told, minutes: number): Told => {
  const name = `${told.state.nextTicket}A`
  return at(told, minutes, ...readAll(told), send(bowl), step(name, 'start'), step(name, 'finish'))
}
const decide = (way: 'discard' | 'time-only'): Given => ({ type: 'resolveShelf', way })
const namesOf = (told: Told) =>
  handedOverListOf(running(told), 'shelf', SHELF)?.builds.map(({ build }) => build) ?? null
const shown = (told: Told) =>
  handedOverLists(running(told)).flatMap(({ what }) => (what === 'shelf' ? [what] : []))
const answer = (over: Partial<Extract<Given, { type: 'answerHandedOver' }>> = {}): Given => ({
  type: 'answerHandedOver',
  what: 'shelf',
  id: SHELF,
  answer: 'told',
  seen: 1,
  initials: 'KT',
  ...over,
})
const inCharge = { by: 'in-charge' } as const

/** Read hot at 10:05; 1A is made at 10:10 and handed over at 10:40. */
const left = at(madeAt(at(hot, 5, readShelf(140)), 10), 40, handOver('1A'))

describe('a shelf that is read out of its limits', () => {
  it('[F69] lists what left it since its last good reading, with the time', () => {
    const found = eventsOf(whenAt(left, 60, readShelf(120))).filter(
      (event): event is HandedOverFound => event.type === 'handedOverFound',
    )
    const entry = {
      what: 'shelf',
      id: SHELF,
      because: 'out-of-limits',
      since: minute(5),
      builds: [{ build: '1A', at: minute(40) }],
    }
    expect(found).toEqual([{ type: 'handedOverFound', ...entry }])
    expect(at(left, 60, readShelf(120)).state.toTell).toEqual({ [KEY]: entry })
  })

  it('[F69] lists nothing that left it before that reading, but what stood there by then', () => {
    const told = madeAt(madeAt(left, 45), 46)
    const good = at(at(told, 48, handOver('2A')), 50, readShelf(138))
    const bad = at(at(good, 55, handOver('3A')), 60, readShelf(120))
    expect(bad.state.toTell[KEY]).toMatchObject({
      since: minute(50),
      builds: [{ build: '3A', at: minute(55) }],
    })
    const first = at(at(left, 50, readShelf(138)), 60, readShelf(120))
    expect(first.state.toTell).toEqual({})
  })

  it('[F69] counts a reading from when it was taken, and what left in that very moment', () => {
    const late = at(at(left, 50, readShelf(138, 40)), 60, readShelf(120, 41))
    expect(namesOf(late)).toEqual(['1A'])
    const later = at(at(left, 50, readShelf(138, 41)), 60, readShelf(120, 42))
    expect(namesOf(later)).toBeNull()
  })

  it('[F69] lists what a guest had of it, also where it was made again since', () => {
    const again = at(left, 45, { type: 'remake', ...of('1A') })
    expect(namesOf(at(again, 60, readShelf(120)))).toEqual(['1A'])
  })

  it('[F69] lists nothing where nobody had read it: its 4 hours allowed it', () => {
    const unread = at(madeAt(hot, 10), 40, handOver('1A'))
    expect(at(unread, 60, readShelf(120)).state.toTell).toEqual({})
  })

  it('[F69] lists nothing that was made since it was found, nor what goes on as decided', () => {
    const bad = at(madeAt(left, 50), 60, readShelf(120))
    const more = at(madeAt(bad, 62), 64, handOver('3A'), readShelf(118))
    expect(namesOf(more)).toEqual(['1A'])
    const goesOn = at(at(more, 66, decide('time-only')), 67, handOver('2A'))
    expect(namesOf(goesOn)).toEqual(['1A'])
    // At room temperature since that: nothing of it was taken for hot.
    expect(namesOf(at(goesOn, 70, readShelf(110)))).toEqual(['1A'])
  })

  it('[F69] stays listed whatever becomes of what stood there', () => {
    const bad = at(madeAt(left, 50), 60, readShelf(120))
    for (const way of ['discard', 'time-only'] as const)
      expect(namesOf(at(bad, 61, decide(way)))).toEqual(['1A'])
    const gone = at(at(bad, 61, decide('discard')), 62, readShelf(150))
    expect(namesOf(gone)).toEqual(['1A'])
  })

  it('[F69] is answered for as other lists are, and again where it is found once more', () => {
    const bad = at(left, 60, readShelf(120))
    expect(shown(bad)).toEqual(['shelf'])
    expect(codeOf(whenAt(bad, 61, answer()))).toBe('not-in-charge')
    expect(codeOf(whenAt(bad, 61, answer({ initials: undefined }), inCharge))).toBe(
      'not-initialled',
    )
    expect(refusalOf(whenAt(bad, 61, answer({ seen: 0 }), inCharge))).toEqual({
      code: 'more-handed-over',
      builds: ['1A'],
    })
    expect(codeOf(whenAt(bad, 61, answer({ id: 'pan-tuna' }), inCharge))).toBe('already-so')
    const decided = at(bad, 61, decide('discard'))
    expect(refusalOf(whenAt(decided, 62, { type: 'close' }))).toEqual({
      code: 'handed-over-first',
      count: 1,
    })
    const done = at(decided, 62, answer())
    expect(done.state.toTell).toEqual({})
    expect(codeOf(whenAt(done, 63, answer(), inCharge))).toBe('already-so')
    expect(codeOf(whenAt(done, 63, { type: 'close' }))).toBeNull()
    const next = at(at(madeAt(at(done, 63, readShelf(140)), 64), 65, handOver('2A')), 70)
    expect(namesOf(at(next, 70, readShelf(120)))).toEqual(['2A'])
  })

  it('[F69] a clock that is set back takes nothing off the list', () => {
    const jumped = happening(left, [{ type: 'clockJumped', byMs: -30 * 60_000 }], null)
    const back = happening(
      { ...jumped, state: { ...jumped.state, at: minute(11) } },
      [{ type: 'clockConfirmed' }],
      null,
    )
    expect(namesOf(at(back, 20, readShelf(120)))).toEqual(['1A'])
  })
})

describe('what is said of what left a shelf', () => {
  it('[F69] names the shelf as no food, and not by its key', () => {
    const list = handedOverListOf(running(at(left, 60, readShelf(120))), 'shelf', SHELF)
    expect(list?.what).toBe('shelf')
    const said = [
      handedOverWords.title('', 'shelf'),
      handedOverWords.short('', 1, 'shelf'),
      handedOverWords.list('10:05', [{ build: '1A', time: '10:40' }], 0, 'shelf'),
      handedOverWords.howMany('10:05', 2, 'shelf'),
    ]
    expect(said).toEqual([
      'Handed over from the shelf of made food',
      '1 build handed over from the shelf: to be answered for',
      '1 build was handed over from the shelf since 10:05: 1-\u2060A at 10:40.',
      '2 builds were handed over from the shelf since 10:05.',
    ])
  })
})

describe('a shelf whose reading is missed', () => {
  const due = 5 + 2 * HOUR
  const standing = madeAt(left, 50)
  const missed = until(standing, due)

  it('[F70] lists what left it since the last good one, and what stands there joins as it leaves', () => {
    expect(missed.state.toTell[KEY]).toMatchObject({
      because: 'reading-missed',
      since: minute(5),
      builds: [{ build: '1A', at: minute(40) }],
    })
    const more = at(missed, due + 1, handOver('2A'))
    expect(namesOf(more)).toEqual(['1A', '2A'])
    // Taken for room temperature from the start.
    expect(namesOf(at(madeAt(more, due + 2), due + 3, handOver('3A')))).toEqual(['1A', '2A'])
    const inTheWay = notYetClosed(running(more), minute(due + 4)).map(({ code }) => code)
    expect(inTheWay).not.toContain('handed-over-first')
  })

  it('[F70] begins a list with what leaves it then, where nothing had left', () => {
    const none = until(madeAt(at(hot, 5, readShelf(140)), 10), due)
    expect(none.state.toTell).toEqual({})
    expect(at(none, due + 1, handOver('1A')).state.toTell[KEY]).toMatchObject({
      because: 'reading-missed',
      since: minute(5),
    })
  })

  it('[F70] ends its list with a reading in limits within 4 hours of the last good one', () => {
    const soon = at(missed, 5 + 4 * HOUR - 1, readShelf(140))
    expect(soon.state.toTell).toEqual({})
    expect(soon.events.at(-1)).toMatchObject({
      type: 'handedOverAnswered',
      what: 'shelf',
      answer: 'good-again',
      builds: ['1A'],
    })
    expect(namesOf(at(missed, 5 + 4 * HOUR, readShelf(140)))).toEqual(['1A'])
    // Told when the next one is due as well: nobody knows again.
    const twice = at(at(missed, due + 1, readShelf(140, due)), due + 2, readShelf(140))
    expect(twice.state.toTell).toEqual({})
    const old = at(missed, 5 + 3 * HOUR, readShelf(140, HOUR))
    expect(namesOf(old)).toEqual(['1A'])
  })

  it('[F70] is worse once it is read out of limits, also where that was answered for', () => {
    const bad = at(missed, due + 5, readShelf(120))
    expect(bad.state.toTell[KEY]).toMatchObject({ because: 'out-of-limits', since: minute(5) })
    expect(namesOf(bad)).toEqual(['1A'])
    const answered = at(missed, due + 1, answer({ answer: 'nothing' }))
    expect(namesOf(answered)).toBeNull()
    expect(namesOf(at(answered, due + 2, readShelf(120)))).toEqual(['1A'])
    // Found bad, no reading makes it good.
    const better = at(at(bad, due + 6, decide('discard')), due + 7, readShelf(150))
    expect(namesOf(better)).toEqual(['1A'])
  })

  it('[F70] is told by its reading while that may still come, and by its list after', () => {
    expect(shown(missed)).toEqual([])
    expect(shown(at(missed, due + 1, handOver('2A')))).toEqual(['shelf'])
    expect(shown(at(missed, 5 + 4 * HOUR, readShelf(140)))).toEqual(['shelf'])
  })
})
