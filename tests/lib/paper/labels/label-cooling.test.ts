import { describe, expect, it } from 'vitest'
import { coolingOfBatch } from '#lib/paper/labels/label-dates.ts'
import { sayCooling } from '#lib/paper/words/labels-en.ts'
import { componentOf } from '#lib/station/find.ts'
import { at, minute, read } from '#tests/support/food.ts'
import { type Given, given, running, type Told } from '#tests/support/service.ts'

const where = { timeZone: 'UTC', scale: 'F' } as Parameters<typeof sayCooling>[1]

const made: readonly Given[] = [
  { type: 'startBatch', batch: 'b1', component: 'tuna', loads: 2, startedAt: minute(0) },
  { type: 'finishBatch', batch: 'b1', amount: 900_000, finishedAt: minute(1), loads: 1 },
]
/** Planned to be made of cans that stood at room temperature. */
const cooling = (told: Told, minutes: number) => {
  const state = running(told)
  const foods = [{ component: 'tuna', loads: 2, fromRoom: true }]
  const planned = { ...state, prep: { foods } } as unknown as typeof state
  const tuna = componentOf(state.station, 'tuna')
  return coolingOfBatch(planned, tuna, state.batches.b1 ?? null, minute(minutes))
}
const said = (one: ReturnType<typeof cooling>) => JSON.stringify(one && sayCooling(one, where))

describe('the label of food that cools from room temperature', () => {
  it('[B81] says its hour before anybody read it: 4 hours from when it was made, 3-501.14(B)', () => {
    const label = cooling(at(given(), 1, ...made), 30)
    expect(label).toMatchObject({ start: null, read: [], stages: [{ by: minute(241) }] })
    expect(label?.stages[0]?.within.paragraph).toBe('3-501.14(B)')
    // Minute 0 is 16:00.
    expect(said(label)).toMatch(/41 °F or below by[^}]*8:01 PM/)
    expect(said(label)).not.toContain('first reading')
  })

  it('[B81] counts from the first of several loads, and from a reading that came before', () => {
    const more: Given = {
      type: 'finishBatch',
      batch: 'b1',
      amount: 1_800_000,
      finishedAt: minute(60),
    }
    expect(cooling(at(at(given(), 1, ...made), 60, more), 61)?.stages[0]?.by).toBe(minute(241))
    const early: Given = {
      ...{ type: 'recordCooling', batch: 'b1', ...read(65, { at: minute(1) }) },
      presentUntil: minute(240),
    }
    const [begun] = made
    const readFirst = at(at(given(), 1, ...(begun ? [begun] : []), early), 30)
    expect(cooling(readFirst, 31)?.stages[0]?.by).toBe(minute(241))
  })

  it('[B81] before it is made it says within how long of that', () => {
    const label = cooling(given(), 1)
    expect(label?.stages[0]?.by).toBeNull()
    expect(said(label)).toContain('By: 4 h from when it was made.')
  })
})
