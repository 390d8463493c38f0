import { describe, expect, it } from 'vitest'
import type { Happened } from '#lib/service/consequence.ts'
import type { Build } from '#lib/service/state.ts'
import { liftedHolds } from '#lib/spine/consequences/lifted-holds.ts'
import { VERDICT_SLICES } from '#lib/spine/consequences/need-holds.ts'
import { asked, buildWith, touched } from '#tests/support/happened.ts'
import { newerLabels } from '#tests/support/newer-labels.ts'
import { buildIn, choose, needs, ready, running, send } from '#tests/support/service.ts'

const apart = choose(
  'garden-chicken',
  { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
  needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }),
)
const told = ready(send(apart))
const sent = running(told)
const build = buildIn(told, '1A')
const hold = { reason: 'contact', at: 1, told: null } as const
const stop = { reason: 'contact', at: 1, to: null } as const

const lifted = (over: Partial<Build>, known: Partial<Happened['known']> = {}) => {
  const after = buildWith(sent, '1A', { hold, stop, ...over })
  return asked(liftedHolds, touched(after, 'tickets'), after, [], known)
}

describe('a hold of what waits', () => {
  it('[S100] is lifted where nothing stands in its way any more', () => {
    const event = { type: 'holdLifted', ticket: 1, letter: 'A' }
    expect(lifted({})).toEqual([event])
    expect(lifted({ hold: { ...hold, reason: 'label' } })).toEqual([event])
    expect(lifted({ stop: null })).toEqual([event])
    expect(lifted({ had: [] })).toEqual([event])
    expect(VERDICT_SLICES).toContain('tickets')
  })

  it('[S100] stays while something does, and where that can’t be said', () => {
    const after = { ...buildWith(sent, '1A', { hold, stop }), backups: {} }
    const soiled = { ...after, station: { ...after.station, contacts: null } }
    expect(asked(liftedHolds, sent, soiled)).toEqual([])
    const checker = () => {
      throw new Error('no answer')
    }
    expect(lifted({}, { checker })).toEqual([])
    expect(lifted({}, { newestLabels: newerLabels(sent) })).toEqual([])
    expect(lifted({}, { newestLabels: null })).toEqual([])
  })

  it('[S100] is answered by a person where food was made, or where its guest is to hear of it', () => {
    for (const over of [
      { state: 'making' },
      { had: [{} as never] },
      { hold: { ...hold, reason: 'need' } },
      { hold: { ...hold, reason: 'off-sale' } },
      { hold: { ...hold, told: { asked: 'needs', needs: [] } } },
      { hold: { ...hold, dropsChange: true } },
      { hold: null },
      { told: true },
      { choice: { ...build.choice, asked: 'not-sure' } },
      { stop: { ...stop, to: build } },
      { stop: { ...stop, reason: 'cancel' } },
    ] as const)
      expect([over, lifted(over as Partial<Build>)]).toEqual([over, []])
  })
})
