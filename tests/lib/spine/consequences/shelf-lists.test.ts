import { describe, expect, it } from 'vitest'
import { shelfNext } from '#lib/rooms/food/facts/shelf-reading.ts'
import type { BuildHandedOver, ServiceEvent } from '#lib/service/events/event.ts'
import type { HandedOverFound } from '#lib/service/events/handed-over-event.ts'
import { limitsOf } from '#lib/service/food-limits.ts'
import type { Shelf } from '#lib/service/food-state.ts'
import { keyOf } from '#lib/service/held-stock.ts'
import { SHELF } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { shelfLists } from '#lib/spine/consequences/shelf-lists.ts'
import { asked, readAt, touched } from '#tests/support/happened.ts'
import {
  buildIn,
  choose,
  type Given,
  at as of,
  ready,
  running,
  send,
} from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
/** 1A was handed over, 2A stands made, 3A waits. */
const told = ready(
  send(choose('garden-chicken')),
  send(choose('garden-chicken')),
  send(choose('garden-chicken')),
  ...(['start', 'finish', 'handOver'] as const).map((type) => on('1A', type)),
  on('2A', 'start'),
  on('2A', 'finish'),
)
const state = running(told)
const leftAt = buildIn(told, '1A').since
const { madeAt = 0 } = buildIn(told, '2A')
const one = { build: '1A', at: leftAt }

const withShelf = (over: Partial<Shelf>, base = state): RunningState => ({
  ...base,
  shelf: { newest: readAt(leftAt), goodAt: null, offSale: null, ...over },
})
const read = (inLimits: boolean): ServiceEvent => ({
  type: 'shelfRead',
  reading: readAt(leftAt),
  inLimits,
})
const list = (over: Partial<HandedOverFound> = {}): Omit<HandedOverFound, 'type'> => ({
  what: 'shelf',
  id: SHELF,
  because: 'reading-missed',
  since: leftAt,
  builds: [one],
  ...over,
})
const found = (over: Partial<HandedOverFound> = {}) => ({ type: 'handedOverFound', ...list(over) })
const lists = (before: RunningState, event: ServiceEvent) =>
  asked(shelfLists, before, withShelf({}, before), [event])

describe('what had left a shelf that is read out of limits', () => {
  const bad = found({ because: 'out-of-limits' })

  it('[F69] is listed since its last good reading, also where one was missed since', () => {
    expect(lists(withShelf({ goodAt: leftAt }), read(false))).toEqual([bad])
    expect(lists(withShelf({ goodAt: leftAt + 1 }), read(false))).toEqual([])
    const missed = { since: leftAt + 9, lastGoodAt: leftAt }
    expect(lists(withShelf({ missed }), read(false))).toEqual([bad])
  })

  it('[F69] isn’t listed where no reading had made it hot or cold', () => {
    expect(lists(state, read(false))).toEqual([])
    const out = { since: leftAt, lastGoodAt: leftAt }
    expect(lists(withShelf({ offSale: out }), read(false))).toEqual([])
  })

  it('[F65] is listed as it is missed, where the log says since when', () => {
    const missed = (over: object): ServiceEvent => ({ type: 'shelfReadingMissed', ...over })
    const good = withShelf({ goodAt: leftAt })
    expect(lists(good, missed({ lastGoodAt: leftAt }))).toEqual([found()])
    expect(lists(good, missed({}))).toEqual([])
  })
})

describe('while a reading of the shelf is only missed', () => {
  const handOver: BuildHandedOver = { type: 'buildHandedOver', ticket: 2, letter: 'A' }
  const joins = (missed: Shelf['missed'], event = handOver) => {
    const before = withShelf(missed ? { missed } : {})
    return asked(shelfLists, before, touched(before, 'tickets'), [event], { now: 777 })
  }

  it('[Z63] what stood there by then joins its list as it leaves', () => {
    const joined = [found({ since: 5, builds: [{ build: '2A', at: 777 }] })]
    expect(joins({ since: madeAt + 1, lastGoodAt: 5 })).toEqual(joined)
    expect(joins({ since: madeAt, lastGoodAt: 5 })).toEqual(joined)
  })

  it('[Z63] what was made since, or left a shelf that was read, doesn’t', () => {
    expect(joins({ since: madeAt - 1, lastGoodAt: 5 })).toEqual([])
    expect(joins(undefined)).toEqual([])
    for (const ticket of [3, 9])
      expect(joins({ since: madeAt, lastGoodAt: 5 }, { ...handOver, ticket })).toEqual([])
  })
})

describe('a reading in limits that was only late', () => {
  const { withinMs } = limitsOf(state.station).timeOnly4h
  const good = [
    {
      type: 'handedOverAnswered',
      what: 'shelf',
      id: SHELF,
      answer: 'good-again',
      builds: ['1A'],
    },
  ]
  const missed = { since: leftAt + 1, lastGoodAt: leftAt }
  const late = (
    now: number,
    {
      entry = {},
      goodAt = leftAt,
      was = missed,
    }: {
      entry?: Partial<HandedOverFound> | null
      goodAt?: number | null
      was?: Shelf['missed'] | null
    } = {},
  ) => {
    const toTell = entry ? { [keyOf('shelf', SHELF)]: list(entry) } : {}
    const base = { ...state, toTell }
    const before = withShelf(was ? { missed: was } : {}, base)
    return asked(shelfLists, before, withShelf({ goodAt }, base), [read(true)], { now })
  }
  const dueAfter = (goodAt: number): number => shelfNext(withShelf({ goodAt }))?.dueAt ?? Number.NaN

  it('[Z63] ends its list before the next one is due', () => {
    const dueAt = dueAfter(leftAt)
    expect(dueAt - leftAt).toBeLessThan(withinMs)
    expect(late(leftAt)).toEqual(good)
    expect(late(dueAt - 1)).toEqual(good)
    expect(late(dueAt)).toEqual([])
  })

  it('[Z63] ends it before what left could have been out for 4 hours', () => {
    const now = leftAt + withinMs
    expect(late(now - 1, { goodAt: now - 1 })).toEqual(good)
    expect(late(now, { goodAt: now })).toEqual([])
  })

  it('[Z63] ends neither one of an earlier gap nor of what was found bad', () => {
    expect(late(leftAt, { entry: { since: leftAt - 1 } })).toEqual([])
    expect(late(leftAt, { entry: { since: leftAt + 1 } })).toEqual(good)
    expect(late(leftAt, { entry: { because: 'out-of-limits' } })).toEqual([])
    expect(late(leftAt, { entry: null })).toEqual([])
  })

  it('[Z63] ends nothing where none was missed, or the shelf is no better by it', () => {
    expect(late(leftAt, { was: null })).toEqual([])
    expect(late(leftAt, { goodAt: null })).toEqual([])
  })
})
