import { describe, expect, it } from 'vitest'
import { total } from '#lib/estimate/service-counts.ts'
import {
  at,
  choice,
  codeOf,
  deciding,
  eventsOf,
  give,
  order,
  panFor,
  type Stocked,
  stocked,
} from '#tests/support/stock.ts'

const GONE = { placement: 'no', portions: 0, because: 'gone' } as const
const TWICE = { placement: 'in', portions: 2, because: 'asked' } as const

const taken = ({ state }: Stocked, component: string) => ({
  takings: total(state.counts.takings[component]),
  portions: total(state.counts.portions[component]),
})
const builds = ({ state }: Stocked): number => total(state.counts.builds)

describe('the demand of a service', () => {
  it('[Z45] is what was ordered, in its five minutes, with what was gone', () => {
    const told = give(
      stocked(),
      12,
      order(choice('garden-chicken', { slaw: GONE, cheddar: TWICE })),
    )
    expect(told.state.counts.builds).toEqual([0, 0, 1])
    expect(taken(told, 'chicken')).toEqual({ takings: 1, portions: 1 })
    expect(taken(told, 'cheddar')).toEqual({ takings: 1, portions: 2 })
    expect(taken(told, 'slaw')).toEqual({ takings: 1, portions: 1 })
    expect(told.state.counts.items['garden-chicken']).toEqual([0, 0, 1])
  })

  it('[Z45] is counted anew where a build changes, at the time of its order', () => {
    const sent = give(stocked(), 1, order(choice('garden-chicken')))
    const told = give(sent, 11, {
      type: 'change',
      ...at('1A'),
      to: choice('harbor-tuna'),
      readBack: true,
    })
    expect(taken(told, 'chicken').takings).toBe(0)
    expect(taken(told, 'tuna').takings).toBe(1)
    expect(told.state.counts.builds).toEqual([1])
  })

  it('[Z45] changes when a build in the making is stopped, not again when that is answered', () => {
    const making = give(stocked(), 1, order(choice('garden-chicken')), {
      type: 'start',
      ...at('1A'),
    })
    const stopped = give(making, 2, {
      type: 'change',
      ...at('1A'),
      to: choice('harbor-tuna'),
      readBack: true,
    })
    expect(taken(stopped, 'tuna').takings).toBe(1)
    expect(taken(stopped, 'chicken').takings).toBe(0)
    const told = give(stopped, 3, { type: 'acknowledge', ...at('1A'), foodInIt: false })
    expect(taken(told, 'tuna').takings).toBe(1)
    expect(builds(told)).toBe(1)
  })

  it('[Z45] loses a build that is cancelled, unless there was none for it', () => {
    const sent = give(stocked(), 1, order(choice('garden-chicken')))
    expect(builds(give(sent, 2, { type: 'cancel', ...at('1A') }))).toBe(0)
    const short = give(sent, 2, { type: 'correct', pan: panFor('chicken'), amount: 0 })
    expect(builds(give(short, 3, { type: 'cancel', ...at('1A') }))).toBe(1)
  })

  it('[Z45] stays where a build is made again', () => {
    const told = give(
      stocked(),
      1,
      order(choice('garden-chicken')),
      { type: 'start', ...at('1A') },
      { type: 'finish', ...at('1A') },
      { type: 'remake', ...at('1A') },
    )
    expect(builds(told)).toBe(1)
    expect(taken(told, 'chicken').takings).toBe(1)
  })

  it('[Z46] has what was wanted and gone, without a build', () => {
    const told = give(stocked({ tuna: 0.001 }), 4, { type: 'wantedGone', item: 'harbor-tuna' })
    expect(taken(told, 'tuna')).toEqual({ takings: 1, portions: 1 })
    expect(total(told.state.counts.taps?.tuna)).toBe(1)
    expect(builds(told)).toBe(0)
    const one = give(stocked(), 4, { type: 'wantedGone', component: 'slaw' })
    expect(taken(one, 'slaw').takings).toBe(1)
    expect(codeOf(deciding(one, { type: 'wantedGone', component: 'kale' }))).toBe(
      'unknown component',
    )
    expect(codeOf(deciding(one, { type: 'wantedGone', item: 'kale-pie' }))).toBe('unknown item')
    expect(codeOf(deciding(one, { type: 'wantedGone' }))).toBe('unknown item')
  })

  it('[Z46] of an item without its bases counts the usual base', () => {
    const none = give(
      stocked(),
      4,
      { type: 'stopSelling', what: 'component', id: 'rice' },
      { type: 'stopSelling', what: 'component', id: 'pita' },
    )
    const [event] = eventsOf(deciding(none, { type: 'wantedGone', item: 'garden-chicken' }))
    const usual = none.state.station.items.find(({ id }) => id === 'garden-chicken')?.base?.usual
    expect(event).toMatchObject({ components: [usual] })
  })

  it('[Z28] has the time that each build took', () => {
    const started = give(stocked(), 1, order(choice('garden-chicken')), {
      type: 'start',
      ...at('1A'),
    })
    const told = give(started, 2.5, { type: 'finish', ...at('1A') })
    expect(told.state.buildTimes).toEqual({ count: 1, sum: 90, squares: 8_100 })
  })
})
