import { describe, expect, it } from 'vitest'
import { heldBecause } from '#lib/rooms/pans/facts/held-because.ts'
import { whyNone } from '#lib/rooms/pans/views/items-left.ts'
import {
  at,
  choose,
  type Given,
  given,
  needs,
  ready,
  running,
  send,
} from '#tests/support/service.ts'

/** Chicken and slaw on rice, which all have protected back-up pans. */
const WITHOUT = { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no', peppers: 'no' } as const

const correct = (component: string, portions: number): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: portions,
})

const apart = () =>
  send(
    choose('garden-chicken', WITHOUT, {
      base: 'rice',
      ...needs({ code: 'milk', handling: 'keep-apart', reason: null }),
    }),
  )

const scooped = { type: 'soilPan', pan: 'pan-chicken', by: 'cheddar' } as const

describe('a build that is held for what touched its food', () => {
  it('[P70] names the protected back-up pan that isn’t ready, and no other', () => {
    const told = ready({ type: 'setBackup', component: 'chicken', ready: false }, apart(), scooped)
    expect(heldBecause(running(told), '1A')).toEqual({
      why: expect.objectContaining({ reason: 'contact' }),
      unready: ['back-up-chicken'],
    })
  })

  it('[P70] is null where nothing holds it, and offers no back-up pan for another reason', () => {
    const told = ready(apart())
    expect(heldBecause(running(told), '1A')).toBe(null)
    const unsure = given(send(choose('garden-chicken')), {
      type: 'tellNeed',
      ...at('1A'),
      asked: 'not-sure',
      needs: [],
    })
    expect(heldBecause(running(unsure), '1A')).toMatchObject({
      why: { reason: 'need', asked: 'not-sure' },
      unready: [],
    })
  })
})

describe('why none of a component can be sold', () => {
  it('[P71] is that its food isn’t served, that builds lack it, or that it is gone', () => {
    const gone = given(correct('chicken', 0))
    expect(whyNone(running(gone), 'chicken')).toBe('sold-out')
    const short = given(send(choose('garden-chicken')), correct('chicken', 0))
    expect(whyNone(running(short), 'chicken')).toBe('short')
    const off = ready({
      type: 'readTemperature',
      what: 'pan',
      id: 'pan-chicken',
      reading: { tenths: 1210, scale: 'F', probe: '1', where: 'middle-stirred' },
      initials: 'AB',
    })
    expect(whyNone(running(off), 'chicken')).toBe('not-served')
  })
})
