import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { judgeTaken } from '#lib/needs/judge.ts'
import { kitchenOf } from '#lib/rooms/care/facts/kitchen-of.ts'
import { behindOf, owedBehind, wantedFrom } from '#lib/rooms/pans/facts/behind.ts'
import { levelOf } from '#lib/rooms/pans/facts/levels.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import {
  type Amounts,
  type BuildChoice,
  takenComponents,
} from '#lib/service/events/build-choice.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import { componentIn } from '#lib/service/held-stock.ts'
import { beyond, keptBy } from '#lib/service/reserved.ts'
import type { Role } from '#lib/service/roles.ts'
import { type Build, NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { findBuild, openBuilds } from '#lib/service/tickets.ts'
import { evolve } from '#lib/spine/evolve.ts'
import type { CommandType } from '#lib/spine/registry.ts'
import { history } from '#tests/support/histories.ts'
import {
  codeOf,
  eventsOf,
  type Given,
  happening,
  running,
  type Told,
  when,
} from '#tests/support/service.ts'
import { components, opened, type Step, stationWithSpares } from '#tests/support/spare-station.ts'
import { free, held } from '#tests/support/stock-sums.ts'
import { isShort, stretched } from '#tests/support/stretch.ts'

const RUNS = { numRuns: stretched(900), seed: 20_261_125 }

interface Happened {
  readonly by: Role
  readonly command: Given
  readonly before: Told
  readonly events: readonly ServiceEvent[]
  readonly after: Told
}

interface Lived {
  readonly happened: readonly Happened[]
  readonly refused: readonly string[]
  readonly end: Told
}

const live = (steps: readonly Step[]): Lived => {
  const happened: Happened[] = []
  const refused: string[] = []
  let before = opened()
  for (const step of steps) {
    const command = step(before.state)
    // What only the person in charge may do happens as well; changes are the counter's now and then.
    const by: Role =
      command.type === 'change' && happened.length % 2 === 0 ? 'counter' : 'in-charge'
    const decision = when(before, command, { by })
    const code = codeOf(decision)
    if (code !== null) {
      refused.push(code)
      continue
    }
    const events = eventsOf(decision)
    const after = happening(before, events)
    happened.push({ by, command, before, events, after })
    before = after
  }
  return { happened, refused, end: before }
}

/** Lived once; each rule looks at all of them. */
const histories: readonly Lived[] = fc.sample(history, RUNS).map(live)

const always = (
  look: (happened: Happened) => void,
  end: (told: Told) => void = () => undefined,
): void => {
  for (const lived of histories) {
    for (const [index, one] of lived.happened.entries())
      try {
        look(one)
      } catch (problem) {
        const story = lived.happened.slice(0, index + 1).map(({ command }) => command)
        throw new Error(`after ${JSON.stringify(story)}`, { cause: problem })
      }
    end(lived.end)
  }
}

/** What an open build keeps others from selling: nothing once it is made. */
const owed = (build: Build, component: string): number => {
  if (build.state !== 'waiting' && build.state !== 'making') return 0
  return Math.max(build.takes[component] ?? 0, build.stop?.to?.takes[component] ?? 0)
}

const amountsIn = ({ accounts, pans, backupPans }: ServiceState): readonly number[] => [
  ...Object.values(accounts).flatMap((account) => Object.values(account)),
  ...[...Object.values(pans), ...Object.values(backupPans)].flatMap(
    ({ amount, full, load, counted }) => [amount, full, load, counted],
  ),
]

const takesBefore = ({ state }: Told, ticket: number, letter: string): Amounts => {
  const build = findBuild(state, ticket, letter)
  return build ? keptBy(build) : {}
}

const allBuilds = ({ state }: Told): readonly Build[] =>
  [...Object.values(state.past), state.tickets]
    .flatMap((one) => Object.values(one))
    .flatMap((ticket) => ticket.builds)

describe('whatever is commanded', () => {
  const count = (names: readonly string[]): ReadonlyMap<string, number> => {
    const counts = new Map<string, number>()
    for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1)
    return counts
  }
  const accepted = count(
    histories.flatMap((lived) => lived.happened.map(({ command }) => command.type)),
  )
  const refused = count(histories.flatMap((lived) => lived.refused))

  it.skipIf(isShort)(
    'the histories are worth it: each kind of command is accepted in them, and nonsense refused',
    () => {
      const often: CommandType[] = [
        ...(['readTemperature', 'resolveOffSale', 'throwOut', 'topUp', 'missScoop'] as const),
        ...(['load', 'changePan', 'correct', 'send', 'change', 'cancel', 'acknowledge'] as const),
        ...(['start', 'finish', 'takeBack', 'remake', 'handOver', 'pay', 'scoopBack'] as const),
        ...(['stopSelling', 'resumeSelling', 'signOn', 'signOff', 'acceptCaution'] as const),
        ...(['tellNeed', 'changeLabel', 'notSameProduct', 'soilPan', 'setBackup'] as const),
      ]
      for (const type of often) expect(accepted.get(type) ?? 0, type).toBeGreaterThan(20)
      expect(histories.some(({ end }) => Object.keys(end.state.lent).length > 0)).toBe(true)
      const events = histories.flatMap(({ end }) => end.events)
      expect(events.filter((one) => 'was' in one && one.was === 'slip').length).toBeGreaterThan(5)
      for (const code of [
        'sold-out',
        'short',
        'wrong-state',
        'build-stopped',
        'absurd-amount',
        'absurd-portions',
        'contains',
        'unknown item',
        'unknown need',
        'caution',
        'no-one-in-charge',
        ...(['not-agreed', 'not-read-back', 'not-asked', 'say-what-was-put-in'] as const),
        'build-held',
        'made-food-is-waste',
        'pan-soiled',
        'need-dropped',
      ])
        expect(refused.get(code) ?? 0, code).toBeGreaterThan(10)
    },
  )

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
        const split = (choice: BuildChoice, more: Amounts) =>
          wantedFrom(running(before), choice, more)
        const wanted =
          event.type === 'ticketSent'
            ? event.builds.map((build) => split(build.choice, build.takes))
            : (event.type === 'buildChanged' || event.type === 'buildStopped') && event.to
              ? [
                  split(
                    event.to.choice,
                    beyond(takesBefore(before, event.ticket, event.letter), event.to.takes),
                  ),
                ]
              : []
        const state = running(after)
        for (const id of wanted.flatMap(({ line }) => Object.keys(line)))
          expect(levelOf(state, id).remaining, id).toBeGreaterThanOrEqual(0)
        for (const id of wanted.flatMap(({ behind }) => Object.keys(behind)))
          expect(behindOf(state, id) - owedBehind(state, id), id).toBeGreaterThanOrEqual(0)
      }
    })
  })

  it('[K10] pans hold whole amounts, never less than nothing, and nobody is owed less than nothing', () => {
    const isWhole = (amount: number) => Number.isSafeInteger(amount) && !Object.is(amount, -0)
    always(({ after: { state } }) => {
      const least = [
        ...Object.values(state.pans).map((pan) => pan.amount),
        ...Object.values(state.backupPans).map((pan) => pan.amount),
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
          const component = componentIn(stationWithSpares, pan) ?? ''
          sums[component] = (sums[component] ?? 0) + amount
          const there = before.state.pans[pan] ?? before.state.backupPans[pan]
          expect(amount).toBeLessThanOrEqual(there?.amount ?? 0)
        }
        expect(sums).toEqual(findBuild(before.state, event.ticket, event.letter)?.takes)
      }
    })
  })

  it('[K12] builds are short exactly where more is on tickets than in the pans', () => {
    always(({ after }) => {
      const state = running(after)
      const isOwed = components.some(
        (id) => levelOf(state, id).remaining < 0 || owedBehind(state, id) > behindOf(state, id),
      )
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
          expect(free(running(after), id) - free(running(before), id)).toBe(keptBy(build)[id] ?? 0)
        expect(
          codeOf(when(after, { type: 'cancel', ticket: event.ticket, letter: event.letter })),
        ).toBe('wrong-state')
      }
    })
  })

  it('[S75] a held build is never started, finished or handed over', () => {
    let held = 0
    always(({ events, before }) => {
      held += allBuilds(before).filter((build) => build.hold).length
      for (const event of events)
        if (
          event.type === 'buildStarted' ||
          event.type === 'buildFinished' ||
          event.type === 'buildHandedOver'
        )
          expect(findBuild(before.state, event.ticket, event.letter)?.hold).toBeNull()
    })
    if (!isShort) expect(held).toBeGreaterThan(500)
  })

  it('[S66] no build is accepted of which anything that is taken is ruled out or not accepted', () => {
    let looked = 0
    always(({ events, before }) => {
      const accepted = events.flatMap((event) => {
        if (event.type === 'ticketSent') return event.builds
        return (event.type === 'buildChanged' || event.type === 'buildStopped') && event.to
          ? [event.to]
          : []
      })
      for (const { choice } of accepted) {
        if (choice.needs.length === 0) continue
        looked += 1
        const state = running(before)
        const { findings } = judgeTaken(kitchenOf(state), takenComponents(choice), choice.needs)
        expect(findings.filter((one) => one.level === 'no')).toEqual([])
        const wanting = findings.filter((one) => one.level === 'caution' || one.level === 'ask')
        const { findings: accepted = [], item } = state.cautions[`c${choice.caution}`] ?? {}
        expect(wanting.length === 0 || item === choice.item).toBe(true)
        for (const { component, need, why, touches, reached } of wanting) {
          const told = accepted.find(
            (one) => one.component === component && one.need === need && one.why === why,
          )
          expect(told?.touches).toBe(touches)
          expect(told?.reached).toEqual(expect.arrayContaining([...reached]))
        }
      }
    })
    if (!isShort) expect(looked).toBeGreaterThan(300)
  })

  it('[S80] whatever goes on fits its guest, after every label, scoop and back-up', () => {
    always(({ after }) => {
      const state = running(after)
      for (const { build } of openBuilds(state)) {
        const { hold, stop, choice } = build
        if (hold || stop?.reason === 'cancel') continue
        const goesOn = stop?.to?.choice ?? choice
        const { findings } = judgeTaken(kitchenOf(state), takenComponents(goesOn), goesOn.needs)
        expect(findings.filter((one) => one.level === 'no')).toEqual([])
      }
    })
  })

  it('[S71] an acceptance is of one build', () => {
    always(({ after }) => {
      const used = Object.values(after.state.cautions).map((one) => one.build)
      for (const build of allBuilds(after)) {
        const number = build.choice.caution
        const acceptance = after.state.cautions[`c${number}`]
        if (acceptance) expect(acceptance.build?.endsWith(build.letter)).toBe(true)
      }
      const carried = allBuilds(after).flatMap(({ choice }) => choice.caution ?? [])
      expect(new Set(carried).size).toBe(carried.length)
      expect(used.length).toBeLessThan(after.state.nextCaution)
    })
  })

  it('[S83] what a guest said is taken back by nobody but the person in charge', () => {
    let looked = 0
    always(({ by, events, before }) => {
      for (const event of events) {
        const to = event.type === 'buildChanged' || event.type === 'buildStopped' ? event.to : null
        if (event.type !== 'buildChanged' && event.type !== 'buildStopped') continue
        const build = findBuild(before.state, event.ticket, event.letter)
        if (by === 'in-charge' || !to || !build) continue
        const said = [
          ...(build.stop?.to ? [] : build.choice.needs),
          ...(build.hold?.told?.needs ?? []),
        ]
        looked += said.length
        for (const { code, handling } of said) {
          const kept = to.choice.needs.find((one) => one.code === code)
          expect(kept?.handling).toMatch(handling === 'keep-apart' ? /^keep-apart$/ : /./)
        }
      }
    })
    if (!isShort) expect(looked).toBeGreaterThan(20)
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
