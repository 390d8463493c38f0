import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Amounts } from '#lib/service/build-choice.ts'
import type { CommandType } from '#lib/service/command-type.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import { evolve } from '#lib/service/evolve.ts'
import { beyond } from '#lib/service/evolve-build.ts'
import { type Build, NOT_OPENED, type RunningState, type ServiceState } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { findBuild, openBuilds } from '#lib/service/tickets.ts'
import { levelOf } from '#lib/stock/levels.ts'
import { shortBuilds } from '#lib/stock/short.ts'
import { history, type Step, stationWithSpares } from '#tests/support/histories.ts'
import {
  codeOf,
  eventsOf,
  type Given,
  happening,
  NOTHING,
  ofPortions,
  onward,
  running,
  type Told,
  when,
} from '#tests/support/service.ts'

const RUNS = { numRuns: 300, seed: 20_261_125, endOnFailure: false }
const components = stationWithSpares.components.map((one) => one.id)

const opened = (): Told => {
  const station = () => ({ revision: 1, document: stationWithSpares })
  const open: Given = { type: 'open', station: 'alder-hall', kind: 'real' }
  const told = happening(NOTHING, eventsOf(when(NOTHING, open, { station })))
  return stationWithSpares.line.wells
    .flatMap((well) => well.pans)
    .filter((pan) => !pan.id.endsWith('spare'))
    .reduce(
      (so, pan) => onward(so, { type: 'load', pan: pan.id, amount: ofPortions(pan.component, 6) }),
      told,
    )
}

interface Happened {
  readonly command: Given
  readonly before: Told
  readonly events: readonly ServiceEvent[]
  readonly after: Told
}

/** Runs a history, and shows each command that was accepted. */
const run = (steps: readonly Step[], look: (happened: Happened) => void): Told =>
  steps.reduce((before, step) => {
    const command = step(before.state)
    const decision = when(before, command)
    if ('refusal' in decision) return before
    const after = happening(before, decision.events)
    look({ command, before, events: decision.events, after })
    return after
  }, opened())

const always = (look: (happened: Happened) => void, end: (told: Told) => void = () => undefined) =>
  fc.assert(
    fc.property(history, (steps) => end(run(steps, look))),
    RUNS,
  )

const held = (state: RunningState, component: string): number => levelOf(state, component).inPan

/** What an open build keeps others from selling: nothing once it is made. */
const owed = (build: Build, component: string): number => {
  if (build.state !== 'waiting' && build.state !== 'making') return 0
  const more = build.stop?.to ? beyond(build.takes, build.stop.to.takes) : {}
  return (build.takes[component] ?? 0) + (more[component] ?? 0)
}

const amountsIn = ({ accounts, pans }: ServiceState): readonly number[] => [
  ...Object.values(accounts).flatMap((account) => Object.values(account)),
  ...Object.values(pans).flatMap((pan) => Object.values(pan)),
]

describe('whatever is commanded', () => {
  const accepted = new Map<string, number>()
  const refused = new Map<string, number>()

  beforeAll(() => {
    fc.assert(
      fc.property(history, (steps) => {
        steps.reduce((before, step) => {
          const command = step(before.state)
          const decision = when(before, command)
          const code = codeOf(decision)
          if (code === null) {
            accepted.set(command.type, (accepted.get(command.type) ?? 0) + 1)
            return happening(before, eventsOf(decision))
          }
          refused.set(code, (refused.get(code) ?? 0) + 1)
          return before
        }, opened())
      }),
      RUNS,
    )
  })

  it('the histories are worth it: each kind of command is accepted in them, and nonsense refused', () => {
    const often: CommandType[] = [
      ...(['load', 'changePan', 'correct', 'send', 'change', 'cancel', 'acknowledge'] as const),
      ...(['start', 'finish', 'takeBack', 'remake', 'handOver', 'pay'] as const),
      ...(['stopSelling', 'resumeSelling'] as const),
    ]
    for (const type of often) expect(accepted.get(type) ?? 0, type).toBeGreaterThan(20)
    for (const code of [
      'sold-out',
      'short',
      'wrong-state',
      'build-stopped',
      'absurd-amount',
      'absurd-portions',
      'contains',
      'no-such-item',
    ])
      expect(refused.get(code) ?? 0, code).toBeGreaterThan(10)
  })

  it('[K7] what was loaded and corrected is in the pans, used, wasted or taken away, to the milligram', () => {
    always(({ after }) => {
      for (const id of components) {
        const account = after.state.accounts[id]
        if (!account) throw new Error(`no account of ${id}`)
        const { loaded, corrected, used, wasted, takenAway } = account
        expect(loaded + corrected).toBe(held(running(after), id) + used + wasted + takenAway)
      }
    })
  })

  it('[K8] on tickets is what the builds take that are waiting or in the making, and what a stop holds beyond', () => {
    always(({ after }) => {
      const builds = openBuilds(after.state).map(({ build }) => build)
      for (const id of components)
        expect(after.state.accounts[id]?.onTickets).toBe(
          builds.reduce((sum, build) => sum + owed(build, id), 0),
        )
    })
  })

  it('[K9] nothing is oversold: what an accepted order takes more of, there was', () => {
    always(({ events, before, after }) => {
      for (const event of events) {
        const wanted: Amounts[] =
          event.type === 'ticketSent'
            ? event.builds.map((build) => build.takes)
            : event.type === 'buildChanged' || (event.type === 'buildStopped' && event.to)
              ? [
                  beyond(
                    findBuild(before.state, event.ticket, event.letter)?.takes ?? {},
                    event.to?.takes ?? {},
                  ),
                ]
              : []
        for (const id of wanted.flatMap((one) => Object.keys(one)))
          expect(levelOf(running(after), id).remaining, id).toBeGreaterThanOrEqual(0)
      }
    })
  })

  it('[K10] pans hold whole amounts, never less than nothing, and nobody is owed less than nothing', () => {
    const isWhole = (amount: number) => Number.isSafeInteger(amount) && !Object.is(amount, -0)
    always(({ after: { state } }) => {
      const least = [
        ...Object.values(state.pans).map((pan) => pan.amount),
        ...Object.values(state.accounts).flatMap((one) => [
          ...[one.onTickets, one.used, one.wasted, one.loaded, one.takenAway],
        ]),
      ]
      expect(amountsIn(state).every(isWhole)).toBe(true)
      expect(Math.min(...least)).toBeGreaterThanOrEqual(0)
    })
  })

  it('[K11] a finished build took exactly what it takes, out of pans of that component', () => {
    always(({ events, before }) => {
      for (const event of events) {
        if (event.type !== 'buildFinished') continue
        const sums: Record<string, number> = { ...event.uncounted }
        for (const { pan, amount } of event.took) {
          const component =
            stationWithSpares.line.wells.flatMap((well) => well.pans).find((one) => one.id === pan)
              ?.component ?? ''
          sums[component] = (sums[component] ?? 0) + amount
          expect(amount).toBeLessThanOrEqual(before.state.pans[pan]?.amount ?? 0)
        }
        expect(sums).toEqual(findBuild(before.state, event.ticket, event.letter)?.takes)
      }
    })
  })

  it('[K12] builds are short exactly where more is on tickets than in the pans', () => {
    always(({ after }) => {
      const state = running(after)
      const isOwed = components.some((id) => levelOf(state, id).remaining < 0)
      expect(shortBuilds(state).size > 0).toBe(isOwed)
    })
  })

  it('[K13] cancelling a waiting build leaves its portions to sell, once', () => {
    always(({ events, before, after }) => {
      for (const event of events) {
        if (event.type !== 'buildCancelled') continue
        const build = findBuild(before.state, event.ticket, event.letter)
        if (build?.state !== 'waiting') continue
        for (const id of components)
          expect(
            levelOf(running(after), id).remaining - levelOf(running(before), id).remaining,
          ).toBe(build.takes[id] ?? 0)
        expect(
          codeOf(when(after, { type: 'cancel', ticket: event.ticket, letter: event.letter })),
        ).toBe('wrong-state')
      }
    })
  })

  it('[S10] the numbers of tickets count up, and none is given twice', () => {
    always(({ events, before, after }) => {
      for (const event of events)
        if (event.type === 'ticketSent')
          expect([event.ticket, after.state.nextTicket]).toEqual([
            before.state.nextTicket,
            event.ticket + 1,
          ])
    })
  })

  it('[S55][S56] reading the events back gives the state that was lived, which is plain JSON, and its hash', () => {
    always(
      () => undefined,
      ({ state, events }) => {
        const written = JSON.stringify(events)
        const readBack = (JSON.parse(written) as typeof events).reduce(evolve, NOT_OPENED)
        expect(readBack).toEqual(state)
        expect(stateHash(readBack)).toBe(stateHash(state))
        expect(JSON.parse(JSON.stringify(state))).toEqual(state)
      },
    )
  })
})
