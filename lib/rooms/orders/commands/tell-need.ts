import { badAnswer } from '#lib/rooms/care/facts/chosen.ts'
import { keeps, knownNeeds } from '#lib/rooms/care/facts/known-needs.ts'
import { atBuild, handedOver, needsToTry } from '#lib/rooms/pans/facts/sample-orders.ts'
import { happened, refuse, withBuild } from '#lib/service/commands/decision.ts'
import { defineCommand } from '#lib/service/commands/define.ts'
import { NEED } from '#lib/service/commands/example-parts.ts'
import { askedField, buildFields, needsField } from '#lib/service/commands/fields.ts'
import { openBuilds } from '#lib/service/tickets.ts'

/** A need told after sending stops the build at once, in whatever state it is. */
export const tellNeed = defineCommand({
  type: 'tellNeed',
  who: ['counter', 'hand-over'],
  stages: ['open'],
  schema: { ...buildFields, asked: askedField, needs: needsField },
  decide: (state, { ticket, letter, asked, needs }) =>
    withBuild(state, { ticket, letter }, ({ build, name }) => {
      if (build.state === 'cancelled')
        return refuse({ code: 'wrong-state', build: name, state: build.state })
      if (asked === 'none') return refuse({ code: 'not-asked' })
      const refusal = badAnswer(state, asked, needs)
      if (refusal) return refuse(refusal)
      const isTold =
        asked === 'needs'
          ? needs.every((need) => keeps(knownNeeds(build), need))
          : build.hold?.told?.asked === 'not-sure'
      return isTold
        ? refuse({ code: 'already-so' })
        : happened({ type: 'needTold', ticket, letter, asked, needs })
    }),
  sample: (state) =>
    [...openBuilds(state), ...handedOver(state)].flatMap((queued) =>
      needsToTry(state).map(
        (need) => ({ ...atBuild(queued), asked: 'needs', needs: [need] }) as const,
      ),
    ),
  rules: ['S73', 'S74', 'S84'],
  example: { ticket: 12, letter: 'A', asked: 'needs', needs: [NEED] },
  tells: ': after sending, in any state',
})
