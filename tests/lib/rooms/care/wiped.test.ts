import { describe, expect, it } from 'vitest'
import { withWiped } from '#lib/rooms/care/folds/wiped.ts'
import type { RunningState, Wiped } from '#lib/service/state.ts'
import { openedService, running } from '#tests/support/service.ts'

const clean = running(openedService())

const soiled = (by: readonly string[], loadedIn: number): RunningState => {
  const pan = clean.pans['pan-rice']
  if (!pan) throw new Error('the demo station has no pan of rice')
  return { ...clean, pans: { ...clean.pans, 'pan-rice': { ...pan, soiledBy: by, loadedIn } } }
}

const lent = (sinceIn: number): RunningState => ({
  ...clean,
  lent: { 'rice/beans': { component: 'rice', by: 'beans', pans: [], since: 1, sinceIn } },
})

const ofRice = (by: string, from: number, until: number): Wiped => ({
  where: 'line',
  component: 'rice',
  by,
  from,
  until,
})

describe('what was in a pan until it was changed', () => {
  it('[S174] is kept with where it may have begun and where it was over', () => {
    expect(withWiped(soiled(['cheddar'], 7), soiled([], 9), 9).wiped).toEqual([
      ofRice('cheddar', 7, 9),
    ])
    expect(withWiped(soiled(['cheddar'], 7), soiled(['cheddar', 'beans'], 7), 9).wiped).toBe(
      undefined,
    )
  })

  it('[S174] is kept beside all that was before', () => {
    const earlier = [ofRice('almonds', 2, 5)]
    const before = { ...soiled(['cheddar'], 7), wiped: earlier }
    expect(withWiped(before, { ...soiled([], 9), wiped: earlier }, 9).wiped).toEqual([
      ...earlier,
      ofRice('cheddar', 7, 9),
    ])
  })

  it('[S174] of a lent scoop, once that is over', () => {
    expect(withWiped(lent(4), clean, 9).wiped).toEqual([
      { where: 'lent', component: 'rice', by: 'beans', from: 4, until: 9 },
    ])
    expect(withWiped(lent(4), { ...lent(4), lent: { ...lent(4).lent } }, 9).wiped).toBe(undefined)
  })
})
