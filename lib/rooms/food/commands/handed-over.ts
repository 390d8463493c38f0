import { z } from 'zod'
import { INVENTED_INITIALS } from '#lib/rooms/food/facts/invented-readings.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { idField } from '#lib/service/commands/fields.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'
import { HANDED_OVER_ANSWERS, HANDED_OVER_OF } from '#lib/service/events/handed-over-event.ts'
import { keyOf } from '#lib/service/held-stock.ts'

/**
 * The person in charge initials that the guests of builds which were handed over with food that was
 * found bad later were told, or that nothing has to be done. Refused where there are none, without
 * initials, and where more were handed over since the list was read.
 */
export const answerHandedOver = defineCommand({
  type: 'answerHandedOver',
  who: ['in-charge'],
  stages: ['open'],
  schema: {
    what: z.enum(HANDED_OVER_OF),
    id: idField,
    answer: z.enum(HANDED_OVER_ANSWERS),
    /** How many builds the list had: nobody answers for one that they haven't seen. */
    seen: z.int().min(0),
    initials: initialsField,
  },
  decide: ({ toTell }, { what, id, answer, seen, initials }) => {
    const entry = toTell[keyOf(what, id)]
    if (!entry) return refuse({ code: 'already-so' })
    if (initials === undefined) return refuse({ code: 'not-initialled' })
    const builds = entry.builds.map(({ build }) => build)
    return seen < builds.length
      ? refuse({ code: 'more-handed-over', builds: builds.slice(seen) })
      : happened({ type: 'handedOverAnswered', what, id, answer, builds })
  },
  sample: ({ toTell }) =>
    Object.values(toTell).map(
      ({ what, id, builds }) =>
        ({ what, id, answer: 'told', seen: builds.length, initials: INVENTED_INITIALS }) as const,
    ),
  rules: ['Z64', 'Z65', 'Z66'],
  example: { what: 'pan', id: 'pan-rice', answer: 'told', seen: 2, initials: 'KT' },
  tells:
    ': what becomes of builds that were handed over with food found bad later (`what`: `pan`, `backup`, `batch`, or `shelf` with the id `@shelf`; `answer`: `told`, their guests were, or `nothing` has to be done; `seen`: how many the list had)',
})
