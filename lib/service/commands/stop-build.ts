import { z } from 'zod'
import type { Amounts } from '#lib/service/build-choice.ts'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { buildFields, idField } from '#lib/service/commands/fields.ts'
import { refusedInIt } from '#lib/service/food-in-it.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { withdraw } from '#lib/stock/short.ts'

export const acknowledgeSchema = z.strictObject({
  type: z.literal('acknowledge'),
  ...buildFields,
  foodInIt: z.boolean(),
  /** Components that were in it; all that it takes where left away. */
  inIt: z.array(idField).max(100).readonly().optional(),
})

/** What a build takes of these components. */
const only = (takes: Amounts, components: readonly string[]): Amounts =>
  Object.fromEntries(Object.entries(takes).filter(([id]) => components.includes(id)))

/** Food that was in a stopped build is thrown out: it never goes back to a pan. What wasn't is released. */
export const decideAcknowledge = (
  state: ServiceState,
  command: z.infer<typeof acknowledgeSchema>,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (!build.stop) return refuse({ code: 'nothing-to-acknowledge', build: name })
    const { foodInIt, inIt } = command
    if (inIt && !foodInIt) return refuse({ code: 'food-in-it-unclear', build: name })
    const refused = inIt ? refusedInIt(running, build, name, inIt) : null
    if (refused) return refuse(refused)
    const isOut = build.state === 'made' || build.state === 'handed-over'
    if (build.state === 'made' && !foodInIt)
      return refuse({ code: 'made-food-is-waste', build: name })
    // What is out of the pans already becomes waste where it is; what is in the making comes out now.
    const { took, uncounted } =
      foodInIt && !isOut
        ? withdraw(
            running,
            inIt ? only(build.takes, inIt) : build.takes,
            build.choice,
            build.behind,
          )
        : { took: [], uncounted: {} }
    return happened({
      type: 'stopAcknowledged',
      ticket: command.ticket,
      letter: command.letter,
      foodInIt,
      wasted: took,
      uncounted,
      ...(inIt ? { inIt } : {}),
    })
  })
