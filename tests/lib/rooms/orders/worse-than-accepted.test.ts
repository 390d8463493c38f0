import { describe, expect, it } from 'vitest'
import { draftOf, settle } from '#lib/rooms/orders/facts/draft.ts'
import { offerFor } from '#lib/rooms/orders/facts/offer.ts'
import { readingOf } from '#lib/rooms/orders/views/reading.ts'
import { labelOf } from '#lib/station/label.ts'
import type { Declaration } from '#lib/station/station-document.ts'
import {
  at,
  buildIn,
  choose,
  codeOf,
  demoStation,
  type Given,
  needs,
  onward,
  ready,
  refusalOf,
  running,
  send,
  type Told,
  when,
} from '#tests/support/service.ts'

const saying = (ingredient: string, peanut: Declaration): Given => {
  const found = demoStation.ingredients.find((one) => one.id === ingredient)
  if (!found) throw new Error(`the demo station has no ${ingredient}`)
  const label = labelOf(found)
  const declarations = { ...label.declarations, peanut }
  return { type: 'changeLabel', ingredient, product: 'same', label: { ...label, declarations } }
}

const order = choose(
  'harbor-tuna',
  { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no', peppers: 'no' },
  needs({ code: 'peanut', handling: 'keep-apart', reason: 'allergy' }),
)
const under = { ...order, caution: 1 }
const accept: Given = { type: 'acceptCaution', build: order, reason: 'guest-accepts' }

/** The cheddar beside the slaw and the tuna may contain peanut, and the slaw has no back-up pan. */
const warned = ready(
  { type: 'setBackup', component: 'slaw', ready: false },
  saying('cheddar', 'may-contain'),
)
const accepted = onward(warned, accept)
const of1A = (...types: readonly ('start' | 'finish' | 'handOver')[]): readonly Given[] =>
  types.map((type) => ({ type, ...at('1A'), ...(type === 'start' ? { read: true } : {}) }))

/** As an acceptance of before stands in an old log: it doesn't say how bad things were. */
const ofBefore = (told: Told): Told => ({
  ...told,
  state: {
    ...told.state,
    cautions: Object.fromEntries(
      Object.entries(told.state.cautions).map(([key, one]) => [
        key,
        { ...one, findings: one.findings.map(({ states: _, ...rest }) => rest) },
      ]),
    ),
  },
})

/** What the guest heard of the order on this line, as one text. */
const heard = (told: Told): string | undefined => {
  const offer = offerFor(running(told), order.needs)
  const settled = settle(offer, draftOf(undefined, under))
  return settled ? readingOf(offer, settled).key : undefined
}

describe('what was read back to a guest', () => {
  it('[C61] is unsaid where something of it got worse since, be it the worst or not', () => {
    const both = onward(accepted, saying('cheddar', 'contains'), saying('yogurt', 'may-contain'))
    const same = onward(both, saying('yogurt', 'may-contain'))
    expect(heard(both)).toContain('yogurt-sauce')
    expect(heard(same)).toBe(heard(both))
    expect(heard(accepted)).not.toBe(heard(both))
    expect(heard(onward(both, saying('yogurt', 'contains')))).not.toBe(heard(both))
  })
})

describe('an acceptance of what got worse since', () => {
  const worse = saying('cheddar', 'contains')

  it('[N26] is told with how bad it is, and kept so', () => {
    expect(refusalOf(when(warned, send(order)))).toMatchObject({
      code: 'caution',
      why: 'contact',
      touches: 'cheddar',
    })
    expect(accepted.state.cautions.c1?.findings).toEqual(
      expect.arrayContaining([
        expect.objectContaining({
          component: 'tuna',
          states: expect.objectContaining({ tuna: 'free', cheddar: 'may-contain' }),
        }),
      ]),
    )
  })

  it('[N26] takes no order any more, until it is accepted anew', () => {
    expect(codeOf(when(accepted, send(under)))).toBeNull()
    const now = onward(accepted, worse)
    expect(codeOf(when(now, send(under)))).toBe('caution')
    expect(codeOf(when(onward(now, accept), send({ ...order, caution: 2 })))).toBeNull()
    const same = onward(accepted, saying('cheddar', 'may-contain'))
    expect(codeOf(when(same, send(under)))).toBeNull()
  })

  it('[N26] holds its build in whatever state, and finds its guest', () => {
    for (const types of [[], ['start'], ['start', 'finish']] as const) {
      const stands = onward(accepted, send(under), ...of1A(...types))
      expect(buildIn(stands, '1A').hold).toBeNull()
      expect(buildIn(onward(stands, worse), '1A').hold).toMatchObject({ reason: 'label' })
    }
    const gone = onward(accepted, send(under), ...of1A('start', 'finish', 'handOver'))
    expect(Object.keys(onward(gone, worse).state.toFind)).toEqual(['1A'])
  })

  it('[N26] of an older log stays as it was', () => {
    const stands = ofBefore(onward(accepted, send(under)))
    expect(buildIn(onward(stands, worse), '1A').hold).toBeNull()
    expect(buildIn(onward(stands, saying('cabbage', 'contains')), '1A').hold).not.toBeNull()
  })
})
