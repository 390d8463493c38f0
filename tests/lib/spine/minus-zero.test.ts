import { describe, expect, it } from 'vitest'
import { choose, parsed, send } from '#tests/support/service.ts'

describe('a number from outside', () => {
  it('[S61] of minus zero never enters the log, since JSON has none', () => {
    const command = parsed({ type: 'correct', pan: 'pan-pita', amount: -0 })
    expect(command.type === 'correct' && Object.is(command.amount, 0)).toBe(true)
    const sending = parsed(
      send({
        ...choose('harbor-tuna'),
        parts: { slaw: { placement: 'no', portions: -0, because: 'asked' } },
      }),
    )
    expect(sending.type === 'send' && Object.is(sending.builds[0]?.parts.slaw?.portions, 0)).toBe(
      true,
    )
  })
})
