/** The sanitizing solution of the station: a strip, the temperature of its water, its pH. */
import { z } from 'zod'
import { INVENTED_INITIALS } from '#lib/rooms/food/facts/invented-readings.ts'
import { inventedSolution, waterQuestion } from '#lib/rooms/food/facts/sanitizer.ts'
import { sanitizerProblem } from '#lib/safety/sanitizer.ts'
import { SCALES } from '#lib/safety/temperature.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { initialsField } from '#lib/service/commands/food-fields.ts'

/** A number, minus zero made plain: JSON doesn't keep its sign. */
const upTo = (most: number) =>
  z
    .number()
    .min(0)
    .max(most)
    .transform((value) => value + 0)

/** One out of its limit is recorded as well: it takes nothing off sale, and is due again at once. */
export const readSanitizer = defineCommand({
  type: 'readSanitizer',
  who: ['assembly', 'hand-over'],
  stages: ['planned', 'open'],
  schema: {
    /** Milligrams per liter (parts per million) of the strip. */
    mgPerL: upTo(10_000),
    /** Whole tenths of a degree, as the thermometer shows it; null: not read. */
    water: z.strictObject({ tenths: z.int(), scale: z.enum(SCALES) }).nullable(),
    /** null: not read. */
    ph: upTo(14).nullable(),
    initials: initialsField,
  },
  decide: ({ station }, { mgPerL, water, ph, initials }) => {
    const asked = station.safety.sanitizer
    if (!asked) return refuse({ code: 'not-read-here' })
    if (initials === undefined) return refuse({ code: 'not-initialled' })
    const question = water && waterQuestion(water)
    if (water && question) return refuse({ code: 'reading-asked', question, read: water })
    const reading = { kind: asked.kind, mgPerL, water, ph }
    const problem = sanitizerProblem(reading, asked.label)
    return happened({ type: 'sanitizerRead', ...reading, problem })
  },
  sample: ({ station }) => {
    const solution = inventedSolution(station)
    return solution ? [{ ...solution, initials: INVENTED_INITIALS }] : []
  },
  rules: ['F75', 'F76'],
  example: { mgPerL: 100, water: { tenths: 750, scale: 'F' }, ph: null, initials: 'KT' },
  tells:
    ': of the solution that the document names, with a strip; `water` and `ph` are null where nobody read them, and without `water` no strength passes',
})
