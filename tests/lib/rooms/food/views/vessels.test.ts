import { describe, expect, test } from 'vitest'
import { loadsOf } from '#lib/rooms/food/views/batch-loads.ts'
import { batchSteps, mainStep } from '#lib/rooms/food/views/batch-steps.ts'
import { rowsOf, vesselPictures, vesselsByPan } from '#lib/rooms/food/views/vessels.ts'
import {
  backupReady,
  type Given,
  given,
  ofPortions,
  running,
  type Told,
} from '#tests/support/service.ts'

const heat = (batch: string, tenths: number): Given => ({
  type: 'recordCooking',
  batch,
  reading: { tenths, scale: 'F', probe: '1', where: 'thickest-part', heldSeconds: 20 },
  initials: 'AB',
})

const start = (component: string, batch: string, loads = 1): Given => ({
  type: 'startBatch',
  component,
  batch,
  loads,
})

const finish = (batch: string, component: string, portions: number, loads: number): Given => ({
  type: 'finishBatch',
  batch,
  amount: ofPortions(component, portions),
  loads,
})

const behind = (told: Told, component: string) =>
  vesselPictures(running(told), running(told).at)[component] ?? []

describe('what stands behind a pan', () => {
  test('[P66] of food that stands in no pan is drawn at the end of the line', () => {
    const told = running(given(start('chicken', 'first'), start('almonds', 'second')))
    const { line } = told.station
    const wells = line.wells.map((well) => ({
      ...well,
      pans: well.pans.filter(({ component }) => component !== 'chicken'),
    }))
    const state = { ...told, station: { ...told.station, line: { ...line, wells } } }
    const drawn = vesselsByPan(state, state.at)
    const last = wells.flatMap(({ pans }) => pans).at(-1)
    const chicken = vesselPictures(state, state.at).chicken ?? []
    expect(chicken.map(({ id }) => id)).toContain('first')
    expect(drawn[last?.id ?? '']?.slice(0, chicken.length)).toEqual(chicken)
    const all = Object.values(vesselPictures(state, state.at)).flat()
    const ids = (list: typeof all) => list.map(({ what, id }) => `${what} ${id}`).sort()
    expect(ids(Object.values(drawn).flat())).toEqual(ids(all))
  })

  test('is its back-up pan with its lid, then its batches as pots with their time', () => {
    const told = given(
      backupReady('chicken', 24),
      start('chicken', 'first', 2),
      start('chicken', 'second'),
    )
    const drawn = behind(told, 'chicken')
    expect(drawn.map(({ kind, stage }) => `${kind} ${stage}`)).toEqual([
      'lid ready',
      'pot under-way',
      'pot under-way',
      'pot ready',
    ])
    expect(drawn.slice(1, 3).every(({ at }) => at !== null)).toBe(true)
    expect(drawn[0]).toMatchObject({ what: 'backup', portions: 24, isGuarded: true })
  })

  test('stays drawn where it is empty, and says which may not be served', () => {
    expect(behind(given(), 'chicken')[0]).toMatchObject({ stage: 'empty', portions: 0 })
    const warm = given(backupReady('chicken', 24), {
      type: 'readTemperature',
      what: 'backup',
      id: 'back-up-chicken',
      reading: { tenths: 1_000, scale: 'F', probe: '1', where: 'thickest-part' },
      initials: 'AB',
    })
    expect(behind(warm, 'chicken')[0]).toMatchObject({ stage: 'off-sale' })
  })

  test('takes a second row once two with times, or three of any kind, stand there', () => {
    const lid = { at: null, stage: 'ready' } as const
    const making = { at: 1, stage: 'under-way' } as const
    expect(rowsOf([])).toBe(0)
    expect(rowsOf([lid, lid])).toBe(1)
    expect(rowsOf([lid, making])).toBe(1)
    expect(rowsOf([making, making])).toBe(2)
    expect(rowsOf([lid, lid, lid])).toBe(2)
    expect(rowsOf([lid, making, making])).toBe(2)
  })
})

describe('the loads of a batch', () => {
  test('are told apart: finished, cooked, and not yet', () => {
    const begun = given(start('chicken', 'pot', 3))
    expect(loadsOf(running(begun), 'pot')).toEqual(['waits', 'waits', 'waits'])
    const first = given(start('chicken', 'pot', 3), heat('pot', 1_660))
    expect(loadsOf(running(first), 'pot')).toEqual(['cooked', 'waits', 'waits'])
    const done = given(
      start('chicken', 'pot', 3),
      heat('pot', 1_660),
      finish('pot', 'chicken', 12, 1),
    )
    expect(loadsOf(running(done), 'pot')).toEqual(['finished', 'waits', 'waits'])
    expect(loadsOf(running(done), 'no such pot')).toEqual([])
  })
})

describe('a pot’s main button', () => {
  const main = (told: Told) => mainStep(running(told), 'pot', running(told).at)

  test('is always one of its steps, from the start to the line', () => {
    const begun = [start('chicken', 'pot')]
    const cooked = [...begun, heat('pot', 1_660)]
    const finished = [...cooked, finish('pot', 'chicken', 12, 1)]
    expect(main(given(...begun))).toBe('cook')
    expect(main(given(...cooked))).toBe('finish')
    expect(main(given(...finished))).toBe('load')
    for (const steps of [begun, cooked, finished]) {
      const told = given(...steps)
      expect(batchSteps(running(told), 'pot')).toContain(main(told))
    }
  })

  test('of what was thrown out is none', () => {
    const gone = given(start('chicken', 'pot'), {
      type: 'throwOut',
      what: 'batch',
      id: 'pot',
      reason: 'quality',
      initials: 'AB',
    })
    expect(main(gone)).toBeNull()
  })
})
