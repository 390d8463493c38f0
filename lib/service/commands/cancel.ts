import { z } from 'zod'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const cancelSchema = z.strictObject({ type: z.literal('cancel'), ...buildFields })

export type CancelCommand = z.infer<typeof cancelSchema>

/** A waiting or made build is cancelled at once; one in the making is stopped first. */
export const decideCancel = (state: ServiceState, command: CancelCommand): Decision =>
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
