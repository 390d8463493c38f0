import { describe, expect, test } from 'vitest'
import { EMPTY_DRAFT } from '#lib/rooms/orders/facts/draft.ts'
import { offerFor } from '#lib/rooms/orders/facts/offer.ts'
import { itemRows } from '#lib/rooms/orders/views/counter.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { commandOf } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { isLeft } from '#lib/rooms/orders/views/order-answered.ts'
import { IDLE, type Ordering, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { counter } from '#lib/rooms/orders/words/counter-en.ts'
import type { RunningState } from '#lib/service/state.ts'
import { type Command, commandSchema } from '#lib/spine/registry.ts'
import {
  buildIn,
  choose,
  codeOf,
  type Given,
  given,
  ofPortions,
  onward,
  parsed,
  running,
  send,
  when,
} from '#tests/support/service.ts'

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

const CLOSED = { kind: 'refused', refusal: { code: 'service-closed' } } as const

describe('changing an accepted build', () => {
  test('[C27] it starts from what was accepted, and its own portions count as there', () => {
    const last: Given = {
      type: 'correct',
      pan: 'pan-cheddar',
      amount: ofPortions('cheddar', 1),
    }
    const told = given(last, send(choose('garden-chicken', { slaw: 'side' })))
    const state = running(told)
    const opened = taps(
      IDLE,
      state,
      { act: 'tickets' },
      {
        act: 'change-build',
        ticket: 1,
        letter: 'A',
      },
    )
    expect(opened).toMatchObject({ step: 'choose', changing: { ticket: 1, letter: 'A' } })
    expect(settleAll(opened, state)[0]?.settled?.choice).toEqual(buildIn(told, '1A').choice)
    const changed = taps(opened, state, pan('peppers'))
    const command = commandSchema.parse(commandOf(changed, state))
    expect(command).toMatchObject({
      type: 'change',
      ticket: 1,
      letter: 'A',
      to: { parts: { cheddar: { placement: 'in' }, peppers: { placement: 'no' } } },
    })
    expect(buildIn(onward(told, command), '1A').choice.parts.peppers?.placement).toBe('no')
  })

  const sold = given(send(choose('garden-chicken', { slaw: 'side' })))
  const change: Act = { act: 'change-build', ticket: 1, letter: 'A' }

  test('[C29] what it holds stays its own, though it is sold out or not sold any more', () => {
    const out = onward(
      sold,
      { type: 'stopSelling', what: 'component', id: 'peppers' },
      { type: 'stopSelling', what: 'component', id: 'chicken' },
      { type: 'stopSelling', what: 'item', id: 'garden-chicken' },
      { type: 'correct', pan: 'pan-cheddar', amount: 0 },
    )
    const state = running(out)
    const opened = taps(IDLE, state, { act: 'tickets' }, change, pan('slaw'))
    const command = sentCommand(opened, state)
    expect(command).toMatchObject({
      type: 'change',
      to: { parts: { peppers: { placement: 'in' }, cheddar: { placement: 'in' } } },
    })
    expect(codeOf(when(out, command))).toBeNull()
    const rows = itemRows(
      settleAll(opened, state)[0]?.offer ?? offerFor(state, []),
      opened.drafts[0] ?? EMPTY_DRAFT,
    )
    expect(rows.find((row) => row.chosen)).toMatchObject({ blocked: null, left: 1 })
  })

  test('[C29] no more than it holds, no other build’s, and nothing where a need rules it out', () => {
    const state = running(
      onward(
        sold,
        { type: 'stopSelling', what: 'component', id: 'cheddar' },
        { type: 'stopSelling', what: 'item', id: 'harbor-tuna' },
      ),
    )
    const opened = taps(IDLE, state, { act: 'tickets' }, change)
    expect(taps(opened, state, more('cheddar')).drafts[0]?.wishes.cheddar?.portions ?? 1).toBe(1)
    expect(taps(opened, state, item('harbor-tuna')).note).toMatchObject({ kind: 'item-cannot' })
    const anew = taps(IDLE, state, none, item('garden-chicken'))
    expect(sentParts(anew, state)?.cheddar).toMatchObject({ because: 'gone' })
    const milk = taps(opened, state, { act: 'ask-again' }, need('milk'), { act: 'said-needs' })
    expect(settleAll(milk, state)[0]?.settled?.choice.parts.cheddar).toMatchObject({
      placement: 'no',
      because: 'need',
    })
  })

  const at = { ticket: 1, letter: 'A' } as const
  const state = running(sold)
  const ready = taps(IDLE, state, { act: 'tickets' }, change, pan('cheddar'))
  const parked = taps(ready, state, sendAs('c-9'), { act: 'next-guest' })

  test('[C30] a change that waited is told when it is accepted', () => {
    expect(taps(parked, state, { act: 'accepted', id: 'c-9' })).toMatchObject({
      parked: [],
      arrived: [{ id: 'c-9', sent: { kind: 'changed', ...at }, items: ['garden-chicken'] }],
    })
  })

  test('[C30] a change that waited is told when it is refused, and can be opened again', () => {
    const back = taps(parked, state, { act: 'refused', id: 'c-9', note: CLOSED })
    expect(back.returned).toMatchObject([{ kind: 'change', ...at, note: CLOSED }])
    const opened = taps(back, state, { act: 'open-returned', id: 'c-9' })
    expect(opened).toMatchObject({ changing: at, drafts: ready.drafts, returned: [] })
  })

  test('[C30] so is what an earlier load of the page left waiting: a change', () => {
    const sent = parsed(sentCommand(ready, state))
    if (!isLeft(sent)) throw new Error('a change is left waiting')
    const back = taps(IDLE, state, { act: 'came-back', id: 'c-9', sent, note: CLOSED })
    expect(back.returned).toMatchObject([{ kind: 'change', ...at, note: CLOSED }])
    const opened = taps(back, state, { act: 'open-returned', id: 'c-9' })
    expect(sentCommand(opened, state)).toEqual(sent)
    const told = taps(IDLE, state, { act: 'left-accepted', id: 'c-9', sent })
    expect(told.arrived).toMatchObject([{ sent: { kind: 'changed', ...at } }])
  })

  test('[C30] and a cancel, which has nothing to open', () => {
    const sent = { type: 'cancel', ...at } as const
    const back = taps(IDLE, state, { act: 'came-back', id: 'c-9', sent, note: CLOSED })
    expect(back.returned).toEqual([{ kind: 'cancel', id: 'c-9', ...at, note: CLOSED }])
    expect(taps(back, state, { act: 'open-returned', id: 'c-9' })).toEqual(back)
    expect(taps(back, state, { act: 'drop-returned', id: 'c-9' }).returned).toEqual([])
    const told = taps(IDLE, state, { act: 'left-accepted', id: 'c-9', sent })
    expect(told.arrived).toMatchObject([{ sent: { kind: 'cancelled', ...at }, items: [] }])
  })

  test('[C30] each is said in a plain line', () => {
    expect(counter.waitingFor('change', '21A')).toBe('Change of 21-\u2060A: waiting to send.')
    expect(counter.notTaken('cancel', '21A', 'This service is closed.')).toBe(
      'The cancel of 21-\u2060A was not taken: This service is closed.',
    )
    expect(
      ['send', 'change', 'cancel', 'pay', 'start'].map((type) => isLeft({ type } as Command)),
    ).toEqual([true, true, true, false, false])
  })
})
