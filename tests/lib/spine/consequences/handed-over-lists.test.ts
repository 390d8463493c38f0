import { describe, expect, it } from 'vitest'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type {
  DiscardReason,
  OffSaleWhy,
  PlaceKind,
  ThrowOutPassed,
} from '#lib/service/events/food-event.ts'
import type { FoundBecause, HandedOverFound } from '#lib/service/events/handed-over-event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { handedOverLists } from '#lib/spine/consequences/handed-over-lists.ts'
import {
  asked,
  buildWith,
  offSale,
  readAt,
  stockWith,
  toThrowOut,
  touched,
} from '#tests/support/happened.ts'
import {
  buildIn,
  choose,
  type Given,
  at as of,
  ready,
  running,
  send,
} from '#tests/support/service.ts'

const PAN = 'pan-chicken'
const BACKUP = 'back-up-chicken'
const on = (name: string, type: 'start' | 'finish' | 'handOver'): Given => ({ type, ...of(name) })
const out = (name: string): Given[] => [on(name, 'start'), on(name, 'finish'), on(name, 'handOver')]

/** 1A with chicken and 2A with tuna were handed over, 3A with chicken stands made. */
const told = ready(
  send(choose('garden-chicken')),
  send(choose('harbor-tuna')),
  send(choose('garden-chicken')),
  ...out('1A'),
  ...out('2A'),
  on('3A', 'start'),
  on('3A', 'finish'),
)
const { madeAt = 0, since: handedOverAt, took } = buildIn(told, '1A')
const LOADED = madeAt - 5_000
const READ = madeAt - 1_000
const over: RunningState = stockWith(running(told), PAN, {
  loadedAt: LOADED,
  readings: [readAt(LOADED), readAt(READ)],
})
const one = { build: '1A', at: handedOverAt }

const lists = (
  state: RunningState,
  event: ServiceEvent,
  known: Parameters<typeof asked>[4] = {},
  slice: Parameters<typeof touched>[1] = 'pans',
) => asked(handedOverLists, state, touched(state, slice), [event], known)
const signed = (
  reason: DiscardReason,
  what: 'pan' | 'backup' | 'batch' | 'build' = 'pan',
  id = PAN,
): ServiceEvent => ({ type: 'discardSignedOff', what, id, amount: 1, reason })
const takenOff = (why: OffSaleWhy, lastGoodAt: number | null = READ): ServiceEvent => ({
  type: 'takenOffSale',
  what: 'pan',
  id: PAN,
  why,
  lastGoodAt,
})
const missed = (what: PlaceKind, id: string): ServiceEvent => ({
  type: 'readingMissed',
  what,
  id,
})
const list = (over: Partial<HandedOverFound> = {}): Omit<HandedOverFound, 'type'> => ({
  what: 'pan',
  id: PAN,
  because: 'reading-missed',
  since: READ,
  builds: [one],
  ...over,
})
const listing = (state: RunningState, over: Partial<HandedOverFound> = {}): RunningState => {
  const entry = list(over)
  return { ...state, toTell: { ...state.toTell, [`${entry.what}/${entry.id}`]: entry } }
}
const found = (because: FoundBecause, since: number, over: Partial<HandedOverFound> = {}) => ({
  type: 'handedOverFound',
  ...list({ because, since, ...over }),
})
/** 1A came out of the back-up pan. */
const behind = buildWith(
  stockWith(over, BACKUP, { loadedAt: LOADED, readings: [readAt(READ)] }, 'backup'),
  '1A',
  {
    took: took
      .filter(({ pan }) => pan === PAN)
      .map((taking) => ({ ...taking, pan: BACKUP, load: over.backupPans[BACKUP]?.load ?? 0 })),
    takes: {},
  },
)

describe('what was handed over with food that somebody threw out', () => {
  it('[Z60] is listed by what they say of it, since its last reading or its load', () => {
    expect(lists(over, signed('past-time'))).toEqual([found('time', READ)])
    expect(lists(over, signed('past-date'))).toEqual([found('date', READ)])
    expect(lists(over, signed('out-of-limits'))).toEqual([found('out-of-limits', READ)])
    expect(lists(over, signed('not-cooked'))).toEqual([found('not-cooked', LOADED)])
    expect(lists(over, signed('not-cooled'))).toEqual([found('not-cooled', LOADED)])
    expect(lists(over, signed('other'))).toEqual([])
    expect(lists(over, signed('not-cooked', 'build'))).toEqual([])
  })

  it('[Z60] is listed behind the line as well', () => {
    const place = { what: 'backup', id: BACKUP } as const
    expect(lists(behind, signed('past-time', 'backup', BACKUP))).toEqual([
      found('time', READ, place),
    ])
    expect(lists(behind, missed('backup', BACKUP))).toEqual([found('reading-missed', READ, place)])
  })

  it('[Z60] was listed before where it was known, but for food that was never good', () => {
    const doubted = stockWith(over, PAN, { offSale: offSale() })
    const bound = toThrowOut(over, 'pan', PAN)
    for (const state of [doubted, bound, toThrowOut(doubted, 'pan', PAN)]) {
      expect(lists(state, signed('past-time'))).toEqual([])
      expect(lists(state, signed('not-cooked'))).toEqual([found('not-cooked', LOADED)])
    }
    const other = toThrowOut(over, 'pan', 'pan-tuna')
    expect(lists(other, signed('past-time'))).toHaveLength(1)
  })

  it('[S103] is asked for with every slice of which something may be found', () => {
    for (const slice of ['pans', 'backupPans', 'batches', 'tickets', 'past', 'toThrowOut'] as const)
      expect([slice, lists(over, signed('not-cooked'), {}, slice).length]).toEqual([slice, 1])
  })
})

describe('what was handed over with food that is found bad', () => {
  it('[Z60] is listed since it was last good, and not where only its cooling is missed', () => {
    expect(lists(over, takenOff('out-of-limits'))).toEqual([found('out-of-limits', READ)])
    expect(lists(over, takenOff('out-of-limits', null))).toEqual([found('out-of-limits', LOADED)])
    expect(lists(over, takenOff('cooling-missed'))).toEqual([])
    expect(lists(over, takenOff('out-of-limits', madeAt + 1))).toEqual([])
  })

  it('[Z60] is listed for the reading that was missed, or the one that its clock asks for', () => {
    expect(lists(over, missed('pan', PAN))).toEqual([found('reading-missed', READ)])
    const food = over.pans[PAN]?.food
    const clock = { startedAt: LOADED, throwOutAt: LOADED + 1, rule: '4h' } as never
    const timed = stockWith(over, PAN, { food: food ? { ...food, clock } : null })
    expect(lists(timed, missed('pan', PAN))).toEqual([found('monitoring-missed', READ)])
  })

  it('[Z62] of a time or a date that is over is listed what was made after that', () => {
    const passed = (because: ThrowOutPassed['because'], due: number) =>
      lists(over, { type: 'throwOutPassed', what: 'pan', id: PAN, because }, { due })
    for (const because of ['time', 'date'] as const) {
      expect(passed(because, madeAt - 1)).toEqual([found(because, madeAt - 1)])
      expect(passed(because, madeAt + 1)).toEqual([])
    }
    expect(passed('too-warm', madeAt + 1)).toEqual([found('too-warm', READ)])
    expect(passed('out-of-limits', madeAt + 1)).toEqual([found('out-of-limits', READ)])
  })
})

describe('a list that stands', () => {
  const two = { build: '3A', at: 1 }

  it('[Z66] gets what is more, since the earlier of both', () => {
    const before = listing(over, { because: 'out-of-limits', builds: [two], since: READ + 5 })
    const both = { builds: [two, one] }
    expect(lists(before, signed('past-time'))).toEqual([found('out-of-limits', READ, both)])
    const early = listing(before, { because: 'out-of-limits', builds: [two], since: LOADED - 7 })
    expect(lists(early, signed('past-time'))).toEqual([found('out-of-limits', LOADED - 7, both)])
    expect(lists(listing(over, { because: 'time' }), signed('past-time'))).toEqual([])
  })

  it('[S128] of a missed reading gets a worse cause where that is about its builds', () => {
    const bad = takenOff('out-of-limits')
    expect(lists(listing(over), bad)).toEqual([found('out-of-limits', READ)])
    const later = takenOff('out-of-limits', madeAt + 1)
    expect(lists(listing(over), later)).toEqual([])
    expect(lists(listing(over, { builds: [one, two] }), bad)).toHaveLength(1)
    expect(lists(listing(over), missed('pan', PAN))).toEqual([])
    const others = listing(over, { builds: [two] })
    expect(lists(others, bad)).toEqual([found('out-of-limits', READ, { builds: [two, one] })])
  })

  it('[S128] gets it also where only some of what is found stands there', () => {
    const again = buildWith(over, '3A', { state: 'handed-over', madeAt, since: 9 })
    expect(lists(listing(again, { builds: [one, two] }), takenOff('out-of-limits'))).toHaveLength(1)
    expect(lists(listing(again), takenOff('out-of-limits'))).toMatchObject([
      { because: 'out-of-limits', builds: [one, { build: '3A' }] },
    ])
  })
})

describe('a batch that was never good', () => {
  const [taking] = took.filter(({ pan }) => pan === PAN)
  const [batch = ''] = taking?.batches ?? []
  const of = (state: RunningState, reason: DiscardReason = 'not-cooked') =>
    lists(state, signed(reason, 'batch', batch))
  const known = over.batches[batch]
  if (!known) throw new Error('no batch')
  const cooked = (finishedAt: number | null): RunningState => ({
    ...over,
    batches: { ...over.batches, [batch]: { ...known, startedAt: 5, finishedAt } },
  })

  it('[Z61] lists what it was in, since it was finished, or begun', () => {
    const place = { what: 'batch', id: batch } as const
    expect(of(cooked(9))).toEqual([found('not-cooked', 9, place)])
    expect(of(cooked(9), 'not-cooled')).toEqual([found('not-cooled', 9, place)])
    expect(of(cooked(null))).toEqual([found('not-cooked', 5, place)])
    expect(of(cooked(9), 'quality')).toEqual([])
  })

  it('[Z61] lists what a missed reading named already, and not what was found bad', () => {
    expect(of(listing(over))).toHaveLength(1)
    expect(of(listing(over, { because: 'out-of-limits' }))).toEqual([])
  })

  it('[Z61] nobody knows of lists nothing', () => {
    expect(lists(over, signed('not-cooked', 'batch', 'b-none'))).toEqual([])
  })
})

describe('while a reading is only missed', () => {
  const handOver: ServiceEvent = { type: 'buildHandedOver', ticket: 3, letter: 'A' }
  const doubted = (why: OffSaleWhy, pan = PAN): RunningState =>
    stockWith(over, pan, { offSale: offSale({ why, lastGoodAt: READ }) })
  const joins = (state: RunningState) => lists(state, handOver, { now: 777 }, 'tickets')

  it('[Z63] what is handed over with that food joins its list, with the time', () => {
    const builds = [{ build: '3A', at: 777 }]
    expect(joins(doubted('reading-missed'))).toEqual([found('reading-missed', READ, { builds })])
    expect(joins(doubted('monitoring-missed'))).toEqual([
      found('monitoring-missed', READ, { builds }),
    ])
    expect(joins(doubted('out-of-limits'))).toEqual([])
    expect(joins(doubted('reading-missed', 'pan-tuna'))).toEqual([])
    expect(joins(over)).toEqual([])
    const nobody: ServiceEvent = { type: 'buildHandedOver', ticket: 9, letter: 'A' }
    expect(lists(doubted('reading-missed'), nobody)).toEqual([])
  })

  const read = (over: object = {}): ServiceEvent => ({
    type: 'temperatureRead',
    what: 'pan',
    id: PAN,
    reading: readAt(madeAt),
    inLimits: true,
    lifts: true,
    ...over,
  })
  const good = {
    type: 'handedOverAnswered',
    what: 'pan',
    id: PAN,
    answer: 'good-again',
    builds: ['1A'],
  }

  it('[Z63] a reading that lifts it ends the list, of this load only', () => {
    expect(lists(listing(over), read())).toEqual([good])
    expect(lists(listing(over, { since: LOADED }), read())).toEqual([good])
    expect(lists(listing(over, { since: LOADED - 1 }), read())).toEqual([])
    const nowhere = listing(over, { id: 'pan-of-before', since: 0 })
    expect(lists(nowhere, read({ id: 'pan-of-before' }))).toEqual([])
  })

  it('[Z63] and ends no other list', () => {
    expect(lists(listing(over), read({ lifts: undefined }))).toEqual([])
    expect(lists(listing(over, { because: 'out-of-limits' }), read())).toEqual([])
    expect(lists(over, read())).toEqual([])
    const ofBatch = listing(over, { what: 'batch', id: 'b1' })
    expect(lists(ofBatch, read({ what: 'batch', id: 'b1' }))).toEqual([])
    const resolved = { type: 'offSaleResolved', what: 'pan', id: PAN, lifts: true } as never
    expect(lists(listing(over), resolved)).toEqual([])
  })
})
