import { describe, expect, it } from 'vitest'
import type { Checker } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import type { InTheWay } from '#lib/rooms/care/facts/standing.ts'
import type { Build, RunningState } from '#lib/service/state.ts'
import {
  holdReason,
  madeHolds,
  unmadeHolds,
  unsureHolds,
} from '#lib/spine/consequences/need-holds.ts'
import { asked, buildWith, touched } from '#tests/support/happened.ts'
import { buildIn, choose, needs, ready, running, send } from '#tests/support/service.ts'

const apart = choose(
  'garden-chicken',
  { cheddar: 'no', almonds: 'no', 'yogurt-sauce': 'no' },
  needs({ code: 'milk', handling: 'keep-apart', reason: 'allergy' }),
)
const noPeanut = choose(
  'bean-and-pepper',
  {},
  needs({ code: 'peanut', handling: 'leave-out', reason: null }),
)
const told = ready(send(choose('garden-chicken'), apart))
const sent = running(told)
const to = buildIn(told, '1B')
/** 1B keeps milk apart, and nobody says any more what touches what. */
const unfit: RunningState = { ...sent, station: { ...sent.station, contacts: null } }
const held = { type: 'buildHeld', ticket: 1, letter: 'B', reason: 'contact' }

const askedOf = (after: RunningState, ...more: [Parameters<typeof asked>[4]?]) => {
  const before = touched(after, 'tickets')
  return {
    unmade: asked(unmadeHolds, before, after, [], ...more),
    made: asked(madeHolds, before, after, [], ...more),
  }
}
const ofState = (over: Partial<Build>) => askedOf(buildWith(unfit, '1B', over))

describe('what doesn’t fit its guest', () => {
  it('[S80] is held by the rule for what is still to be taken, or by the one for what was', () => {
    expect(ofState({ state: 'waiting' })).toEqual({ unmade: [held], made: [] })
    expect(ofState({ state: 'making' })).toEqual({ unmade: [held], made: [] })
    expect(ofState({ state: 'made' })).toEqual({ unmade: [], made: [held] })
    expect(askedOf(sent)).toEqual({ unmade: [], made: [] })
  })

  it('[S80] is held before it is made as what it is to become, which is dropped by that', () => {
    const stop = { reason: 'change', at: 1, to } as const
    for (const state of ['making', 'made'] as const)
      expect(ofState({ state, stop })).toEqual({
        unmade: [{ ...held, dropsChange: true }],
        made: [],
      })
  })

  it('[S80] is held once, and not where it is to be cancelled', () => {
    const hold = { reason: 'contact', at: 1, told: null } as const
    const none = { unmade: [], made: [] }
    for (const state of ['waiting', 'making', 'made'] as const) {
      expect(ofState({ state, hold })).toEqual(none)
      expect(ofState({ state, stop: { reason: 'cancel', at: 1, to: null } })).toEqual(none)
    }
    const ofPan = { ...hold, reason: 'off-sale' } as const
    expect(ofState({ hold: ofPan }).unmade).toEqual([held])
  })

  it('[S98] is found whichever part of what a verdict reads has changed', () => {
    const made = buildWith(unfit, '1B', { state: 'made' })
    for (const slice of [
      'station',
      'pans',
      'backupPans',
      'backups',
      'lent',
      'tickets',
      'past',
      'cautions',
    ] as const) {
      const since = (after: RunningState): RunningState => ({
        ...after,
        [slice]: { ...after[slice] },
      })
      const reason = slice === 'station' ? 'label' : 'contact'
      expect([slice, asked(unmadeHolds, since(unfit), unfit)]).toEqual([
        slice,
        [{ ...held, reason }],
      ])
      expect([slice, asked(madeHolds, since(made), made)]).toEqual([slice, [{ ...held, reason }]])
    }
    expect(asked(unmadeHolds, unfit, touched(unfit, 'batches'))).toEqual([])
  })

  it('[S182] is judged as it was begun by the checker that is asked of all else', () => {
    const after = buildWith(running(ready(send(noPeanut))), '1A', { state: 'making' })
    const before = { ...touched(after, 'tickets'), backups: {} }
    const checker: Checker = (kitchen) => {
      if (kitchen === kitchenOf(before)) throw new Error('no answer')
      return { level: 'ok', findings: [], fromBackup: [] }
    }
    expect(asked(unmadeHolds, before, after)).toEqual([])
    expect(asked(unmadeHolds, before, after, [], { checker })).toEqual([
      { ...held, letter: 'A', reason: 'contact' },
    ])
  })
})

describe('food that was handed over and is to become something else', () => {
  const hold = { reason: 'need', at: 1, told: null } as const
  const stop = { reason: 'change', at: 1, to } as const
  const finding = (over: Partial<Build>): RunningState => ({
    ...buildWith(buildWith(unfit, '1A', { state: 'handed-over' }), '1B', { hold, stop, ...over }),
    toFind: { '1B': { ticket: 1, letter: 'B', reason: 'need', at: 1 } },
  })

  it('[S98] is held where that no longer fits, by its own letter', () => {
    const dropped = { unmade: [{ ...held, dropsChange: true }], made: [] }
    expect(askedOf(finding({ state: 'handed-over' }))).toEqual(dropped)
    expect(askedOf(finding({ state: 'handed-over', stop: { ...stop, to: null } }))).toEqual({
      unmade: [],
      made: [],
    })
    // As an open one it is found among the others.
    expect(askedOf(finding({ state: 'made' }))).toEqual(dropped)
  })
})

describe('the reason of a hold', () => {
  const reasonOf = (...whys: InTheWay['why'][]) =>
    holdReason(
      { before: sent, after: sent },
      to,
      whys.map((why) => ({ why }) as InTheWay),
    )

  it.each(['contains', 'unknown', 'may-contain'] as const)(
    '[S88] is the label where that says it of the food itself: %s',
    (why) => {
      expect(reasonOf(why)).toBe('label')
      expect(reasonOf('contact', why)).toBe('label')
      expect(reasonOf(why, 'soiled')).toBe('label')
    },
  )

  it('[S88] is contact for all else, also where nobody can say', () => {
    expect(reasonOf('contact', 'soiled', 'contact-unknown')).toBe('contact')
    expect(holdReason({ before: sent, after: sent }, to, null)).toBe('contact')
  })

  it('[S88] is the need that its guest told, then a label that changed', () => {
    const change = { before: sent, after: { ...sent, station: { ...sent.station } } }
    expect(holdReason(change, { ...to, told: true }, null)).toBe('need')
    expect(holdReason(change, to, null)).toBe('label')
    const ofContact = { before: sent, after: unfit }
    expect(holdReason(ofContact, to, null)).toBe('contact')
    expect(holdReason(ofContact, { ...to, told: true }, null)).toBe('need')
  })
})

describe('food of a guest who wasn’t sure', () => {
  it('[S74] is held for that need once its ticket changes', () => {
    const after = buildWith(sent, '1B', { choice: { ...to.choice, asked: 'not-sure' } })
    const need = { ...held, reason: 'need' }
    expect(asked(unsureHolds, touched(after, 'tickets'), after)).toEqual([need])
    expect(asked(unsureHolds, touched(after, 'past'), after)).toEqual([])
    expect(asked(unsureHolds, touched(sent, 'tickets'), sent)).toEqual([])
  })
})
