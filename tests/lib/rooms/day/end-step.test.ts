import { describe, expect, it } from 'vitest'
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
