import { atBuild } from '#lib/rooms/pans/facts/sample-orders.ts'
import { happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { type CommandOf, defineCommand } from '#lib/service/commands/define.ts'
import { buildFields } from '#lib/service/commands/fields.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** A waiting or made build is cancelled at once; one in the making is stopped first. */
export const cancel = defineCommand({
  type: 'cancel',
  who: ['counter'],
  stages: ['open'],
  schema: buildFields,
  decide: (state, command) =>
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
    }),
  sample: (state) => openBuilds(state).map(atBuild),
  rules: ['S36', 'S37', 'S40'],
  example: { ticket: 12, letter: 'A' },
})

export type CancelCommand = CommandOf<typeof cancel>
