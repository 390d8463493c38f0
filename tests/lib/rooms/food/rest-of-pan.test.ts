import { describe, expect, it } from 'vitest'
import { safetyDue } from '#lib/rooms/advice/facts/safety-due.ts'
import { at, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
  accountOf,
  changePan,
  codeOf,
  type Given,
  given,
  ofPortions,
  ready,
  refusalOf,
  running,
} from '#tests/support/service.ts'

const tuna = (count: number) => ofPortions('tuna', count)
const clock = (what: 'pan' | 'batch' | 'backup', id: string): Given => ({
  type: 'startTimeClock',
  what,
  id,
  leftAt: minute(10),
  from: 'cold',
  rule: '4h',
  ...read(40, { at: minute(9) }),
})
const throwOut = (what: 'pan' | 'rest', id: string, over: object = {}): Given => ({
  type: 'throwOut',
  what,
  id,
  reason: 'left-over',
  initials: 'KT',
  ...over,
})
/** Tuna on time alone since 10:10, and a fresh batch of it. */
const timed = at(
  given(),
  12,
  clock('pan', 'pan-tuna'),
  { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 1, startedAt: minute(-60) },
  { type: 'finishBatch', batch: 'b1', amount: tuna(30), finishedAt: minute(-30) },
)
const change = (over: object = {}): Given => ({
  type: 'changePan',
  pan: 'pan-tuna',
  amount: tuna(12),
  batch: 'b1',
  ...read(38),
  ...over,
})
const nameless = (): Given => {
  const { batch: _, ...rest } = change() as Extract<Given, { type: 'changePan' }>
  return rest
}

describe('the rest of a pan on time alone', () => {
  it('[B33] is to be thrown out when the pan is changed, apart from the new one', () => {
    const changed = at(timed, 20, change())
    expect(changed.state.toThrowOut).toEqual({
      'rest/pan-tuna.1': {
        what: 'rest',
        id: 'pan-tuna.1',
        because: 'taken-away',
        since: minute(20),
        rest: { component: 'tuna', amount: tuna(16) },
      },
    })
    expect(changed.state.pans['pan-tuna']).toMatchObject({
      amount: tuna(12),
      food: { heldBy: 'cold', clock: null },
    })
    expect(safetyDue(running(changed), minute(20))).toContainEqual(
      expect.objectContaining({
        reason: expect.objectContaining({ what: 'throw-out', of: 'rest', component: 'tuna' }),
      }),
    )
    expect(accountOf(changed, 'tuna')).toMatchObject({ takenAway: tuna(16), wasted: 0 })
    expect(codeOf(whenAt(changed, 21, { type: 'close' }))).toBe('throw-out-first')
  })

  it('[B33] is initialled like all else, is waste then, and weighs what it weighed', () => {
    const changed = at(timed, 20, change())
    const { initials: _, ...bare } = throwOut('rest', 'pan-tuna.1') as Extract<
      Given,
      { type: 'throwOut' }
    >
    expect(codeOf(whenAt(changed, 21, bare as Given))).toBe('not-initialled')
    const away = at(changed, 21, throwOut('rest', 'pan-tuna.1', { amount: tuna(15) }))
    expect(away.state.toThrowOut).toEqual({})
    expect(accountOf(away, 'tuna')).toMatchObject({
      takenAway: 0,
      wasted: tuna(15),
      corrected: -tuna(1),
    })
    expect(away.state.wastes.tuna).toEqual({ 'left-over': tuna(15) })
    expect(codeOf(whenAt(away, 22, throwOut('rest', 'pan-tuna.1')))).toBe('nothing-there')
    const absurd = throwOut('rest', 'pan-tuna.1', { amount: tuna(99) })
    expect(codeOf(whenAt(changed, 21, absurd))).toBe('absurd-amount')
  })

  it('[B33] comes back as nothing new: food without a name waits for the initials', () => {
    expect(refusalOf(whenAt(timed, 20, nameless()))).toEqual({ code: 'throw-out-first', count: 1 })
    const changed = at(timed, 20, change())
    const empty = at(changed, 21, { type: 'correct', pan: 'pan-tuna', amount: 0 })
    const load = { ...(nameless() as object), type: 'load' } as Given
    expect(codeOf(whenAt(empty, 22, load))).toBe('throw-out-first')
    expect(codeOf(whenAt(changed, 22, nameless()))).toBe('throw-out-first')
    // It is made here, so that a name is asked for once nothing is in its way.
    const initialled = at(empty, 22, throwOut('rest', 'pan-tuna.1'))
    expect(codeOf(whenAt(initialled, 23, load))).toBe('no-batch')
    const slaw = changePan('pan-slaw', ofPortions('slaw', 9))
    expect(codeOf(whenAt(changed, 22, slaw))).toBeNull()
    const thrown = at(timed, 20, throwOut('pan', 'pan-tuna'))
    expect(codeOf(whenAt(thrown, 21, load))).toBe('no-batch')
  })

  it('[B33] of a pan in its limits goes away as ever', () => {
    const plain = at(given(), 9, changePan('pan-chicken', ofPortions('chicken', 9)))
    expect(plain.state.toThrowOut).toEqual({})
  })

  it('[B33] past its time or date is to be thrown out before the pan is changed at all', () => {
    const all = [
      ...readAll(timed),
      { type: 'readTemperature', what: 'batch', id: 'b1', ...read(38) } as const,
    ]
    const late = at(at(timed, 95, ...all), 195, ...all)
    const past = until(late, 250)
    expect(codeOf(whenAt(past, 251, change()))).toBe('throw-out-first')
    // Nothing falls due while a jump isn't confirmed: what is past is known all the same.
    const jumped = {
      ...late,
      state: {
        ...late.state,
        clockJump: { byMs: 90_000, at: 0, read: { 'batch/b1': minute(195) } },
      },
    }
    const changed = at(jumped, 251, change())
    expect(changed.state.toThrowOut['rest/pan-tuna.1']).toMatchObject({ because: 'time' })
  })

  const count = (amount: number): Given => ({ type: 'correct', pan: 'pan-tuna', amount })
  const slip = (amount: number): Given => ({ ...count(amount), was: 'slip' }) as Given

  it('[B39] is to be thrown out also where the pan is counted to nothing, and nothing goes in before', () => {
    const empty = at(timed, 20, count(0))
    expect(empty.state.toThrowOut['rest/pan-tuna.1']).toEqual({
      what: 'rest',
      id: 'pan-tuna.1',
      because: 'counted-empty',
      since: minute(20),
      rest: { component: 'tuna', amount: tuna(16) },
    })
    const load = (from: Given) => ({ ...(from as object), type: 'load' }) as Given
    for (const one of [load(nameless()), load(change()), nameless()])
      expect(codeOf(whenAt(empty, 21, one))).toBe('throw-out-first')
    expect(codeOf(whenAt(empty, 21, { type: 'close' }))).toBe('throw-out-first')
    const { initials: _, ...bare } = throwOut('rest', 'pan-tuna.1') as Extract<
      Given,
      { type: 'throwOut' }
    >
    expect(codeOf(whenAt(empty, 21, bare as Given))).toBe('not-initialled')
    expect(codeOf(whenAt(empty, 21, change()))).toBeNull()
    const away = at(empty, 21, throwOut('rest', 'pan-tuna.1'))
    expect(away.state.toThrowOut).toEqual({})
    expect(accountOf(away, 'tuna')).toMatchObject({ takenAway: 0, corrected: 0, wasted: tuna(16) })
    expect(codeOf(whenAt(away, 22, load(nameless())))).toBe('no-batch')
    expect(codeOf(whenAt(away, 22, load(change())))).toBeNull()
  })

  it('[B39] is nothing where a pan in its limits is counted to nothing, or one is used up', () => {
    const plain = at(given(), 9, { type: 'correct', pan: 'pan-chicken', amount: 0 })
    expect(plain.state.toThrowOut).toEqual({})
    const few = at(timed, 20, count(tuna(3)))
    expect(few.state.toThrowOut).toEqual({})
    const pan = few.state.pans['pan-tuna']
    if (!pan) throw new Error('no tuna')
    const used = {
      ...few,
      state: { ...few.state, pans: { ...few.state.pans, 'pan-tuna': { ...pan, amount: 0 } } },
    }
    expect(codeOf(whenAt(used, 21, { ...(change() as object), type: 'load' } as Given))).toBeNull()
  })

  it('[B39] is there after all where it is counted again, and the sums are as they were', () => {
    const empty = at(timed, 20, count(0))
    expect(accountOf(empty, 'tuna')).toMatchObject({ takenAway: tuna(16), corrected: 0 })
    const back = at(empty, 21, slip(tuna(15)))
    expect(back.state.toThrowOut).toEqual({})
    expect(accountOf(back, 'tuna')).toMatchObject({ takenAway: 0, corrected: -tuna(1) })
    expect(back.state.pans['pan-tuna']?.food?.clock).toEqual(
      timed.state.pans['pan-tuna']?.food?.clock,
    )
    const signed = at(empty, 21, throwOut('rest', 'pan-tuna.1'))
    expect(accountOf(signed, 'tuna')).toMatchObject({ wasted: tuna(16), corrected: 0 })
  })

  it('[B33] of a back-up pan too, when it is put away', () => {
    const { state } = ready()
    const rice = state.backupPans['back-up-rice']
    if (!rice?.food) throw new Error('no rice behind')
    const food = {
      ...rice.food,
      heldBy: 'time',
      clock: { rule: '4h', startedAt: minute(0), throwOutAt: minute(240) },
    } as const
    const backupPans = { ...state.backupPans, 'back-up-rice': { ...rice, food } }
    const told = { ...ready(), state: { ...state, backupPans } }
    const away = at(told, 9, { type: 'setBackup', component: 'rice', ready: false })
    expect(away.state.toThrowOut['rest/back-up-rice.1']).toMatchObject({
      because: 'taken-away',
      rest: { component: 'rice', amount: ofPortions('rice', 12) },
    })
  })
})
