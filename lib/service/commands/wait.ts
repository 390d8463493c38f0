import { z } from 'zod'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { shortBuilds } from '#lib/stock/short.ts'

export const waitSchema = z.strictObject({ type: z.literal('wait'), ...buildFields })

/** The guest of a short build chose to wait for more of what it lacks. */
export const decideWait = (state: ServiceState, command: z.infer<typeof waitSchema>): Decision =>
  withBuild(state, command, ({ state: running, name }) => {
    const component = shortBuilds(running).get(name)
    if (component === undefined) return refuse({ code: 'not-short', build: name })
    if (running.waits[name]?.component === component) return refuse({ code: 'already-so' })
    return happened({ type: 'buildWaits', build: name, component })
  })
