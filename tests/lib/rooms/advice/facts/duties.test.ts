import { describe, expect, it } from 'vitest'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { soldOut } from '#lib/rooms/advice/facts/sold-out.ts'
import {
  at,
  choice,
  type Given,
  give,
  happens,
  load,
  MINUTE,
  OPENED,
  openedAs,
  order,
  panFor,
  portionOf,
  type Stocked,
  stocked,
} from '#tests/support/stock.ts'

const gone = (component: string): Stocked =>
  give(stocked(), 5, { type: 'correct', pan: panFor(component), amount: 0 })
const outKeys = ({ state }: Stocked): readonly string[] =>
  soldOut(state, state.at).map(({ key }) => key)

describe('sold out', () => {
  it('[Z42] is what there was and is none left of', () => {
    expect(outKeys(openedAs())).toEqual([])
    expect(outKeys(stocked())).toEqual([])
    const [found] = soldOut(gone('chicken').state, OPENED + 5 * MINUTE)
    expect(found).toMatchObject({
      key: 'sold-out chicken',
      kind: 'sold-out',
      reason: { component: 'chicken', items: ['garden-chicken'], behind: 0, nextAt: null },
    })
  })

  it('[Z42] isn’t told of what is stopped by choice', () => {
    const told = give(gone('chicken'), 6, { type: 'stopSelling', what: 'component', id: 'chicken' })
    expect(outKeys(told)).toEqual([])
  })

  it('[Z42] isn’t told of what items are sold without, but of one of two bases once both are gone', () => {
    expect(outKeys(gone('peppers'))).toEqual([])
    expect(outKeys(gone('pita'))).toEqual([])
    const both = give(gone('pita'), 6, { type: 'correct', pan: panFor('rice'), amount: 0 })
    expect(outKeys(both).slice().sort()).toEqual(['sold-out pita', 'sold-out rice'])
    const amount = 20 * portionOf('slaw')
    const batch: readonly Given[] = [
      { type: 'startBatch', batch: 'b1', component: 'slaw', loads: 1 },
      { type: 'finishBatch', batch: 'b1', amount },
    ]
    const behind = give(gone('slaw'), 7, ...batch, {
      type: 'setBackup',
      component: 'slaw',
      ready: true,
      amount,
      batch: 'b1',
      reading: { tenths: 380, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: 'JK',
    })
    expect(outKeys(behind)).toEqual(['sold-out slaw'])
  })

  it('[Z42] rests once answered, until more was loaded and is gone', () => {
    const [found] = soldOut(gone('chicken').state, OPENED + 5 * MINUTE)
    if (!found) throw new Error('it is not sold out')
    const answered = give(happens(gone('chicken'), 6, { type: 'adviceTold', ...found }), 7, {
      type: 'answerAdvice',
      key: found.key,
      answer: 'done',
    })
    expect(outKeys(answered)).toEqual([])
    const again = give(happens(answered, 30, load('chicken', 5)), 31, {
      type: 'correct',
      pan: panFor('chicken'),
      amount: 0,
    })
    expect(outKeys(again)).toEqual(['sold-out chicken'])
  })

  it('[Z42] says when more is expected, and what stands behind', () => {
    const started = OPENED + 5 * MINUTE
    const told = happens(gone('chicken'), 5, {
      type: 'batchStarted',
      batch: 'b1',
      component: 'chicken',
      loads: 1,
      startedAt: started,
    })
    const [found] = soldOut(told.state, started)
    expect(found?.reason).toMatchObject({ nextAt: started + 22 * MINUTE })
    const ready = happens(told, 27, {
      type: 'batchFinished',
      batch: 'b1',
      finishedAt: started,
      amount: 12 * portionOf('chicken'),
      dateMark: null,
    })
    expect(soldOut(ready.state, ready.state.at)[0]?.reason).toMatchObject({
      behind: 12,
      nextAt: null,
    })
  })
})

/** A hot pan read in limits at the opening. */
const read = (told: Stocked, minutes: number): Stocked =>
  happens(told, minutes, {
    type: 'temperatureRead',
    what: 'pan',
    id: panFor('chicken'),
    reading: {
      temperature: { tenths: 1_500, scale: 'F' },
      at: OPENED + minutes * MINUTE,
      probe: 'p1',
      where: 'middle-stirred',
      initialled: true,
    },
    inLimits: true,
  })

const duties = (told: Stocked, minutes: number) => safetyDue(told.state, OPENED + minutes * MINUTE)
const ofChicken = (told: Stocked, minutes: number): readonly string[] =>
  duties(told, minutes)
    .map(({ key }) => key)
    .filter((key) => key.endsWith(panFor('chicken')))

describe('what safety asks for', () => {
  const pan = panFor('chicken')

  it('[Z44] is a reading when it is due, and a missed one', () => {
    const told = read(stocked(), 1)
    expect(ofChicken(told, 60)).toEqual([])
    expect(ofChicken(told, 115)).toEqual([`safety reading-due pan ${pan}`])
    expect(ofChicken(told, 121)).toEqual([`safety reading-missed pan ${pan}`])
    const due = duties(told, 115).find(({ key }) => key.endsWith(pan))
    expect(due).toMatchObject({
      kind: 'safety',
      reason: { what: 'reading-due', component: 'chicken', dueAt: OPENED + 121 * MINUTE },
    })
  })

  it('[Z44] is what is off sale and what is to be thrown out, the worst first', () => {
    const off = happens(read(stocked(), 1), 5, {
      type: 'takenOffSale',
      what: 'pan',
      id: pan,
      why: 'out-of-limits',
      lastGoodAt: OPENED,
    })
    expect(ofChicken(off, 6)).toEqual([`safety out-of-limits pan ${pan}`])
    const thrown = happens(off, 7, {
      type: 'throwOutPassed',
      what: 'pan',
      id: pan,
      because: 'time',
    })
    expect(ofChicken(thrown, 8)).toEqual([`safety throw-out pan ${pan}`])
    const saves = (told: Stocked) => duties(told, 8).find(({ key }) => key.endsWith(pan))?.saves
    expect(saves(thrown)).toBeGreaterThan(saves(off) ?? 0)
  })

  it('[Z44] is food whose time is soon over', () => {
    const told = happens(stocked(), 1, {
      type: 'timeClockStarted',
      what: 'pan',
      id: pan,
      from: 'hot',
      clock: {
        rule: '4h',
        from: 'hot',
        startedAt: OPENED - 200 * MINUTE,
        throwOutAt: OPENED + 40 * MINUTE,
      } as never,
      reading: {
        temperature: { tenths: 1_500, scale: 'F' },
        at: OPENED - 200 * MINUTE,
        probe: 'p1',
        where: 'middle-stirred',
        initialled: true,
      },
    })
    expect(ofChicken(told, 20)).toEqual([])
    expect(ofChicken(told, 30)).toEqual([`safety throw-out-soon pan ${pan}`])
  })

  const coolingFrom = (presentUntil?: number) =>
    happens(
      stocked(),
      1,
      { type: 'batchStarted', batch: 'b1', component: 'chicken', loads: 1, startedAt: OPENED },
      {
        type: 'coolingRead',
        batch: 'b1',
        ...(presentUntil === undefined ? {} : { presentUntil }),
        reading: {
          temperature: { tenths: 1_400, scale: 'F' },
          at: OPENED,
          probe: 'p1',
          where: 'thickest-part',
          initialled: true,
        },
      },
    )

  it('[Z44] is a batch whose cooling is soon over its stage', () => {
    const keysOf = (minutes: number) =>
      duties(coolingFrom(), minutes).flatMap(({ key }) => (key.includes('b1') ? [key] : []))
    expect(keysOf(60)).toEqual([])
    expect(keysOf(105)).toEqual(['safety cooling-due batch b1'])
  })

  it('[F87] is what cools before they leave who stay for it, and once they have', () => {
    const leave = OPENED + 70 * MINUTE
    const ofCooling = (stays: number | undefined, minutes: number) =>
      duties(coolingFrom(stays), minutes).flatMap(({ key, reason }) =>
        key.includes('b1') ? [reason] : [],
      )
    expect(ofCooling(leave, 45)).toEqual([])
    const dueAt = OPENED + 120 * MINUTE
    expect(ofCooling(leave, 50)).toMatchObject([{ what: 'cooling-due', dueAt, awayFrom: leave }])
    expect(ofCooling(leave, 90)).toMatchObject([{ what: 'cooling-due', dueAt, awayFrom: leave }])
    expect(ofCooling(dueAt, 95)).toEqual([])
    expect(ofCooling(dueAt, 100)).toMatchObject([{ what: 'cooling-due', dueAt }])
    expect(ofCooling(dueAt, 100)[0]).not.toHaveProperty('awayFrom')
  })

  it('[Z44] is made food that waits past its collect-by', () => {
    const told = happens(
      give(stocked(), 1, order(choice('garden-chicken')), { type: 'start', ...at('1A') }),
      2,
      {
        type: 'buildFinished',
        ...at('1A'),
        took: [],
        uncounted: {},
        until: { collectBy: OPENED + 32 * MINUTE, throwOutAt: OPENED + 242 * MINUTE },
      },
    )
    const collect = (minutes: number) =>
      duties(told, minutes).filter(({ key }) => key === 'safety collect build 1A').length
    expect([31, 32, 40].map(collect)).toEqual([0, 1, 1])
  })
})
