import { describe, expect, it } from 'vitest'
import { answeredPlace } from '#lib/rooms/advice/facts/advice-answered.ts'
import { adviceEvents } from '#lib/rooms/advice/facts/advice-events.ts'
import { shortWays } from '#lib/rooms/pans/facts/short-ways.ts'
import { standInFor } from '#lib/rooms/pans/facts/stand-in.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import {
  at,
  CLOSES,
  choice,
  codeOf,
  deciding,
  eventsOf,
  type Given,
  give,
  happens,
  MINUTE,
  OPENED,
  openedAs,
  order,
  panFor,
  portionOf,
  refusalOf,
  type Stocked,
  stocked,
  stockedStation,
} from '#tests/support/stock.ts'

const miss = (component: string, ...measures: { id: string; count: number }[]): Given =>
  measures.length > 0
    ? { type: 'missScoop', component, measures, yes: true }
    : { type: 'missScoop', component, yes: true }

const takes = ({ state }: Stocked, name: string, component: string): number | undefined =>
  state.tickets[`t${at(name).ticket}`]?.builds[0]?.takes[component]

describe('a missing scoop', () => {
  it('[U10] is stood in for by the nearest level measures', () => {
    const told = give(stocked(), 5, miss('chicken'))
    const best = standInFor(stocked().state, 'chicken')?.best
    expect(told.state.standIns.chicken?.measures).toEqual(best?.measures)
    expect(told.state.portions.chicken?.amount).toBe(best?.portionMg)
    expect(Math.abs((best?.portionMg ?? 0) / portionOf('chicken') - 1)).toBeLessThan(0.3)
  })

  it('[U10] isn’t stood in for by a tool that carries an allergen, nor by too many', () => {
    expect(
      refusalOf(deciding(stocked(), miss('chicken', { id: 'tuna-8', count: 1 }))),
    ).toMatchObject({
      code: 'scoop-carries',
      tool: 'tuna-8',
      component: 'chicken',
      from: 'tuna',
      into: 'chicken',
    })
    expect(codeOf(deciding(stocked(), miss('chicken', { id: 'spare-20', count: 5 })))).toBe(
      'too-many-measures',
    )
    expect(codeOf(deciding(stocked(), miss('chicken', { id: 'spare-99', count: 1 })))).toBe(
      'unknown tool',
    )
    expect(codeOf(deciding(stocked(), miss('pita')))).toBe('no-scoop')
    expect(codeOf(deciding(stocked(), miss('kale')))).toBe('unknown component')
  })

  it('[U10] has nothing at hand where every tool would carry something', () => {
    const told = stocked()
    const tools = stockedStation.tools.filter(({ id }) => id === 'tuna-8')
    const bare = { ...told, state: { ...told.state, station: { ...stockedStation, tools } } }
    expect(codeOf(deciding(bare, miss('chicken')))).toBe('no-scoop-fits')
  })

  it('[U11] changes what waiting builds take, not one that is being made', () => {
    const sent = give(
      stocked(),
      1,
      order(choice('garden-chicken')),
      order(choice('garden-chicken')),
      { type: 'start', ...at('1A') },
    )
    const told = give(sent, 5, miss('chicken', { id: 'spare-20', count: 2 }))
    const amount = told.state.portions.chicken?.amount
    expect(amount).not.toBe(portionOf('chicken'))
    expect(takes(told, '1A', 'chicken')).toBe(portionOf('chicken'))
    expect(takes(told, '2A', 'chicken')).toBe(amount)
    expect(told.state.accounts.chicken?.onTickets).toBe(portionOf('chicken') + (amount ?? 0))
    const remade = give(told, 6, { type: 'finish', ...at('1A') }, { type: 'remake', ...at('1A') })
    expect(takes(remade, '1A', 'chicken')).toBe(amount)
    const back = give(told, 9, { type: 'scoopBack', component: 'chicken' })
    expect(takes(back, '2A', 'chicken')).toBe(portionOf('chicken'))
    expect(back.state.accounts.chicken?.onTickets).toBe(2 * portionOf('chicken'))
    expect(codeOf(deciding(back, { type: 'scoopBack', component: 'chicken' }))).toBe('already-so')
    expect(codeOf(deciding(back, { type: 'scoopBack', component: 'kale' }))).toBe(
      'unknown component',
    )
  })

  it('[U11] leaves as much in the pan, and its own bias for when it is back', () => {
    const before = stocked({}, { knownBias: { chicken: { bias: 0.1, sd: 0.03 } } })
    const held = (before.state.beliefs.chicken?.left ?? 0) * portionOf('chicken')
    const told = give(before, 5, miss('chicken', { id: 'spare-20', count: 2 }))
    const portion = told.state.portions.chicken?.amount ?? 0
    expect((told.state.beliefs.chicken?.left ?? 0) * portion).toBeCloseTo(held)
    expect(told.state.beliefs.chicken?.bias).toBe(0)
    const back = give(told, 9, { type: 'scoopBack', component: 'chicken' })
    expect(back.state.beliefs.chicken?.bias).toBe(0.1)
    expect((back.state.beliefs.chicken?.left ?? 0) * portionOf('chicken')).toBeCloseTo(held)
  })

  it('[U12] leaves its stand-in carrying what it has been in, until it is washed', () => {
    const lent = give(stocked(), 5, miss('tuna', { id: 'spare-20', count: 1 }))
    const back = give(lent, 6, { type: 'scoopBack', component: 'tuna' })
    const again = miss('chicken', { id: 'spare-20', count: 1 })
    expect(codeOf(deciding(back, again))).toBe('scoop-carries')
    const washed = give(lent, 6, { type: 'scoopBack', component: 'tuna', washed: true })
    expect(codeOf(deciding(washed, again))).toBeNull()
  })
})

const reason = {
  why: 'measure',
  component: 'rice',
  chance: 0.5,
  left: 10,
  sd: 3,
  lookedAt: OPENED,
} as const
const candidate = { key: 'measure rice', kind: 'measure', saves: 90, reason } as const

describe('advice', () => {
  const told = happens(stocked(), 5, { type: 'adviceTold', ...candidate })

  it('[U13] is answered while it is open', () => {
    for (const answer of ['done', 'put-off', 'declined'] as const) {
      const so = give(told, 6, { type: 'answerAdvice', key: 'measure rice', answer })
      expect(so.state.adviceLog).toMatchObject([{ key: 'measure rice', answer, answeredAt: 651 }])
      expect(codeOf(deciding(so, { type: 'answerAdvice', key: 'measure rice', answer }))).toBe(
        'unknown advice',
      )
    }
  })

  it('[U13] is answered for a minute after it lapsed, since what was done may be why', () => {
    const lapsed = happens(told, 6, { type: 'adviceLapsed', key: 'measure rice' })
    const done = { type: 'answerAdvice', key: 'measure rice', answer: 'done' } as const
    expect(give(lapsed, 7, done).state.adviceLog).toMatchObject([{ answer: 'done' }])
    expect(codeOf(deciding(happens(lapsed, 8, { type: 'clockConfirmed' }), done))).toBe(
      'unknown advice',
    )
    expect(() => happens(lapsed, 7, { type: 'adviceLapsed', key: 'measure rice' })).toThrow('open')
  })

  it('[U13] is no more answered where its lapse is ahead of now, or long over when the clock is set back', () => {
    const log = [{ key: 'measure rice', answer: 'lapsed', answeredAt: 651 }] as const
    const places = [590, 650.9, 651, 652, 652.1].map((now) =>
      answeredPlace(log, 'measure rice', now),
    )
    expect(places).toEqual([-1, -1, 0, 0, -1])
    const lapsed = happens(told, 6, { type: 'adviceLapsed', key: 'measure rice' })
    // The rail never stamps before what is recorded: the clock fell by an hour, and now is 11:00 still.
    const back = happens(
      lapsed,
      60,
      { type: 'clockJumped', byMs: -60 * MINUTE },
      { type: 'clockConfirmed' },
    )
    const done = { type: 'answerAdvice', key: 'measure rice', answer: 'done' } as const
    expect(codeOf(deciding(back, done))).toBe('unknown advice')
  })

  it('[Z41] is told once and lapses, by events of no command', () => {
    const now = OPENED + 5 * MINUTE
    expect(adviceEvents(stocked().state, [candidate], now, false)).toEqual([
      { type: 'adviceTold', ...candidate },
    ])
    expect(adviceEvents(told.state, [candidate], now, false)).toEqual([])
    expect(adviceEvents(told.state, [], now, false)).toEqual([
      { type: 'adviceLapsed', key: 'measure rice' },
    ])
    const lapsed = happens(told, 6, { type: 'adviceLapsed', key: 'measure rice' })
    expect(lapsed.state.adviceLog).toMatchObject([{ answer: 'lapsed' }])
  })

  it('[Z41] isn’t told in a rush, nor while the clock’s jump isn’t confirmed', () => {
    const now = OPENED + 5 * MINUTE
    expect(adviceEvents(stocked().state, [candidate], now, true)).toEqual([])
    const jumped = happens(stocked(), 5, { type: 'clockJumped', byMs: 90_000 })
    expect(adviceEvents(jumped.state, [candidate], now, false)).toEqual([])
  })

  it('[Z41] that can’t have happened isn’t folded', () => {
    expect(() => happens(told, 6, { type: 'adviceTold', ...candidate })).toThrow('open already')
    expect(() => happens(stocked(), 6, { type: 'adviceLapsed', key: 'x' })).toThrow('no open')
  })
})

describe('a short build', () => {
  const sent = give(
    stocked(),
    1,
    order(choice('garden-chicken')),
    order(choice('bean-and-pepper')),
    order(choice('garden-chicken')),
  )
  const without = (component: string, left = 0): Stocked =>
    give(sent, 2, { type: 'correct', pan: panFor(component), amount: left })
  const ways = (told: Stocked, next: number | null = null) => shortWays(told.state, () => next)

  it('[U14] is named newest first, with what can be done', () => {
    const slaw = ways(without('slaw'), OPENED + MINUTE)
    const names = slaw.map(({ build }) => build)
    expect(names).toEqual([...names].sort().reverse())
    expect(names.length).toBeGreaterThan(0)
    expect(slaw[0]).toMatchObject({
      component: 'slaw',
      canLeaveOut: true,
      swaps: [],
      waitUntil: OPENED + MINUTE,
      waits: false,
    })
    expect(ways(without('chicken')).map(({ build, canLeaveOut }) => [build, canLeaveOut])).toEqual([
      ['3A', false],
      ['1A', false],
    ])
    expect(ways(sent)).toEqual([])
  })

  it('[U14] says what stands ready', () => {
    const short = without('chicken')
    expect(ways(short)[0]?.ready).toBeLessThanOrEqual(0)
    const food = {
      heldBy: 'hot',
      clock: null,
      dateMark: null,
      finishedAt: OPENED,
      guarded: true,
    } as const
    const ready = happens(short, 3, {
      type: 'backupSet',
      component: 'chicken',
      ready: true,
      backup: 'back-up-chicken',
      amount: 24 * portionOf('chicken'),
      food,
      reading: null,
      batch: null,
    })
    expect(ways(ready)[0]).toMatchObject({ component: 'chicken', ready: 24, waitUntil: null })
  })

  it('[U14] swaps to a base that is left', () => {
    const base = sent.state.tickets.t1?.builds[0]?.choice.base ?? ''
    const [first] = ways(without(base))
    expect(first?.component).toBe(base)
    expect(first?.swaps.length).toBeGreaterThan(0)
    expect(first?.swaps).not.toContain(base)
    expect(first?.canLeaveOut).toBe(false)
  })

  it('[U15] waits when its guest chose to, until it goes on', () => {
    const short = without('chicken')
    const told = give(short, 3, { type: 'wait', ...at('3A') })
    expect(told.state.waits).toEqual({ '3A': { component: 'chicken', at: told.state.at } })
    expect(ways(told).map(({ build, waits }) => [build, waits])).toEqual([
      ['3A', true],
      ['1A', false],
    ])
    expect(codeOf(deciding(told, { type: 'wait', ...at('3A') }))).toBe('already-so')
    expect(codeOf(deciding(sent, { type: 'wait', ...at('3A') }))).toBe('not-short')
    expect(give(told, 4, { type: 'cancel', ...at('3A') }).state.waits).toEqual({})
  })
})

describe('the plan of the day', () => {
  const opening = (over: object = {}) =>
    deciding(
      { state: { ...NOT_OPENED, at: openedAs().state.at } },
      {
        type: 'open',
        station: 'alder-hall',
        kind: 'real',
        ...over,
      },
      { now: OPENED, newestLabels: {} },
    )

  it('[U16] is said at opening, else as the station has it', () => {
    expect(eventsOf(opening())[0]).toMatchObject({
      minuteOfDay: 645,
      guestsExpected: null,
      closesAt: CLOSES,
      assemblers: 2,
    })
    expect(
      eventsOf(opening({ guestsExpected: 90, closesAt: '12:30', assemblers: 3 }))[0],
    ).toMatchObject({ guestsExpected: 90, closesAt: CLOSES - 45 * MINUTE, assemblers: 3 })
    expect(eventsOf(opening({ closesAt: null }))[0]).toMatchObject({ closesAt: null })
    expect(refusalOf(opening({ closesAt: '10:00' }))).toEqual({
      code: 'closes-before-now',
      time: '10:00',
    })
  })

  it('[U16] may be changed while it runs, as far as it is said', () => {
    const told = give(openedAs(), 3, { type: 'setDay', guestsExpected: 40 })
    expect(told.state).toMatchObject({ expected: 40, closesAt: CLOSES, assemblers: 2 })
    expect(told.state.counts).toMatchObject({ expected: 40, closes: 795 })
    const later = give(told, 4, { type: 'setDay', closesAt: '13:45', assemblers: 1 })
    expect(later.state).toMatchObject({ expected: 40, assemblers: 1 })
    expect(later.state.counts.closes).toBe(825)
    expect(codeOf(deciding(later, { type: 'setDay', assemblers: 1 }))).toBe('already-so')
    expect(codeOf(deciding(later, { type: 'setDay', closesAt: '10:00' }))).toBe('closes-before-now')
  })
})
