import { z } from 'zod'
import { acceptBuild } from '#lib/service/commands/accept-build.ts'
import { type Decision, happened, refuse, whenOpen } from '#lib/service/commands/decision.ts'
import { choiceSchema } from '#lib/service/commands/fields.ts'
import type { AcceptedBuild } from '#lib/service/event.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { LETTERS } from '#lib/service/tickets.ts'
import { lacking } from '#lib/stock/levels.ts'

export const sendSchema = z.strictObject({
  type: z.literal('send'),
  builds: z.array(choiceSchema).max(50).readonly(),
  paid: z.boolean().default(false),
  /** Kept apart from the log; number only where it is missing. */
  name: z.string().trim().min(1).max(40).optional(),
})

export const decideSend = (state: ServiceState, command: z.infer<typeof sendSchema>): Decision =>
  whenOpen(state, (running) => {
    if (command.builds.length === 0) return refuse({ code: 'nothing-in-it' })
    if (command.builds.length > LETTERS.length)
      return refuse({ code: 'too-many-builds', most: LETTERS.length })
    const builds: AcceptedBuild[] = []
    const wanted: Record<string, number> = {}
    for (const [index, choice] of command.builds.entries()) {
      const accepted = acceptBuild(running, LETTERS.charAt(index), choice)
      if ('refusal' in accepted) return refuse(accepted.refusal)
      builds.push(accepted.build)
      for (const [component, amount] of Object.entries(accepted.build.takes))
        wanted[component] = (wanted[component] ?? 0) + amount
    }
    const gone = lacking(running, wanted)
    if (gone !== null) return refuse({ code: 'sold-out', component: gone })
    return happened({
      type: 'ticketSent',
      ticket: running.nextTicket,
      named: command.name !== undefined,
      paid: command.paid,
      builds,
    })
  })
