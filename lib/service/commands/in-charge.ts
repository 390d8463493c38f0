import { z } from 'zod'
import { strictest } from '#lib/needs/judge.ts'
import { CAUTION_REASONS } from '#lib/service/caution-reasons.ts'
import { checked, ruledOut } from '#lib/service/commands/check-needs.ts'
import { chosen } from '#lib/service/commands/chosen.ts'
import {
  type Circumstances,
  type Decision,
  happened,
  refuse,
  whenOpen,
} from '#lib/service/commands/decision.ts'
import { choiceSchema } from '#lib/service/commands/fields.ts'
import { whenInCharge } from '#lib/service/commands/when-in-charge.ts'
import { foodKey } from '#lib/service/food-key.ts'
import { cautionsIn } from '#lib/service/standing.ts'
import type { ServiceState } from '#lib/service/state.ts'

export const signOnSchema = z.strictObject({ type: z.literal('signOn') })
export const signOffSchema = z.strictObject({ type: z.literal('signOff') })
export const acceptCautionSchema = z.strictObject({
  type: z.literal('acceptCaution'),
  build: choiceSchema,
  reason: z.enum(CAUTION_REASONS),
})

export const decideSignOn = (state: ServiceState, circumstances: Circumstances): Decision =>
  whenInCharge(state, circumstances, ({ inCharge }) =>
    inCharge === null ? happened({ type: 'inChargeSignedOn' }) : refuse({ code: 'already-so' }),
  )

export const decideSignOff = (state: ServiceState): Decision =>
  whenOpen(state, ({ inCharge }) =>
    inCharge === null ? refuse({ code: 'already-so' }) : happened({ type: 'inChargeSignedOff' }),
  )

/** The cautions of one order as they stand now; what rules it out nobody accepts. */
export const decideAcceptCaution = (
  state: ServiceState,
  command: z.infer<typeof acceptCautionSchema>,
  circumstances: Circumstances,
): Decision =>
  whenInCharge(state, circumstances, (running) => {
    if (running.inCharge === null) return refuse({ code: 'no-one-in-charge' })
    const found = chosen(running, command.build)
    if ('refusal' in found) return found
    const { choice } = found
    if (choice.needs.length === 0) return refuse({ code: 'nothing-to-accept' })
    const check = checked(running, choice, circumstances)
    if ('refusal' in check) return check
    const refusal = ruledOut(check.findings)
    if (refusal) return refuse(refusal)
    const findings = cautionsIn(check.findings)
    if (findings.length === 0) return refuse({ code: 'nothing-to-accept' })
    return happened({
      type: 'cautionAccepted',
      caution: running.nextCaution,
      item: choice.item,
      food: foodKey(choice),
      needs: strictest(choice.needs).map(({ code, handling }) => ({ code, handling })),
      findings,
      reason: command.reason,
    })
  })
