import { z } from 'zod'
import { badAnswer } from '#lib/service/commands/chosen.ts'
import { type Decision, happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { askedField, buildFields, needsField } from '#lib/service/commands/fields.ts'
import { keeps, knownNeeds } from '#lib/service/known-needs.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const tellNeedSchema = z.strictObject({
  type: z.literal('tellNeed'),
  ...buildFields,
  asked: askedField,
  needs: needsField,
})

/** A need told after sending stops the build at once, in whatever state it is. */
export const decideTellNeed = (
  state: ServiceState,
  { ticket, letter, asked, needs }: z.infer<typeof tellNeedSchema>,
): Decision =>
  withBuild(state, { ticket, letter }, ({ state: running, build, name }) => {
    if (build.state === 'cancelled')
      return refuse({ code: 'wrong-state', build: name, state: build.state })
    if (asked === 'none') return refuse({ code: 'not-asked' })
    const refusal = badAnswer(running, asked, needs)
    if (refusal) return refuse(refusal)
    const isTold =
      asked === 'needs'
        ? needs.every((need) => keeps(knownNeeds(build), need))
        : build.hold?.told?.asked === 'not-sure'
    return isTold
      ? refuse({ code: 'already-so' })
      : happened({ type: 'needTold', ticket, letter, asked, needs })
  })
