import { describe, expect, test } from 'vitest'
import { isTelling } from '#lib/rooms/orders/views/changing.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, type Ordering, type Told } from '#lib/rooms/orders/views/ordering.ts'
import {
  handedOverLately,
  heldNow,
  type PanMark,
  panMarks,
  sumOfTicket,
  ticketsToChange,
} from '#lib/rooms/orders/views/tickets-to-change.ts'
import { ticketsEn } from '#lib/rooms/orders/words/tickets-en.ts'
import { type Mark, markOf } from '#lib/service/mark.ts'
import type { RunningState } from '#lib/service/state.ts'
import { findTicket } from '#lib/service/tickets.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { componentOf } from '#lib/station/find.ts'
import {
  buildIn,
  change,
  choose,
  demoStation,
  type Given,
  given,
  needs,
  onward,
  ready,
  running,
  type Told as Service,
  send,
} from '#tests/support/service.ts'

const taps = (from: Ordering, state: RunningState, ...list: Act[]): Ordering =>
  list.reduce((so, one) => act(so, one, state), from)

const chicken = send(choose('garden-chicken'))
const MILK: Told = {
  asked: 'needs',
  needs: [{ code: 'milk', handling: 'keep-apart', reason: 'allergy' }],
}
const EGG_OUT: Need = { code: 'egg', handling: 'leave-out', reason: null }
const milkTold = (ticket: number, letter = 'A'): Given => ({
  type: 'tellNeed',
  ticket,
  letter,
  asked: MILK.asked,
  needs: [...MILK.needs],
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
    const told = taps(telling, state, { act: 'need-told', ...at, told: MILK })
    expect(told).toMatchObject({ step: 'choose', changing: at, telling: null })
    expect(told.drafts[0]).toMatchObject({ asked: 'needs', accepted: null, agreed: null })
    expect(told.drafts[0]?.needs.map((one) => one.code)).toEqual(['vegan', 'milk'])
    const gone = taps(
      telling,
      state,
      { act: 'start-over' },
      { act: 'need-told', ...at, told: MILK },
    )
    expect(gone).toMatchObject({ changing: null, step: 'ask' })
  })

  const two = send(choose('garden-chicken'), choose('garden-chicken'), choose('garden-chicken'))
  const told = { act: 'need-told', ...at, told: MILK } as const

  test('[C48] each other open build of the ticket is asked about before it is ordered anew', () => {
    const state = running(ready(two, milkTold(1)))
    const asks = taps(IDLE, state, { act: 'tell-need', ...at }, told)
    expect(asks).toMatchObject({ step: 'others', others: { told: MILK, letters: ['B', 'C'] } })
    const one = taps(asks, state, { act: 'other-answered', letter: 'B' })
    expect(one).toMatchObject({ step: 'others', others: { letters: ['C'] } })
    expect(taps(one, state, { act: 'other-answered', letter: 'C' })).toMatchObject({
      step: 'choose',
      changing: at,
      others: null,
    })
  })

  test('[C48] what is over, or knows it already, is not asked about', () => {
    const state = running(
      ready(two, milkTold(1), milkTold(1, 'B'), { type: 'cancel', ticket: 1, letter: 'C' }),
    )
    expect(taps(IDLE, state, { act: 'tell-need', ...at }, told)).toMatchObject({
      step: 'choose',
      changing: at,
    })
  })

  test('[C48] a guest who isn’t sure orders nothing anew', () => {
    const unsure: Given = { type: 'tellNeed', ...at, asked: 'not-sure', needs: [] }
    const state = running(ready(chicken, unsure))
    expect(taps(IDLE, state, { act: 'change-build', ...at })).toEqual(IDLE)
    const after = taps(
      IDLE,
      state,
      { act: 'tell-need', ...at },
      {
        ...told,
        told: { asked: 'not-sure', needs: [] },
      },
    )
    expect(after).toMatchObject({ step: 'tickets', changing: null })
    expect(ticketsToChange(state)[0]).toMatchObject({
      canChange: false,
      canCancel: true,
      canTell: true,
      isUnsure: true,
    })
  })

  test('[C47] a change takes no need away and makes none less strict', () => {
    const state = running(ready(chicken, milkTold(1)))
    const opened = taps(IDLE, state, { act: 'change-build', ...at }, { act: 'ask-again' })
    const needsAfter = (...list: Act[]) =>
      taps(opened, state, ...list).drafts[0]?.needs.map((one) => [one.code, one.handling])
    const own = [['milk', 'keep-apart']]
    expect(needsAfter()).toEqual(own)
    expect(needsAfter({ act: 'need', code: 'milk' })).toEqual(own)
    expect(needsAfter({ act: 'handling', code: 'milk' })).toEqual(own)
    expect(needsAfter({ act: 'need', code: 'egg' }, { act: 'asked-none' })).toEqual(own)
    expect(needsAfter({ act: 'need', code: 'egg' })).toEqual([...own, ['egg', 'keep-apart']])
    expect(needsAfter({ act: 'need', code: 'egg' }, { act: 'need', code: 'egg' })).toEqual(own)
  })

  test('[C47] what was only left out is made stricter, and back; a kind’s group can be added', () => {
    const left = send({
      ...choose('bean-and-pepper', { almonds: 'no' }),
      ...needs({ code: 'almond', handling: 'leave-out', reason: null }),
    })
    const state = running(ready(left))
    const opened = taps(IDLE, state, { act: 'change-build', ...at }, { act: 'ask-again' })
    const needsAfter = (...list: Act[]) =>
      taps(opened, state, ...list).drafts[0]?.needs.map((one) => [one.code, one.handling])
    const tap: Act = { act: 'handling', code: 'almond' }
    const group: Act = { act: 'need', code: 'tree-nuts' }
    expect(needsAfter(tap)).toEqual([['almond', 'keep-apart']])
    expect(needsAfter(tap, tap)).toEqual([['almond', 'leave-out']])
    expect(needsAfter(group)).toEqual([
      ['almond', 'leave-out'],
      ['tree-nuts', 'keep-apart'],
    ])
    expect(needsAfter(group, group)).toEqual([['almond', 'leave-out']])
  })

  test('[C47] a need is new beside what the build goes on as', () => {
    const changed: Given = {
      type: 'change',
      ...at,
      to: { ...choose('garden-chicken', { cheddar: 'no' }), ...needs(EGG_OUT) },
      readBack: true,
    }
    const state = running(ready(chicken, { type: 'start', ...at, read: true }, changed))
    const telling = taps(IDLE, state, { act: 'tell-need', ...at })
    expect(telling.drafts[0]?.needs).toMatchObject([EGG_OUT])
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

describe('a row over the line', () => {
  const marksIn = (told: Service, name: string) => panMarks(running(told), buildIn(told, name))
  const kept = needs({ code: 'milk', handling: 'keep-apart', reason: null })
  const plain = choose(
    'garden-chicken',
    { cheddar: 'no', slaw: 2, 'yogurt-sauce': 'side', almonds: 'in' },
    { base: 'rice' },
  )

  test('[C59] shows what its mark says, and no more', () => {
    const told = given(send(plain), send(choose('bean-and-pepper')), chicken)
    for (const name of ['1A', '2A', '3A']) {
      const marks = marksIn(told, name)
      const { choice } = buildIn(told, name)
      const mark = markOf(running(told), 1, 'A', choice)
      // By the words for wraps, as the mark is written.
      const wrapped = (id: string) => {
        const component = componentOf(demoStation, id)
        return component.mark ?? component.short.join(' ')
      }
      const said = (is: (one: PanMark) => boolean) =>
        Object.entries(marks)
          .filter(([, one]) => is(one))
          .map(([id]) => wrapped(id))
          .sort()
      const sorted = (...lists: (keyof Mark)[]) =>
        [...new Set(lists.flatMap((list) => mark[list]))].sort()
      expect(said(({ kind }) => kind === 'no')).toEqual(sorted('without'))
      expect(said(({ kind }) => kind === 'side')).toEqual(sorted('onTheSide'))
      expect(said(({ kind }) => kind === 'with')).toEqual(sorted('added', 'extra'))
    }
    expect(marksIn(told, '1A')).toMatchObject({
      pita: { kind: 'none' },
      rice: { kind: 'with', portions: 1 },
      chicken: { kind: 'usual' },
      slaw: { kind: 'with', portions: 2 },
      tuna: { kind: 'none' },
    })
  })

  test('[C59] what is left out for a need names it, and what there was none of says so', () => {
    const none = { placement: 'no', portions: 0 } as const
    const beans = choose('bean-and-pepper')
    const parts = {
      ...beans.parts,
      cheddar: { ...none, because: 'need' },
      almonds: { ...none, because: 'need' },
      'yogurt-sauce': { ...none, because: 'need' },
    } as const
    const apart = ready(send({ ...beans, ...kept, parts }))
    const need = { kind: 'need', code: 'milk', isApart: true }
    expect(marksIn(apart, '1A')).toMatchObject({ cheddar: need, 'yogurt-sauce': need })
    expect(ticketsEn.pan.need('milk')).toBe('no milk')
    expect(ticketsEn.pan.need('vegan')).toBe('not vegan')
    const gone = {
      ...beans,
      parts: { ...beans.parts, cheddar: { ...none, because: 'gone' } },
    } as const
    expect(marksIn(given(send(gone)), '1A').cheddar).toEqual({ kind: 'gone' })
  })

  test('[C59] of several needs none is named that isn’t known to be why, nor where nothing can be compared', () => {
    const none = { placement: 'no', portions: 0, because: 'need' } as const
    const beans = choose('bean-and-pepper', { cheddar: 'no', 'yogurt-sauce': 'no', almonds: 'no' })
    const parts = { ...beans.parts, peppers: none, cheddar: none } as const
    const codes = (...all: string[]) =>
      needs(...all.map((code) => ({ code, handling: 'leave-out', reason: null }) as const))
    const two = given(send({ ...beans, ...codes('fish', 'milk'), parts }))
    expect(marksIn(two, '1A')).toMatchObject({
      cheddar: { kind: 'need', code: 'milk' },
      peppers: { kind: 'no' },
    })
    const one = given(send({ ...beans, ...codes('fish'), parts }))
    expect(marksIn(one, '1A').peppers).toMatchObject({ kind: 'need', code: 'fish' })
    const contacts = [{ id: 'x', kind: 'scoop' as const, components: ['slaw', 'nothing'] }]
    const state = running(two)
    const damaged = { ...state, station: { ...state.station, contacts } }
    expect(panMarks(damaged, buildIn(two, '1A'))).toMatchObject({ cheddar: { kind: 'no' } })
  })

  test('[C59] a stopped build shows what it becomes', () => {
    const told = given(send(choose('garden-chicken')), { type: 'start', ...at })
    const stopped = onward(told, change('1A', choose('garden-chicken', { slaw: 'no' })))
    expect(marksIn(stopped, '1A').slaw).toEqual({ kind: 'no' })
  })

  test('[C59] a ticket of two is one sum, and what was cancelled is no part of it', () => {
    const told = given(send(plain, choose('harbor-tuna')))
    const of = (one: Service) => {
      const ticket = findTicket(running(one), 1)
      return ticket && sumOfTicket(ticket)
    }
    const cents = buildIn(told, '1A').priceCents + buildIn(told, '1B').priceCents
    expect(of(told)).toEqual({ builds: ['1A', '1B'], cents })
    const less = onward(told, { type: 'cancel', ticket: 1, letter: 'B' })
    expect(of(less)).toEqual({ builds: ['1A'], cents: buildIn(told, '1A').priceCents })
  })
})
