import { describe, expect, it } from 'vitest'
import { serviceLabels } from '#lib/paper/labels/label-facts.ts'
import { leftOfBatch } from '#lib/service/batch-loads.ts'
import type { BatchState } from '#lib/service/food-state.ts'
import type { RunningState } from '#lib/service/state.ts'
import { plannedService, RICE } from '#tests/support/plans.ts'
import { onward, running } from '#tests/support/service.ts'

const planned = onward(plannedService(RICE))
const state = running(planned)
const [id] = Object.keys(state.batches)

const marked = (more: Partial<BatchState>): RunningState => {
  const batch = state.batches[id ?? '']
  if (!id || !batch) throw new Error('a batch is there')
  const finished = { loadsDone: 1, finishedAt: state.at, amount: 1_000_000, loaded: 0 }
  return { ...state, batches: { [id]: { ...batch, ...finished, ...more } } }
}
const labelIn = (now: RunningState, label: string) => {
  const found = serviceLabels(now, now.at).find((one) => one.id === label)
  if (!found) throw new Error(`no label ${label}`)
  return found.said
}
const mayContain = (now: RunningState, label: string) =>
  labelIn(now, label).mayContain.map(({ code }) => code)

describe('what a scoop or a probe brought into a batch', () => {
  it.each([
    ['a lot’s scoop', { lot: 'lot-1', soiledBy: ['cheddar'], probedWith: ['cheddar'] }],
    ['a probe', { probedWith: ['cheddar'] }],
  ])(
    '[PR64] %s is on the batch’s label, and on that of the empty pan that it goes into',
    (_, by) => {
      const now = marked(by)
      expect(leftOfBatch(Object.values(now.batches)[0] as BatchState)).toBeGreaterThan(0)
      expect(mayContain(marked({}), `batch/${id}`)).not.toContain('milk')
      expect(mayContain(now, `batch/${id}`)).toContain('milk')
      expect(labelIn(now, `batch/${id}`).soiledBy).toEqual(['Cheddar'])
      expect(mayContain(marked({}), 'pan/pan-rice')).not.toContain('milk')
      expect(mayContain(now, 'pan/pan-rice')).toContain('milk')
      // Nothing of it is on another food's.
      expect(labelIn(now, 'pan/pan-beans').soiledBy).toEqual([])
    },
  )
})
