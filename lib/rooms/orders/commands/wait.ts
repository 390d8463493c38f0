import { atBuild } from '#lib/rooms/pans/facts/sample-orders.ts'
import { shortBuilds } from '#lib/rooms/pans/facts/short.ts'
import { happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** The guest of a short build chose to wait for more of what it lacks. */
export const wait = defineCommand({
  type: 'wait',
  who: ['counter'],
  stages: ['open'],
  schema: buildFields,
  decide: (state, command) =>
    withBuild(state, command, ({ name }) => {
      const component = shortBuilds(state).get(name)
      if (component === undefined) return refuse({ code: 'not-short', build: name })
      if (state.waits[name]?.component === component) return refuse({ code: 'already-so' })
      return happened({ type: 'buildWaits', build: name, component })
    }),
  sample: (state) => openBuilds(state).map(atBuild),
  rules: ['U14', 'U15'],
  example: { ticket: 12, letter: 'A' },
  tells: ': the guest of a short build waits',
})
