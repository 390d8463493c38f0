import { describe, expect, it } from 'vitest'
import { doorsMissed } from '#lib/rooms/prep/facts/doors-missed.ts'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import type { PrepState } from '#lib/service/events/prep-event.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { BEANS, preparedService, SLAW } from '#tests/support/prep-stories.ts'
import { type Given, onward, running } from '#tests/support/service.ts'

const MINUTE = 60_000

const LONG: Given = {
  type: 'planPrep',
  foods: [
    { ...SLAW, minutes: 40 },
    { ...BEANS, minutes: 35 },
  ],
}
const planned = running(preparedService(LONG))
const opensAt = planned.plan?.opensAt ?? Number.NaN

/** So many minutes before the doors. */
const minutesTo = (minutes: number): number => opensAt - minutes * MINUTE

const lengthOf = (state: RunningState, id: string): number => {
  const task = preparedOf(state)?.tasks.find((one) => one.id === id)
  return task ? (task.to - task.from) / MINUTE : Number.NaN
}

const withPrep = (state: RunningState, more: Partial<PrepState>): RunningState => ({
  ...state,
  ...(state.prep ? { prep: { ...state.prep, ...more } } : {}),
})

/** In minutes after the doors, by component. */
const missed = (state: RunningState, now: number) =>
  doorsMissed(state, now).map(({ component, readyAt, lateBy, isBegun }) => {
    expect(readyAt).toBe(opensAt + lateBy)
    return [component, lateBy / MINUTE, isBegun] as const
  })

/** One pan of ten: its share of a quarter of an hour, whole minutes up. */
const LOAD = 2
const SLAW_TAKES = lengthOf(planned, 'make.slaw')
const BEANS_TAKE = lengthOf(planned, 'cook.beans')

const started = onward(preparedService(LONG), {
  ...{ type: 'startBatch', batch: 'b1', component: 'slaw', loads: 2 },
} as const)
const withBatch = (more: Partial<BatchState>): RunningState => {
  const state = running(started)
  const batch = state.batches.b1
  if (!batch) throw new RangeError('it was started')
  return { ...state, batches: { ...state.batches, b1: { ...batch, ...more } } }
}

describe('which food misses the doors', () => {
  it('[PP61] none as long as all is done as planned, and none whose end is before them', () => {
    expect(missed(planned, planned.at)).toEqual([])
    expect([SLAW_TAKES, BEANS_TAKE]).toEqual([40, 35])
    for (const { from, to } of preparedOf(planned)?.tasks ?? [])
      for (const now of [from, to].filter((one) => one <= minutesTo(SLAW_TAKES + LOAD)))
        expect(missed(planned, now)).toEqual([])
  })

  it('[PP61] what isn’t begun counts from now, with its own pan’s loading; the last one first', () => {
    expect(missed(planned, minutesTo(10))).toEqual([
      ['slaw', SLAW_TAKES + LOAD - 10, false],
      ['beans', BEANS_TAKE + LOAD - 10, false],
    ])
    expect(missed(planned, minutesTo(-5))[0]).toEqual(['slaw', SLAW_TAKES + LOAD + 5, false])
  })

  it('[PP61] to the minute: on the line as the doors open is no miss, a minute later is', () => {
    const inHand = (now: number) => missed(withBatch({ startedAt: now }), now)
    expect(inHand(minutesTo(SLAW_TAKES + LOAD))).toEqual([])
    expect(inHand(minutesTo(SLAW_TAKES + LOAD - 1))).toEqual([['slaw', 1, true]])
  })

  it('[PP61] what is in its time is taken to be in hand until that is over', () => {
    const to = preparedOf(planned)?.tasks.find(({ id }) => id === 'make.slaw')?.to ?? Number.NaN
    expect(missed(planned, to)).toEqual([])
    expect(missed(planned, to + MINUTE)[0]?.[0]).toBe('slaw')
  })

  it('[PP61] what is done isn’t in it, and what was passed on counts what is left', () => {
    const now = minutesTo(10)
    const done = withPrep(planned, { ticked: { 'make.slaw': now } })
    expect(missed(done, now).map(([component]) => component)).toEqual(['beans'])
    const passed = { far: 3 as const, where: 'cooler' as const, at: now - 60 * MINUTE }
    const half = withPrep(planned, { passed: { 'make.slaw': passed } })
    expect(missed(half, now)).toContainEqual(['slaw', SLAW_TAKES / 4 + LOAD - 10, true])
  })

  it('[PP61] a batch in hand counts from when it was started, and its finished loads are made', () => {
    const now = minutesTo(10)
    const since = { startedAt: now - 25 * MINUTE }
    expect(missed(withBatch(since), now)).toContainEqual([
      'slaw',
      SLAW_TAKES - 25 + LOAD - 10,
      true,
    ])
    const long = { startedAt: now - 120 * MINUTE }
    expect(missed(withBatch(long), now).map(([component]) => component)).toEqual(['beans'])
    const one = { loadsDone: 1, finishedAt: now }
    expect(missed(withBatch(one), now)).toContainEqual(['slaw', SLAW_TAKES / 2 + LOAD - 10, true])
    const wasted = { ...since, thrownOutAt: now }
    expect(missed(withBatch(wasted), now)).toContainEqual(['slaw', SLAW_TAKES + LOAD - 10, false])
  })

  it('[PP61] what is cooked ahead still has to cool and be reheated', () => {
    const ahead: Given = {
      type: 'planPrep',
      foods: [{ ...BEANS, ahead: true, coolsIn: { first: 30, total: 80 } }],
    }
    const state = running(preparedService(ahead))
    const reheat = lengthOf(state, 'reheat.beans')
    const now = minutesTo(30)
    expect(missed(state, now)).toEqual([
      ['beans', lengthOf(state, 'cook.beans') + 80 + reheat + LOAD - 30, false],
    ])
  })

  it('[PP61] nothing is said of a service whose preparation nobody planned', () => {
    const { prep: _, ...bare } = planned
    expect(doorsMissed(bare, minutesTo(0))).toEqual([])
  })
})
