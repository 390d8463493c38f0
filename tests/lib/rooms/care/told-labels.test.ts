import { describe, expect, it } from 'vitest'
import type { Label } from '#lib/station/label.ts'
import { labelOf as labelIn } from '#lib/station/label.ts'
import {
  choose,
  codeOf,
  demoStation,
  type Given,
  given,
  needs,
  onward,
  ready,
  refusalOf,
  running,
  send,
  when,
} from '#tests/support/service.ts'

const labelOf = (id: string): Label => {
  const found = demoStation.ingredients.find((one) => one.id === id)
  if (!found) throw new Error(`the demo station has no ${id}`)
  const label = labelIn(found)
  return label
}

const telling = (ingredient: string, over: Partial<Label>): Given => ({
  type: 'changeLabel',
  ingredient,
  product: 'same',
  label: { ...labelOf(ingredient), ...over },
})

const grains = (declarations: Label['declarations'], over: Partial<Label> = {}): Given =>
  telling('brown-rice', {
    declarations: { ...labelOf('brown-rice').declarations, ...declarations },
    ...over,
  })

const refused = (command: Given) => refusalOf(when(given(), command, { by: 'in-charge' }))

describe('a label that is told', () => {
  it('[N32] and says of gluten what can’t be beside a grain is refused whole', () => {
    for (const gluten of ['free', 'may-contain', 'unknown'] as const) {
      expect(refused(grains({ wheat: 'contains', gluten }))).toEqual({
        code: 'label-contradicts',
        ingredient: 'brown-rice',
        problem: { why: 'wheat-is-gluten' },
      })
      for (const grain of ['barley', 'rye'] as const)
        for (const over of [{}, { glutenStatement: true as const }])
          expect(refused(grains({ [grain]: 'contains', gluten }, over))).toMatchObject({
            problem: { why: 'always-gluten', grain },
          })
    }
    const { gluten: _, ...unsaid } = labelOf('brown-rice').declarations
    expect(
      refused(telling('brown-rice', { declarations: { ...unsaid, wheat: 'contains' } })),
    ).toMatchObject({ problem: { why: 'wheat-is-gluten' } })
  })

  it('[N32] [N30] with the statement it is kept with its date, and counts at the counter', () => {
    const coeliac = needs({ code: 'gluten', handling: 'leave-out', reason: 'coeliac' })
    const rice = choose('harbor-tuna', { slaw: 'no' }, { base: 'rice', ...coeliac })
    const stated = grains({ wheat: 'contains' }, { glutenStatement: true })
    const told = onward(ready(), stated)
    const kept = running(told).station.ingredients.find((one) => one.id === 'brown-rice')
    expect(kept).toMatchObject({ glutenStatement: true, readOn: '2026-11-25' })
    const before = codeOf(when(ready(), send(rice)))
    expect(codeOf(when(told, send(rice)))).toBe(before)
    const contained = onward(told, grains({ wheat: 'contains', gluten: 'contains' }))
    expect(codeOf(when(contained, send(rice)))).toBe('contains')
    const again = running(contained).station.ingredients.find((one) => one.id === 'brown-rice')
    expect(again).not.toHaveProperty('glutenStatement')
  })

  it('[N32] with the statement where it explains nothing is refused', () => {
    expect(refused(grains({}, { glutenStatement: true }))).toMatchObject({
      problem: { why: 'statement-alone' },
    })
  })

  it('[M40] with a source that it contradicts is refused', () => {
    const relish = (over: Partial<Label>) => refused(telling('relish', over))
    expect(relish({ sources: { gelatin: ['beef'] } })).toEqual({
      code: 'label-contradicts',
      ingredient: 'relish',
      problem: { why: 'source-of-nothing', trait: 'gelatin' },
    })
    expect(relish({ traits: ['gelatin'], sources: { gelatin: ['plants'] } })).toMatchObject({
      problem: { why: 'no-such-source' },
    })
    expect(relish({ traits: ['gelatin', 'fish'], sources: { gelatin: ['fish'] } })).toMatchObject({
      problem: { why: 'source-not-contained', code: 'fish' },
    })
    expect(relish({ traits: ['gelatin'], sources: { gelatin: ['beef'] } })).toBeNull()
  })

  it('[N33] names what its gelatin comes of to the guest to whom it matters, or doesn’t', () => {
    const pork = needs({ code: 'no-pork', handling: 'leave-out', reason: 'faith' })
    const tuna = choose('harbor-tuna', { slaw: 'no' }, pork)
    const selling = (over: Partial<Label>) =>
      codeOf(when(onward(ready(), telling('relish', { traits: ['gelatin'], ...over })), send(tuna)))
    expect(codeOf(when(ready(), send(tuna)))).toBeNull()
    // The tuna beside it is a fish, and names no gelatin.
    expect(selling({})).toBe('caution')
    expect(selling({ sources: { gelatin: [] } })).toBe('caution')
    expect(selling({ sources: { gelatin: ['beef'] } })).toBeNull()
    expect(selling({ sources: { gelatin: ['pork'] } })).toBe('contains')
  })
})
