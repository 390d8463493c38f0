import { z } from 'zod'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
} from '#lib/service/commands/decision.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { whenInCharge } from '#lib/service/commands/when-in-charge.ts'
import { HANDED_OVER_ANSWERS, HANDED_OVER_OF } from '#lib/service/handed-over-event.ts'
import { keyOf } from '#lib/service/held-stock.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const answerHandedOverSchema = z.strictObject({
  type: z.literal('answerHandedOver'),
  what: z.enum(HANDED_OVER_OF),
  id: idField,
  answer: z.enum(HANDED_OVER_ANSWERS),
  /** How many builds the list had: nobody answers for one that they haven't seen. */
  seen: z.int().min(0),
  initials: initialsField,
})

/**
 * The person in charge initials that the guests of builds which were handed over with food that was
 * found bad later were told, or that nothing has to be done. Refused where there are none, without
 * initials, and where more were handed over since the list was read.
 */
export const decideAnswerHandedOver = (
  state: ServiceState,
  command: z.infer<typeof answerHandedOverSchema>,
  circumstances: Circumstances,
): Decision =>
  whenInCharge(state, circumstances, ({ toTell }) => {
    const { what, id, answer, seen, initials } = command
    const entry = toTell[keyOf(what, id)]
    if (!entry) return refuse({ code: 'already-so' })
    if (initials === undefined) return refuse({ code: 'not-initialled' })
    const builds = entry.builds.map(({ build }) => build)
    return seen < builds.length
      ? refuse({ code: 'more-handed-over', builds: builds.slice(seen) })
      : happened({ type: 'handedOverAnswered', what, id, answer, builds })
  })
