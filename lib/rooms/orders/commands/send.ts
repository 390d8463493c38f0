import { z } from 'zod'
import { isAsSaid } from '#lib/rooms/care/facts/said.ts'
import { acceptBuild } from '#lib/rooms/orders/commands/accept-build.ts'
import { lacksOfOrder } from '#lib/rooms/orders/commands/order-lacks.ts'
import { choices } from '#lib/rooms/pans/facts/sample-orders.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { type CommandOf, defineCommand } from '#lib/service/commands/define.ts'
import { CHOICE } from '#lib/service/commands/example-parts.ts'
import { choiceSchema, readBackField, saidField } from '#lib/service/commands/fields.ts'
import type { AcceptedBuild } from '#lib/service/events/event.ts'
import { LETTERS } from '#lib/service/tickets.ts'

/** The acceptance that two builds of one ticket name: it counts for one. */
const namedTwice = (builds: readonly AcceptedBuild[], caution: number | null): boolean =>
  caution !== null && builds.some(({ choice }) => choice.caution === caution)

export const send = defineCommand({
  type: 'send',
  who: ['counter'],
  stages: ['open'],
  schema: {
    builds: z.array(choiceSchema).max(50).readonly(),
    paid: z.boolean().default(false),
    readBack: readBackField,
    /** What was said of each build's needs, in order; where left away it isn't compared. */
    said: z.array(saidField).max(50).readonly().optional(),
    /** Kept apart from the log; number only where it is missing. */
    name: z.string().trim().min(1).max(40).optional(),
  },
  decide: (state, command, circumstances) => {
    if (command.builds.length === 0) return refuse({ code: 'nothing-in-it' })
    if (command.builds.length > LETTERS.length)
      return refuse({ code: 'too-many-builds', most: LETTERS.length })
    if (!command.readBack) return refuse({ code: 'not-read-back' })
    const builds: AcceptedBuild[] = []
    for (const [index, choice] of command.builds.entries()) {
      const letter = LETTERS.charAt(index)
      const once = namedTwice(builds, choice.caution) ? { ...choice, caution: null } : choice
      const accepted = acceptBuild(state, letter, once, circumstances)
      if ('refusal' in accepted) return refuse(accepted.refusal)
      const said = command.said && (command.said[index] ?? [])
      if (!isAsSaid(state, accepted.build.choice, said, circumstances.checker))
        return refuse({ code: 'said-changed', letter })
      builds.push(accepted.build)
    }
    const lacks = lacksOfOrder(state, builds, circumstances.now)
    if (lacks) return refuse(lacks)
    return happened({
      type: 'ticketSent',
      ticket: state.nextTicket,
      named: command.name !== undefined,
      paid: command.paid,
      builds,
    })
  },
  sample: (state) =>
    choices(state).map((choice) => ({ builds: [choice], paid: false, readBack: true })),
  rules: ['S10', 'S11', 'S12', 'S28', 'S66', 'S67', 'S68', 'S95'],
  example: { builds: [CHOICE], paid: false, readBack: true },
  tells: ': one to eight builds; see below',
})

export type SendCommand = CommandOf<typeof send>
