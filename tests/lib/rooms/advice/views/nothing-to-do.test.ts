import { describe, expect, test } from 'vitest'
import { tasksOf } from '#lib/rooms/advice/views/do-next.ts'
import { at, read, until } from '#tests/support/food.ts'
import {
  choose,
  type Given,
  given,
  needs,
  at as of,
  onward,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const out = (name: string): Given[] =>
  (['start', 'finish', 'handOver'] as const).map((type) => ({ type, ...of(name) }))

/** 1A was handed over after the chicken was read; then its reading was missed. */
const missed = until(at(given(), 10, send(choose('garden-chicken')), ...out('1A')), 150)

const told = (so: Told, now: number) =>
  tasksOf(running(so), null, now).flatMap((task): readonly object[] => {
    if (task.kind === 'round') return task.round.places.map(({ place }) => place)
    return [task.kind === 'fact' ? task.toDo : task.advice.reason]
  })

/** Whether each list of what was handed over is told, by itself or as the duty at its pan. */
const isTold = (so: Told): boolean => {
  const tasks = told(so, running(so).at)
  return Object.values(running(so).toTell).every(({ id }) =>
    tasks.some((one) => 'id' in one && one.id === id),
  )
}

describe('nothing to do', () => {
  test('[P51] is never said beside a list of what was handed over', () => {
    expect(Object.keys(running(missed).toTell)).toContain('pan/pan-chicken')
    expect(isTold(missed)).toBe(true)
    const emptied = at(missed, 151, { type: 'correct', pan: 'pan-chicken', amount: 0 })
    expect(Object.keys(running(emptied).toTell)).toContain('pan/pan-chicken')
    expect(isTold(emptied)).toBe(true)
    const bad = at(given(), 10, send(choose('garden-chicken')), ...out('1A'))
    const low = at(bad, 30, {
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-chicken',
      ...read(120),
    })
    expect(Object.keys(running(low).toTell)).toContain('pan/pan-chicken')
    expect(isTold(low)).toBe(true)
  })

  test('[P51] nor beside guests to find or a build that is held, also in a rush', () => {
    const egg = needs({ code: 'egg', handling: 'leave-out', reason: null })
    const without = { slaw: 'no', cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' } as const
    const order = send(choose('bean-and-pepper', without, { ...egg, base: 'rice' }))
    const open = onward(given(), order, ...out('1A'), order, {
      type: 'notSameProduct',
      ingredient: 'black-beans',
    })
    expect(told(open, running(open).at).slice(0, 2)).toMatchObject([
      { kind: 'find', builds: ['1A'] },
      { kind: 'hold', builds: ['2A'] },
    ])
  })
})
