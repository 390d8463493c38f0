/** What food for a build came from, and what its guest had, before the kitchen changed. */

import { describe, expect, it } from 'vitest'
import { labelOf } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import {
  at,
  buildIn,
  changePan,
  choose,
  codeOf,
  demoStation,
  type Given,
  needs,
  ofPortions,
  onward,
  ready,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

/** Chicken and slaw on rice, which all have protected back-up pans. */
const without = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no', peppers: 'no' } as const
const apart = (code: 'milk' | 'peanut') =>
  choose('garden-chicken', without, {
    base: 'rice',
    ...needs({ code, handling: 'keep-apart', reason: 'allergy' }),
  })
const steps = (...types: ('start' | 'finish' | 'handOver' | 'remake')[]): readonly Given[] =>
  types.map((type) => ({ type, ...at('1A'), ...(type === 'start' ? { read: true } : {}) }))
const scooped = (by: string): Given => ({ type: 'soilPan', pan: 'pan-chicken', by })
const holdOf = (told: Told) => buildIn(told, '1A').hold?.reason ?? null
const toFind = (told: Told) => Object.keys(running(told).toFind)

const peanutIs = (ingredient: string, peanut: Declaration): Given => {
  const found = demoStation.ingredients.find((one) => one.id === ingredient)
  if (!found) throw new Error(`the demo station has no ${ingredient}`)
  const label = labelOf(found)
  const declarations = { ...label.declarations, peanut }
  return { type: 'changeLabel', ingredient, product: 'same', label: { ...label, declarations } }
}

describe('food that came off the line before its back-up pan was taken from', () => {
  const making = ready(send(apart('milk')), ...steps('start'))

  it('[S171] is held in the making once a foreign scoop was in that pan', () => {
    const told = onward(making, scooped('cheddar'))
    expect(holdOf(told)).toBe('contact')
    expect(codeOf(when(told, { type: 'finish', ...at('1A') }))).toBe('build-held')
  })

  it('[S171] what is only started then comes from the back-up pan, and isn’t held', () => {
    const told = ready(send(apart('milk')), scooped('cheddar'), ...steps('start'))
    expect(holdOf(told)).toBe(null)
    const made = onward(told, ...steps('finish'))
    expect(buildIn(made, '1A').took.map(({ pan }) => pan)).toContain('back-up-chicken')
  })

  it('[S171] a scoop that carries nothing of its guest’s needs holds nothing', () => {
    expect(holdOf(onward(making, scooped('beans')))).toBe(null)
  })
})

describe('what is found of food that a guest has', () => {
  it('[S172] is told anew once what reaches it is declared worse than was answered', () => {
    const told = ready(
      send(apart('peanut')),
      ...steps('start', 'finish', 'handOver'),
      scooped('almonds'),
    )
    expect(toFind(told)).toEqual(['1A'])
    const answered = onward(told, { type: 'acknowledge', ...at('1A'), foodInIt: false })
    expect(toFind(onward(answered, peanutIs('almonds', 'contains')))).toEqual(['1A'])
    expect(toFind(onward(answered, peanutIs('almonds', 'free')))).toEqual([])
  })

  it('[S173] isn’t lifted with the hold of what is made again for them: a person answers', () => {
    // Off the line only: with the back-up pan what is made again wouldn't be held.
    const told = ready(
      { type: 'setBackup', component: 'chicken', ready: false },
      send(apart('milk')),
      ...steps('start', 'finish', 'handOver', 'remake'),
      scooped('cheddar'),
    )
    expect(holdOf(told)).toBe('contact')
    expect(holdOf(onward(told, changePan('pan-chicken', ofPortions('chicken', 10))))).toBe(
      'contact',
    )
    const never = ready(
      { type: 'setBackup', component: 'chicken', ready: false },
      send(apart('milk')),
      scooped('cheddar'),
      changePan('pan-chicken', ofPortions('chicken', 10)),
    )
    expect(holdOf(never)).toBe(null)
  })
})
