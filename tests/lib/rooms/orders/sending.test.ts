import { describe, expect, it } from 'vitest'
import type { TicketSent } from '#lib/service/events/event.ts'
import {
  at,
  buildIn,
  choose,
  codeOf,
  cookedService,
  demoStation,
  eventsOf,
  type Given,
  given,
  happening,
  load,
  ofPortions,
  onward,
  refusalOf,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const ticketOf = (told: Told, command: Given): TicketSent => {
  const [event] = eventsOf(when(told, command))
  if (event?.type !== 'ticketSent') throw new Error('no ticket was sent')
  return event
}

describe('a ticket', () => {
  it('[S10] gets the next number, and its builds letters in the order in which they were said', () => {
    const told = given(send(choose('harbor-tuna')))
    const sent = ticketOf(
      told,
      send(choose('garden-chicken'), choose('bean-and-pepper'), choose('harbor-tuna')),
    )
    expect(sent.ticket).toBe(2)
    expect(sent.builds.map((build) => [build.letter, build.choice.item])).toEqual([
      ['A', 'garden-chicken'],
      ['B', 'bean-and-pepper'],
      ['C', 'harbor-tuna'],
    ])
    expect(buildIn(onward(told, send(choose('garden-chicken'))), '2A').state).toBe('waiting')
  })

  it('[S10] whose number is not the next one can not have happened', () => {
    const sent = ticketOf(given(), send(choose('harbor-tuna')))
    expect(() => happening(given(), [{ ...sent, ticket: 3 }])).toThrow('out of order')
  })

  it('[S11] has at least one build and at most eight', () => {
    const many = (count: number) =>
      send(...Array.from({ length: count }, () => choose('garden-chicken')))
    expect(codeOf(when(given(), many(0)))).toBe('nothing-in-it')
    expect(ticketOf(given(), many(8)).builds.at(-1)?.letter).toBe('H')
    expect(refusalOf(when(given(), many(9)))).toEqual({ code: 'too-many-builds', most: 8 })
  })

  it('[S12] is unpaid and a number only where nothing else is said, and a name is never in the event', () => {
    expect(ticketOf(given(), send(choose('harbor-tuna')))).toMatchObject({
      paid: false,
      named: false,
    })
    const named = ticketOf(given(), {
      type: 'send',
      readBack: true,
      builds: [choose('harbor-tuna')],
      paid: true,
      name: 'Kim',
    })
    expect(named).toMatchObject({ paid: true, named: true })
    expect(JSON.stringify(named)).not.toContain('Kim')
  })

  it('[S13] is paid, or not, as often as it changes', () => {
    const sent = given(send(choose('harbor-tuna')))
    expect(codeOf(when(sent, { type: 'pay', ticket: 1, paid: false }))).toBe('already-so')
    const paid = onward(sent, { type: 'pay', ticket: 1, paid: true })
    expect(paid.state.tickets.t1?.paid).toBe(true)
    expect(codeOf(when(paid, { type: 'pay', ticket: 1, paid: true }))).toBe('already-so')
    expect(onward(paid, { type: 'pay', ticket: 1, paid: false }).state.tickets.t1?.paid).toBe(false)
    expect(refusalOf(when(sent, { type: 'pay', ticket: 7, paid: true }))).toEqual({
      code: 'unknown',
      what: 'ticket',
      id: '7',
    })
  })

  it('[S13] is paid also after it was handed over', () => {
    const handed = given(
      send(choose('harbor-tuna')),
      ...(['start', 'finish', 'handOver'] as const).map((type): Given => ({ type, ...at('1A') })),
    )
    expect(onward(handed, { type: 'pay', ticket: 1, paid: true }).state.past[0]?.[1]?.paid).toBe(
      true,
    )
  })
})

describe('what the pans hold', () => {
  const almost = (count: number): Told =>
    onward(
      cookedService(),
      ...demoStation.line.wells
        .flatMap((well) => well.pans)
        .map(
          (pan): Given =>
            load(pan.id, ofPortions(pan.component, pan.component === 'chicken' ? count : 8)),
        ),
    )

  it('[S28] sells the last portion once', () => {
    const last = onward(almost(1), send(choose('garden-chicken')))
    expect(refusalOf(when(last, send(choose('garden-chicken'))))).toEqual({
      code: 'sold-out',
      component: 'chicken',
    })
  })

  it('[S28] is counted over all builds of a ticket, which is accepted whole or not at all', () => {
    const two = send(choose('garden-chicken'), choose('garden-chicken'))
    expect(codeOf(when(almost(1), two))).toBe('sold-out')
    expect(codeOf(when(almost(2), two))).toBeNull()
    expect(codeOf(when(almost(1), send(choose('garden-chicken', { chicken: 2 }))))).toBe('sold-out')
  })

  it('[S28] sells no part of a portion', () => {
    const told = onward(almost(1), {
      type: 'correct',
      pan: 'pan-chicken',
      amount: ofPortions('chicken', 1) - 1,
    })
    expect(codeOf(when(told, send(choose('garden-chicken'))))).toBe('sold-out')
  })
})
