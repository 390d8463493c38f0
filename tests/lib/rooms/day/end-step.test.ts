import { describe, expect, it } from 'vitest'
import { hotSum } from '#lib/rooms/day/facts/ends/hot-food.ts'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { barredTogether, drawnAt, endStepAt } from '#lib/rooms/day/views/end-step.ts'
import { endFormWords } from '#lib/rooms/day/words/ends-en.ts'
import { pansOf } from '#lib/station/find.ts'
import { cooledBefore, minute } from '#tests/support/food.ts'
import {
  backupReady,
  demoStation,
  given,
  onward,
  running,
  type Told,
} from '#tests/support/service.ts'

const stepOf = (told: Told, what: 'pan' | 'backup' | 'batch', id: string) => {
  const step = endStepAt(running(told), { what, id }, minute(1))
  if (!step) throw new Error(`nothing is asked of ${id}`)
  return step
}

describe('what food comes to, as it is asked', () => {
  it('[EN16] in line order: each pan, then its back-up pans and batches, and on to the next', () => {
    const told = given(backupReady('slaw', 4))
    const all = toAnswer(running(told))
    const pans = all.filter(({ what }) => what === 'pan').map(({ id }) => id)
    expect(pans).toEqual(pansOf(demoStation).map(({ id }) => id))
    const slaw = all.filter(({ component }) => component === 'slaw').map(({ what }) => what)
    expect(slaw).toEqual(['pan', 'backup', 'batch'])
    expect(stepOf(told, 'pan', 'pan-slaw').next).toEqual({ what: 'backup', id: 'back-up-slaw' })
    const last = all.at(-1)
    expect(last && stepOf(told, last.what, last.id).next).toEqual({ what: 'pan', id: 'pan-pita' })
    const ended = onward(told, {
      type: 'endFood',
      what: 'pan',
      id: 'pan-slaw',
      end: 'cold',
      how: 'eye',
      initials: 'KT',
    })
    expect(endStepAt(running(ended), { what: 'pan', id: 'pan-slaw' }, minute(1))).toBeNull()
  })

  it('[EN12] what goes at once is counted before it is signed for: each place that goes, and no other', () => {
    const told = given(backupReady('rice', 4))
    const before = running(told)
    const sum = hotSum(before, minute(1))
    const after = running(onward(told, { type: 'throwOutHot', initials: 'KT' }))
    const left = new Set(toAnswer(after).map(({ what, id }) => `${what} ${id}`))
    const went = toAnswer(before).filter(({ what, id }) => !left.has(`${what} ${id}`))
    const of = (kind: string) => went.filter(({ what }) => what === kind).length
    expect(sum.places).toEqual({ pan: of('pan'), backup: of('backup'), batch: of('batch') })
    expect(sum.places).toMatchObject({ pan: 4, backup: 1 })
    expect(sum.components).toEqual(['rice', 'chicken', 'beans', 'peppers'])
    const each = (id: string) => before.portions[id]?.amount ?? 1
    expect(sum.portions).toBe(
      went.reduce((all, one) => all + Math.round(one.amount / each(one.component)), 0),
    )
    expect(hotSum(after, minute(1))).toMatchObject({ portions: 0, components: [] })
    expect(
      endFormWords.allHotIs({ ...sum, places: { pan: 4, backup: 4, batch: 0 }, portions: 204 }),
    ).toBe('4 pans and 4 back-ups, 204 portions')
  })

  it('[EN16] the pan and its back-up are told apart, and what is in the other is said', () => {
    const told = given(backupReady('rice', 4))
    const step = stepOf(told, 'pan', 'pan-rice')
    const other = stepOf(told, 'backup', 'back-up-rice')
    expect(step.elsewhere.find(({ what }) => what === 'backup')?.amount).toBe(other.place.amount)
    expect(other.elsewhere.find(({ what }) => what === 'pan')?.amount).toBe(step.place.amount)
    expect(endFormWords.title('Brown rice', 'pan')).not.toBe(
      endFormWords.title('Brown rice', 'backup'),
    )
    expect(endFormWords.left(24, '9 lb')).toBe('24 portions here, 9 lb')
    const others = endFormWords.elsewhere([{ what: 'backup', portions: 24 }])
    expect(endFormWords.sums(others, 48, 0, 0)).toBe(
      '24 in the back-up · in all loaded 48 · used 0',
    )
  })

  it('[EN16] its lawful ends only, and of the others why they aren’t there, said once', () => {
    const step = stepOf(given(), 'pan', 'pan-rice')
    expect(step.heldBy).toBe('hot')
    expect(step.offered.map(({ end }) => end)).toEqual(['cool', 'throw-out'])
    const said = barredTogether(step.barred).map(({ ends, why, paragraph }) =>
      endFormWords.because(ends, why, paragraph),
    )
    expect(said).toEqual([
      'Set it aside cold or Freeze it: it isn’t cold yet (3-501.14(A)).',
      'Set it aside dry: it is held hot or cold (3-501.16(A)).',
      'The crew eats it: your house settings don’t allow it (house rule).',
    ])
  })

  it('[EN16] what was read of it, oldest first, drawn between freezing and boiling', () => {
    const told = given(...cooledBefore('old-rice', 'rice'))
    const { read } = stepOf(told, 'batch', 'old-rice')
    expect(read.map(({ of }) => of)).toEqual(['cooked', 'cooling', 'cooling', 'cooling'])
    const moments = read.map(({ reading }) => reading.at)
    expect([...moments].sort((one, other) => one - other)).toEqual(moments)
    expect(drawnAt({ tenths: 320, scale: 'F' })).toBe(0)
    expect(drawnAt({ tenths: 1000, scale: 'C' })).toBe(1)
    expect(drawnAt({ tenths: 1220, scale: 'F' })).toBeCloseTo(0.5)
  })
})
