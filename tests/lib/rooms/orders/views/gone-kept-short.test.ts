import { describe, expect, test } from 'vitest'
import {
  closingTimes,
  dayCommand,
  dayOf,
  isDayWrong,
  NO_DAY,
  wrongInDay,
} from '#lib/rooms/day/views/day-entry.ts'
import { EMPTY_DRAFT, settle } from '#lib/rooms/orders/facts/draft.ts'
import { waitIfSent, waitOfTicket } from '#lib/rooms/orders/facts/guest-wait.ts'
import { offerFor, offerOf, standingOf } from '#lib/rooms/orders/facts/offer.ts'
import { itemRows, panFace } from '#lib/rooms/orders/views/counter.ts'
import type { Act } from '#lib/rooms/orders/views/counter-act.ts'
import { commandOf } from '#lib/rooms/orders/views/next-step.ts'
import { act } from '#lib/rooms/orders/views/order-act.ts'
import { IDLE, type Ordering, type ShortWay, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { readBack } from '#lib/rooms/orders/views/read-back.ts'
import { shortNow, ticketsToChange } from '#lib/rooms/orders/views/tickets-to-change.ts'
import { isItemWanted, isPanWanted } from '#lib/rooms/orders/views/wanted-gone.ts'
import type { RunningState } from '#lib/service/state.ts'
import type { Need } from '#lib/station/codes/codes.ts'
import { sayAbout } from '#lib/words/clock-en.ts'
import { read } from '#tests/support/food.ts'
import {
  buildIn,
  change,
  choose,
  codeOf,
  type Given,
  given,
  ofPortions,
  onward,
  openedService,
  running,
  send,
  when,
} from '#tests/support/service.ts'

const count = (component: string, portions: number): Given => ({
  type: 'correct',
  pan: `pan-${component}`,
  amount: ofPortions(component, portions),
})
const chicken = choose('garden-chicken')
const beans = choose('bean-and-pepper')
const asked = (item: string | null) => ({ ...EMPTY_DRAFT, asked: 'none', item }) as const
const taps = (from: Ordering, state: RunningState, ...list: Act[]): Ordering =>
  list.reduce((so, one) => act(so, one, state), from)
const rowOf = (state: RunningState, item: string, needs: readonly Need[] = []) =>
  itemRows(offerFor(state, needs), asked(null)).find((row) => row.item.id === item)

describe('how long a guest waits', () => {
  test('[C49] more builds before it take longer, and a range is said as one', () => {
    const [none] = waitIfSent(running(given()), 1) ?? [Number.NaN]
    const queue = waitIfSent(running(given(send(chicken, chicken, beans, beans, chicken))), 1)
    expect(none).toBe(1)
    expect(queue?.[1]).toBeGreaterThan(3)
    expect(sayAbout([6, 6])).toBe('about 6 min')
    expect(sayAbout([6, 9])).toBe('about 6 to 9 min')
  })

  test('[C49] of a ticket it counts what comes before it, and ends when all of it is made', () => {
    const told = given(send(chicken), send(beans, beans), send(chicken, chicken, chicken))
    const [first, last] = [waitOfTicket(running(told), 1), waitOfTicket(running(told), 3)]
    expect(first?.[1]).toBeLessThan(last?.[0] ?? 0)
    const one = { ticket: 1, letter: 'A' }
    const making = onward(told, { type: 'start', ...one })
    expect(waitOfTicket(running(making), 1)).not.toBeNull()
    expect(waitOfTicket(running(onward(making, { type: 'finish', ...one })), 1)).toBeNull()
  })
})

describe('what is kept for others', () => {
  const keep = (component: string, portions: number, whom: string): Given => ({
    type: 'keep',
    component,
    portions,
    for: [whom],
  })

  test('[C50] is offered to those for whom it is kept, and to nobody else', () => {
    const state = running(given(count('cheddar', 4), keep('cheddar', 4, 'garden-chicken')))
    const offer = offerFor(state, [])
    expect(standingOf(offerOf(offer, 'bean-and-pepper'), 'cheddar')).toEqual({
      kind: 'kept',
      for: ['garden-chicken'],
    })
    expect(standingOf(offerOf(offer, 'garden-chicken'), 'cheddar')).toMatchObject({ left: 4 })
    expect(rowOf(state, 'bean-and-pepper')?.without).toContain('cheddar')
    expect(rowOf(state, 'garden-chicken')?.without).not.toContain('cheddar')
  })

  test('[C50] goes by needs too, and what isn’t kept is sold to all', () => {
    const told = given(count('beans', 5), keep('beans', 3, 'vegetarian'))
    const state = running(told)
    expect(rowOf(state, 'bean-and-pepper')?.left).toBe(2)
    const vegetarian: Need = { code: 'vegetarian', handling: 'leave-out', reason: null }
    expect(rowOf(state, 'bean-and-pepper', [vegetarian])?.left).toBe(5)
    const sold = running(onward(told, send(beans), send(beans)))
    expect(rowOf(sold, 'bean-and-pepper')?.blocked).toMatchObject({
      component: 'beans',
      standing: { kind: 'kept' },
    })
  })

  test('[C50] the screen offers what the server sells, and says who it is kept for', () => {
    const told = given(count('cheddar', 4), keep('cheddar', 4, 'garden-chicken'))
    const offer = offerFor(running(told), [])
    const settled = settle(offer, asked('bean-and-pepper'))
    if (!settled) throw new Error('no such item')
    expect(settled.choice.parts.cheddar).toMatchObject({ placement: 'no', because: 'gone' })
    expect(codeOf(when(told, send(settled.choice)))).toBeNull()
    expect(codeOf(when(told, send(beans)))).toBe('kept')
    expect(readBack(offerOf(offer, 'bean-and-pepper'), settled)).toContainEqual({
      say: 'kept',
      component: 'cheddar',
      for: ['garden-chicken'],
    })
  })
})

describe('wanted it, gone', () => {
  const state = running(given(count('chicken', 0), count('almonds', 0)))
  const offer = offerFor(state, [])

  test('[C51] an item that ran out can be counted; one that a need rules out can’t', () => {
    expect(isItemWanted(rowOf(state, 'garden-chicken')?.blocked ?? null)).toBe(true)
    expect(isItemWanted(rowOf(state, 'bean-and-pepper')?.blocked ?? null)).toBe(false)
    const milk: Need = { code: 'fish', handling: 'leave-out', reason: null }
    expect(isItemWanted(rowOf(state, 'harbor-tuna', [milk])?.blocked ?? null)).toBe(false)
  })

  test('[C51] what was never loaded isn’t gone: there is nothing to count', () => {
    const unloaded = running(openedService())
    const blocked = rowOf(unloaded, 'garden-chicken')?.blocked ?? null
    expect(blocked?.standing).toEqual({ kind: 'gone', notLoaded: true })
    expect(isItemWanted(blocked)).toBe(false)
    expect(isPanWanted(offerFor(unloaded, []), null, 'almonds')).toBe(false)
  })

  test('[C51] a pan isn’t counted by a tap where the build that is sent says so itself', () => {
    const settled = settle(offer, asked('bean-and-pepper'))
    expect(settled?.choice.parts.almonds?.because).toBe('gone')
    expect(isPanWanted(offer, settled, 'almonds')).toBe(false)
    expect(isPanWanted(offer, null, 'almonds')).toBe(true)
    expect(isPanWanted(offer, settled, 'chicken')).toBe(true)
    expect(isPanWanted(offer, settled, 'beans')).toBe(false)
  })
})

describe('what is off sale', () => {
  test('[C52] is said as not selling, not as run out', () => {
    const state = running(given({ type: 'readTemperature', id: 'pan-chicken', ...read(120) }))
    const offer = offerFor(state, [])
    expect(standingOf(offer, 'chicken')).toEqual({ kind: 'not-selling' })
    const pan = { id: 'pan-chicken', component: 'chicken' }
    expect(panFace(offer, null, pan as Parameters<typeof panFace>[2])).toMatchObject({
      kind: 'cannot',
    })
  })
})

describe('short builds', () => {
  const way = (some: Partial<ShortWay>): ShortWay => ({
    keeps: {},
    fewer: {},
    without: [],
    base: null,
    item: null,
    ...some,
  })
  const told = given(send(chicken), send(chicken, beans), count('cheddar', 1))
  const state = running(told)

  test('[C53] are listed newest first, after held ones and before the others', () => {
    expect(shortNow(state)).toEqual(['2B', '2A'])
    const names = (of: RunningState) =>
      ticketsToChange(of).map(({ ticket, build }) => `${ticket.number}${build.letter}`)
    expect(names(state)).toEqual(['2B', '2A', '1A'])
  })

  test('[C53] one whose guest waits isn’t told again', () => {
    const waits = running(onward(told, { type: 'wait', ticket: 2, letter: 'B' }))
    expect(shortNow(waits)).toEqual(['2A'])
  })

  test('[C54] leaving out is a change that says the pans are out of it, not that the guest asked', () => {
    const opened = taps(IDLE, state, {
      act: 'change-build',
      ticket: 2,
      letter: 'B',
      way: way({ keeps: { cheddar: 0 }, without: ['cheddar'] }),
    })
    const command = commandOf(opened, state)
    expect(command).toMatchObject({
      type: 'change',
      to: { parts: { cheddar: { placement: 'no', because: 'gone' } } },
    })
    if (!command) throw new Error('nothing to send')
    const after = onward(told, command as Given)
    expect(buildIn(after, '2B').takes.cheddar ?? 0).toBe(0)
    expect(shortNow(running(after))).toEqual(['2A'])
    const [found] = settleAll(opened, state)
    if (!found?.settled) throw new Error('nothing settled')
    expect(readBack(found.offer, found.settled)).toContainEqual({
      say: 'out',
      components: ['cheddar'],
    })
  })

  test('[C54] any other change keeps what the build was accepted with', () => {
    const opened = taps(IDLE, state, { act: 'change-build', ticket: 2, letter: 'B' })
    expect(settleAll(opened, state)[0]?.settled?.choice.parts.cheddar?.placement).toBe('in')
  })

  test('[C54] another base is chosen with the tap', () => {
    const base = choose('garden-chicken').base
    const other = base === 'rice' ? 'pita' : 'rice'
    const without = base ?? 'pita'
    const out = given(send(chicken), count(without, 0))
    const opened = taps(IDLE, running(out), {
      act: 'change-build',
      ticket: 1,
      letter: 'A',
      way: way({ keeps: { [without]: 0 }, base: other }),
    })
    expect(commandOf(opened, running(out))).toMatchObject({ to: { base: other } })
    expect(change('1A', chicken).type).toBe('change')
  })
})

describe('the day that is typed at opening', () => {
  test('[C55] what is left empty, or isn’t a whole number, stays as the station is set up', () => {
    expect(dayCommand(NO_DAY)).toEqual({})
    expect(dayCommand({ guests: 'many', closes: '', assemblers: '0' })).toEqual({})
    expect(dayCommand({ guests: '120', closes: '13:30', assemblers: '2' })).toEqual({
      guestsExpected: 120,
      closesAt: '13:30',
      assemblers: 2,
    })
  })

  test('[C55] what can’t be taken is refused beside its field, never dropped', () => {
    expect(isDayWrong(NO_DAY)).toBe(false)
    expect(isDayWrong({ guests: '0', closes: '', assemblers: '20' })).toBe(false)
    expect(wrongInDay({ guests: '-5', closes: '', assemblers: '0' })).toEqual({
      guests: true,
      assemblers: true,
    })
    expect(wrongInDay({ guests: '20001', closes: '', assemblers: '1.5' })).toEqual({
      guests: true,
      assemblers: true,
    })
  })

  test('[C55] it closes at a quarter of an hour, or as it was set', () => {
    expect(closingTimes('')).toHaveLength(96)
    expect(closingTimes('13:15')).toHaveLength(96)
    expect(closingTimes('13:20').filter((time) => time.startsWith('13:'))).toEqual([
      ...['13:00', '13:15', '13:20', '13:30', '13:45'],
    ])
  })

  test('[C55] an open service shows its day in the station’s zone', () => {
    const closesAt = Date.parse('2026-11-25T18:30:00Z')
    expect(dayOf({ expected: 80, closesAt, assemblers: 2 }, 'America/New_York')).toEqual({
      guests: '80',
      closes: '13:30',
      assemblers: '2',
    })
    expect(dayOf({ expected: null, closesAt: null, assemblers: 1 }, 'UTC')).toEqual({
      guests: '',
      closes: '',
      assemblers: '1',
    })
  })
})
