import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { portionsKept } from '#lib/rooms/pans/facts/kept.ts'
import { supplyOf } from '#lib/rooms/pans/facts/supply.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { keptBy } from '#lib/service/reserved.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'
import { evolve } from '#lib/spine/evolve.ts'
import {
  choice,
  deciding,
  type Given,
  give,
  order,
  panFor,
  portionOf,
  type Stocked,
  stocked,
} from '#tests/support/stock.ts'
import { isShort, stretched } from '#tests/support/stretch.ts'

const SEED = 20_261_125
const component = fc.constantFrom('chicken', 'beans', 'tuna', 'slaw', 'rice')
const item = fc.constantFrom('garden-chicken', 'bean-and-pepper', 'harbor-tuna')
const build = fc.integer({ min: 1, max: 6 }).map((ticket) => ({ ticket, letter: 'A' }))

const command: fc.Arbitrary<Given> = fc.oneof(
  { weight: 6, arbitrary: item.map((id): Given => order(choice(id))) },
  {
    weight: 16,
    arbitrary: fc
      .tuple(
        fc.constantFrom(
          'start',
          'start',
          'finish',
          'finish',
          'cancel',
          'remake',
          'handOver',
          'wait',
        ),
        build,
      )
      .map(([type, of]) => ({ type, ...of }) as Given),
  },
  build.map((of): Given => ({ type: 'takeBack', ...of, made: false })),
  fc
    .tuple(build, item)
    .map(([of, id]): Given => ({ type: 'change', ...of, to: choice(id), readBack: true })),
  build.map((of): Given => ({ type: 'acknowledge', ...of, foodInIt: true })),
  fc
    .tuple(component, fc.integer({ min: 0, max: 4 }))
    .map(([id, quarters]): Given => ({ type: 'correct', pan: panFor(id), quarters })),
  fc.tuple(component, fc.integer({ min: 0, max: 30 }), fc.constantFrom('weighing', 'count')).map(
    ([id, portions, kind]): Given => ({
      type: 'correct',
      pan: panFor(id),
      amount: portions * portionOf(id),
      kind: kind as 'weighing',
    }),
  ),
  fc.tuple(component, fc.integer({ min: 1, max: 6 })).map(
    ([id, portions]): Given => ({
      type: 'waste',
      component: id,
      amount: portions * portionOf(id),
      reason: 'spill',
    }),
  ),
  fc
    .tuple(component, fc.integer({ min: 1, max: 9 }), item)
    .map(([id, portions, whom]): Given => ({ type: 'keep', component: id, portions, for: [whom] })),
  component.map((id): Given => ({ type: 'endKeep', component: id })),
  component.map((id): Given => ({ type: 'wantedGone', component: id })),
  component.map((id): Given => ({ type: 'missScoop', component: id, yes: true })),
  component.map((id): Given => ({ type: 'scoopBack', component: id, washed: true })),
)

const BEGINNING: readonly Given[] = ['garden-chicken', 'harbor-tuna', 'garden-chicken'].map((id) =>
  order(choice(id)),
)

/** What is accepted of these happens, a minute apart. */
const live = (commands: readonly Given[], each: (told: Stocked) => void): Stocked =>
  [...BEGINNING, ...commands].reduce<Stocked>(
    (so, one, index) => {
      const decision = deciding(so, one, { by: 'in-charge' })
      if ('refusal' in decision) return so
      const next = give(so, index + 1, one)
      each(next)
      return next
    },
    stocked({ chicken: 6, beans: 5, tuna: 4, slaw: 8, rice: 12 }),
  )

const histories = fc.array(command, { minLength: 30, maxLength: 90 })
const always = (check: (told: Stocked) => void): void => {
  fc.assert(
    fc.property(histories, (commands) => {
      live(commands, check)
    }),
    { seed: SEED, numRuns: stretched(100) },
  )
}

describe('whatever happens to stock', () => {
  it('[U6] the account of each component adds up', () => {
    always(({ state }) => {
      for (const id of ['chicken', 'beans', 'tuna', 'slaw', 'rice']) {
        const account = state.accounts[id]
        const inPan = state.pans[panFor(id)]?.amount ?? Number.NaN
        if (!account) throw new Error(`no account of ${id}`)
        const { loaded, corrected, used, wasted, takenAway } = account
        expect(loaded + corrected, id).toBe(inPan + used + wasted + takenAway)
        expect(inPan).toBeGreaterThanOrEqual(0)
      }
    })
  })

  it('[U11] what is on tickets is what the open builds keep, whatever the portion is now', () => {
    always(({ state }) => {
      const owed: Record<string, number> = {}
      for (const { build: one } of openBuilds(state))
        for (const [id, amount] of Object.entries(keptBy(one))) owed[id] = (owed[id] ?? 0) + amount
      for (const [id, account] of Object.entries(state.accounts))
        expect(account.onTickets, id).toBe(owed[id] ?? 0)
    })
  })

  it('[U5] beliefs stay numbers that can be, and say what can still be served', () => {
    always(({ state }) => {
      for (const [id, { doubted, ...belief }] of Object.entries(state.beliefs)) {
        for (const value of [...Object.values(belief), doubted?.off ?? 0])
          expect(Number.isFinite(value), id).toBe(true)
        expect(belief.leftVar, id).toBeGreaterThanOrEqual(0)
        expect(belief.biasVar, id).toBeGreaterThanOrEqual(0)
        expect(belief.bias, id).toBeGreaterThan(-1)
        expect(supplyOf(state, id, state.at)?.mean, id).toBeGreaterThanOrEqual(0)
      }
    })
  })

  it('[U8] no more is taken of what is kept than its own orders hold', () => {
    always(({ state }) => {
      for (const keep of Object.values(state.keeps)) {
        expect(keep.taken).toBeGreaterThanOrEqual(0)
        expect(portionsKept(keep)).toBeLessThanOrEqual(keep.portions)
      }
    })
  })

  it('[Z45] demand is never counted below nothing in all', () => {
    always(({ state }) => {
      const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0)
      expect(sum(state.counts.builds)).toBeGreaterThanOrEqual(0)
      for (const list of Object.values(state.counts.takings))
        expect(sum(list)).toBeGreaterThanOrEqual(0)
    })
  })

  it('[S55] what happened is read back to the same state', () => {
    fc.assert(
      fc.property(histories, (commands) => {
        const told = live(commands, () => undefined)
        const events = JSON.parse(JSON.stringify(told.events)) as readonly Recorded[]
        expect(events.reduce<ServiceState>(evolve, NOT_OPENED)).toEqual(told.state)
      }),
      { seed: SEED, numRuns: stretched(60) },
    )
  })

  it.skipIf(isShort)('and each kind of command is accepted somewhere in it', () => {
    const accepted = new Set<string>()
    fc.assert(
      fc.property(histories, (commands) => {
        for (const { type } of live(commands, () => undefined).events) accepted.add(type)
      }),
      { seed: SEED, numRuns: stretched(100) },
    )
    for (const type of [
      ...['wasteRecorded', 'portionsKept', 'keepEnded', 'wantedGone', 'scoopMissed', 'scoopFound'],
      ...['buildWaits', 'countCorrected', 'buildCancelled', 'buildFinished', 'finishTakenBack'],
    ])
      expect([...accepted]).toContain(type)
  })
})
