import { describe, expect, it } from 'vitest'
import { shortBuilds, withdraw } from '#lib/rooms/pans/facts/short.ts'
import { EMPTY_STOCK } from '#lib/service/food-state.ts'
import {
  at,
  choose,
  type Given,
  given,
  ofPortions,
  onward,
  running,
  send,
} from '#tests/support/service.ts'
import { stationWithSpares } from '#tests/support/spare-station.ts'

const correct = (component: string, count: number): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: ofPortions(component, count),
})
const tuna = choose('harbor-tuna')

describe('the builds that are short', () => {
  const three = given(send(tuna), send(tuna, tuna))

  it('[K21] are none while the pans hold what is on tickets', () => {
    expect(shortBuilds(running(onward(three, correct('tuna', 3)))).size).toBe(0)
  })

  it('[K21] are the newest, each with the component that it lacks', () => {
    const short = shortBuilds(running(onward(three, correct('tuna', 2))))
    expect([...short]).toEqual([['2B', 'tuna']])
    expect([
      ...shortBuilds(running(onward(three, correct('tuna', 0), correct('slaw', 9)))).keys(),
    ]).toEqual(['1A', '2A', '2B'])
  })

  it('[K22] are not those in the making, as long as there is enough for them', () => {
    const told = onward(three, { type: 'start', ...at('2B') }, correct('tuna', 1))
    expect([...shortBuilds(running(told)).keys()]).toEqual(['1A', '2A'])
  })

  it('[K22] may be one in the making, and one that is stopped wants what it becomes', () => {
    const making = onward(three, { type: 'start', ...at('1A') })
    expect([...shortBuilds(running(onward(making, correct('tuna', 0)))).keys()]).toContain('1A')
    const stopped = onward(
      making,
      { type: 'change', readBack: true, ...at('1A'), to: choose('harbor-tuna', { tuna: 4 }) },
      correct('tuna', 3),
    )
    expect([...shortBuilds(running(stopped))]).toEqual([['1A', 'tuna']])
  })

  it('[K21] skip one that wants much for one that wants little', () => {
    const told = given(send(choose('harbor-tuna', { tuna: 4 })), send(tuna), correct('tuna', 2))
    expect([...shortBuilds(running(told)).keys()]).toEqual(['1A'])
  })
})

describe('what a build takes', () => {
  it('[K23] comes out of the pans of its component in the order of the line', () => {
    const state = {
      ...running(onward(given(), correct('tuna', 1))),
      station: stationWithSpares,
    }
    const pans = {
      ...state.pans,
      'pan-tuna-spare': {
        ...EMPTY_STOCK,
        amount: ofPortions('tuna', 9),
        load: 4,
        counted: 2,
        food: state.pans['pan-tuna']?.food ?? null,
      },
    }
    expect(withdraw({ ...state, pans }, { tuna: ofPortions('tuna', 3) })).toEqual({
      took: [
        {
          pan: 'pan-tuna',
          load: 1,
          counted: 1,
          amount: ofPortions('tuna', 1),
          batches: ['opening-tuna'],
        },
        { pan: 'pan-tuna-spare', load: 4, counted: 2, amount: ofPortions('tuna', 2) },
      ],
      uncounted: {},
    })
  })

  it('[K24] beyond what the pans were counted to hold is uncounted, and empty pans give nothing', () => {
    const state = running(onward(given(), correct('tuna', 0)))
    expect(withdraw(state, { tuna: 5, slaw: 7 })).toEqual({
      took: [{ pan: 'pan-slaw', load: 1, counted: 0, amount: 7, batches: ['opening-slaw'] }],
      uncounted: { tuna: 5 },
    })
  })
})
