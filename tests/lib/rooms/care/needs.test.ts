import { describe, expect, it } from 'vitest'
import type { TicketSent } from '#lib/service/events/event.ts'
import { commandSchema } from '#lib/spine/registry.ts'
import {
  choose,
  codeOf,
  eventsOf,
  type Given,
  needs,
  ready,
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

describe('allergies and diet', () => {
  const milk = (handling: 'keep-apart' | 'leave-out') =>
    needs({ code: 'milk', handling, reason: 'allergy' })

  it('[S22] are asked about: silence is not an answer', () => {
    const { asked: _, ...silent } = choose('harbor-tuna')
    expect(
      commandSchema.safeParse({ type: 'send', readBack: true, builds: [silent] }).success,
    ).toBe(false)
    expect(
      codeOf(when(ready(), send(choose('harbor-tuna', {}, { asked: 'needs', needs: [] })))),
    ).toBe('not-asked')
    const unasked = { ...milk('leave-out'), asked: 'none' as const }
    expect(codeOf(when(ready(), send(choose('harbor-tuna', { cheddar: 'no' }, unasked))))).toBe(
      'not-asked',
    )
  })

  it('[S23] of a guest who is not sure are unknown, and the build is refused', () => {
    expect(
      refusalOf(when(ready(), send(choose('harbor-tuna', {}, { asked: 'not-sure' })))),
    ).toEqual({ code: 'not-sure' })
    const half = { ...milk('keep-apart'), asked: 'not-sure' as const }
    expect(codeOf(when(ready(), send(choose('harbor-tuna', { cheddar: 'no' }, half))))).toBe(
      'not-sure',
    )
  })

  it.each(['keep-apart', 'leave-out'] as const)(
    '[S24] handled as %s refuse a taken component that contains it, on the side as well',
    (handling) => {
      const contains = (component: string) => ({ code: 'contains', component, need: 'milk' })
      expect(refusalOf(when(ready(), send(choose('harbor-tuna', {}, milk(handling)))))).toEqual(
        contains('cheddar'),
      )
      const side = choose('harbor-tuna', { cheddar: 'no', 'yogurt-sauce': 'side' }, milk(handling))
      expect(refusalOf(when(ready(), send(side)))).toEqual(contains('yogurt-sauce'))
      expect(
        codeOf(
          when(
            ready(),
            send(
              choose(
                'bean-and-pepper',
                { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
                milk(handling),
              ),
            ),
          ),
        ),
      ).toBeNull()
    },
  )

  it('[S24] refuse a base that contains it', () => {
    const wheat = needs({ code: 'wheat', handling: 'leave-out', reason: 'coeliac' })
    const choice = choose('garden-chicken', { slaw: 'no' }, wheat)
    expect(refusalOf(when(ready(), send(choice)))).toEqual({
      code: 'contains',
      component: 'pita',
      need: 'wheat',
    })
    expect(codeOf(when(ready(), send({ ...choice, base: 'rice' })))).toBeNull()
  })

  it.each([
    ['keep-apart', { code: 'unknown-declaration', component: 'tuna', need: 'soy' }],
    [
      'leave-out',
      {
        code: 'caution',
        component: 'tuna',
        need: 'soy',
        why: 'unknown',
        touches: null,
        reached: [],
      },
    ],
  ] as const)(
    '[S25] handled as %s refuse a taken component of which it is unknown',
    (handling, refusal) => {
      const choice = choose(
        'harbor-tuna',
        { slaw: 'no' },
        needs({ code: 'soy', handling, reason: 'allergy' }),
      )
      expect(refusalOf(when(ready(), send(choice)))).toEqual(refusal)
    },
  )

  it('[S26] handled as keep apart are cautioned of what may contain it, handled as leave out are not', () => {
    const sesame = (handling: 'keep-apart' | 'leave-out') =>
      choose(
        'garden-chicken',
        { slaw: 'no', cheddar: 'no', 'yogurt-sauce': 'no' },
        needs({ code: 'sesame', handling, reason: 'allergy' }),
      )
    expect(refusalOf(when(ready(), send(sesame('keep-apart'))))).toEqual({
      code: 'caution',
      component: 'pita',
      need: 'sesame',
      why: 'may-contain',
      touches: null,
      reached: [],
    })
    expect(codeOf(when(ready(), send(sesame('leave-out'))))).toBeNull()
  })

  it('[S27] named twice count once, as keep apart where one of them is', () => {
    const twice = needs(
      { code: 'milk', handling: 'leave-out', reason: 'dislike' },
      { code: 'egg', handling: 'leave-out', reason: null },
      { code: 'milk', handling: 'keep-apart', reason: 'allergy' },
      { code: 'milk', handling: 'keep-apart', reason: null },
    )
    const sent = ticketOf(
      ready(),
      send(
        choose(
          'garden-chicken',
          { slaw: 'no', peppers: 'no', cheddar: 'no', 'yogurt-sauce': 'no' },
          twice,
        ),
      ),
    )
    expect(sent.builds[0]?.choice.needs).toEqual([
      { code: 'egg', handling: 'leave-out', reason: null },
      { code: 'milk', handling: 'keep-apart', reason: 'allergy' },
    ])
  })
})
