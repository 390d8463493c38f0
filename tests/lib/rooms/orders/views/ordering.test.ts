import { describe, expect, test } from 'vitest'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { commandOf } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, type Ordering, settleAll, toSayAgain } from '#lib/rooms/orders/views/ordering.ts'
import type { RunningState } from '#lib/service/state.ts'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import { choose, codeOf, given, ofPortions, running, when } from '#tests/support/service.ts'

const ALL = given()
const STATE = running(ALL)

const taps = (from: Ordering, state: RunningState, ...list: Act[]): Ordering =>
  list.reduce((so, one) => act(so, one, state), from)

const none: Act = { act: 'asked-none' }
const item = (id: string): Act => ({ act: 'choose', item: id })
const pan = (component: string): Act => ({ act: 'tap', component })
const more = (component: string): Act => ({ act: 'more', component })
const need = (code: 'milk' | 'wheat' | 'vegan'): Act => ({ act: 'need', code })
const sendAs = (id: string): Act => ({ act: 'send', id })

const sentCommand = (ordering: Ordering, state = STATE): Command => {
  const command = commandOf(ordering, state)
  if (!command) throw new Error('nothing can be sent')
  return commandSchema.parse(command)
}

const sentParts = (ordering: Ordering, state = STATE) => {
  const command = sentCommand(ordering, state)
  return command.type === 'send' ? command.builds[0]?.parts : undefined
}

/** Taps of the flow: what the guest's wishes cost from an idle counter to sent. */
const tapsTo = (...wishes: Act[]): number => {
  const list = [none, item('garden-chicken'), ...wishes]
  const ordering = taps(IDLE, STATE, ...list)
  expect(codeOf(when(ALL, sentCommand(ordering)))).toBeNull()
  const sent = taps(ordering, STATE, sendAs('c-1'), { act: 'accepted', id: 'c-1' })
  expect(sent).toMatchObject({ step: 'ask', drafts: IDLE.drafts, sending: null })
  return list.length + 1
}

describe('the flow', () => {
  test('[C16] an unchanged item for a guest with no needs is three taps from idle to sent', () => {
    expect(tapsTo()).toBe(3)
  })

  test('[C17] each component that the guest says no to is one tap more', () => {
    expect(tapsTo(pan('cheddar'))).toBe(4)
    expect(tapsTo(pan('cheddar'), pan('slaw'))).toBe(5)
    const four = ['cheddar', 'slaw', 'peppers', 'yogurt-sauce']
    expect(tapsTo(...four.map(pan))).toBe(7)
    const parts = sentParts(taps(IDLE, STATE, none, item('garden-chicken'), ...four.map(pan)))
    for (const id of four) expect(parts?.[id]).toMatchObject({ placement: 'no', because: 'asked' })
  })

  test('[C17] a component that is usually on the side is said no to with one tap, too', () => {
    const parts = sentParts(taps(IDLE, STATE, none, item('bean-and-pepper'), pan('yogurt-sauce')))
    expect(parts?.['yogurt-sauce']).toMatchObject({ placement: 'no', portions: 0 })
  })

  test('[C6] taps on one pan go round and come back to the usual', () => {
    const placement = (count: number) =>
      sentParts(taps(IDLE, STATE, none, item('garden-chicken'), ...Array(count).fill(pan('slaw'))))
        ?.slaw?.placement
    expect([0, 1, 2, 3].map(placement)).toEqual(['in', 'no', 'side', 'in'])
  })

  test('[C7] the plus adds a portion up to four, and a tap that comes round starts at one', () => {
    const five = Array<Act>(5).fill(more('cheddar'))
    const many = taps(IDLE, STATE, none, item('garden-chicken'), ...five)
    expect(sentParts(many)?.cheddar).toMatchObject({ placement: 'in', portions: 4 })
    const round = taps(many, STATE, pan('cheddar'), pan('cheddar'))
    expect(sentParts(round)?.cheddar).toMatchObject({ placement: 'in', portions: 1 })
  })

  test('[C18] a tap that can’t do anything changes nothing and says why', () => {
    const chosen = taps(IDLE, STATE, none, item('garden-chicken'))
    expect(taps(chosen, STATE, pan('chicken'))).toEqual({
      ...chosen,
      note: { kind: 'kept', item: 'garden-chicken', component: 'chicken' },
    })
    expect(taps(chosen, STATE, pan('pita')).note).toMatchObject({ kind: 'base' })
    expect(taps(chosen, STATE, pan('tuna')).note).toMatchObject({ kind: 'not-of-item' })
    const milk = taps(IDLE, STATE, need('milk'), { act: 'said-needs' }, item('garden-chicken'))
    expect(taps(milk, STATE, pan('cheddar')).note).toMatchObject({
      kind: 'cannot',
      standing: { kind: 'need', finding: { need: 'milk', why: 'contains' } },
    })
    const vegan = taps(IDLE, STATE, need('vegan'), { act: 'said-needs' }, item('harbor-tuna'))
    expect(vegan.drafts[0]?.item).toBeNull()
    expect(vegan.note).toMatchObject({ kind: 'item-cannot', item: 'harbor-tuna' })
  })

  test('[C5] a tap on another base switches to it, and back', () => {
    const rice = taps(IDLE, STATE, none, item('garden-chicken'), pan('rice'))
    expect(settleAll(rice, STATE)[0]?.settled?.choice.base).toBe('rice')
    expect(settleAll(taps(rice, STATE, pan('pita')), STATE)[0]?.settled?.choice.base).toBe('pita')
  })
})

describe('asking', () => {
  test('[C19] one tap on an allergen is keep apart, a second step makes it leave out', () => {
    const milk = taps(IDLE, STATE, need('milk'))
    expect(milk.drafts[0]?.needs).toEqual([{ code: 'milk', handling: 'keep-apart', reason: null }])
    const less = taps(milk, STATE, { act: 'handling', code: 'milk' })
    expect(less.drafts[0]?.needs).toMatchObject([{ handling: 'leave-out' }])
    expect(taps(IDLE, STATE, need('vegan')).drafts[0]?.needs).toMatchObject([
      { handling: 'leave-out' },
    ])
    expect(taps(milk, STATE, need('milk')).drafts[0]).toMatchObject({ needs: [], asked: null })
  })

  test('[C20] nothing is sent before every guest was asked, or while one isn’t sure', () => {
    const ready = taps(IDLE, STATE, none, item('garden-chicken'))
    expect(commandOf(ready, STATE)).not.toBeNull()
    for (const last of ['ask-again', 'not-sure'] as const)
      expect(commandOf(taps(ready, STATE, { act: last }), STATE), last).toBeNull()
    const second = taps(ready, STATE, { act: 'another' })
    expect(second).toMatchObject({ step: 'ask', current: 1 })
    expect(commandOf(second, STATE)).toBeNull()
  })

  test('[C20] “none” with an allergen chosen clears it, and doesn’t go on', () => {
    const cleared = taps(IDLE, STATE, need('milk'), none)
    expect(cleared).toMatchObject({ step: 'ask', drafts: [{ needs: [], asked: null }] })
    expect(taps(cleared, STATE, none)).toMatchObject({ step: 'choose' })
  })

  test('[C20] each build carries its own guest’s needs', () => {
    const two = taps(
      IDLE,
      STATE,
      need('vegan'),
      { act: 'said-needs' },
      item('bean-and-pepper'),
      { act: 'another' },
      none,
      item('harbor-tuna'),
    )
    expect(sentCommand(two)).toMatchObject({
      builds: [
        { asked: 'needs', needs: [{ code: 'vegan' }] },
        { asked: 'none', needs: [] },
      ],
    })
    expect(codeOf(when(ALL, sentCommand(two)))).toBeNull()
  })
})

describe('several builds', () => {
  const cheddar = (count: number) =>
    running(given({ type: 'correct', pan: 'pan-cheddar', amount: ofPortions('cheddar', count) }))
  const two = (state: RunningState) =>
    taps(IDLE, state, none, item('garden-chicken'), { act: 'another' }, none, item('harbor-tuna'))

  test('[C21] an earlier build of the ticket goes before a later one', () => {
    const state = cheddar(1)
    const [first, second] = settleAll(two(state), state)
    expect(first?.settled?.choice.parts.cheddar).toMatchObject({ placement: 'in' })
    expect(second?.settled?.choice.parts.cheddar).toMatchObject({ because: 'gone' })
  })

  test('[C22] a build that isn’t as it was said any more must be said again before sending', () => {
    const ordering = two(cheddar(2))
    expect(toSayAgain(ordering, settleAll(ordering, cheddar(2)))).toBeNull()
    const gone = cheddar(0)
    expect(toSayAgain(ordering, settleAll(ordering, gone))).toBe(0)
    expect(commandOf(ordering, gone)).toBeNull()
    const again = taps(ordering, gone, { act: 'go-to', index: 0 }, { act: 'read-again' })
    expect(toSayAgain(again, settleAll(again, gone))).toBe(1)
    expect(commandOf(again, gone)).toBeNull()
    const both = taps(again, gone, { act: 'go-to', index: 1 }, { act: 'read-again' })
    expect(commandOf(both, gone)).toMatchObject({ type: 'send' })
  })

  test('[C22] the build in sight, too: a pan that runs out before the tap on send asks to read again', () => {
    const ordering = taps(IDLE, cheddar(1), none, item('garden-chicken'))
    const gone = cheddar(0)
    expect(commandOf(ordering, cheddar(1))).not.toBeNull()
    expect(toSayAgain(ordering, settleAll(ordering, gone))).toBe(0)
    expect(commandOf(ordering, gone)).toBeNull()
    for (const aside of [{ act: 'paid' }, { act: 'name', name: 'Kim' }] as const)
      expect(commandOf(taps(ordering, gone, aside), gone), aside.act).toBeNull()
    const read = taps(ordering, gone, { act: 'read-again' })
    expect(commandOf(read, gone)).toMatchObject({
      builds: [{ parts: { cheddar: { placement: 'no', because: 'gone' } } }],
    })
    expect(commandOf(ordering, cheddar(1))).not.toBeNull()
  })

  test('[C22] a pan that changes what the build doesn’t take asks for nothing', () => {
    const ordering = taps(IDLE, cheddar(9), none, item('garden-chicken'))
    expect(commandOf(ordering, cheddar(8))).not.toBeNull()
  })

  test('[C22] while it is sent the pans ask for nothing to be read again', () => {
    const sending = taps(two(cheddar(2)), cheddar(2), sendAs('c-1'))
    expect(toSayAgain(sending, settleAll(sending, cheddar(0)))).toBeNull()
  })
})

const CLOSED = { kind: 'refused', refusal: { code: 'service-closed' } } as const

describe('sending', () => {
  const ready = taps(IDLE, STATE, none, item('garden-chicken'), pan('cheddar'))

  test('[C23] a second tap on send, or on anything, does nothing while the answer is out', () => {
    const sending = taps(ready, STATE, sendAs('c-1'))
    const taps2: Act[] = [sendAs('c-2'), pan('slaw'), { act: 'start-over' }, { act: 'another' }]
    for (const one of taps2) expect(act(sending, one, STATE)).toEqual(sending)
  })

  test('[C24] a refusal keeps the order for correction and says why', () => {
    const note = { kind: 'refused', refusal: { code: 'sold-out', component: 'slaw' } } as const
    const refused = taps(ready, STATE, sendAs('c-1'), { act: 'refused', id: 'c-1', note })
    expect(refused).toEqual({ ...ready, note })
  })

  test('[C25] an order without an answer waits in sight, and comes back when it is refused', () => {
    const note = { kind: 'refused', refusal: { code: 'service-closed' } } as const
    const parked = taps(ready, STATE, sendAs('c-1'), { act: 'next-guest' })
    expect(parked).toMatchObject({ step: 'ask', sent: [], parked: [{ id: 'c-1' }] })
    const back = taps(parked, STATE, none, { act: 'refused', id: 'c-1', note })
    expect(back).toMatchObject({ step: 'choose', parked: [], returned: [{ id: 'c-1', note }] })
    const opened = taps(back, STATE, { act: 'open-returned', id: 'c-1' })
    expect(opened).toMatchObject({ step: 'choose', drafts: ready.drafts, note, returned: [] })
  })

  const ARRIVED = { sent: { kind: 'ticket', id: 'c-1' }, items: ['garden-chicken'] }

  test('[C25] an order that waited is told only when it was accepted, with what it was', () => {
    const parked = taps(ready, STATE, sendAs('c-1'), { act: 'next-guest' })
    expect(parked.arrived).toEqual([])
    expect(taps(parked, STATE, { act: 'accepted', id: 'c-1' })).toMatchObject({
      parked: [],
      sent: [],
      arrived: [ARRIVED],
    })
    const late = taps(ready, STATE, sendAs('c-1'), { act: 'accepted', id: 'c-1', isLate: true })
    expect(late).toMatchObject({ sent: [], arrived: [ARRIVED] })
  })

  test('[C25] an order that an earlier load of the page left waiting comes back as it was', () => {
    const choices = [choose('garden-chicken', { cheddar: 'no' })]
    const back = taps(IDLE, STATE, {
      act: 'came-back',
      id: 'c-0',
      sent: { type: 'send', builds: choices, paid: true, name: 'Kim', readBack: true },
      note: CLOSED,
    })
    const opened = taps(back, STATE, { act: 'open-returned', id: 'c-0' })
    expect(sentParts(opened)?.cheddar).toMatchObject({ placement: 'no', because: 'asked' })
    expect(opened).toMatchObject({ paid: true, name: 'Kim', note: CLOSED })
  })

  test('[C57] each that waited stays until it was told, whatever is typed and sent meanwhile', () => {
    const again = [none, item('bean-and-pepper'), sendAs('c-9'), { act: 'next-guest' }] as const
    const parked = taps(ready, STATE, sendAs('c-1'), { act: 'next-guest' }, ...again, none)
    const both = taps(
      parked,
      STATE,
      { act: 'accepted', id: 'c-9' },
      item('garden-chicken'),
      { act: 'accepted', id: 'c-1' },
      { act: 'ask-again' },
      need('milk'),
      need('milk'),
      none,
      sendAs('c-2'),
      { act: 'accepted', id: 'c-2' },
    )
    const other = { sent: { kind: 'ticket', id: 'c-9' }, items: ['bean-and-pepper'] }
    expect(both).toMatchObject({ sent: [{ id: 'c-2' }], arrived: [other, ARRIVED] })
    const one = taps(both, STATE, { act: 'arrived-told', id: 'c-9' })
    expect(one).toMatchObject({ sent: both.sent, arrived: [ARRIVED] })
    const typing = taps(one, STATE, none, item('garden-chicken'), { act: 'start-over' })
    expect(typing.arrived).toMatchObject([ARRIVED])
    expect(taps(typing, STATE, { act: 'arrived-told', id: 'c-1' }).arrived).toEqual([])
  })

  test('[C26] name and paid go with the order; number only and unpaid are the defaults', () => {
    expect(sentCommand(ready)).toMatchObject({ paid: false })
    expect(sentCommand(ready)).not.toHaveProperty('name')
    const named = taps(ready, STATE, { act: 'name', name: ' Juno ' }, { act: 'paid' })
    expect(sentCommand(named)).toMatchObject({ paid: true, name: 'Juno' })
  })
})
