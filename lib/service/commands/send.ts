import { z } from 'zod'
import { acceptBuild } from '#lib/service/commands/accept-build.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { choiceSchema, readBackField } from '#lib/service/commands/fields.ts'
import type { AcceptedBuild } from '#lib/service/event.ts'
import { goneBecause, pastIfSent } from '#lib/service/food-of-build.ts'
import type { ServiceState } from '#lib/service/state.ts'
import { LETTERS } from '#lib/service/tickets.ts'
import { sumOf, type Wanted, wantedFrom } from '#lib/stock/behind.ts'
import { keptFromThem } from '#lib/stock/kept.ts'
import { lacking, levelOf } from '#lib/stock/levels.ts'

export const sendSchema = z.strictObject({
  type: z.literal('send'),
  builds: z.array(choiceSchema).max(50).readonly(),
  paid: z.boolean().default(false),
  readBack: readBackField,
  /** Kept apart from the log; number only where it is missing. */
  name: z.string().trim().min(1).max(40).optional(),
})

/** The acceptance that two builds of one ticket name: it counts for one. */
const namedTwice = (builds: readonly AcceptedBuild[], caution: number | null): boolean =>
  caution !== null && builds.some(({ choice }) => choice.caution === caution)

export const decideSend = (
  state: ServiceState,
  command: z.infer<typeof sendSchema>,
  circumstances: Circumstances,
): Decision =>
  whenOpen(state, (running) => {
    if (command.builds.length === 0) return refuse({ code: 'nothing-in-it' })
    if (command.builds.length > LETTERS.length)
      return refuse({ code: 'too-many-builds', most: LETTERS.length })
    if (!command.readBack) return refuse({ code: 'not-read-back' })
    const builds: AcceptedBuild[] = []
    let wanted: Wanted = { line: {}, behind: {} }
    for (const [index, choice] of command.builds.entries()) {
      const once = namedTwice(builds, choice.caution) ? { ...choice, caution: null } : choice
      const accepted = acceptBuild(running, LETTERS.charAt(index), once, circumstances)
      if ('refusal' in accepted) return refuse(accepted.refusal)
      builds.push(accepted.build)
      const { choice: taken, takes } = accepted.build
      const from = wantedFrom(running, taken, takes)
      wanted = { line: sumOf(wanted.line, from.line), behind: sumOf(wanted.behind, from.behind) }
    }
    const gone = lacking(running, wanted)
    if (gone !== null) return refuse(goneBecause(running, gone))
    const past = pastIfSent(running, wanted, builds.length, circumstances.now)
    if (past) return refuse({ code: 'past-throw-out-by-then', ...past })
    const kept = keptFromThem(
      running,
      builds.map(({ choice, takes }) => ({ choice, more: takes })),
      (component) => levelOf(running, component).remaining,
    )
    if (kept !== null)
      return refuse({ code: 'kept', component: kept, for: running.keeps[kept]?.for ?? [] })
    return happened({
      type: 'ticketSent',
      ticket: running.nextTicket,
      named: command.name !== undefined,
      paid: command.paid,
      builds,
    })
  })
