import { describe, expect, test } from 'vitest'
import { offerFor } from '#lib/rooms/orders/facts/offer.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, type Ordering } from '#lib/rooms/orders/views/ordering.ts'
import { panTold } from '#lib/rooms/orders/views/pan-told.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { given, ready, running, type Told } from '#tests/support/service.ts'

const READY = ready()
const NO_CHEDDAR = given({ type: 'correct', pan: 'pan-cheddar', amount: 0 })

const need = (code: Need['code'], handling: Need['handling'] = 'keep-apart'): Need => ({
  code,
  handling,
  reason: null,
})

const told = (component: string, needs: readonly Need[], state: Told = READY) =>
  panTold(offerFor(running(state), needs), component)

describe('a pan while a guest is asked', () => {
  test('[C75] is plain for who keeps from nothing, and says when there is none', () => {
    expect(told('cheddar', [])).toEqual({ kind: 'plain' })
    expect(told('cheddar', [], NO_CHEDDAR)).toMatchObject({
      kind: 'none',
      standing: { kind: 'gone' },
    })
  })

  test('[C75] tells what is in it before what it touches, and whether it is kept apart', () => {
    expect(told('cheddar', [need('milk')])).toMatchObject({
      kind: 'need',
      isApart: true,
      findings: [{ need: 'milk', why: 'contains' }],
    })
    expect(told('tuna', [need('milk')])).toMatchObject({
      kind: 'need',
      isApart: true,
      findings: [{ need: 'milk', why: 'contact', touches: 'cheddar' }],
    })
    expect(told('cheddar', [need('milk', 'leave-out')])).toMatchObject({
      kind: 'need',
      isApart: false,
    })
    expect(told('tuna', [need('milk', 'leave-out')])).toEqual({ kind: 'plain' })
  })

  test('[C75] tells every need once, and kept apart where one of them is', () => {
    const both = told('cheddar', [need('vegan', 'leave-out'), need('milk')])
    expect(both).toMatchObject({ kind: 'need', isApart: true })
    expect(both.kind === 'need' && both.findings.map((one) => one.need).sort()).toEqual([
      'milk',
      'vegan',
    ])
  })

  test('[C75] rules out what is kept from though none of it is left', () => {
    expect(told('cheddar', [need('milk')], NO_CHEDDAR)).toMatchObject({ kind: 'need' })
  })
})

describe('an item chosen while a guest is asked', () => {
  const STATE = running(READY)
  const taps = (...list: Act[]): Ordering => list.reduce((so, one) => act(so, one, STATE), IDLE)
  const milk: Act = { act: 'need', code: 'milk' }
  const chicken: Act = { act: 'choose', item: 'garden-chicken' }

  test('[C76] says the answer and chooses, as two taps would', () => {
    const direct = taps(milk, chicken)
    expect(direct).toMatchObject({ step: 'choose', drafts: [{ item: 'garden-chicken' }] })
    expect(direct).toEqual(taps(milk, { act: 'said-needs' }, chicken))
  })

  test('[C76] is nothing while there is no answer, or it is to be asked once more', () => {
    expect(taps(chicken)).toEqual(IDLE)
    const asked = taps(
      { act: 'need', code: 'gluten' },
      { act: 'reason', code: 'gluten', reason: 'coeliac' },
      { act: 'handling', code: 'gluten' },
    )
    expect(act(asked, chicken, STATE)).toEqual(asked)
  })
})
