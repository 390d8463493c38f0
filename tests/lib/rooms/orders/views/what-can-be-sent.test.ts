import { describe, expect, it } from 'vitest'
import { EMPTY_DRAFT, settle } from '#lib/rooms/orders/facts/draft.ts'
import { offerFor, standingOf } from '#lib/rooms/orders/facts/offer.ts'
import { itemRows } from '#lib/rooms/orders/views/counter.ts'
import { IDLE, settleAll } from '#lib/rooms/orders/views/ordering.ts'
import { endsIn, sellingNow } from '#lib/rooms/pans/facts/selling.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import { at, minute, read, readAll, until, whenAt } from '#tests/support/food.ts'
import {
  backupReady,
  choose,
  codeOf,
  type Given,
  given,
  needs,
  refusalOf,
  running,
  send,
  type Told,
} from '#tests/support/service.ts'

const clock: Given = {
  type: 'startTimeClock',
  what: 'pan',
  id: 'pan-tuna',
  leftAt: minute(10),
  from: 'cold',
  rule: '4h',
  ...read(40, { at: minute(9) }),
}
const timed = at(given(), 12, clock)
/** Tuna is thrown out at minute 250; the other pans were read. */
const late = at(at(timed, 95, ...readAll(timed)), 195, ...readAll(timed))

const sold = (told: Told, minutes: number, builds: number) =>
  sellingNow(running(until(told, minutes)), builds, minute(minutes))

const leftOf = (told: Told, minutes: number, builds = 1) => {
  const offer = offerFor(sold(told, minutes, builds), [])
  return itemRows(offer, EMPTY_DRAFT).find(({ item }) => item.id === 'harbor-tuna')
}

describe('what is left at the counter', () => {
  it('[S94] is what could be sent now, whenever it is asked and for however many builds', () => {
    const seen = new Set<boolean>()
    for (const minutes of [196, 240, 244, 246, 247, 247.5, 248, 248.5, 249, 249.9])
      for (const builds of [1, 2, 3, 5]) {
        const isLeft = (leftOf(late, minutes, builds)?.left ?? 0) >= builds
        const order = Array.from({ length: builds }, () => choose('harbor-tuna'))
        const isTaken = codeOf(whenAt(late, minutes, send(...order))) === null
        expect([minutes, builds, isLeft]).toEqual([minutes, builds, isTaken])
        seen.add(isTaken)
      }
    expect([...seen].sort()).toEqual([false, true])
  })

  it('[S94] waits with the queue: what others wait for ends it earlier', () => {
    const queue = Array.from({ length: 6 }, () => choose('garden-chicken'))
    const busy = at(late, 240, send(...queue))
    expect(leftOf(late, 246)?.left).toBe(16)
    expect(leftOf(busy, 246)?.left).toBe(0)
    expect(codeOf(whenAt(busy, 246, send(choose('harbor-tuna'))))).toBe('past-throw-out-by-then')
  })

  it('[S94] says when it ends, and doesn’t call it run out', () => {
    const selling = sold(late, 249, 1)
    const offer = offerFor(selling, [])
    const standing = { kind: 'not-selling', endsAt: minute(250) }
    expect(standingOf(offer, 'tuna')).toEqual(standing)
    expect(leftOf(late, 249)?.blocked).toEqual({ component: 'tuna', standing })
  })

  it('[S94] of an accepted build stays its own when it is changed', () => {
    const sent = at(late, 240, send(choose('harbor-tuna')))
    const build = sent.state.tickets.t1?.builds[0]
    const offer = offerFor(sold(sent, 249, 1), [], undefined, build)
    expect(standingOf(offer, 'tuna')).toMatchObject({ kind: 'free', left: 1 })
    const to = choose('harbor-tuna', { slaw: 'no' })
    const change: Given = { type: 'change', ticket: 1, letter: 'A', to, readBack: true }
    expect(codeOf(whenAt(sent, 249, change))).toBeNull()
  })

  it('[S94] is what the protected back-up pan holds for who takes from it', () => {
    const wheat = needs({ code: 'wheat', handling: 'keep-apart', reason: 'allergy' })
    const few = given({ type: 'signOn' }, backupReady('rice', 1), backupReady('chicken'))
    const state = running(few)
    const offer = offerFor(state, wheat.needs)
    const draft = { ...EMPTY_DRAFT, ...wheat, agreed: null, item: 'garden-chicken' }
    const settled = settle(offer, draft)
    expect(settled?.fromBackup).toContain('rice')
    expect(standingOf(offer, 'rice')).toMatchObject({ kind: 'free', left: 1, fromBackup: true })
    const [first, second] = settleAll({ ...IDLE, drafts: [draft, draft] }, state)
    expect(first?.settled?.blocked).toBeNull()
    expect(second?.settled?.blocked).not.toBeNull()
    const choice = (one: typeof first): BuildChoice | null =>
      one?.settled ? { ...one.settled.choice, agreed: true } : null
    const one = choice(first)
    if (!one) throw new Error('nothing fits')
    expect(codeOf(whenAt(few, 5, send(one)))).toBeNull()
    expect(refusalOf(whenAt(few, 5, send(one, one)))).toEqual({
      code: 'sold-out',
      component: 'rice',
    })
  })

  it('[S97] is of the same state while all lasts, and of one for the same food', () => {
    const state = running(until(late, 200))
    expect(sellingNow(state, 1, minute(200))).toBe(state)
    const ending = sellingNow(state, 1, minute(249))
    expect(ending.ending).toEqual({ 'pan/pan-tuna': minute(250) })
    expect(sellingNow(state, 1, minute(249.5))).toBe(ending)
  })

  it('[S97] is known to change in so long, and not before', () => {
    const state = running(until(late, 200))
    const wait = endsIn(state, 1, minute(200))
    if (wait === null) throw new Error('nothing ends')
    expect(sellingNow(state, 1, minute(200) + wait - 1)).toBe(state)
    expect(sellingNow(state, 1, minute(200) + wait)).not.toBe(state)
    expect(wait).toBeLessThan(50 * 60_000)
  })
})
