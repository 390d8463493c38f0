import { z } from 'zod'
import { refusedInIt } from '#lib/rooms/making/facts/food-in-it.ts'
import { atBuild, handedOver } from '#lib/rooms/pans/facts/sample-orders.ts'
import { withdraw } from '#lib/rooms/pans/facts/short.ts'
import { happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { buildFields, idField } from '#lib/service/commands/fields.ts'
import type { Amounts } from '#lib/service/events/build-choice.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** What a build takes of these components. */
const only = (takes: Amounts, components: readonly string[]): Amounts =>
  Object.fromEntries(Object.entries(takes).filter(([id]) => components.includes(id)))

/** Food that was in a stopped build is thrown out: it never goes back to a pan. What wasn't is released. */
export const acknowledge = defineCommand({
  type: 'acknowledge',
  who: ['assembly', 'hand-over'],
  stages: ['open'],
  schema: {
    ...buildFields,
    foodInIt: z.boolean(),
    /** Components that were in it; all that it takes where left away. */
    inIt: z.array(idField).max(100).readonly().optional(),
    /** When the stop that was on the screen began: an answer of an earlier one tells nothing of this. */
    stopped: z.int().min(0).optional(),
  },
  decide: (state, command) =>
    withBuild(state, command, ({ build, name }) => {
      if (!build.stop) return refuse({ code: 'nothing-to-acknowledge', build: name })
      const { foodInIt, inIt, stopped } = command
      if (stopped !== undefined && stopped !== build.stop.at)
        return refuse({ code: 'changed-since', build: name })
      if (inIt && !foodInIt) return refuse({ code: 'food-in-it-unclear', build: name })
      const refused = inIt ? refusedInIt(state, build, name, inIt) : null
      if (refused) return refuse(refused)
      const isOut = build.state === 'made' || build.state === 'handed-over'
      if (build.state === 'made' && !foodInIt)
        return refuse({ code: 'made-food-is-waste', build: name })
      // What is out of the pans already becomes waste where it is; what is in the making comes out now.
      const { took, uncounted } =
        foodInIt && !isOut
          ? withdraw(
              state,
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
    }),
  sample: (state) => [
    ...openBuilds(state).flatMap((queued) =>
      [false, true].map((foodInIt) => ({ ...atBuild(queued), foodInIt })),
    ),
    ...handedOver(state).map((queued) => ({ ...atBuild(queued), foodInIt: false })),
  ],
  rules: ['S38', 'S39', 'S76', 'S77', 'S136', 'S137', 'S138', 'S139', 'S190'],
  example: { ticket: 12, letter: 'A', foodInIt: true, inIt: ['pita', 'slaw'] },
  tells:
    ': a stop; `inIt` names the components that were in it, all that it takes where left away; `stopped` is the moment at which the stop that was on the screen began; see [what was in it](#what-was-in-it)',
})
