import { describe, expect, it } from 'vitest'
import type { RunningState } from '#lib/service/state.ts'
import { labelledBackups } from '#lib/spine/consequences/labelled-backups.ts'
import { asked, stockWith } from '#tests/support/happened.ts'
import { ready, running } from '#tests/support/service.ts'

const state = running(ready())
const mixing = (
  so: RunningState,
  pans: readonly string[],
  ingredient = 'cabbage',
): RunningState => ({
  ...so,
  mixing: { ...so.mixing, [ingredient]: { pans, before: ['cabbage-before'] } },
})
const gone = { type: 'backupSet', component: 'slaw', ready: false, backup: 'back-up-slaw' }

describe('a back-up pan of the product before', () => {
  it('[S91] no longer stands ready once any pan holds that product', () => {
    expect(asked(labelledBackups, state, mixing(state, ['pan-slaw']))).toEqual([gone])
    expect(asked(labelledBackups, state, mixing(state, ['back-up-slaw']))).toEqual([gone])
    const known = mixing(state, ['pan-slaw'])
    expect(asked(labelledBackups, known, mixing(known, ['pan-slaw', 'back-up-slaw']))).toEqual([
      gone,
    ])
  })

  it('[S91] is said once', () => {
    const known = mixing(state, ['pan-slaw', 'back-up-slaw'])
    expect(asked(labelledBackups, known, mixing(known, ['pan-slaw']))).toEqual([])
    expect(asked(labelledBackups, known, mixing(known, ['pan-rice'], 'brown-rice'))).toMatchObject([
      { component: 'rice' },
    ])
  })

  it('[S91] stands ready where other food took its label along', () => {
    const load = (state.pans['pan-slaw']?.load ?? 0) + 1
    const moved = stockWith(mixing(state, ['pan-slaw']), 'pan-slaw', { load })
    expect(asked(labelledBackups, state, moved)).toEqual([])
    expect(asked(labelledBackups, state, mixing(moved, ['pan-slaw', 'pan-rice']))).toEqual([gone])
    expect(asked(labelledBackups, state, mixing(state, ['in-no-place']))).toEqual([gone])
  })

  it('[S91] that was only said to stand ready doesn’t either; none is, where none was', () => {
    const used = stockWith(state, 'back-up-slaw', { amount: 0 }, 'backup')
    // A finish that is taken back would bring its food to light.
    expect(asked(labelledBackups, used, mixing(used, ['pan-slaw']))).toEqual([gone])
    const empty = stockWith(state, 'back-up-slaw', { amount: 0, full: 0 }, 'backup')
    const { backup: _, ...said } = gone
    expect(asked(labelledBackups, empty, mixing(empty, ['pan-slaw']))).toEqual([said])
    const { slaw: __, ...backups } = empty.backups
    const none = { ...empty, backups }
    expect(asked(labelledBackups, none, mixing(none, ['pan-slaw']))).toEqual([])
  })
})
