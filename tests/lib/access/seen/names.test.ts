import { describe, expect, it } from 'vitest'
import { CREW, isSent } from '#lib/access/seen/classes.ts'
import { namesFor } from '#lib/access/seen/names.ts'
import { NOT_OPENED, type Ticket } from '#lib/service/state.ts'

const ticket = (number: number, sentBy: string | null, named: boolean): Ticket => ({
  number,
  sentBy,
  named,
  sentAt: 0,
  paid: false,
  builds: [],
})

const state = {
  ...NOT_OPENED,
  tickets: { 4: ticket(4, 'order-4', true), 5: ticket(5, 'order-5', false) },
  past: { 0: { 1: ticket(1, 'order-1', true), 2: ticket(2, null, true) } },
}

const APART = {
  'order-4': 'Ada',
  'order-5': 'of a ticket without a name',
  'order-1': 'Robin',
  'reading-7': 'KT',
  'order-9': 'of no ticket',
}

describe('what lies beside the log', () => {
  it('[V8] is told where it is the name of a ticket, to roles that are sent names', () => {
    for (const role of CREW)
      expect(namesFor(role, state, APART)).toEqual(
        isSent(role, 'name') ? { 'order-4': 'Ada', 'order-1': 'Robin' } : {},
      )
    expect(CREW.filter((role) => !isSent(role, 'name'))).toEqual(['assembly'])
  })

  it('[V8] is nothing where nobody kept it', () => {
    expect(namesFor('counter', state, {})).toEqual({})
    const inherited = { ...state, tickets: { 6: ticket(6, 'constructor', true) }, past: {} }
    expect(namesFor('counter', inherited, {})).toEqual({})
  })
})
