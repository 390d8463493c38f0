import { describe, expect, it } from 'vitest'
import { tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import { handedOverListOf, handedOverLists } from '#lib/rooms/food/facts/handed-over-lists.ts'
import { handedOverWords } from '#lib/rooms/food/words/handed-over-en.ts'
import { handedOverOfBatch, handedOverWith } from '#lib/rooms/shelf/facts/handed-over-with.ts'
import { bare } from '#lib/service/events/bare.ts'
import type { HandedOverFound } from '#lib/service/events/handed-over-event.ts'
import { happen } from '#lib/spine/happen.ts'
import { at, cooledBefore, minute, read, until, whenAt } from '#tests/support/food.ts'
import {
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  at as of,
  ofPortions,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
const made = (name: string): Given[] => [on(name, 'start'), on(name, 'finish')]
const out = (name: string): Given[] => [...made(name), on(name, 'handOver')]
const readPan = (id: string, degrees: number, when?: number): Given => ({
  type: 'readTemperature',
  what: 'pan',
  id,
  ...read(degrees, when === undefined ? {} : { at: minute(when) }),
})
const throwOut = (
  what: 'pan' | 'batch',
  id: string,
  reason: 'not-cooked' | 'past-date' | 'quality' | 'out-of-limits',
): Given => ({ type: 'throwOut', what, id, reason, initials: 'KT' })
const answer = (over: Partial<Extract<Given, { type: 'answerHandedOver' }>> = {}): Given => ({
  type: 'answerHandedOver',
  what: 'pan',
  id: 'pan-chicken',
  answer: 'told',
  seen: 2,
  initials: 'KT',
  ...over,
})
const inCharge = { by: 'in-charge' } as const

/**
 * 1A was made before a reading in limits at 10:10 and handed over after it, 2A and 4A made and handed
 * over after it, 3A has no chicken, 5A stands on the shelf.
 */
const lunch = at(
  at(
    at(
      at(
        given(),
        6,
        send(choose('garden-chicken')),
        send(choose('garden-chicken')),
        send(choose('harbor-tuna')),
        send(choose('garden-chicken')),
        send(choose('garden-chicken')),
        ...made('1A'),
      ),
      10,
      readPan('pan-chicken', 150),
    ),
    20,
    on('1A', 'handOver'),
    ...out('4A'),
    ...out('3A'),
  ),
  25,
  ...out('2A'),
  ...made('5A'),
)
const bad = at(lunch, 30, readPan('pan-chicken', 128))
const both = [
  { build: '4A', at: minute(20) },
  { build: '2A', at: minute(25) },
]
const namesOf = (told: Told, what: 'pan' | 'backup' | 'batch' = 'pan', id = 'pan-chicken') =>
  handedOverListOf(running(told), what, id)?.builds.map(({ build }) => build) ?? null
const foundBy = (told: Told, when: number, command: Given) =>
  eventsOf(whenAt(told, when, command, inCharge)).filter(
    (event): event is HandedOverFound => event.type === 'handedOverFound',
  )

describe('food that is found bad', () => {
  it('[Z60] names what was handed over with it since its last good reading, with the time', () => {
    expect(foundBy(lunch, 30, readPan('pan-chicken', 128))).toEqual([
      {
        type: 'handedOverFound',
        what: 'pan',
        id: 'pan-chicken',
        because: 'out-of-limits',
        since: minute(10),
        builds: both,
      },
    ])
    const { pans } = running(lunch)
    const lastGoodAt = pans['pan-chicken']?.readings.at(-1)?.at ?? null
    const suspect = { what: 'pan', id: 'pan-chicken', lastGoodAt } as const
    expect(handedOverWith(running(lunch), suspect)).toEqual(both)
    expect(foundBy(bad, 31, readPan('pan-chicken', 120))).toEqual([])
  })

  it('[Z60] names what was made since its load where it had no good reading since', () => {
    const tuna = foundBy(lunch, 30, readPan('pan-tuna', 50))
    expect(tuna).toMatchObject([{ builds: [{ build: '3A', at: minute(20) }] }])
    expect(tuna[0]?.since).toBe(running(lunch).pans['pan-tuna']?.loadedAt)
  })

  it('[Z60] names nothing of a load that went away before', () => {
    const changed = at(lunch, 28, {
      type: 'changePan',
      pan: 'pan-chicken',
      amount: ofPortions('chicken', 10),
      batch: 'opening-chicken',
      ...read(150),
    })
    expect(foundBy(changed, 30, readPan('pan-chicken', 128))).toEqual([])
    const next = at(changed, 29, send(choose('garden-chicken')), ...out('6A'))
    expect(foundBy(next, 30, readPan('pan-chicken', 128))).toMatchObject([
      { builds: [{ build: '6A' }] },
    ])
  })

  it('[Z60] names what was taken beyond the counts, since nobody knows where from', () => {
    const empty = at(
      at(lunch, 26, { type: 'correct', pan: 'pan-chicken', amount: ofPortions('chicken', 1) }),
      27,
      { type: 'correct', pan: 'pan-chicken', amount: ofPortions('chicken', 3) },
      send(choose('garden-chicken')),
      on('6A', 'start'),
      { type: 'correct', pan: 'pan-chicken', amount: 0 },
      on('6A', 'finish'),
      on('6A', 'handOver'),
      { type: 'correct', pan: 'pan-chicken', amount: ofPortions('chicken', 3), was: 'slip' },
    )
    expect(
      foundBy(empty, 30, readPan('pan-chicken', 128))[0]?.builds.map((one) => one.build),
    ).toEqual(['4A', '2A', '6A'])
  })

  it('[Z60] names it where somebody throws it out as bad, and not for its quality', () => {
    expect(foundBy(lunch, 30, throwOut('pan', 'pan-chicken', 'out-of-limits'))).toMatchObject([
      { because: 'out-of-limits', since: minute(10), builds: both },
    ])
    expect(foundBy(lunch, 30, throwOut('pan', 'pan-chicken', 'past-date'))).toMatchObject([
      { because: 'date', builds: both },
    ])
    expect(foundBy(lunch, 30, throwOut('pan', 'pan-chicken', 'quality'))).toEqual([])
    // Never good is worse than out of limits: since its load.
    const [raw] = foundBy(lunch, 30, throwOut('pan', 'pan-chicken', 'not-cooked'))
    expect(raw?.builds.map(({ build }) => build)).toEqual(['1A', '4A', '2A'])
  })

  it('[Z60] names what was made of food on time alone since its last reading, read too warm', () => {
    const timed = at(given(), 12, {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: minute(10),
      from: 'cold',
      rule: '6h',
      ...read(40, { at: minute(9) }),
    })
    const gone = at(timed, 20, send(choose('harbor-tuna')), ...out('1A'))
    expect(foundBy(gone, 30, readPan('pan-tuna', 71))).toMatchObject([
      { because: 'too-warm', builds: [{ build: '1A', at: minute(20) }] },
    ])
    const good = at(gone, 25, readPan('pan-tuna', 60))
    expect(foundBy(good, 30, readPan('pan-tuna', 71))).toEqual([])
  })

  it('[Z60] names it with a start reading out of limits, though no clock starts', () => {
    const decision = whenAt(lunch, 30, {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-chicken',
      leftAt: minute(30),
      from: 'hot',
      rule: '4h',
      ...read(120, { at: minute(30) }),
    })
    expect(codeOf(decision)).toBe('cannot-start-clock')
    expect('also' in decision && decision.also?.at(-1)).toMatchObject({
      type: 'handedOverFound',
      because: 'out-of-limits',
      builds: both,
    })
  })

  it('[Z61] of a batch that was never good names all, in whatever load, each once', () => {
    const changed = at(lunch, 28, {
      type: 'changePan',
      pan: 'pan-chicken',
      amount: ofPortions('chicken', 10),
      batch: 'opening-chicken',
      ...read(150),
    })
    const next = at(changed, 29, send(choose('garden-chicken')), ...out('6A'))
    const events = foundBy(next, 30, throwOut('batch', 'opening-chicken', 'not-cooked'))
    expect(events.map(({ what, builds }) => [what, builds.map(({ build }) => build)])).toEqual([
      ['pan', ['6A']],
      ['batch', ['1A', '4A', '2A']],
    ])
    expect(handedOverOfBatch(running(next), 'opening-beans')).toEqual([])
    expect(foundBy(next, 30, throwOut('batch', 'opening-chicken', 'quality'))).toEqual([])
    const other = at(lunch, 28, ...cooledBefore('cooled', 'chicken'))
    expect(foundBy(other, 30, throwOut('batch', 'cooled', 'not-cooked'))).toEqual([])
  })

  it('[Z62] past its time names only what was made after that', () => {
    const timed = at(given(), 12, {
      type: 'startTimeClock',
      what: 'pan',
      id: 'pan-tuna',
      leftAt: minute(10),
      from: 'cold',
      rule: '4h',
      ...read(40, { at: minute(9) }),
    })
    const gone = until(at(timed, 20, send(choose('harbor-tuna')), ...out('1A')), 260)
    expect(gone.state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'time' })
    expect(gone.state.toTell['pan/pan-tuna']).toBeUndefined()
    const made = at(timed, 20, send(choose('harbor-tuna')), ...out('1A'))
    const passed = {
      type: 'throwOutPassed',
      what: 'pan',
      id: 'pan-tuna',
      because: 'time',
    } as const
    const told = (due: number) =>
      happen(
        running(made),
        [passed],
        { position: 0, command: null },
        { now: minute(30), due: minute(due), newestLabels: {} },
      )
        .recorded.slice(1)
        .map(bare)
    expect(told(21)).toEqual([])
    expect(told(19)).toMatchObject([{ because: 'time', builds: [{ build: '1A' }] }])
  })
})

/** The reading of the chicken falls due, and nobody takes it. */
const missed = (() => {
  const late = until(lunch, 150)
  const due = late.events.find((one) => one.type === 'readingMissed' && one.id === 'pan-chicken')
  if (!due) throw new Error('no reading was missed')
  return { told: late, due: due.due ?? due.at }
})()

describe('a reading that is only missed', () => {
  it('[Z60] names what was handed over since the last good one', () => {
    expect(missed.told.state.toTell['pan/pan-chicken']).toMatchObject({
      because: 'reading-missed',
      since: minute(10),
      builds: both,
    })
    const event = missed.told.events.find(
      (one) => one.type === 'handedOverFound' && one.id === 'pan-chicken',
    )
    expect(event).toMatchObject({ command: null, due: missed.due })
  })

  it('[Z63] what is handed over then joins the list', () => {
    const { told } = missed
    expect(namesOf(at(told, 151, on('5A', 'handOver')))).toEqual(['4A', '2A', '5A'])
  })

  it('[Z63] a reading that lifts it ends the list, but not of food that was found bad', () => {
    const lifted = at(missed.told, 152, readPan('pan-chicken', 150))
    expect(lifted.state.pans['pan-chicken']?.offSale).toBeNull()
    expect(namesOf(lifted)).toBeNull()
    expect(lifted.events.at(-1)).toMatchObject({
      type: 'handedOverAnswered',
      answer: 'good-again',
      builds: ['4A', '2A'],
    })
    const low = at(missed.told, 152, readPan('pan-chicken', 120))
    expect(low.state.pans['pan-chicken']?.offSale?.why).toBe('out-of-limits')
    expect(namesOf(low)).toEqual(['4A', '2A'])
  })
})

describe('who answers', () => {
  it('[Z64] is the person in charge, with initials, once', () => {
    expect(codeOf(whenAt(bad, 31, answer()))).toBe('not-in-charge')
    expect(codeOf(whenAt(bad, 31, answer({ initials: undefined }), inCharge))).toBe(
      'not-initialled',
    )
    expect(codeOf(whenAt(bad, 31, answer({ id: 'pan-rice' }), inCharge))).toBe('already-so')
    expect(codeOf(whenAt(bad, 31, answer({ id: 'constructor' }), inCharge))).toBe('already-so')
    expect(eventsOf(whenAt(bad, 31, answer({ answer: 'nothing' }), inCharge))).toEqual([
      {
        type: 'handedOverAnswered',
        what: 'pan',
        id: 'pan-chicken',
        answer: 'nothing',
        builds: ['4A', '2A'],
      },
    ])
    const done = at(bad, 31, answer())
    expect(namesOf(done)).toBeNull()
    expect(codeOf(whenAt(done, 32, answer(), inCharge))).toBe('already-so')
  })

  it('[Z64] has seen every build of the list', () => {
    expect(refusalOf(whenAt(bad, 31, answer({ seen: 1 }), inCharge))).toEqual({
      code: 'more-handed-over',
      builds: ['2A'],
    })
  })

  it('[Z64] is asked again where it is found bad once more', () => {
    const { told } = missed
    const answered = at(told, 151, answer({ answer: 'nothing' }))
    expect(namesOf(answered)).toBeNull()
    expect(namesOf(at(answered, 152, readPan('pan-chicken', 120)))).toEqual(['4A', '2A'])
  })

  it('[Z65] comes before the close', () => {
    const over = at(
      bad,
      31,
      { type: 'resolveOffSale', what: 'pan', id: 'pan-chicken', way: 'discard' },
      throwOut('pan', 'pan-chicken', 'out-of-limits'),
      { type: 'cancel', ...of('5A') },
      { type: 'throwOut', what: 'build', id: '5A', reason: 'out-of-limits', initials: 'KT' },
    )
    expect(refusalOf(whenAt(over, 32, { type: 'close' }))).toEqual({
      code: 'handed-over-first',
      count: 1,
    })
    expect(codeOf(whenAt(at(over, 32, answer()), 33, { type: 'close' }))).toBeNull()
  })

  it('[Z66] sees one list a place, and nothing of the guests', () => {
    expect(Object.keys(bad.state.toTell)).toEqual(['pan/pan-chicken'])
    for (const { builds } of Object.values(bad.state.toTell))
      for (const one of builds) expect(Object.keys(one).sort()).toEqual(['at', 'build'])
    const worse = at(bad, 31, throwOut('pan', 'pan-chicken', 'not-cooked'))
    expect(worse.state.toTell['pan/pan-chicken']).toMatchObject({
      because: 'out-of-limits',
      builds: [{ build: '4A' }, { build: '2A' }, { build: '1A' }],
    })
  })
})

describe('the lead’s screen', () => {
  it('[P40] says how many were handed over since when, each with its time', () => {
    expect(handedOverLists(running(bad))).toMatchObject([
      { what: 'pan', id: 'pan-chicken', component: 'chicken', since: minute(10), builds: both },
    ])
    const [first] = tasksOf(running(bad), null, minute(31)).filter(
      (one) => one.kind === 'fact' && one.toDo.kind === 'handed-over',
    )
    expect(first).toMatchObject({ toDo: { builds: both } })
    expect(
      handedOverWords.list(
        '10:10',
        [
          { build: '4A', time: '10:20' },
          { build: '2A', time: '10:25' },
        ],
        0,
      ),
    ).toBe(
      '2 builds with this food were handed over since 10:10: 4-\u2060A at 10:20, 2-\u2060A at 10:25.',
    )
    expect(handedOverWords.list('10:10', [{ build: '4A', time: '10:20' }], 2)).toBe(
      '3 builds with this food were handed over since 10:10: 4-\u2060A at 10:20 and 2 more.',
    )
    expect(handedOverWords.howMany('10:10', 1)).toBe(
      '1 build with this food was handed over since 10:10.',
    )
  })

  it('[P41] tells a list of a reading that is only missed at its pan, until that is decided', () => {
    const { told } = missed
    expect(namesOf(told)).toEqual(['4A', '2A'])
    expect(handedOverLists(running(told)).filter(({ id }) => id === 'pan-chicken')).toEqual([])
    const decided = at(told, 151, {
      type: 'resolveOffSale',
      what: 'pan',
      id: 'pan-chicken',
      way: 'discard',
    })
    expect(handedOverLists(running(decided)).map(({ id }) => id)).toContain('pan-chicken')
  })
})
