import { z } from 'zod'
import { strictest } from '#lib/needs/judge.ts'
import { checked, ruledOut } from '#lib/rooms/care/facts/check-needs.ts'
import { chosen } from '#lib/rooms/care/facts/chosen.ts'
import { cautionsIn } from '#lib/rooms/care/facts/standing.ts'
import { choices, needsToTry } from '#lib/rooms/pans/facts/sample-orders.ts'
import { happened, refuse } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { CHOICE } from '#lib/service/commands/example-parts.ts'
import { choiceSchema } from '#lib/service/commands/fields.ts'
import { CAUTION_REASONS } from '#lib/service/events/caution-reasons.ts'
import { foodKey } from '#lib/service/events/food-key.ts'

export const signOn = defineCommand({
  type: 'signOn',
  who: ['in-charge'],
  stages: ['open'],
  schema: {},
  decide: ({ inCharge }) =>
    inCharge === null ? happened({ type: 'inChargeSignedOn' }) : refuse({ code: 'already-so' }),
  sample: () => [{}],
  rules: ['S69', 'S70'],
  example: {},
  tells: ': with the passphrase; nothing is kept apart without',
})

export const signOff = defineCommand({
  type: 'signOff',
  who: [],
  stages: ['open'],
  schema: {},
  decide: ({ inCharge }) =>
    inCharge === null ? refuse({ code: 'already-so' }) : happened({ type: 'inChargeSignedOff' }),
  sample: () => [{}],
  rules: ['S69', 'S71'],
  example: {},
})

/** The cautions of one order as they stand now; what rules it out nobody accepts. */
export const acceptCaution = defineCommand({
  type: 'acceptCaution',
  who: ['in-charge'],
  stages: ['open'],
  schema: { build: choiceSchema, reason: z.enum(CAUTION_REASONS) },
  decide: (state, { build, reason }, circumstances) => {
    if (state.inCharge === null) return refuse({ code: 'no-one-in-charge' })
    const found = chosen(state, build)
    if ('refusal' in found) return found
    const { choice } = found
    if (choice.needs.length === 0) return refuse({ code: 'nothing-to-accept' })
    const check = checked(state, choice, circumstances)
    if ('refusal' in check) return check
    const refusal = ruledOut(check.findings)
    if (refusal) return refuse(refusal)
    const findings = cautionsIn(check.findings)
    if (findings.length === 0) return refuse({ code: 'nothing-to-accept' })
    return happened({
      type: 'cautionAccepted',
      caution: state.nextCaution,
      item: choice.item,
      food: foodKey(choice),
      needs: strictest(choice.needs).map(({ code, handling }) => ({ code, handling })),
      findings,
      reason,
    })
  },
  sample: (state) =>
    needsToTry(state).flatMap((need) =>
      choices(state).map(
        (choice) =>
          ({
            build: { ...choice, asked: 'needs', needs: [need], agreed: true },
            reason: 'guest-accepts',
          }) as const,
      ),
    ),
  rules: ['N25', 'N26', 'S70', 'S71'],
  example: { build: CHOICE, reason: 'guest-accepts' },
  tells: ' (`reason`: `guest-accepts`, `label-read`, `supplier-asked` or `recipe-checked`)',
})
