import { describe, expect, it } from 'vitest'
import { isCovered } from '#lib/needs/covered.ts'
import { judgeComponent } from '#lib/needs/judge.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import { kitchen, need, touching } from '#tests/support/kitchens.ts'

const WORST_FIRST = ['contains', 'unknown', 'may-contain', 'not-listed', 'free'] as const

const contacts = [touching('beside', 'leaf', 'cheese', 'sauce')]

const findingsAt = (
  said: Readonly<Record<string, Declaration>>,
  over: Parameters<typeof kitchen>[0] = {},
) => {
  const labels = Object.entries(said).map(([id, milk]) => [id, { milk }] as const)
  const plan = { said: Object.fromEntries(labels), contacts, ...over }
  return judgeComponent(kitchen(plan), 'leaf', [need('milk')]).findings
}

const read = (...asked: Parameters<typeof findingsAt>) => {
  const [told] = findingsAt(...asked)
  if (!told) throw new Error('nothing to accept')
  return told
}

const isStillCovered = (now: ReturnType<typeof findingsAt>, told: ReturnType<typeof read>) =>
  now.length > 0 && now.every((one) => isCovered(one, told))

describe('an acceptance', () => {
  it('[N26] says how bad each thing was when it was read', () => {
    expect(read({ cheese: 'contains', sauce: 'may-contain' }).states).toEqual({
      leaf: 'free',
      cheese: 'contains',
      sauce: 'may-contain',
    })
    const soiled = [
      { component: 'leaf', by: 'cheese' },
      { component: 'leaf', by: 'heart' },
    ]
    expect(read({ cheese: 'unknown', sauce: 'may-contain' }, { soiled })).toMatchObject({
      why: 'soiled',
      states: { leaf: 'free', cheese: 'unknown' },
    })
    // The sauce is free of it itself, and its scoop carries what it touches.
    const bySauce = [{ component: 'leaf', by: 'sauce' }]
    expect(read({ cheese: 'may-contain' }, { soiled: bySauce })).toMatchObject({
      why: 'soiled',
      states: { leaf: 'free', sauce: 'may-contain' },
    })
  })

  it.each(['contains', 'unknown', 'may-contain'] as const)(
    '[N26] of what was %s doesn’t cover what is worse by now',
    (then) => {
      const told = read({ cheese: then })
      for (const now of WORST_FIRST.filter((one) => one !== 'free' && one !== 'not-listed')) {
        const isWorse = WORST_FIRST.indexOf(now) < WORST_FIRST.indexOf(then)
        expect(isStillCovered(findingsAt({ cheese: now }), told), now).toBe(!isWorse)
      }
    },
  )

  it('[N26] counts each that reaches it, and not the worst alone', () => {
    const told = read({ cheese: 'contains', sauce: 'may-contain' })
    expect(isStillCovered(findingsAt({ cheese: 'contains', sauce: 'contains' }), told)).toBe(false)
    expect(isStillCovered(findingsAt({ cheese: 'contains', sauce: 'may-contain' }), told)).toBe(
      true,
    )
    expect(isStillCovered(findingsAt({ cheese: 'contains' }), told)).toBe(true)
  })

  it('[N26] of contact alone is void once the label of its own warns', () => {
    const told = read({ cheese: 'contains' })
    const [, beside] = findingsAt({ cheese: 'contains', leaf: 'may-contain' })
    expect(beside?.why).toBe('contact')
    expect(beside && isCovered(beside, told)).toBe(false)
  })

  it('[N26] of before, which doesn’t say how bad things were, covers as it did', () => {
    const { states: _, ...old } = read({ cheese: 'may-contain' })
    const now = findingsAt({ cheese: 'contains' })
    expect(now.every((one) => isCovered(one, old))).toBe(true)
    expect(now.every((one) => isCovered(one, { ...old, reached: [] }))).toBe(false)
  })

  it('[N36] covers nothing that doesn’t say how bad it is now', () => {
    const told = read({ cheese: 'may-contain' })
    const { states: _, ...mute } = told
    expect(isCovered(told, told)).toBe(true)
    expect(isCovered(mute, told)).toBe(false)
  })

  it('[N26] covers nothing of what it says nothing of, unless that is free', () => {
    const { states: _, ...told } = read({ cheese: 'contains' })
    const covers = (word: Declaration) =>
      isCovered(
        { ...told, states: { leaf: 'free', sauce: word } },
        { ...told, states: { leaf: 'free' } },
      )
    expect(covers('free')).toBe(true)
    expect(covers('may-contain')).toBe(false)
  })

  it('[N25] covers nothing where only some of what reaches it was told', () => {
    const { states: _, ...told } = read({ cheese: 'contains' })
    expect(isCovered({ ...told, reached: ['cheese', 'sauce'] }, told)).toBe(false)
    expect(isCovered(told, { ...told, reached: ['cheese', 'sauce'] })).toBe(true)
  })
})
