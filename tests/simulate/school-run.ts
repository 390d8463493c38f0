/** All services of one school: its past days first, then each service as often as it is compared. */
import { pastTaught } from '#lib/rooms/day/facts/past-services.ts'
import { demoStation } from '#server/demo-station.ts'
import type { Waited } from '#tests/simulate/crew.ts'
import { type Outcomes, planned } from '#tests/simulate/planner.ts'
import { playService, type Said } from '#tests/simulate/play.ts'
import { opensIn, type World } from '#tests/simulate/scenario.ts'
import { dayOf, recordsOf, schoolOf } from '#tests/simulate/world.ts'

export const SERVICES_A_SCHOOL = 10
/** Of those so many are also played by each way of starting batches. */
const COMPARED = 3
const PAST_DAYS = 20

/** One service under one way of starting batches. */
export interface Compared {
  readonly outcomes: Outcomes
  readonly gaps: readonly string[]
  readonly batches: number
  readonly notWhole: number
}

export interface Told {
  /** Minutes of the day. */
  readonly at: readonly number[]
  readonly inRush: number
  readonly impossible: number
}

export interface SchoolRun {
  readonly toClose: readonly Said[]
  readonly toNextBatch: readonly Said[]
  readonly waits: readonly Pick<Waited, 'seconds' | 'said'>[]
  readonly compared: readonly {
    readonly advice: Compared
    readonly quarter: Compared
    readonly planner: Outcomes
    readonly told: Told
  }[]
  readonly commands: number
}

/** Deterministic in the seed, the number of the school and how many of its services are played. */
export const runSchool = (
  seed: number,
  number: number,
  services: number,
  world: World,
): SchoolRun => {
  const school = schoolOf(seed * 100_003 + number)
  const taught = pastTaught(recordsOf(school, PAST_DAYS, world), demoStation, 'real')
  const toClose: Said[] = []
  const toNextBatch: Said[] = []
  const waits: Waited[] = []
  const compared: SchoolRun['compared'][number][] = []
  let commands = 0
  for (let index = 0; index < services; index += 1) {
    const day = dayOf(school, index)
    const play = (policy: Parameters<typeof playService>[3]) => {
      const played = playService(
        school.seed * SERVICES_A_SCHOOL + index,
        day,
        taught,
        policy,
        world,
      )
      commands += played.commands
      return played
    }
    const probed = play('nothing')
    toClose.push(...probed.toClose)
    toNextBatch.push(...probed.toNextBatch)
    waits.push(...probed.waits)
    if (index >= COMPARED) continue
    const advice = play('advice')
    const quarter = play('quarter')
    compared.push({
      advice: {
        outcomes: advice.outcomes,
        gaps: advice.gaps,
        batches: advice.batches,
        notWhole: advice.notWhole,
      },
      quarter: {
        outcomes: quarter.outcomes,
        gaps: quarter.gaps,
        batches: quarter.batches,
        notWhole: quarter.notWhole,
      },
      planner: planned(day, opensIn(world)),
      told: {
        at: advice.toldAt,
        inRush: advice.toldInRush,
        impossible: advice.impossible,
      },
    })
  }
  return { toClose, toNextBatch, waits, compared, commands }
}
