import { z } from 'zod'
import { mustGo } from '#lib/rooms/making/commands/make.ts'
import { atBuild } from '#lib/rooms/pans/facts/sample-orders.ts'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { defineCommand, type Told } from '#lib/service/commands/define.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import type { ServiceEvent } from '#lib/service/events/event.ts'
import type { RunningState } from '#lib/service/state.ts'
import { buildName, openBuilds } from '#lib/service/tickets.ts'

/** As many as a shelf of a large station holds, and more. */
const MOST_NAMED = 100

/** One of them is thrown out: a stopped one is answered so, any other is made again. */
const thrownOut = (
  state: RunningState,
  { ticket, letter }: Told<typeof buildFields>,
  mixedUpWith: readonly string[],
  now: number,
): Decision =>
  withBuild(state, { ticket, letter }, ({ build, name }) => {
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
    if (mustGo(state, build, name, now)) return refuse({ code: 'past-throw-out', id: name })
    return happened({ type: 'buildRemade', ticket, letter, from: 'made', mixedUpWith })
  })

/**
 * Nobody knows which is which: all of them are thrown out and made again, or none where one can't
 * be. A held one waits with its hold. One past its time is refused: it is initialled.
 */
export const remakeMixedUp = defineCommand({
  type: 'remakeMixedUp',
  who: ['hand-over'],
  stages: ['open'],
  schema: {
    /** Made builds of which nobody knows any more which is which. */
    builds: z.array(z.strictObject(buildFields)).max(MOST_NAMED).readonly(),
  },
  decide: (state, { builds }, { now }) => {
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
  },
  sample: (state) => {
    const made = openBuilds(state).filter(({ build }) => build.state === 'made')
    return [{ builds: made.slice(0, 2).map(atBuild) }]
  },
  rules: ['S140', 'S141', 'S142'],
  example: {
    builds: [
      { ticket: 12, letter: 'A' },
      { ticket: 14, letter: 'B' },
    ],
  },
  tells:
    ': made builds of which nobody knows which is which; all of them are thrown out and made again, or none',
})
