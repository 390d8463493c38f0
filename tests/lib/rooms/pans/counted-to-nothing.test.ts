import { describe, expect, it } from 'vitest'
import { declaredBy } from '#lib/needs/declared.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { isUsable, usableIn } from '#lib/service/held-stock.ts'
import { labelOf } from '#lib/station/label.ts'
import { at, madeBefore, minute, read, readAll, until } from '#tests/support/food.ts'
import {
  accountOf,
  at as build,
  changePan,
  choose,
  codeOf,
  demoStation,
  eventsOf,
  type Given,
  given,
  happening,
  inPan,
  load,
  ofPortions,
  onward,
  ready,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

type Correct = Extract<Given, { type: 'correct' }>

const count = (pan: string, portions: number, over: Partial<Correct> = {}): Given => ({
  type: 'correct',
  pan,
  amount: ofPortions(pan.slice('pan-'.length), portions),
  ...over,
})
const slip = (pan: string, portions: number, over: Partial<Correct> = {}): Given =>
  count(pan, portions, { was: 'slip', ...over })
const panOf = ({ state }: Told, pan: string) => state.pans[pan]

/** Chicken of whose pan four portions are left, counted to nothing. */
const four = onward(given(), count('pan-chicken', 4))
const empty = onward(four, count('pan-chicken', 0))

describe('a count of nothing', () => {
  it('[S120] ends the food: nothing of it is sold, counted or read, and it is set aside', () => {
    expect(eventsOf(when(four, count('pan-chicken', 0)))).toMatchObject([
      { type: 'countCorrected', to: 0, ends: true },
    ])
    expect(panOf(empty, 'pan-chicken')).toMatchObject({
      amount: 0,
      ended: true,
      food: panOf(four, 'pan-chicken')?.food,
      batches: panOf(four, 'pan-chicken')?.batches,
    })
    const state = running(empty)
    expect(isUsable(state, 'pan', 'pan-chicken')).toBe(false)
    expect(usableIn(state, 'pan', 'pan-chicken')).toBe(0)
    expect(levelOf(state, 'chicken').portionsLeft).toBe(0)
    expect(codeOf(when(empty, send(choose('garden-chicken'))))).toBe('sold-out')
    const reading: Given = { type: 'readTemperature', what: 'pan', id: 'pan-chicken', ...read(150) }
    expect(codeOf(when(empty, reading))).toBe('nothing-there')
    expect(until(empty, 200).state.pans['pan-chicken']?.offSale).toBeNull()
  })

  it('[S120] also of a pan that was used up, in pieces, and twice', () => {
    const one = onward(given(), count('pan-chicken', 1), send(choose('garden-chicken')))
    const used = onward(one, { type: 'start', ...build('1A') }, { type: 'finish', ...build('1A') })
    expect(panOf(used, 'pan-chicken')).toMatchObject({ amount: 0 })
    expect(panOf(used, 'pan-chicken')).not.toHaveProperty('ended')
    const ended = onward(used, count('pan-chicken', 0))
    expect(panOf(ended, 'pan-chicken')).toMatchObject({ ended: true })
    expect(codeOf(when(ended, count('pan-chicken', 0)))).toBe('already-so')
    expect(panOf(onward(ended, count('pan-chicken', 0, { kind: 'count' })), 'pan-chicken')).toEqual(
      expect.objectContaining({ ended: true, amount: 0 }),
    )
    expect(panOf(onward(given(), count('pan-pita', 0)), 'pan-pita')).toMatchObject({ ended: true })
  })

  it('[S120] is said by nobody who sees a scrape, weighs something, or counts what was never loaded', () => {
    const scrape = onward(given(), { type: 'correct', pan: 'pan-chicken', quarters: 0 })
    expect(panOf(scrape, 'pan-chicken')).not.toHaveProperty('ended')
    const thrownOut = onward(given(), {
      type: 'throwOut',
      what: 'pan',
      id: 'pan-chicken',
      reason: 'other',
      initials: 'KT',
    })
    const counted = onward(thrownOut, count('pan-chicken', 0, { kind: 'count' }))
    expect(panOf(counted, 'pan-chicken')).not.toHaveProperty('ended')
    expect(codeOf(when(thrownOut, count('pan-chicken', 0)))).toBe('already-so')
  })

  it('[S120] teaches nothing of how heavy it is scooped: it may be a slip', () => {
    const busy = onward(
      given(),
      count('pan-rice', 4),
      ...['1A', '2A'].flatMap((name): Given[] => [
        send(choose('bean-and-pepper', {}, { base: 'rice' })),
        { type: 'start', ...build(name) },
        { type: 'finish', ...build(name) },
      ]),
    )
    const before = running(busy).beliefs.rice
    const after = running(onward(busy, count('pan-rice', 0))).beliefs.rice
    expect(before?.cov).not.toBe(0)
    expect(after).toMatchObject({ left: 0, cov: 0, bias: before?.bias, biasVar: before?.biasVar })
  })
})

describe('counting up again', () => {
  it('[S121] asks what was put in, or that the count was a slip, however it is read', () => {
    const refused = { code: 'say-what-was-put-in', pan: 'pan-chicken' }
    const readings: readonly Partial<Correct>[] = [
      { amount: 1 },
      { amount: ofPortions('chicken', 4), kind: 'count' },
      { amount: ofPortions('chicken', 4), kind: 'weighing' },
      { quarters: 0 },
      { quarters: 2 },
    ]
    for (const one of readings)
      expect(refusalOf(when(empty, { type: 'correct', pan: 'pan-chicken', ...one }))).toEqual(
        refused,
      )
    const ended = onward(given(), count('pan-slaw', 0))
    expect(
      codeOf(when(ended, { type: 'correct', pan: 'pan-slaw', weighedMg: 5_000_000 })),
    ).not.toBeNull()
    expect(codeOf(when(empty, slip('pan-chicken', 5)))).toBeNull()
  })

  it('[S121] takes no slip of food that wasn’t counted to nothing, and none to nothing', () => {
    expect(codeOf(when(four, slip('pan-chicken', 5)))).toBe('already-so')
    expect(codeOf(when(empty, slip('pan-chicken', 0)))).toBe('reading-unclear')
    const loaded = onward(empty, load('pan-chicken', ofPortions('chicken', 9)))
    expect(codeOf(when(loaded, slip('pan-chicken', 5)))).toBe('already-so')
    expect(codeOf(when(loaded, count('pan-chicken', 5)))).toBeNull()
  })

  it('[S121] by a slip is taken as it was read, by eye or weight too', () => {
    const half: Given = { type: 'correct', pan: 'pan-chicken', quarters: 2, was: 'slip' }
    const [event] = eventsOf(when(empty, half))
    expect(event).toMatchObject({ type: 'countCorrected', from: 0, was: 'slip', kind: 'eye-check' })
    if (event?.type !== 'countCorrected') throw new Error('not counted')
    expect(event.to).toBe(event.read)
    expect(event.to).toBeGreaterThan(0)
    const back = running(onward(empty, half))
    expect(back.beliefs.chicken?.left).toBeCloseTo(event.to / ofPortions('chicken', 1), 6)
    expect(back.beliefs.chicken).not.toHaveProperty('doubted')
  })
})

const clock: Given = {
  type: 'startTimeClock',
  what: 'pan',
  id: 'pan-tuna',
  leftAt: minute(10),
  from: 'cold',
  rule: '4h',
  ...read(40, { at: minute(9) }),
}

describe('a count that was a slip', () => {
  it('[S122] gives the food back as it was: its batches, readings, load and sums', () => {
    const back = onward(empty, slip('pan-chicken', 4))
    const { counted: was, ...before } = panOf(four, 'pan-chicken') ?? { counted: 0 }
    const { counted: is, ...after } = panOf(back, 'pan-chicken') ?? { counted: 0 }
    expect(after).toEqual(before)
    expect(is).toBe(was + 2)
    expect(accountOf(back, 'chicken')).toEqual(accountOf(four, 'chicken'))
    expect(isUsable(running(back), 'pan', 'pan-chicken')).toBe(true)
    expect(codeOf(when(back, send(choose('garden-chicken'))))).toBeNull()
  })

  it('[S122] gives the clock back that ran on, and what was on the list isn’t any more', () => {
    const timed = at(given(), 12, clock)
    const none = at(timed, 20, count('pan-tuna', 0))
    expect(Object.keys(none.state.toThrowOut)).toEqual(['rest/pan-tuna.1'])
    const back = at(none, 21, slip('pan-tuna', 16))
    expect(panOf(back, 'pan-tuna')?.food?.clock).toEqual(panOf(timed, 'pan-tuna')?.food?.clock)
    expect(back.state.toThrowOut).toEqual({})
    const late = at(at(none, 95, ...readAll(none)), 251, slip('pan-tuna', 16))
    expect(until(late, 251).state.toThrowOut['pan/pan-tuna']).toMatchObject({ because: 'time' })
  })

  it('[S122] was none once the rest was initialled as thrown out', () => {
    const none = at(at(given(), 12, clock), 20, count('pan-tuna', 0))
    const thrown = at(none, 21, {
      type: 'throwOut',
      what: 'rest',
      id: 'pan-tuna.1',
      reason: 'other',
      initials: 'KT',
    })
    expect(panOf(thrown, 'pan-tuna')).toMatchObject({ ended: 'thrown-out', amount: 0 })
    expect(codeOf(when(thrown, slip('pan-tuna', 16)))).toBe('say-what-was-put-in')
    expect(panOf(onward(thrown, load('pan-tuna', 9)), 'pan-tuna')).not.toHaveProperty('ended')
  })

  it('[S122] gives a reading back that is missed since', () => {
    const back = at(empty, 300, slip('pan-chicken', 4))
    expect(until(back, 300).state.pans['pan-chicken']?.offSale).toMatchObject({
      why: 'reading-missed',
    })
  })

  it('[S122] knows a clock that was started meanwhile on its batch', () => {
    const batch: readonly Given[] = [
      { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1, startedAt: minute(-60) },
      {
        type: 'finishBatch',
        batch: 'b1',
        amount: ofPortions('tuna', 30),
        finishedAt: minute(-30),
      },
    ]
    const change: Given = {
      type: 'changePan',
      pan: 'pan-tuna',
      amount: ofPortions('tuna', 12),
      batch: 'b1',
      ...read(38),
    }
    const none = at(at(given(), 5, ...batch, change), 20, count('pan-tuna', 0))
    const started = at(none, 21, {
      ...clock,
      what: 'batch',
      id: 'b1',
      leftAt: minute(4),
      ...read(40, { at: minute(3) }),
    } as Given)
    const back = at(started, 22, slip('pan-tuna', 12))
    expect(back.state.batches.b1?.clock).not.toBeNull()
    expect(panOf(back, 'pan-tuna')?.food).toMatchObject({
      heldBy: 'time',
      clock: back.state.batches.b1?.clock,
    })
  })

  it('[S122] knows that its batch was found never good meanwhile', () => {
    const bad = onward(empty, {
      type: 'throwOut',
      what: 'batch',
      id: 'opening-chicken',
      reason: 'not-cooked',
      initials: 'KT',
    })
    const back = onward(bad, slip('pan-chicken', 4))
    expect(panOf(back, 'pan-chicken')?.offSale).toMatchObject({ why: 'out-of-limits' })
    expect(isUsable(running(back), 'pan', 'pan-chicken')).toBe(false)
  })

  it('[S122] leaves the marks of other scoops', () => {
    const soiled = onward(four, { type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' })
    const back = onward(soiled, count('pan-chicken', 0), slip('pan-chicken', 4))
    expect(panOf(back, 'pan-chicken')?.soiledBy).toEqual(['cheddar'])
  })
})

const oil = demoStation.ingredients.find((one) => one.id === 'sesame-oil')
if (!oil) throw new Error('the station has no sesame oil')
const label = labelOf(oil)
const free = {
  type: 'changeLabel',
  ingredient: 'sesame-oil',
  label: { ...label, declarations: { ...oil?.declarations, sesame: 'free' } },
  product: 'other',
} as Given
const slaw = (told: Told) => declaredBy(running(told).station, 'slaw', 'sesame').state
/** Nothing of the slaw stands anywhere but in its pan on the line. */
const onLineOnly: readonly Given[] = [
  { type: 'setBackup', component: 'slaw', ready: false },
  { type: 'throwOut', what: 'batch', id: 'opening-slaw', reason: 'other', initials: 'KT' },
]

describe('a label that changed meanwhile', () => {
  it('[S123] isn’t inherited by the food of before, when the count was a slip', () => {
    const none = onward(ready(...onLineOnly), count('pan-slaw', 0), free)
    expect(none.state.mixing['sesame-oil']?.pans).toEqual(['pan-slaw'])
    expect(slaw(none)).toBe('contains')
    expect(slaw(onward(none, slip('pan-slaw', 5)))).toBe('contains')
    const fresh = onward(none, ...madeBefore('b-new', 'slaw', 2_000_000))
    const put = (one: Given) => onward(fresh, { ...one, batch: 'b-new' } as Given)
    expect(slaw(put(load('pan-slaw', 1_000_000, true)))).toBe('free')
    expect(slaw(put(changePan('pan-slaw', 1_000_000)))).toBe('free')
  })

  it('[S123] isn’t inherited by a pan that only seemed to be used up', () => {
    const one = onward(ready(...onLineOnly), count('pan-slaw', 1), send(choose('harbor-tuna')))
    const used = onward(one, { type: 'start', ...build('1A') }, { type: 'finish', ...build('1A') })
    expect(inPan(used, 'pan-slaw')).toBe(0)
    const relabelled = onward(used, free)
    expect(slaw(onward(relabelled, count('pan-slaw', 5)))).toBe('contains')
    expect(slaw(onward(relabelled, { type: 'takeBack', ...build('1A'), made: false }))).toBe(
      'contains',
    )
  })

  it('[S123] is the only one where the pan was thrown out before', () => {
    const none = onward(ready(...onLineOnly), {
      type: 'throwOut',
      what: 'pan',
      id: 'pan-slaw',
      reason: 'other',
      initials: 'KT',
    })
    expect(slaw(onward(none, free))).toBe('free')
  })
})

describe('a load', () => {
  it('[S124] ends what was there for good, so does another pan', () => {
    const food = load('pan-chicken', ofPortions('chicken', 9))
    for (const one of [food, changePan('pan-chicken', ofPortions('chicken', 9))]) {
      const loaded = onward(empty, one)
      expect(panOf(loaded, 'pan-chicken')).not.toHaveProperty('ended')
      expect(codeOf(when(loaded, slip('pan-chicken', 5)))).toBe('already-so')
    }
  })

  it('[S124] is not told by taking back: nothing goes back into a pan that was counted to nothing', () => {
    const made = onward(
      given(send(choose('garden-chicken'))),
      { type: 'start', ...build('1A') },
      { type: 'finish', ...build('1A') },
      count('pan-chicken', 0),
      { type: 'takeBack', ...build('1A'), made: false },
    )
    expect(panOf(made, 'pan-chicken')).toMatchObject({ amount: 0, ended: true })
    expect(codeOf(when(made, count('pan-chicken', 1)))).toBe('say-what-was-put-in')
  })
})

describe('a log of before', () => {
  it('[S125] folds as it did: food of a count to nothing is there when it is counted up', () => {
    const corrected = (from: number, to: number) =>
      ({ type: 'countCorrected', pan: 'pan-chicken', from, to }) as const
    const old = happening(four, [corrected(ofPortions('chicken', 4), 0)])
    expect(panOf(old, 'pan-chicken')).not.toHaveProperty('ended')
    const up = happening(old, [corrected(0, ofPortions('chicken', 3))])
    const { counted: _c, ...before } = panOf(four, 'pan-chicken') ?? { counted: 0 }
    expect(panOf(up, 'pan-chicken')).toEqual({
      ...before,
      counted: 3,
      amount: ofPortions('chicken', 3),
    })
    expect(codeOf(when(old, count('pan-chicken', 3)))).toBeNull()
  })
})
