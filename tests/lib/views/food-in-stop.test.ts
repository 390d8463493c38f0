import { describe, expect, it } from 'vitest'
import { stoppedBuilds } from '#lib/views/assembly-stop.ts'
import { changePan, onward, running, type Told } from '#tests/support/service.ts'
import { stopped } from '#tests/support/stopped.ts'

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

  it('[AS21] say why all of it is thrown out', () => {
    expect(stopOf(stopped.apart).whole).toBe('wrong-scoop')
  })
})
