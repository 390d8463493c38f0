import { z } from 'zod'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { withdraw } from '#lib/stock/short.ts'

export const cancelSchema = z.strictObject({ type: z.literal('cancel'), ...buildFields })

export const acknowledgeSchema = z.strictObject({
  type: z.literal('acknowledge'),
  ...buildFields,
  foodInIt: z.boolean(),
})

/** A waiting or made build is cancelled at once; one in the making is stopped first. */
export const decideCancel = (
  state: ServiceState,
  command: z.infer<typeof cancelSchema>,
): Decision =>
  withBuild(state, command, ({ build, name }) => {
    const at = { ticket: command.ticket, letter: command.letter }
    if (build.state === 'waiting' || build.state === 'made')
      return happened({ type: 'buildCancelled', ...at })
    if (build.state !== 'making')
      return refuse({ code: 'wrong-state', build: name, state: build.state })
    return build.stop?.reason === 'cancel'
      ? refuse({ code: 'already-so' })
      : build.stop && !build.hold
        ? refuse({ code: 'build-stopped', build: name })
        : happened({ type: 'buildStopped', ...at, reason: 'cancel', to: null })
  })

/** Food that was in a stopped build is thrown out: it never goes back to a pan. */
export const decideAcknowledge = (
  state: ServiceState,
  command: z.infer<typeof acknowledgeSchema>,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (!build.stop) return refuse({ code: 'nothing-to-acknowledge', build: name })
    const isOut = build.state === 'made' || build.state === 'handed-over'
    if (build.state === 'made' && !command.foodInIt)
      return refuse({ code: 'made-food-is-waste', build: name })
    // What is out of the pans already becomes waste where it is; what is in the making comes out now.
    const { took, uncounted } =
      command.foodInIt && !isOut
        ? withdraw(running, build.takes, build.choice)
        : { took: [], uncounted: {} }
    return happened({
      type: 'stopAcknowledged',
      ticket: command.ticket,
      letter: command.letter,
      foodInIt: command.foodInIt,
      wasted: took,
      uncounted,
    })
  })
