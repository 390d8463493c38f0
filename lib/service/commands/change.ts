import stringify from 'safe-stable-stringify'
import { z } from 'zod'
import { acceptBuild } from '#lib/service/commands/accept-build.ts'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { buildFields, choiceSchema } from '#lib/service/commands/fields.ts'
import { beyond } from '#lib/service/evolve-build.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { lacking } from '#lib/stock/levels.ts'

export const changeSchema = z.strictObject({
  type: z.literal('change'),
  ...buildFields,
  to: choiceSchema,
})

/** A waiting build changes at once; one in the making is stopped until assembly acknowledges. */
export const decideChange = (
  state: ServiceState,
  command: z.infer<typeof changeSchema>,
): Decision =>
  withBuild(state, command, ({ state: running, build, name }) => {
    if (build.state !== 'waiting' && build.state !== 'making')
      return refuse({ code: 'wrong-state', build: name, state: build.state })
    if (build.stop) return refuse({ code: 'build-stopped', build: name })
    const accepted = acceptBuild(running, build.letter, command.to, build)
    if ('refusal' in accepted) return refuse(accepted.refusal)
    const to = accepted.build
    if (stringify(to.choice) === stringify(build.choice)) return refuse({ code: 'already-so' })
    const gone = lacking(running, beyond(build.takes, to.takes))
    if (gone !== null) return refuse({ code: 'sold-out', component: gone })
    const at = { ticket: command.ticket, letter: command.letter }
    return build.state === 'waiting'
      ? happened({ type: 'buildChanged', ...at, to })
      : happened({ type: 'buildStopped', ...at, reason: 'change', to })
  })
