import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { happened } from '#lib/service/commands/decision.ts'
import { defineCommand, type Givers, type Stage } from '#lib/service/commands/define.ts'
import type { Role } from '#lib/service/roles.ts'
import { plannedService } from '#tests/support/plans.ts'
import { circumstances, codeOf, given, NOTHING, onward } from '#tests/support/service.ts'

/** A command that there isn't, so that stages which no command has yet are tried too. */
const bell = (stage: Stage, who: Givers = []) =>
  defineCommand({
    type: 'bell',
    who,
    stages: [stage],
    schema: { times: z.int().default(1) },
    decide: () => happened({ type: 'clockConfirmed' }),
    sample: () => [{ times: 2 }, {}],
    rules: ['S4'],
    example: {},
  })

const told = {
  none: NOTHING.state,
  planned: plannedService().state,
  open: given().state,
  closed: onward(given(), { type: 'close' }).state,
} as const

const rung = (command: ReturnType<typeof bell>, stage: Stage, by: Role = 'lead') =>
  codeOf(command.decide(told[stage], { type: 'bell' }, circumstances({ by })))

describe('a command', () => {
  it.each([
    ['none', [null, 'service-not-open', 'service-already-open', 'service-closed']],
    ['planned', ['service-not-open', null, 'service-already-open', 'service-closed']],
    ['open', ['service-not-open', 'service-not-open', null, 'service-closed']],
    ['closed', ['service-not-open', 'service-not-open', 'service-already-open', null]],
  ] as const)(
    '[S4] [S6] for a service that is %s is refused in any other stage',
    (stage, codes) => {
      const all = (['none', 'planned', 'open', 'closed'] as const).map((one) =>
        rung(bell(stage), one),
      )
      expect(all).toEqual(codes)
    },
  )

  it('[S70] that is only for the person in charge is refused to everybody else, once it may come', () => {
    const own = bell('open', ['in-charge'])
    expect(rung(own, 'open', 'lead')).toBe('not-in-charge')
    expect(rung(own, 'open', 'in-charge')).toBeNull()
    expect(rung(own, 'closed', 'lead')).toBe('service-closed')
    expect(rung(bell('open', ['counter']), 'open', 'lead')).toBeNull()
  })

  it('[S62] has samples as they are parsed, and none out of its stage', () => {
    expect(bell('open').samples(told.open, '')).toEqual([
      { type: 'bell', times: 2 },
      { type: 'bell', times: 1 },
    ])
    expect(bell('open').samples(told.closed, '')).toEqual([])
  })

  it('decides no other', () => {
    expect(() => bell('open').decide(told.open, { type: 'ring' }, circumstances())).toThrow('ring')
  })
})
