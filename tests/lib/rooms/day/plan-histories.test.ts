import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { toAnswer } from '#lib/rooms/day/facts/ends/to-answer.ts'
import { isRunning, type ServiceState } from '#lib/service/state.ts'
import { stateHash } from '#lib/service/state-hash.ts'
import type { Account } from '#lib/service/stock-state.ts'
import { COMMANDS, type CommandType } from '#lib/spine/registry.ts'
import { portionsOf } from '#lib/station/portion.ts'
import { nextToClose } from '#tests/support/closing-steps.ts'
import { createDrive, type Drive } from '#tests/support/drive-history.ts'
import { OPEN_PLANNED, PLAN } from '#tests/support/plans.ts'
import { demoStation, type Given } from '#tests/support/service.ts'
import { held } from '#tests/support/stock-sums.ts'

const MINUTE = 60_000
const MOST_TO_CLOSE = 200

/** What is worth trying at random: the crew's work on food, and nothing that ends the service. */
const OF_FOOD: readonly CommandType[] = [
  ...(['startBatch', 'recordCooking', 'finishBatch', 'recordCooling', 'recordReheating'] as const),
  ...(['startTimeClock', 'readTemperature', 'readSanitizer', 'notSameProduct'] as const),
  ...(['load', 'changePan', 'topUp', 'correct', 'setBackup', 'confirmClock'] as const),
]

type Step =
  | { readonly do: 'sample'; readonly type: CommandType; readonly which: number }
  | { readonly do: 'out'; readonly which: number }
  | { readonly do: 'pass'; readonly minutes: number }
  | { readonly do: 'plan'; readonly doorsClose: string }
  | { readonly do: 'follow' }

const ofFood = fc.record({
  do: fc.constant('sample' as const),
  type: fc.constantFrom(...OF_FOOD),
  which: fc.nat(40),
})
const passing = fc.record({
  do: fc.constant('pass' as const),
  minutes: fc.integer({ min: 1, max: 90 }),
})
const planning = fc.record({
  do: fc.constant('plan' as const),
  doorsClose: fc.constantFrom('12:30', '13:00', '13:30'),
})
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 12, arbitrary: ofFood },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('out' as const), which: fc.nat(9) }) },
  { weight: 2, arbitrary: passing },
  { weight: 1, arbitrary: planning },
  { weight: 1, arbitrary: fc.constant({ do: 'follow' as const }) },
)
const steps = fc.array(step, { minLength: 20, maxLength: 60 })

/** What of each component went somewhere, without what is only zero. */
const moved = (state: ServiceState): Readonly<Record<string, Account>> =>
  Object.fromEntries(
    Object.entries(state.accounts).filter(([, one]) => Object.values(one).some((sum) => sum !== 0)),
  )

/** All that is known of food that is prepared. */
const foodOf = (state: ServiceState) => ({
  batches: state.batches,
  toThrowOut: state.toThrowOut,
  wastes: state.wastes,
  ends: state.ends,
  mixing: state.mixing,
  sanitizer: state.sanitizer,
  probes: state.probes,
  clockJump: state.clockJump,
  moved: moved(state),
})

const sumsHold = (state: ServiceState): void => {
  if (!isRunning(state)) return
  for (const [id, one] of Object.entries(state.accounts)) {
    const { loaded, corrected, used, wasted, takenAway, setAside = 0 } = one
    expect(loaded + corrected, id).toBe(held(state, id) + used + wasted + takenAway + setAside)
  }
  for (const [id, { amount, loaded }] of Object.entries(state.batches)) {
    expect(loaded, id).toBeGreaterThanOrEqual(0)
    expect(loaded, id).toBeLessThanOrEqual(amount)
  }
}

const sampleOf = (state: ServiceState, type: CommandType, which: number): Given | null => {
  const all = COMMANDS.find((one) => one.type === type)?.samples(state, demoStation.id) ?? []
  return all[which % Math.max(1, all.length)] ?? null
}

const outOf = ({ batches }: ServiceState, which: number): Given | null => {
  const ids = Object.keys(batches)
  const id = ids[which % Math.max(1, ids.length)]
  return id === undefined
    ? null
    : { type: 'throwOut', what: 'batch', id, reason: 'quality', initials: 'KT' }
}

let followed = 1

const act = (drive: Drive, one: Step): boolean => {
  const before = drive.state()
  if (one.do === 'pass') drive.pass(one.minutes * MINUTE)
  else if (one.do === 'sample' || one.do === 'out') {
    const given =
      one.do === 'out' ? outOf(before, one.which) : sampleOf(before, one.type, one.which)
    return given !== null && drive.take(given, 'in-charge').refusal === null
  } else if (before.stage === 'planned') {
    if (one.do === 'plan') drive.take({ ...PLAN, doorsClose: one.doorsClose }, 'lead')
    else {
      followed += 1
      const { station } = before
      if (!station) throw new Error('nothing is planned')
      const portions = portionsOf(station)
      drive.note({ type: 'planFollowed', revision: followed, station, portions })
    }
    expect(foodOf(drive.state())).toEqual(foodOf(before))
  }
  return true
}

const close = (drive: Drive): void => {
  for (let tries = 0; tries < MOST_TO_CLOSE && drive.state().stage === 'open'; tries += 1) {
    const state = drive.state()
    const next = nextToClose(state)
    const [place] = next.type === 'close' && isRunning(state) ? toAnswer(state) : []
    const { refusal } = drive.take(
      place
        ? { type: 'throwOut', what: place.what, id: place.id, reason: 'left-over', initials: 'KT' }
        : next,
      'in-charge',
    )
    if (refusal) throw new Error(JSON.stringify([next, place, refusal]))
  }
}

describe('a service from its plan to its close', () => {
  it('[PL4] loses no food and counts none twice, whatever is prepared, planned again and followed', () => {
    const came: Record<string, number> = {}
    fc.assert(
      fc.property(steps, steps, (prepared, served) => {
        const drive = createDrive(demoStation)
        expect(drive.take(PLAN, 'lead').refusal).toBeNull()
        for (const one of prepared) {
          const key = one.do === 'sample' ? one.type : one.do
          if (act(drive, one)) came[key] = (came[key] ?? 0) + 1
          sumsHold(drive.state())
        }
        const before = drive.state()
        expect(drive.take(OPEN_PLANNED, 'lead').refusal).toBeNull()
        expect(foodOf(drive.state())).toEqual(foodOf(before))
        for (const one of served) {
          act(drive, one)
          sumsHold(drive.state())
        }
        close(drive)
        const { stage, batches } = drive.state()
        expect(stage).toBe('closed')
        sumsHold(drive.state())
        for (const one of Object.values(batches))
          if (one.amount > one.loaded) expect(one.thrownOutAt).not.toBeNull()
        expect(stateHash(drive.folded())).toBe(stateHash(drive.state()))
      }),
      { numRuns: 90 },
    )
    // It was prepared, and not only refused.
    for (const key of [
      'startBatch',
      'recordCooking',
      'finishBatch',
      'recordCooling',
      'out',
      'follow',
    ])
      expect(came[key] ?? 0, key).toBeGreaterThan(9)
  }, 120_000)
})
