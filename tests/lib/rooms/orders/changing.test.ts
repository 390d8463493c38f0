import { describe, expect, it } from 'vitest'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import {
  accountOf,
  at,
  buildIn,
  choose,
  codeOf,
  eventsOf,
  type Given,
  given,
  inPan,
  needs,
  ofPortions,
  onward,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const change = (name: string, to: ReturnType<typeof choose>): Given => ({
  type: 'change',
  readBack: true,
  ...at(name),
  to,
})
const cancel = (name: string): Given => ({ type: 'cancel', ...at(name) })
const start = (name: string): Given => ({ type: 'start', ...at(name) })
const acknowledge = (name: string, foodInIt: boolean): Given => ({
  type: 'acknowledge',
  ...at(name),
  foodInIt,
})
const onTickets = (told: Told, component: string) => accountOf(told, component).onTickets
const remaining = (told: Told, component: string) => levelOf(running(told), component).remaining

describe('a waiting build', () => {
  const sent = given(send(choose('garden-chicken'), choose('harbor-tuna')))

  it('[S31] changes at once: what it no longer takes is left to sell, what it takes now is on tickets', () => {
    const changed = onward(sent, change('1A', choose('garden-chicken', { slaw: 'no', peppers: 3 })))
    expect(onTickets(changed, 'slaw')).toBe(ofPortions('slaw', 1))
    expect(onTickets(changed, 'peppers')).toBe(ofPortions('peppers', 3))
    expect(buildIn(changed, '1A')).toMatchObject({
      letter: 'A',
      state: 'waiting',
      priceCents: 650 + 100,
      stop: null,
    })
    expect(buildIn(changed, '1B')).toEqual(buildIn(sent, '1B'))
  })

  it('[S31] may become another item, and waits since it was sent', () => {
    const changed = onward(sent, change('1A', choose('bean-and-pepper')))
    expect(buildIn(changed, '1A').choice.item).toBe('bean-and-pepper')
    expect(buildIn(changed, '1A').since).toBe(buildIn(sent, '1A').since)
    expect(onTickets(changed, 'chicken')).toBe(0)
  })

  it('[S32] is not changed to what it is', () => {
    expect(codeOf(when(sent, change('1A', choose('garden-chicken'))))).toBe('already-so')
    const bare = {
      item: 'garden-chicken',
      base: 'pita',
      parts: {},
      asked: 'none',
      needs: [],
    } as const
    expect(codeOf(when(sent, { type: 'change', readBack: true, ...at('1A'), to: bare }))).toBe(
      'already-so',
    )
    expect(codeOf(when(onward(sent, start('1A')), change('1A', choose('garden-chicken'))))).toBe(
      'already-so',
    )
    expect(
      codeOf(when(sent, change('1A', choose('garden-chicken', { peppers: 'side' })))),
    ).toBeNull()
  })

  it('[S33] is not changed to what the pans can not fill, and nothing changes', () => {
    const scarce = onward(sent, {
      type: 'correct',
      pan: 'pan-beans',
      amount: ofPortions('beans', 1) - 1,
    })
    expect(refusalOf(when(scarce, change('1A', choose('bean-and-pepper'))))).toEqual({
      code: 'sold-out',
      component: 'beans',
    })
  })

  it('[S33] needs left to sell only what it takes beyond what it has', () => {
    const last = onward(sent, {
      type: 'correct',
      pan: 'pan-peppers',
      amount: ofPortions('peppers', 1),
    })
    expect(remaining(last, 'peppers')).toBe(0)
    expect(codeOf(when(last, change('1A', choose('garden-chicken', { slaw: 'no' }))))).toBeNull()
    expect(codeOf(when(last, change('1A', choose('garden-chicken', { peppers: 2 }))))).toBe(
      'sold-out',
    )
    const short = onward(last, { type: 'correct', pan: 'pan-peppers', amount: 0 })
    expect(codeOf(when(short, change('1A', choose('garden-chicken', { slaw: 'no' }))))).toBeNull()
    expect(
      codeOf(when(short, change('1A', choose('garden-chicken', { peppers: 'no' })))),
    ).toBeNull()
  })

  it('[S34] keeps what it was accepted with, though that is not sold any more', () => {
    const stopped = onward(
      sent,
      { type: 'stopSelling', what: 'component', id: 'peppers' },
      { type: 'stopSelling', what: 'item', id: 'garden-chicken' },
    )
    expect(codeOf(when(stopped, change('1A', choose('garden-chicken', { slaw: 'no' }))))).toBeNull()
    expect(
      refusalOf(when(stopped, change('1A', choose('garden-chicken', { peppers: 2 })))),
    ).toMatchObject({ code: 'not-selling', id: 'peppers' })
    expect(
      refusalOf(when(stopped, change('1B', choose('harbor-tuna', { peppers: 'in' })))),
    ).toMatchObject({ code: 'not-selling', id: 'peppers' })
    expect(
      refusalOf(when(stopped, change('1B', choose('garden-chicken', { peppers: 'no' })))),
    ).toMatchObject({ code: 'not-selling', id: 'garden-chicken' })
  })

  it('[S35] is changed under the rules of a new one', () => {
    const milk = needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' })
    expect(codeOf(when(sent, change('1A', choose('garden-chicken', {}, milk))))).toBe('contains')
    expect(codeOf(when(sent, change('1A', choose('garden-chicken', { chicken: 'no' }))))).toBe(
      'cannot-leave-out',
    )
  })

  it('[S36] is cancelled at once, and its portions are left to sell again, once', () => {
    const before = given()
    const cancelled = onward(sent, cancel('1A'))
    expect(onTickets(cancelled, 'chicken')).toBe(0)
    expect(onTickets(cancelled, 'pita')).toBe(1)
    expect(remaining(cancelled, 'chicken')).toBe(remaining(before, 'chicken'))
    expect(codeOf(when(cancelled, cancel('1A')))).toBe('wrong-state')
    expect(inPan(cancelled, 'pan-chicken')).toBe(inPan(before, 'pan-chicken'))
  })
})

describe('a build in the making', () => {
  const making = given(send(choose('garden-chicken')), start('1A'))
  const stopped = onward(making, change('1A', choose('garden-chicken', { slaw: 'no', peppers: 3 })))

  it('[S37] is stopped by a change, and takes both what it had and what it will until that is acknowledged', () => {
    expect(buildIn(stopped, '1A')).toMatchObject({ state: 'making', stop: { reason: 'change' } })
    expect(buildIn(stopped, '1A').since).toBe(buildIn(making, '1A').since)
    expect(onTickets(stopped, 'slaw')).toBe(ofPortions('slaw', 1))
    expect(onTickets(stopped, 'peppers')).toBe(ofPortions('peppers', 3))
    expect(buildIn(stopped, '1A').choice).toEqual(choose('garden-chicken'))
  })

  it('[S37] is stopped by a cancelling', () => {
    const cancelled = onward(making, cancel('1A'))
    expect(buildIn(cancelled, '1A')).toMatchObject({
      state: 'making',
      stop: { reason: 'cancel', to: null },
    })
    expect(onTickets(cancelled, 'chicken')).toBe(ofPortions('chicken', 1))
  })

  it('[S38] waits as what it became once the stop is acknowledged', () => {
    const acknowledged = onward(stopped, acknowledge('1A', false))
    expect(buildIn(acknowledged, '1A')).toMatchObject({
      state: 'waiting',
      stop: null,
      remakes: 0,
      letter: 'A',
    })
    expect(buildIn(acknowledged, '1A').choice).toEqual(
      choose('garden-chicken', { slaw: 'no', peppers: 3 }),
    )
    expect(onTickets(acknowledged, 'slaw')).toBe(0)
    expect(onTickets(acknowledged, 'peppers')).toBe(ofPortions('peppers', 3))
    expect(inPan(acknowledged, 'pan-slaw')).toBe(ofPortions('slaw', 40))
  })

  it('[S38] is cancelled once the stop is acknowledged, and its portions are left to sell again', () => {
    const acknowledged = onward(making, cancel('1A'), acknowledge('1A', false))
    expect(buildIn(acknowledged, '1A')).toMatchObject({ state: 'cancelled', stop: null, took: [] })
    expect(onTickets(acknowledged, 'chicken')).toBe(0)
    expect(remaining(acknowledged, 'chicken')).toBe(ofPortions('chicken', 24))
  })

  it('[S39] with food in it wastes what it had: nothing goes back to a pan', () => {
    const changed = onward(stopped, acknowledge('1A', true))
    expect(inPan(changed, 'pan-slaw')).toBe(ofPortions('slaw', 39))
    expect(inPan(changed, 'pan-peppers')).toBe(ofPortions('peppers', 29))
    expect(accountOf(changed, 'slaw')).toMatchObject({
      wasted: ofPortions('slaw', 1),
      used: 0,
      onTickets: 0,
    })
    expect(buildIn(changed, '1A').remakes).toBe(1)
    const cancelled = onward(making, cancel('1A'), acknowledge('1A', true))
    expect(accountOf(cancelled, 'chicken')).toMatchObject({
      wasted: ofPortions('chicken', 1),
      onTickets: 0,
    })
    expect(inPan(cancelled, 'pan-chicken')).toBe(ofPortions('chicken', 23))
  })

  it('[S39] with more food in it than the pans were counted to hold corrects the count', () => {
    const empty = onward(making, { type: 'correct', pan: 'pan-slaw', amount: 10 }, cancel('1A'))
    const [event] = eventsOf(when(empty, acknowledge('1A', true)))
    expect(event).toMatchObject({ uncounted: { slaw: ofPortions('slaw', 1) - 10 } })
    const acknowledged = onward(empty, acknowledge('1A', true))
    expect(inPan(acknowledged, 'pan-slaw')).toBe(0)
    expect(accountOf(acknowledged, 'slaw').wasted).toBe(ofPortions('slaw', 1))
  })
})

describe('a made build', () => {
  const made = given(send(choose('garden-chicken')), start('1A'), { type: 'finish', ...at('1A') })

  it('[S40] is cancelled as waste: made food never returns to a pan', () => {
    const cancelled = onward(made, cancel('1A'))
    expect(buildIn(cancelled, '1A').state).toBe('cancelled')
    expect(accountOf(cancelled, 'chicken')).toMatchObject({
      used: 0,
      wasted: ofPortions('chicken', 1),
      onTickets: 0,
    })
    expect(inPan(cancelled, 'pan-chicken')).toBe(ofPortions('chicken', 23))
  })
})
