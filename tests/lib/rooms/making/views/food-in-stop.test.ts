import { describe, expect, it } from 'vitest'
import { stoppedBuilds } from '#lib/rooms/making/views/assembly-stop.ts'
import {
  accountOf,
  at,
  changePan,
  type Given,
  given,
  onward,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'
import { onTheSide, stopped } from '#tests/support/stopped.ts'

const stopOf = (told: Told) => {
  const [one] = stoppedBuilds(running(told))
  if (!one) throw new Error('nothing is stopped')
  return one
}

describe('the pans of a stopped build', () => {
  it('[AS20] are those that it takes from, and say what goes in a cup', () => {
    const { pans, whole } = stopOf(stopped.onTheSide)
    expect(whole).toBe(null)
    expect(Object.keys(pans)).toEqual([
      'pan-pita',
      'pan-chicken',
      'pan-peppers',
      'pan-slaw',
      'pan-cheddar',
      'pan-yogurt-sauce',
    ])
    expect(pans['pan-slaw']).toEqual({ component: 'slaw', isCup: false, staysOut: false })
    expect(pans['pan-yogurt-sauce']).toMatchObject({ isCup: true, staysOut: false })
  })

  it('[AS20] say which cup may not be put back', () => {
    const changed = onward(stopped.onTheSide, changePan('pan-yogurt-sauce', 40))
    expect(stopOf(changed).pans['pan-yogurt-sauce']).toMatchObject({ isCup: true, staysOut: true })
    expect(stopOf(changed).pans['pan-slaw']).toMatchObject({ staysOut: false })
  })

  it('[AS22] are none where it isn’t being made: nothing is asked of food in it', () => {
    const of = (code: string): Given => ({
      type: 'tellNeed',
      ...at('1A'),
      asked: 'needs',
      needs: [{ code, handling: 'keep-apart', reason: null }],
    })
    const held = given(send(onTheSide), of('milk'))
    expect(stopOf(held)).toMatchObject({ state: 'waiting', inIt: 'nothing', pans: {}, whole: null })
    // Nor once it was begun, and nothing or all of it was thrown out.
    const start = { type: 'start', ...at('1A'), read: true } as const
    for (const foodInIt of [true, false]) {
      const begun = given(send(onTheSide), start, of('milk'))
      expect(stopOf(begun)).toMatchObject({ state: 'making', inIt: 'asked' })
      expect(Object.keys(stopOf(begun).pans)).toContain('pan-slaw')
      const answered = onward(begun, { type: 'acknowledge', ...at('1A'), foodInIt })
      const again = onward(answered, of('egg'))
      expect(stopOf(again)).toMatchObject({ state: 'waiting', inIt: 'nothing', pans: {} })
    }
    // The answer that is left is taken, and wastes nothing.
    const seen = onward(held, { type: 'acknowledge', ...at('1A'), foodInIt: false })
    expect(stoppedBuilds(running(seen))).toEqual([])
    expect(accountOf(seen, 'slaw').wasted).toBe(0)
  })

  it('[AS22] a made one is all in it', () => {
    const made = given(
      send(onTheSide),
      { type: 'start', ...at('1A'), read: true },
      { type: 'finish', ...at('1A') },
      { type: 'tellNeed', ...at('1A'), asked: 'not-sure', needs: [] },
    )
    expect(stopOf(made)).toMatchObject({ state: 'made', inIt: 'all' })
  })

  it('[AS21] say why all of it is thrown out', () => {
    expect(stopOf(stopped.apart).whole).toBe('wrong-scoop')
  })
})
