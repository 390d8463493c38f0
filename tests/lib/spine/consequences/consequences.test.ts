import { describe, expect, it } from 'vitest'
import type { Consequence } from '#lib/service/consequence.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { consequences } from '#lib/spine/consequences/consequences.ts'
import { happened, touched } from '#tests/support/happened.ts'
import { ready, running } from '#tests/support/service.ts'

const state = running(ready())
const paid: ServiceEvent = { type: 'ticketPaid', ticket: 1, paid: true }
const unpaid: ServiceEvent = { type: 'ticketPaid', ticket: 1, paid: false }
const says = (reads: Consequence['reads'], ...events: ServiceEvent[]): Consequence => ({
  name: 'says',
  reads,
  follow: () => events,
})

describe('a rule of what follows', () => {
  it('[S103] is asked once any slice that it reads changed, and not for another', () => {
    const after = touched(state, 'pans')
    const of = (...reads: Consequence['reads']) =>
      consequences(happened(state, after), [says(reads, paid)])
    expect(of('pans')).toEqual([paid])
    expect(of('tickets', 'pans')).toEqual([paid])
    expect(of('pans', 'tickets')).toEqual([paid])
    expect(of('tickets')).toEqual([])
    expect(of()).toEqual([])
    expect(consequences(happened(state), [says(['pans'], paid)])).toEqual([])
  })

  it('[S103] that has something to say says it alone, the first of them', () => {
    const [silent, first, second] = [
      says(['pans']),
      says(['pans'], paid),
      says(['pans'], unpaid),
    ] as const
    const of = (...rules: Consequence[]) =>
      consequences(happened(state, touched(state, 'pans')), rules)
    expect(of(first, second)).toEqual([paid])
    expect(of(silent, second, first)).toEqual([unpaid])
    expect(of(silent)).toEqual([])
  })
})
