import stringify from 'safe-stable-stringify'
import { keeps, knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import { isAsSaid } from '#lib/rooms/care/facts/said.ts'
import { acceptBuild } from '#lib/rooms/orders/commands/accept-build.ts'
import { lacksOfChange } from '#lib/rooms/orders/commands/order-lacks.ts'
import { atBuild, handedOver, otherChoice, plainest } from '#lib/rooms/pans/facts/sample-orders.ts'
import { happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { type CommandOf, defineCommand } from '#lib/service/commands/define.ts'
import { CHOICE } from '#lib/service/commands/example-parts.ts'
import {
  buildFields,
  choiceSchema,
  readBackField,
  saidField,
} from '#lib/service/commands/fields.ts'
import type { BuildChoice } from '#lib/service/events/build-choice.ts'
import type { Refusal } from '#lib/service/refusal.ts'
import type { Role } from '#lib/service/roles.ts'
import type { Build } from '#lib/service/state.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** Only the person in charge takes back what a guest said, before or after sending. */
const takesBack = (build: Build, name: string, to: BuildChoice, by: Role): Refusal | null => {
  if (by === 'in-charge') return null
  const { choice, hold } = build
  if (choice.asked === 'not-sure' || hold?.told?.asked === 'not-sure') return { code: 'not-sure' }
  const dropped = knownNeeds(build).find((need) => !keeps(to.needs, need))
  return dropped ? { code: 'need-dropped', build: name, need: dropped.code } : null
}

/**
 * A waiting build changes at once; one in the making, or one that is held and not acknowledged, is
 * stopped until assembly acknowledges. A change that fits lifts a hold.
 */
export const change = defineCommand({
  type: 'change',
  who: ['counter'],
  stages: ['open'],
  schema: {
    ...buildFields,
    to: choiceSchema,
    readBack: readBackField,
    /** What was said of its needs; where left away it isn't compared. */
    said: saidField.optional(),
  },
  decide: (state, command, circumstances) =>
    withBuild(state, command, ({ build, name }) => {
      const { hold, stop } = build
      if (build.state !== 'waiting' && build.state !== 'making' && !hold)
        return refuse({ code: 'wrong-state', build: name, state: build.state })
      if (stop && (!hold || stop.reason === 'cancel'))
        return refuse({ code: 'build-stopped', build: name })
      if (!command.readBack) return refuse({ code: 'not-read-back' })
      const refusal = takesBack(build, name, command.to, circumstances.by)
      if (refusal) return refuse(refusal)
      const before = { ...build, name }
      const accepted = acceptBuild(state, build.letter, command.to, circumstances, before)
      if ('refusal' in accepted) return refuse(accepted.refusal)
      const to = accepted.build
      if (!isAsSaid(state, to.choice, command.said, circumstances.checker))
        return refuse({ code: 'said-changed', letter: build.letter })
      // What is held for its guest's sake may come back as it was; for a pan that would change nothing.
      const own = hold && hold.reason !== 'off-sale' ? undefined : build.choice
      if (stringify(to.choice) === stringify(stop?.to?.choice ?? own))
        return refuse({ code: 'already-so' })
      const from = { ticket: command.ticket, build }
      const lacks = lacksOfChange(state, from, to, circumstances.now)
      if (lacks) return refuse(lacks)
      const at = { ticket: command.ticket, letter: command.letter }
      return build.state === 'waiting' && !stop
        ? happened({ type: 'buildChanged', ...at, to })
        : happened({ type: 'buildStopped', ...at, reason: stop?.reason ?? 'change', to })
    }),
  sample: (state) => {
    const so = (to: BuildChoice) => ({ to, readBack: true })
    return [
      ...openBuilds(state).flatMap((queued) =>
        [...plainest(state, queued.build), ...otherChoice(state, queued.build.choice)].map(
          (to) => ({ ...atBuild(queued), ...so(to) }),
        ),
      ),
      ...handedOver(state).flatMap((queued) =>
        plainest(state, queued.build).map((to) => ({ ...atBuild(queued), ...so(to) })),
      ),
    ]
  },
  rules: ['S31', 'S32', 'S35', 'S37', 'S68', 'S78', 'S83'],
  example: { ticket: 12, letter: 'A', to: CHOICE, readBack: true },
})

export type ChangeCommand = CommandOf<typeof change>
