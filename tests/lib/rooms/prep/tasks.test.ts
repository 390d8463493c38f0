import { describe, expect, it } from 'vitest'
import { planPrep } from '#lib/rooms/prep/commands/plan-prep.ts'
import { preparedOf } from '#lib/rooms/prep/facts/tasks-now.ts'
import { prepList } from '#lib/rooms/prep/views/prep-list.ts'
import { mayDo } from '#lib/spine/registry.ts'
import { plannedService } from '#tests/support/plans.ts'
import {
  AHEAD,
  BEANS,
  PASS,
  type PrepRefused,
  preparedService,
  SCHOOL_DAY,
  SLAW,
  TAKEN,
  TICK,
} from '#tests/support/prep-stories.ts'
import {
  codeOf,
  type Given,
  onward,
  refusalOf,
  running,
  type Told,
  when,
} from '#tests/support/service.ts'

const schooled = (...commands: Given[]): Told => onward(plannedService(), SCHOOL_DAY, ...commands)
const isOf = (told: Told, id: string, now = running(told).at) =>
  prepList(running(told), now).find(({ task }) => task.id === id)

describe('what stands in the way of a preparation', () => {
  const early: Given = {
    type: 'planPrep',
    foods: [{ ...BEANS, ahead: true, coolsIn: { first: 30, total: 80 } }],
  }
  const refused: Readonly<Record<PrepRefused, readonly [Told, Given]>> = {
    'prep-not-ready': [schooled(), AHEAD],
    'reading-no-tick': [
      schooled(early),
      { type: 'tickTask', task: 'read-cold.beans', initials: 'KT' },
    ],
    'unknown task': [preparedService(), { ...TICK, task: 'make.kelp' }],
  }

  it.each(Object.entries(refused) as [PrepRefused, readonly [Told, Given]][])(
    '[S60] [PP12] %s is data with a code, and nothing happens',
    (code, [told, command]) => {
      const decision = when(told, command)
      expect(codeOf(decision)).toBe(code)
      expect(JSON.parse(JSON.stringify(decision))).toEqual(decision)
    },
  )

  it('[PP12] a reading that nobody could take is named with its moment, and the way out is taken', () => {
    const refusal = refusalOf(when(schooled(), AHEAD))
    expect(refusal).toMatchObject({
      ...{ code: 'prep-not-ready', component: 'beans', why: 'nobody-there' },
    })
    const inIce = { ...BEANS, ahead: true as const, coolsIn: { first: 30, total: 80 } }
    expect(codeOf(when(schooled(), { type: 'planPrep', foods: [inIce] }))).toBeNull()
    expect(codeOf(when(schooled(), { type: 'planPrep', foods: [BEANS] }))).toBeNull()
  })

  it('[PP11] the same said again changes nothing, and what is unknown is named', () => {
    expect(codeOf(when(preparedService(), TAKEN))).toBe('already-so')
    const kelp = { component: 'kelp', loads: 1, portions: 1 }
    expect(codeOf(when(schooled(), { type: 'planPrep', foods: [kelp] }))).toBe('unknown component')
    expect(planPrep.schema.safeParse({ type: 'planPrep', foods: [SLAW, SLAW] }).success).toBe(false)
  })
})

describe('the crew’s tasks', () => {
  it('[PP11] are worked out of what is in the log, and stay what they are called', () => {
    const told = preparedService(TICK)
    const again = onward(told, {
      type: 'planPrep',
      foods: [{ ...SLAW, loads: 3, portions: 60 }, BEANS],
    })
    expect(preparedOf(running(again))?.tasks.find(({ id }) => id === 'make.slaw')?.amount).toEqual({
      ...{ loads: 3, portions: 60 },
    })
    const fewer: Given = { type: 'planPrep', foods: [{ ...SLAW, loads: 1, portions: 20 }] }
    expect(isOf(onward(told, fewer), 'make.slaw')?.is).toBe('done')
  })

  it('[PR61] what was ticked isn’t done once more of it is planned, and nothing else is opened again', () => {
    const ticks = ['make.slaw', 'cook.beans', 'pack-cup.slaw'].map(
      (task): Given => ({ ...TICK, task }),
    )
    const told = preparedService(...ticks)
    const ticked = (foods: readonly object[]) =>
      Object.keys(
        running(onward(told, { type: 'planPrep', foods } as unknown as Given)).prep?.ticked ?? {},
      )
    expect(ticked([SLAW, BEANS, { component: 'rice', loads: 1, portions: 20 }])).toHaveLength(3)
    expect(ticked([{ ...SLAW, loads: 3 }, BEANS])).toEqual(['cook.beans'])
    expect(ticked([{ ...SLAW, portions: 41 }, BEANS])).toEqual(['cook.beans'])
    expect(ticked([{ ...SLAW, loads: 1, portions: 20 }, BEANS])).toHaveLength(3)
    // Left out and planned again, it was ticked as nothing of it was planned.
    const again = onward(told, { type: 'planPrep', foods: [BEANS] }, TAKEN)
    expect(isOf(again, 'make.slaw')?.is).not.toBe('done')
    expect(codeOf(when(again, TICK))).toBeNull()
  })

  it('[PP13] a tick says that a task is done, twice says nothing, and a slip is taken back', () => {
    const ticked = preparedService(TICK)
    expect(isOf(preparedService(), 'make.slaw')?.is).toBe('to-come')
    expect(isOf(ticked, 'make.slaw')).toMatchObject({ is: 'done', isTicked: true })
    expect(codeOf(when(ticked, TICK))).toBe('already-so')
    const back: Given = { type: 'takeBackTick', task: 'make.slaw' }
    expect(isOf(onward(ticked, back), 'make.slaw')?.is).toBe('to-come')
    expect(codeOf(when(onward(ticked, back), back))).toBe('already-so')
    expect(codeOf(when(preparedService(), { type: 'tickTask', task: 'make.slaw' }))).toBe(
      'not-initialled',
    )
  })

  it('[PP14] a finished batch is its making’s tick', () => {
    const started = onward(preparedService(), {
      type: 'startBatch',
      batch: 'b1',
      component: 'slaw',
      loads: 2,
    })
    expect(isOf(started, 'make.slaw')?.is).toBe('to-come')
    const done = onward(started, { type: 'finishBatch', batch: 'b1', loads: 2, amount: 1_000_000 })
    expect(isOf(done, 'make.slaw')).toMatchObject({ is: 'done', isTicked: false })
  })

  it('[PP14] half of the loads are not all of them, and what was taken from the larder is none', () => {
    const started = onward(
      preparedService(),
      { type: 'startBatch', batch: 'b1', component: 'slaw', loads: 1 },
      { type: 'finishBatch', batch: 'b1', loads: 1, amount: 500_000 },
    )
    expect(SLAW.loads).toBe(2)
    expect(isOf(started, 'make.slaw')?.is).toBe('to-come')
    const now = running(started)
    const [batch] = Object.values(now.batches)
    if (batch === undefined) throw new RangeError('a batch is there')
    const with2 = (more: object) => ({
      ...now,
      batches: { ...now.batches, b2: { ...batch, ...more } },
    })
    const isNow = (state: typeof now) =>
      prepList(state, now.at).find(({ task }) => task.id === 'make.slaw')?.is
    expect(isNow(with2({}))).toBe('done')
    expect(isNow(with2({ lot: 's-before.4' }))).toBe('to-come')
    expect(isNow(with2({ thrownOutAt: now.at }))).toBe('to-come')
  })

  it('[PP15] one that is passed on says how far it is and where', () => {
    const passed = preparedService(PASS)
    expect(isOf(passed, 'make.slaw')?.passed).toMatchObject({ far: 2, where: 'table' })
    expect(codeOf(when(passed, PASS))).toBe('already-so')
    expect(codeOf(when(onward(passed, TICK), { ...PASS, far: 3 }))).toBe('already-so')
  })

  it('[PP20] is late from the moment at which it should have been over', () => {
    const told = preparedService()
    const to = isOf(told, 'make.slaw')?.task.to ?? Number.NaN
    expect(isOf(told, 'make.slaw', to)?.is).toBe('now')
    expect(isOf(told, 'make.slaw', to + 60_000)).toMatchObject({ is: 'late', lateBy: 60_000 })
    expect(isOf(onward(told, TICK), 'make.slaw', to + 60_000)?.is).toBe('done')
  })

  it('[PP14] starting to cool is the first reading at 135 °F or above, due as it is cooked', () => {
    const inIce = { component: 'beans', loads: 1, portions: 12, ahead: true as const }
    const reading = { scale: 'F' as const, probe: '1', where: 'middle-stirred' as const }
    const planned = preparedService(
      { type: 'planPrep', foods: [{ ...inIce, coolsIn: { first: 30, total: 80 } }] },
      { type: 'startBatch', component: 'beans', batch: 'pot', loads: 1 },
    )
    const tick: Given = { type: 'tickTask', task: 'cool.beans', initials: 'KT' }
    expect(codeOf(when(planned, tick))).toBe('reading-no-tick')
    expect(isOf(planned, 'cool.beans')?.readBy).toBeNull()
    const cooked = onward(planned, {
      ...{ type: 'recordCooking', batch: 'pot', initials: 'AB' },
      reading: { ...reading, tenths: 1_700, heldSeconds: 20 },
    })
    const since = running(cooked).batches.pot?.cooking.at(-1)?.at
    expect(isOf(cooked, 'cool.beans')).toMatchObject({ readBy: since, isReading: true })
    expect(isOf(cooked, 'cool.beans')?.is).not.toBe('done')
    const cool = (tenths: number): Given => ({
      ...{ type: 'recordCooling', batch: 'pot', initials: 'AB', reading: { ...reading, tenths } },
      presentUntil: running(cooked).at + 7 * 3_600_000,
    })
    const finished = onward(cooked, {
      ...{ type: 'finishBatch', batch: 'pot', amount: 1_000_000, loads: 1 },
    })
    expect(isOf(onward(finished, cool(1_400)), 'cool.beans')?.is).toBe('done')
    expect(isOf(onward(finished, cool(1_400)), 'read-first.beans')?.is).not.toBe('done')
    expect(isOf(onward(finished, cool(1_200)), 'cool.beans')?.is).not.toBe('done')
  })

  it('[PP21] are ticked and passed on by every tablet of the crew, and planned by adults and the lead', () => {
    for (const role of ['counter', 'assembly', 'hand-over', 'lead', 'in-charge'] as const) {
      expect([role, mayDo(role, 'tickTask'), mayDo(role, 'passTask')]).toEqual([role, true, true])
      const leads = role === 'lead' || role === 'in-charge'
      expect([role, mayDo(role, 'planPrep')]).toEqual([role, leads])
    }
    expect(mayDo('pick-up', 'tickTask')).toBe(false)
  })

  it('[PP11] an opening keeps how it was prepared', () => {
    const told = onward(preparedService(TICK), {
      type: 'open',
      station: 'alder-hall',
      kind: 'real',
    })
    expect(running(told)).toMatchObject({
      stage: 'open',
      prep: { ticked: { 'make.slaw': expect.any(Number) } },
    })
  })
})
