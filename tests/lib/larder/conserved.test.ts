import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { LarderCommand } from '#lib/larder/command.ts'
import { decideLarder } from '#lib/larder/decide.ts'
import { larderFallsDue } from '#lib/larder/due.ts'
import type { LarderEvent, LarderRecorded } from '#lib/larder/event.ts'
import { evolveLarder } from '#lib/larder/evolve.ts'
import { lotGuards } from '#lib/larder/guards.ts'
import { EMPTY_LARDER, type LarderState, type LotFood } from '#lib/larder/lot.ts'
import { lotTakeProblem } from '#lib/larder/take.ts'
import { stampOf } from '#lib/safety/date-marks.ts'
import { HOUR_MS, MINUTE_MS } from '#lib/safety/limits.ts'
import { coldRice, coolingRice } from '#tests/support/larder.ts'
import { at, degrees, read } from '#tests/support/readings.ts'

type Move =
  | {
      readonly do: 'set-aside'
      readonly lot: string
      readonly amount: number
      readonly cools: boolean
      readonly last: number
    }
  | { readonly do: 'take'; readonly lot: string; readonly amount: number; readonly why: boolean }
  | { readonly do: 'ask'; readonly command: LarderCommand }
  | { readonly do: 'wait'; readonly ms: number }

const lot = fc.constantFrom('a', 'b', 'c')
const initials = fc.constantFrom('KT', undefined)

const command: fc.Arbitrary<LarderCommand> = fc.oneof(
  fc.record({
    type: fc.constant('readLot' as const),
    lot,
    initials,
    reading: fc.integer({ min: 30, max: 80 }).map((value) => ({
      ...degrees(value),
      probe: 'probe 1',
      where: 'thickest-part' as const,
    })),
  }),
  fc.record({ type: fc.constantFrom('freezeLot' as const, 'thawLot' as const), lot, initials }),
  fc.record({ type: fc.constantFrom('anotherTookLot' as const, 'lotIsBack' as const), lot }),
  fc.record({
    type: fc.constant('throwOutLot' as const),
    lot,
    initials,
    reason: fc.constant('other' as const),
  }),
)

const amount = fc.integer({ min: 1, max: 3_000_000 })

const move: fc.Arbitrary<Move> = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      do: fc.constant('set-aside' as const),
      lot,
      amount,
      cools: fc.boolean(),
      last: fc.integer({ min: 1, max: 9 }),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constant('take' as const),
      lot,
      amount: fc.oneof(fc.integer({ min: 1, max: 9 }), amount),
      why: fc.boolean(),
    }),
  },
  { weight: 4, arbitrary: fc.record({ do: fc.constant('ask' as const), command }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('wait' as const),
      ms: fc.constantFrom(MINUTE_MS, MINUTE_MS, HOUR_MS, 20 * HOUR_MS),
    }),
  },
)

interface Told {
  readonly recorded: readonly LarderRecorded[]
  readonly state: LarderState
}

const foodFor = (cools: boolean, last: number, now: number): LotFood => {
  const dateMark = stampOf(`2026-10-0${last}`, 'UTC')
  const start = now - MINUTE_MS
  return cools
    ? coolingRice('14:00', { dateMark, cooling: [read(140, start)], startedAt: start })
    : coldRice({ dateMark, readings: [read(39, start)] })
}

const played = (moves: readonly Move[]): Told => {
  let now = at('14:00')
  let state = EMPTY_LARDER
  const recorded: LarderRecorded[] = []
  const happen = (event: LarderEvent) => {
    const stamped: LarderRecorded = {
      ...event,
      at: now,
      position: state.position + 1,
      command: null,
    }
    state = evolveLarder(state, stamped)
    recorded.push(stamped)
  }
  for (const one of moves) {
    const fell = larderFallsDue(state, now)
    state = fell.state
    recorded.push(...fell.recorded)
    if (one.do === 'wait') now += one.ms
    if (one.do === 'set-aside') {
      const event: LarderEvent = {
        type: 'lotSetAside',
        lot: one.lot,
        amount: one.amount,
        food: foodFor(one.cools, one.last, now),
      }
      try {
        happen(event)
      } catch {
        // Its id is known: it isn't set aside.
      }
    }
    if (
      one.do === 'take' &&
      lotTakeProblem(state, one.lot, { amount: one.amount, now, saysWhy: one.why }) === null
    )
      happen({
        type: 'lotTaken',
        lot: one.lot,
        amount: one.amount,
        by: { service: 's', station: 'line', batch: 'b' },
      })
    if (one.do === 'ask') {
      const decided = decideLarder(state, one.command, now)
      if ('events' in decided) for (const event of decided.events) happen(event)
    }
  }
  return { recorded, state }
}

/** What came into a lot and what went out of it, added up by hand over the events. */
const balance = (recorded: readonly LarderRecorded[], id: string): number => {
  let left = 0
  let went = 0
  for (const event of recorded) {
    if (!('lot' in event) || event.lot !== id) continue
    if (event.type === 'lotSetAside') left += event.amount
    if (event.type === 'lotTaken' || event.type === 'lotThrownOut') left -= event.amount
    if (event.type === 'lotGone') {
      left -= event.amount
      went = event.amount
    }
    if (event.type === 'lotBack') left += went
  }
  return left
}

const runs = fc.array(move, { minLength: 20, maxLength: 60, size: 'max' })
const ids = ['a', 'b', 'c']

describe('whatever is done in a larder', () => {
  it('[LA2] what was set aside is left, taken, thrown out or gone, to the milligram', () => {
    let moved = 0
    fc.assert(
      fc.property(runs, (moves) => {
        const { recorded, state } = played(moves)
        for (const id of ids) expect(state.lots[id]?.amount ?? 0).toBe(balance(recorded, id))
        moved += recorded.filter(({ type }) => type === 'lotTaken' || type === 'lotBack').length
      }),
      { seed: 15, numRuns: 300 },
    )
    expect(moved).toBeGreaterThan(300)
  })

  it('[LA1] [LA3] no lot comes twice, and nothing is taken of one that is gone', () => {
    fc.assert(
      fc.property(runs, (moves) => {
        const { recorded } = played(moves)
        for (const id of ids) {
          const own = recorded.filter((one) => 'lot' in one && one.lot === id)
          expect(own.filter(({ type }) => type === 'lotSetAside').length).toBeLessThanOrEqual(1)
          own.forEach((one, index) => {
            if (one.type === 'lotTaken')
              expect(balance(own.slice(0, index), id)).toBeGreaterThanOrEqual(one.amount)
          })
        }
      }),
      { seed: 16, numRuns: 300 },
    )
  })

  it('[LA4] nothing is taken past its date, past a missed stage, or read out of its limits', () => {
    fc.assert(
      fc.property(runs, (moves) => {
        const dates = new Map<string, number | null>()
        const bad = new Set<string>()
        for (const one of played(moves).recorded) {
          if (one.type === 'lotSetAside') dates.set(one.lot, one.food.dateMark?.endsAt ?? null)
          if (one.type === 'lotFrozen') dates.set(one.lot, null)
          if (one.type === 'lotThawed') dates.set(one.lot, one.dateMark.endsAt)
          if (one.type === 'lotCoolingMissed' || (one.type === 'lotRead' && one.result === 'out'))
            bad.add(one.lot)
          if (one.type !== 'lotTaken') continue
          expect(one.at).toBeLessThan(dates.get(one.lot) ?? Number.POSITIVE_INFINITY)
          expect(bad.has(one.lot)).toBe(false)
        }
      }),
      { seed: 17, numRuns: 300 },
    )
  })

  it('[LA11] each change of a lot’s amount has a version of its own, one after the other', () => {
    fc.assert(
      fc.property(runs, (moves) => {
        const { recorded } = played(moves)
        const seen = new Map<string, number>()
        for (const { key, expected } of lotGuards(EMPTY_LARDER, recorded)) {
          expect(expected).toBe(seen.get(key) ?? 0)
          seen.set(key, expected + 1)
        }
        const changes = recorded.filter(({ type }) =>
          ['lotSetAside', 'lotTaken', 'lotThrownOut', 'lotGone', 'lotBack'].includes(type),
        )
        expect([...seen.values()].reduce((sum, one) => sum + one, 0)).toBe(changes.length)
      }),
      { seed: 18, numRuns: 200 },
    )
  })
})
