import { describe, expect, it } from 'vitest'
import type { Build } from '#lib/service/state.ts'
import { remadeUnread } from '#lib/spine/consequences/remade-unread.ts'
import { asked, buildWith } from '#tests/support/happened.ts'
import { newerLabels } from '#tests/support/newer-labels.ts'
import { buildIn, choose, needs, ready, running, send } from '#tests/support/service.ts'

const told = ready(
  send(
    choose('bean-and-pepper', {}, needs({ code: 'peanut', handling: 'leave-out', reason: null })),
  ),
)
const sent = running(told)
const { choice } = buildIn(told, '1A')
const old = { newestLabels: newerLabels(sent) }
const again = (over: Partial<Build> = {}, known: Parameters<typeof asked>[4] = old, was = 0) =>
  asked(
    remadeUnread,
    buildWith(sent, '1A', { remakes: was }),
    buildWith(sent, '1A', { remakes: 1, ...over }),
    [],
    known,
  )

describe('what is made again with labels older than the newest', () => {
  it('[S89] is held for its label, or for the need that its guest told late', () => {
    const held = { type: 'buildHeld', ticket: 1, letter: 'A', reason: 'label' }
    expect(again()).toEqual([held])
    expect(again({ told: true })).toEqual([{ ...held, reason: 'need' }])
    expect(again({}, { newestLabels: null })).toEqual([held])
  })

  it('[S89] goes on with the newest ones, where it isn’t made again, and where nothing was asked', () => {
    expect(again({}, { newestLabels: {} })).toEqual([])
    expect(again({}, old, 1)).toEqual([])
    expect(again({}, old, 2)).toEqual([])
    expect(again({ state: 'making' })).toEqual([])
    expect(again({ choice: { ...choice, needs: [] } })).toEqual([])
    expect(again({ hold: { reason: 'contact', at: 1, told: null } })).toEqual([])
    const before = { ...sent, tickets: {} }
    expect(asked(remadeUnread, before, buildWith(sent, '1A', { remakes: 1 }), [], old)).toEqual([])
  })
})
