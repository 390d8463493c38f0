import { describe, expect, test } from 'vitest'
import { handOverView } from '#lib/rooms/shelf/views/hand-over.ts'
import { unpaidList } from '#lib/rooms/shelf/views/unpaid-list.ts'
import { NOT_OPENED } from '#lib/service/state.ts'
import { findTicket } from '#lib/service/tickets.ts'
import { evolve } from '#lib/spine/evolve.ts'
import {
  at,
  choose,
  codeOf,
  given,
  onward,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const plain = () => choose('garden-chicken')
const out = (told: Told, ...names: string[]): Told =>
  names.reduce(
    (so, name) =>
      onward(
        so,
        { type: 'start', ...at(name), read: true },
        { type: 'finish', ...at(name) },
        { type: 'handOver', ...at(name) },
      ),
    told,
  )
const pay = (ticket: number, paid = true) => ({ type: 'pay', ticket, paid }) as const
const writeOff = (ticket: number) =>
  ({ type: 'pay', ticket, paid: false, writtenOff: true }) as const
const listed = (told: Told) => unpaidList(told.state).tickets.map(({ ticket }) => ticket)

describe('what was given out and not paid', () => {
  test('[H36] is on the list from its first build on, as one sum, the one that went out first first', () => {
    const told = given(send(plain(), choose('harbor-tuna')), send(plain()), {
      ...send(plain()),
      paid: true,
    } as ReturnType<typeof send>)
    expect(listed(told)).toEqual([])
    const some = out(told, '2A', '1B', '3A')
    expect(listed(some)).toEqual([2, 1])
    const price = findTicket(some.state, 1)?.builds.reduce((sum, one) => sum + one.priceCents, 0)
    expect(unpaidList(some.state).tickets[1]).toMatchObject({ names: ['1A', '1B'], cents: price })
    expect(unpaidList(some.state).cents).toBe((price ?? 0) + 650)
    const less = onward(some, { type: 'cancel', ...at('1A') })
    expect(unpaidList(less.state).tickets[1]?.names).toEqual(['1B'])
  })

  test('[H36] leaves it paid, also long after, and comes back where it wasn’t after all', () => {
    const between = Array.from({ length: 67 }, (_, index) => [
      send(plain()),
      { type: 'cancel', ...at(`${index + 3}A`) } as const,
    ]).flat()
    const told = out(
      given(send(plain()), send(plain()), ...between, send(plain())),
      '1A',
      '2A',
      '70A',
    )
    expect(listed(told)).toEqual([1, 2, 70])
    const paid = onward(told, pay(2))
    expect(listed(paid)).toEqual([1, 70])
    expect(listed(onward(paid, pay(2, false)))).toEqual([1, 2, 70])
  })

  test('[H36] stays on it while it is made again, from when it first went out, until it is cancelled', () => {
    const told = out(given(send(plain()), send(plain())), '1A', '2A')
    const again = onward(told, { type: 'remake', ...at('1A') })
    expect(listed(again)).toEqual([1, 2])
    expect(unpaidList(again.state).tickets[0]).toEqual(unpaidList(told.state).tickets[0])
    expect(listed(onward(again, pay(1)))).toEqual([2])
    const twice = out(again, '1A')
    expect(unpaidList(twice.state)).toEqual(unpaidList(told.state))
    const none = onward(again, { type: 'cancel', ...at('1A') })
    expect(listed(none)).toEqual([2])
  })

  test('[H36] is read back from the log as it was', () => {
    const told = onward(out(given(send(plain()), send(plain())), '1A', '2A'), writeOff(1))
    const again = told.events.reduce(evolve, NOT_OPENED)
    expect(unpaidList(again)).toEqual(unpaidList(told.state))
    expect(again).toEqual(told.state)
  })

  test('[S6][S13][H36] doesn’t hold the close, and is paid or written off after it', () => {
    const closed = onward(out(given(send(plain()), send(plain())), '1A', '2A'), { type: 'close' })
    expect(listed(closed)).toEqual([1, 2])
    const paid = onward(closed, pay(1), writeOff(2))
    expect(listed(paid)).toEqual([])
    expect(paid.state.stage).toBe('closed')
  })

  test('[H37] is written off by the adults only, and may be paid after all', () => {
    const told = out(given(send(plain())), '1A')
    for (const by of ['counter', 'hand-over'] as const)
      expect(codeOf(when(told, writeOff(1), { by }))).toBe('not-lead')
    const off = onward(told, writeOff(1))
    expect(listed(off)).toEqual([])
    expect(findTicket(off.state, 1)).toMatchObject({ paid: false, writtenOff: true })
    expect(refusalOf(when(off, writeOff(1)))).toEqual({ code: 'already-so' })
    const paid = onward(off, pay(1))
    expect(findTicket(paid.state, 1)).not.toHaveProperty('writtenOff')
    const back = onward(off, pay(1, false))
    expect(listed(back)).toEqual([1])
  })

  test('[H35] is asked about once, before the first of a ticket is handed over', () => {
    const told = given(send(plain(), plain()), send(plain()))
    const made = ['1A', '1B', '2A'].reduce(
      (so, name) =>
        onward(so, { type: 'start', ...at(name), read: true }, { type: 'finish', ...at(name) }),
      told,
    )
    const asks = (so: Told) =>
      handOverView(running(so), running(so).at).shelf.map((one) => [one.name, one.asksToPay])
    expect(asks(made)).toEqual([
      ['1A', true],
      ['1B', true],
      ['2A', true],
    ])
    const first = onward(made, { type: 'handOver', ...at('1A') })
    expect(asks(first)).toEqual([
      ['1B', false],
      ['2A', true],
    ])
    expect(asks(onward(first, pay(2)))[1]).toEqual(['2A', false])
  })
})
