import { describe, expect, it } from 'vitest'
import { backByOf, goesBack, outOfCold, WORKED_ON_MS } from '#lib/rooms/prep/facts/out-of-cold.ts'
import { prepList } from '#lib/rooms/prep/views/prep-list.ts'
import { prepEn } from '#lib/rooms/prep/words/prep-en.ts'
import { tasksEn } from '#lib/rooms/prep/words/tasks-en.ts'
import { MODEL_CODE } from '#lib/safety/limits.ts'
import { PASSED_WHERE } from '#lib/service/events/prep-event.ts'
import { PASS, preparedService, TICK } from '#tests/support/prep-stories.ts'
import { demoStation, type Given, onward, running, type Told } from '#tests/support/service.ts'

const MINUTE = 60_000
const of = (component: string, kind: 'measure' | 'make' | 'cook' | 'sanitize' = 'measure') => ({
  ...{ component, kind },
})

const slaw = (told: Told, now = running(told).at) =>
  prepList(running(told), now).find(({ task }) => task.id === 'make.slaw')

describe('food that is weighed out', () => {
  it('[PP38] cold or cooked, is told to go back cold, covered and labelled; dry food isn’t', () => {
    // FDA Food Code 2022 3-501.16(A)(2).
    expect(goesBack(demoStation, of('tuna'))).toEqual({
      ...{ held: 'cold', limit: MODEL_CODE.coldHolding },
    })
    expect(goesBack(demoStation, of('chicken'))?.held).toBe('hot')
    expect(goesBack(demoStation, of('pita'))).toBeNull()
    expect(goesBack(demoStation, of('tuna', 'make'))).toBeNull()
    const said = tasksEn.goesBack({ held: 'cold', limit: MODEL_CODE.coldHolding }, 'F')
    for (const word of [/cooler/, /[Cc]over/, /label/, /41 °F or below/]) expect(said).toMatch(word)
  })

  it('[PP38] is told so in its task, until that is done', () => {
    const measure = prepList(running(preparedService()), running(preparedService()).at).filter(
      ({ task }) => task.kind === 'measure',
    )
    expect(measure.length).toBeGreaterThan(0)
    expect(measure.every(({ back }) => back?.limit === MODEL_CODE.coldHolding)).toBe(true)
  })
})

describe('cold food that is passed on half done', () => {
  const at = (told: Told) => running(told).prep?.passed['make.slaw']?.at ?? Number.NaN

  it('[PP34] on the table says since when it is out, and by when it is back', () => {
    const told = preparedService(PASS)
    const since = at(told)
    expect(slaw(told, since + MINUTE)?.out).toEqual({
      ...{ since, backBy: since + WORKED_ON_MS, throwOutAt: since + 4 * 60 * MINUTE },
      ...{ is: 'in-time', limit: MODEL_CODE.coldHolding },
    })
    const is = (ms: number) => slaw(told, since + ms)?.out?.is
    expect(is(WORKED_ON_MS)).toBe('in-time')
    expect(is(WORKED_ON_MS + 1)).toBe('too-long')
    expect(is(4 * 60 * MINUTE - 1)).toBe('too-long')
    expect(is(4 * 60 * MINUTE)).toBe('over')
    expect(slaw(onward(told, TICK), since + 5 * 60 * MINUTE)?.out).toBeNull()
  })

  it('[PP34] is out since the first table, whoever passes it on again, and not once it was cold', () => {
    const first = preparedService(PASS)
    const line: Given = { ...PASS, far: 3, where: 'line' }
    const again = onward(first, line, { ...PASS, far: 3, where: 'table' })
    expect(at(again)).toBeGreaterThan(at(first))
    expect(slaw(again)?.out?.since).toBe(at(first))
    const cold = onward(again, { ...PASS, far: 3, where: 'cooler' })
    expect(slaw(cold)?.out).toBeNull()
    const out = onward(cold, { ...PASS, far: 2, where: 'table' })
    expect(slaw(out)?.out?.since).toBe(at(out))
  })

  it('[PP34] runs no clock in the cooler or on the heat, of dry food, or of no food', () => {
    const runs = PASSED_WHERE.filter((where) =>
      backByOf(demoStation, of('slaw', 'make'), { where, before: null }, 0),
    )
    expect(runs).toEqual(['table', 'line'])
    // From table to line it is out since the table.
    const before = { far: 1, where: 'table', at: 5 * MINUTE } as const
    const again = { where: 'line', before } as const
    expect(backByOf(demoStation, of('slaw', 'make'), again, 9 * MINUTE)).toBe(
      5 * MINUTE + WORKED_ON_MS,
    )
    const passed = { far: 2, where: 'table', at: 0 } as const
    expect(outOfCold(demoStation, of('pita', 'make'), passed, 1)).toBeNull()
    expect(outOfCold(demoStation, of('chicken', 'sanitize'), passed, 1)).toBeNull()
    expect(outOfCold(demoStation, of('chicken', 'cook'), passed, 1)).not.toBeNull()
  })

  it('[PP34] is never said to be safe; who decides is', () => {
    const base = { since: 0, backBy: 1, throwOutAt: 2, limit: MODEL_CODE.coldHolding }
    const clock = (moment: number) => `t${moment}`
    const said = (is: 'in-time' | 'too-long' | 'over') => prepEn.out({ ...base, is }, clock, 'F')
    expect(said('in-time')).toContain('by t1')
    for (const is of ['too-long', 'over'] as const) expect(said(is)).toContain('person in charge')
    expect(said('too-long')).toContain('At t2')
  })
})
