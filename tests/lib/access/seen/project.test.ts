import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CREW, type CrewRole, isSent, SENT, SIGHTS, sightOf } from '#lib/access/seen/classes.ts'
import { EVENTS, STAMP } from '#lib/access/seen/event-fields.ts'
import { FORECAST } from '#lib/access/seen/forecast-fields.ts'
import { project, projectForecast, projectState } from '#lib/access/seen/project.ts'
import { STATE } from '#lib/access/seen/state-fields.ts'
import type { Recorded } from '#lib/service/events/event.ts'
import { NOT_OPENED, type ServiceState } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import { evolve } from '#lib/spine/evolve.ts'
import {
  type Canary,
  canariesIn,
  canariesOf,
  canaryOf,
  planted,
  plantedIn,
  UNKNOWN,
} from '#tests/support/canaries.ts'
import { living } from '#tests/support/live-history.ts'
import { wholeService } from '#tests/support/moves.ts'
import { root } from '#tests/support/source-tree.ts'
import { stretched } from '#tests/support/stretch.ts'

const TYPES = Object.keys(EVENTS) as Recorded['type'][]
const classedOf = (type: Recorded['type']) => ({ type: 'always', ...EVENTS[type], ...STAMP })

const plantedEvent = (type: Recorded['type']): Recorded =>
  Object.assign(planted(classedOf(type)) as Recorded, { type })

const frozen = (version: number): readonly Recorded[] =>
  readFileSync(join(root, 'fixtures', 'frozen', `v${version}-log.jsonl`), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line): Recorded => JSON.parse(line))

const VERSIONS = [1, 2, 3, 4, 5]

const folded = (log: readonly Recorded[], from: ServiceState = NOT_OPENED): ServiceState =>
  log.reduce((state, event) => evolve(state, event), from)

/** Random whole services, each from a seed of its own. */
const lived = (seed: number): readonly Recorded[] => {
  const [moves = []] = fc.sample(wholeService, { seed, numRuns: 1, unbiased: true })
  let log: readonly Recorded[] = []
  for (const { drive } of living(moves)) log = drive.log()
  return log
}
const SEEDS = Array.from({ length: stretched(24) }, (_, index) => 500 + index)
const services: readonly (readonly Recorded[])[] = SEEDS.map(lived)

const values = (value: unknown, key: string): readonly unknown[] =>
  typeof value !== 'object' || value === null
    ? []
    : Object.entries(value).flatMap(([own, inner]) => [
        ...(own === key ? [inner] : []),
        ...values(inner, key),
      ])

describe('what a role is sent', () => {
  it('[V2] folds to the state that it would be sent, whichever service it is', () => {
    let events = 0
    for (const log of services) {
      events += log.length
      for (const role of SIGHTS.values()) {
        let theirs = NOT_OPENED
        let whole = NOT_OPENED
        for (const event of log) {
          whole = evolve(whole, event)
          theirs = evolve(theirs, JSON.parse(JSON.stringify(project(role, event))))
          if (event.position % 23 === 0 || event.position === log.length)
            expect(stateHash(theirs)).toBe(stateHash(projectState(role, whole)))
        }
      }
    }
    expect(events).toBeGreaterThan(stretched(24) * 20)
    const all = services.flat()
    expect(new Set(all.map(({ type }) => type)).size).toBeGreaterThan(40)
    expect(all.flatMap((one) => values(one, 'reason'))).toContain('allergy')
    expect(all.flatMap((one) => values(one, 'paid'))).toContain(true)
  })

  it.each(VERSIONS)(
    '[V2] folds a log of version %i to the state that it would be sent',
    (version) => {
      const log = frozen(version)
      for (const role of CREW)
        expect(stateHash(folded(log.map((event) => project(role, event))))).toBe(
          stateHash(projectState(role, folded(log))),
        )
    },
  )

  it('[V2] goes on from a state as from the events before it', () => {
    const [log = []] = services
    const half = Math.floor(log.length / 2)
    for (const role of SIGHTS.values()) {
      const from = projectState(role, folded(log.slice(0, half)))
      const rest = log.slice(half).map((event) => project(role, event))
      expect(stateHash(folded(rest, from))).toBe(stateHash(projectState(role, folded(log))))
    }
  })
})

describe('a class that a role isn’t sent', () => {
  const roles = [...SIGHTS.values()]
  const sentOf = (role: CrewRole, canaries: readonly Canary[]): readonly string[] =>
    canaries.filter(({ fieldClass }) => isSent(role, fieldClass)).map(({ path }) => path)
  const sorted = (paths: readonly string[]): readonly string[] => [...paths].sort()

  it.each(TYPES)('[V3] is nowhere in %s, and all else is', (type) => {
    const event = plantedEvent(type)
    const canaries = canariesOf(classedOf(type)).filter(({ path }) => path !== 'type')
    for (const role of roles)
      expect(sorted(canariesIn(project(role, event)))).toEqual(sorted(sentOf(role, canaries)))
  })

  it('[V3] is nowhere in a state or a forecast, and all else is', () => {
    for (const role of roles) {
      const state = projectState(role, planted(STATE) as ServiceState)
      expect(sorted(canariesIn(state))).toEqual(sorted(sentOf(role, canariesOf(STATE))))
      const forecast = projectForecast(role, planted(FORECAST) as never)
      expect(sorted(canariesIn(forecast))).toEqual(sorted(sentOf(role, canariesOf(FORECAST))))
    }
  })

  it('[V3] is nowhere in what really happened, wherever it was', () => {
    const seen = new Map<string, number>()
    const logs = [...services, ...VERSIONS.map(frozen)]
    for (const event of logs.flat()) {
      const canaried = plantedIn(classedOf(event.type), event) as Recorded
      const canaries = canariesOf(classedOf(event.type))
      for (const path of canariesIn(canaried)) {
        const fieldClass = canaries.find((one) => one.path === path)?.fieldClass ?? ''
        seen.set(fieldClass, (seen.get(fieldClass) ?? 0) + 1)
      }
      for (const role of roles) {
        const sent = canariesIn(project(role, canaried))
        expect(sent.filter((path) => !sentOf(role, canaries).includes(path))).toEqual([])
      }
    }
    expect(sorted([...seen.keys()])).toEqual(['cost', 'initials', 'money', 'name', 'reason'])
  })

  it('[V3] has the same in its place for every guest', () => {
    const canaries = TYPES.flatMap((type) => canariesOf(EVENTS[type]))
    const apart = [...canaries, ...canariesOf(STATE), ...canariesOf(FORECAST)].filter(
      ({ fieldClass }) => !isSent('assembly', fieldClass),
    )
    expect(apart.length).toBeGreaterThan(20)
    for (const { instead } of apart)
      expect([null, false, 0, '']).toContain(typeof instead === 'symbol' ? null : instead)
  })

  it('[V3] is never a reason’s to somebody: nobody is sent one, nor initials', () => {
    expect(CREW.filter((role) => SENT[role].reason || SENT[role].initials)).toEqual([])
    expect(isSent('pick-up', 'always')).toBe(false)
  })
})

describe('what isn’t classed', () => {
  it('[V4] is dropped, at whatever depth, and so is an object in the place of a plain value', () => {
    for (const role of CREW)
      for (const type of TYPES) {
        const event = plantedEvent(type)
        expect(JSON.stringify(event)).toContain(UNKNOWN)
        expect(JSON.stringify(project(role, event))).not.toContain(UNKNOWN)
      }
    expect(JSON.stringify(projectState('lead', planted(STATE) as ServiceState))).not.toContain(
      UNKNOWN,
    )
    const nested = { type: 'panSoiled', pan: { hidden: UNKNOWN }, by: [UNKNOWN], position: 1 }
    expect(project('lead', nested as never)).toEqual({ type: 'panSoiled', position: 1 })
  })

  it('[V4] isn’t an event of no known type', () => {
    expect(() => project('lead', { type: 'guestNamed', name: 'Ada' } as never)).toThrow(
      'guestNamed',
    )
    expect(() => project('lead', { type: 'constructor' } as never)).toThrow()
  })
})

describe('the work', () => {
  it('[V5] is done once for roles that are sent the same, however many screens there are', () => {
    expect(sightOf('counter')).toBe(sightOf('hand-over'))
    expect(sightOf('lead')).toBe(sightOf('in-charge'))
    expect(new Set(CREW.map(sightOf)).size).toBe(3)
    const [log = []] = services
    const [event] = log
    if (!event) throw new Error('nothing happened')
    expect(project('counter', event)).toBe(project('hand-over', event))
    expect(project('counter', event)).not.toBe(project('assembly', event))
    const state = folded(log)
    expect(projectState('lead', state)).toBe(projectState('in-charge', state))
  })

  it('[V5] of a ticket that stayed as it was isn’t done again', () => {
    const log = frozen(5)
    const before = folded(log.slice(0, -1))
    const now = projectState('counter', folded(log.slice(-1), before))
    expect(now.past['0']).toBe(projectState('counter', before).past['0'])
  })

  it('[V4] leaves what it was given as it is', () => {
    const event = frozen(5).find(({ type }) => type === 'ticketSent')
    const text = JSON.stringify(event)
    if (event) project('assembly', event)
    expect(JSON.stringify(event)).toBe(text)
    expect(canaryOf('a')).toBe('canary at a')
  })
})
