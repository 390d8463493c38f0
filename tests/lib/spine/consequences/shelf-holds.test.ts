import { describe, expect, it } from 'vitest'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { Shelf } from '#lib/service/food-state.ts'
import { SHELF } from '#lib/service/shelf.ts'
import type { RunningState } from '#lib/service/state.ts'
import { shelfGone, shelfMade } from '#lib/spine/consequences/shelf-holds.ts'
import { asked, buildWith, readAt, toThrowOut } from '#tests/support/happened.ts'
import {
  buildIn,
  choose,
  type Given,
  given,
  at as of,
  running,
  send,
} from '#tests/support/service.ts'

const on = (name: string, type: 'start' | 'finish'): Given => ({ type, ...of(name) })
const told = given(
  send(choose('garden-chicken')),
  send(choose('garden-chicken')),
  on('1A', 'start'),
  on('1A', 'finish'),
)
const madeAt = buildIn(told, '1A').since

const withShelf = (state: RunningState, offSale: Shelf['offSale']): RunningState => ({
  ...state,
  shelf: { newest: readAt(madeAt), goodAt: null, offSale },
})
const since = (at: number): Shelf['offSale'] => ({ since: at, lastGoodAt: null })
const made = withShelf(running(told), null)
const bad = withShelf(made, since(madeAt))

describe('a shelf that is read out of limits', () => {
  const holds = (after: RunningState) => asked(shelfMade, made, withShelf(after, since(madeAt)))

  it('[F67] holds what stands made there, once', () => {
    const hold = { type: 'buildHeld', ticket: 1, letter: 'A', reason: 'off-sale', pan: SHELF }
    expect(holds(made)).toEqual([hold])
    expect(asked(shelfMade, bad, withShelf(made, since(madeAt + 1)))).toEqual([])
    expect(asked(shelfMade, bad, made)).toEqual([])
  })

  it('[F67] adds nothing to what is thrown out, held for its guest or held for the shelf', () => {
    expect(holds(toThrowOut(made, 'build', '1A'))).toEqual([])
    const stop = { reason: 'off-sale', at: 1, to: null } as const
    const hold = { reason: 'off-sale', at: 1, told: null } as const
    const held = (pan: string) =>
      holds(buildWith(made, '1A', { stop, hold: { ...hold, pans: [pan] } }))
    expect(held(SHELF)).toEqual([])
    expect(held('pan-chicken')).toHaveLength(1)
    const label = { ...hold, reason: 'label' } as const
    expect(holds(buildWith(made, '1A', { hold: label }))).toEqual([])
    expect(holds(buildWith(made, '1A', { stop: { ...stop, reason: 'label' } }))).toEqual([])
  })
})

describe('what stood there when it was found', () => {
  const discard: ServiceEvent = { type: 'shelfResolved', way: 'discard' }
  const gone = (before: RunningState, ...events: ServiceEvent[]) =>
    asked(shelfGone, before, withShelf(before, null), events)

  it('[F67] is thrown out with it, and what was made later isn’t', () => {
    const passed = { type: 'throwOutPassed', what: 'build', id: '1A', because: 'out-of-limits' }
    expect(gone(bad, discard)).toEqual([passed])
    expect(gone(withShelf(made, since(madeAt + 1)), discard)).toEqual([passed])
    expect(gone(withShelf(made, since(madeAt - 1)), discard)).toEqual([])
    expect(gone(toThrowOut(bad, 'build', '1A'), discard)).toEqual([])
  })

  it('[F67] goes among other events, and stays where it gets a time', () => {
    expect(gone(bad, { type: 'ticketPaid', ticket: 1, paid: true }, discard)).toHaveLength(1)
    expect(gone(bad, { type: 'shelfResolved', way: 'time-only' })).toEqual([])
    expect(gone(bad)).toEqual([])
    expect(gone(made, discard)).toEqual([])
  })
})
