import { z } from 'zod'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
  withBuild,
} from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { mustGo } from '#lib/service/commands/make.ts'
import type { ServiceEvent } from '#lib/service/event.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { buildName } from '#lib/service/tickets.ts'

/** As many as a shelf of a large station holds, and more. */
const MOST_NAMED = 100

export const remakeMixedUpSchema = z.strictObject({
  type: z.literal('remakeMixedUp'),
  /** Made builds of which nobody knows any more which is which. */
  builds: z.array(z.strictObject(buildFields)).max(MOST_NAMED).readonly(),
})

type At = z.infer<typeof remakeMixedUpSchema>['builds'][number]

/** One of them is thrown out: a stopped one is answered so, any other is made again. */
const thrownOut = (
  state: ServiceState,
  { ticket, letter }: At,
  mixedUpWith: readonly string[],
  now: number,
): Decision =>
  withBuild(state, { ticket, letter }, ({ state: running, build, name }) => {
    if (build.state !== 'made')
      return refuse({ code: 'wrong-state', build: name, state: build.state })
    if (build.stop)
      return happened({
        type: 'stopAcknowledged',
        ticket,
        letter,
        foodInIt: true,
        wasted: [],
        uncounted: {},
        mixedUpWith,
      })
    if (build.hold) return refuse({ code: 'build-held', build: name, reason: build.hold.reason })
    if (mustGo(running, build, name, now)) return refuse({ code: 'past-throw-out', id: name })
    return happened({ type: 'buildRemade', ticket, letter, from: 'made', mixedUpWith })
  })

/**
 * Nobody knows which is which: all of them are thrown out and made again, or none where one can't
 * be. A held one waits with its hold. One past its time is refused: it is initialled.
 */
export const decideRemakeMixedUp = (
  state: ServiceState,
  { builds }: z.infer<typeof remakeMixedUpSchema>,
  { now }: Circumstances,
): Decision =>
  whenOpen(state, () => {
    const byName = new Map(builds.map((one) => [buildName(one.ticket, one.letter), one] as const))
    if (byName.size < 2) return refuse({ code: 'mixed-up-with-nothing' })
    const events: ServiceEvent[] = []
    for (const [name, one] of byName) {
      const others = [...byName.keys()].filter((other) => other !== name)
      const decision = thrownOut(state, one, others, now)
      if ('refusal' in decision) return decision
      events.push(...decision.events)
    }
    return happened(...events)
  })
