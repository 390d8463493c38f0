import { describe, expect, test } from 'vitest'
import type { RunningState } from '#lib/service/state.ts'
import { isTelling } from '#lib/views/changing.ts'
import { type Act, act } from '#lib/views/order-act.ts'
import { IDLE, type Ordering } from '#lib/views/ordering.ts'
import { handedOverLately, heldNow, ticketsToChange } from '#lib/views/tickets-to-change.ts'
import { choose, type Given, needs, ready, running, send } from '#tests/support/service.ts'

const taps = (from: Ordering, state: RunningState, ...list: Act[]): Ordering =>
  list.reduce((so, one) => act(so, one, state), from)

const chicken = send(choose('garden-chicken'))
const milkTold = (ticket: number): Given => ({
  type: 'tellNeed',
  ticket,
  letter: 'A',
  asked: 'needs',
  needs: [{ code: 'milk', handling: 'keep-apart', reason: 'allergy' }],
})
const made = (ticket: number): Given[] => [
  { type: 'start', ticket, letter: 'A' },
  { type: 'finish', ticket, letter: 'A' },
]
const handed = (ticket: number): Given[] => [
  ...made(ticket),
  { type: 'handOver', ticket, letter: 'A' },
]
const at = { ticket: 1, letter: 'A' }

describe('a need told late', () => {
  const vegan = send({
    ...choose('bean-and-pepper', { cheddar: 'no', 'yogurt-sauce': 'no' }),
    ...needs({ code: 'vegan', handling: 'leave-out', reason: null }),
  })

  test('[C41] it begins with what was told before', () => {
    const state = running(ready(vegan))
    const telling = taps(IDLE, state, { act: 'tell-need', ...at })
    expect(telling).toMatchObject({ step: 'ask', telling: at, changing: null })
    expect(telling.drafts[0]?.needs).toMatchObject([{ code: 'vegan' }])
    expect(taps(telling, state, { act: 'said-needs' }).step).toBe('ask')
  })

  test('[C41] only a new need or a stricter one stops the build', () => {
    const own = [{ code: 'milk', handling: 'leave-out', reason: null }] as const
    expect(isTelling(own, own)).toBe(false)
    expect(isTelling(own, [])).toBe(false)
    expect(isTelling(own, [{ ...own[0], handling: 'keep-apart' }])).toBe(true)
    expect(isTelling(own, [...own, { ...own[0], code: 'egg' }])).toBe(true)
    expect(isTelling([{ ...own[0], handling: 'keep-apart' }], own)).toBe(false)
  })

  test('[C41] once told, the build is ordered anew with all its needs, and nothing accepted', () => {
    const before = running(ready(vegan))
    const state = running(ready(vegan, milkTold(1)))
    const telling = taps(IDLE, before, { act: 'tell-need', ...at })
    const told = taps(telling, state, { act: 'need-told', ...at })
    expect(told).toMatchObject({ step: 'choose', changing: at, telling: null })
    expect(told.drafts[0]).toMatchObject({ asked: 'needs', accepted: null, agreed: null })
    expect(told.drafts[0]?.needs.map((one) => one.code)).toEqual(['vegan', 'milk'])
    const gone = taps(telling, state, { act: 'start-over' }, { act: 'need-told', ...at })
    expect(gone).toMatchObject({ changing: null, step: 'ask' })
  })

  test('[C41] a guest who isn’t sure is asked again before it is ordered anew', () => {
    const told: Given = { type: 'tellNeed', ...at, asked: 'not-sure', needs: [] }
    const opened = taps(IDLE, running(ready(chicken, told)), { act: 'change-build', ...at })
    expect(opened).toMatchObject({ step: 'ask', changing: at, drafts: [{ asked: null }] })
  })
})

describe('the list', () => {
  test('[C42] held builds come first, with what can be done to them', () => {
    const state = running(ready(chicken, chicken, chicken, ...made(1), milkTold(1)))
    expect(
      ticketsToChange(state).map(({ ticket, canChange, canCancel, canTell }) => [
        ticket.number,
        canChange,
        canCancel,
        canTell,
      ]),
    ).toEqual([
      [1, true, true, true],
      [3, true, true, true],
      [2, true, true, true],
    ])
    expect(heldNow(state)).toEqual({ builds: ['1A'], find: [] })
  })

  test('[C42] the newest handed-over ones can tell, those to be found before the others', () => {
    const all = [chicken, chicken, chicken, ...handed(1), ...handed(2)]
    const numbers = (state: RunningState) =>
      handedOverLately(state).map(({ ticket }) => ticket.number)
    expect(numbers(running(ready(...all)))).toEqual([2, 1])
    const told = running(ready(...all, milkTold(1)))
    expect(numbers(told)).toEqual([1, 2])
    expect(heldNow(told).find).toMatchObject([{ ticket: 1, letter: 'A', reason: 'need' }])
  })
})
